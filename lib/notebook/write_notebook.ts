/**
 * A notebook in memory to a notebook file.
 *
 * @module
 */
import { writeAtomically } from "../files/write_atomically.ts";
import type { Notebook } from "./document.ts";
import { formatNotebook } from "./format_notebook.ts";

/**
 * Writes a notebook file of format 4.5, whole or not at all.
 *
 * @param path The .ipynb file; an old one is replaced.
 * @param notebook What to write.
 * @throws {Error} What the system says; the old file is then unchanged.
 *
 * @example
 * ```ts
 * import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
 * import { equal } from "node:assert/strict";
 *
 * const path = await Deno.makeTempFile({ suffix: ".ipynb" });
 * await writeNotebook(path, { metadata: {}, cells: [] });
 * equal(JSON.parse(await Deno.readTextFile(path)).nbformat, 4);
 * await Deno.remove(path);
 * ```
 */
export async function writeNotebook(
  path: string,
  notebook: Notebook,
): Promise<void> {
  await writeAtomically(path, formatNotebook(notebook));
}
