/** The documents that people read first. */
import { ROOT } from "../tasks/_run_task.ts";

/** The pages of the guide, from the project's root. */
export const GUIDE: readonly string[] = [
  ...Deno.readDirSync(`${ROOT}notebooks/guide`),
].map(({ name }) => `notebooks/guide/${name}`).sort();

/** Every document, from the project's root. */
export const DOCUMENTS: readonly string[] = [
  "README.md",
  "DEVELOPERS.md",
  ...GUIDE,
];

/** A document's text. */
export const textOf = (path: string): string =>
  Deno.readTextFileSync(ROOT + path);
