/**
 * Where the project is.
 *
 * @module
 */
import { fileURLToPath } from "node:url";

/** The project's root, where `deno.json` maps the library's name. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));
