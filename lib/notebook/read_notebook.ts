/**
 * A notebook file to a notebook in memory.
 *
 * @module
 */
import { type ParsedNotebook, parseNotebook } from "./parse_notebook.ts";

/**
 * Reads a notebook file of format 4; see `parseNotebook` for what is mended.
 *
 * @param path The .ipynb file.
 * @returns The notebook, and a sentence for each mend.
 * @throws {SyntaxError} If the file is not UTF-8, not JSON or not a notebook.
 * @throws {Error} If there is no such file, or it may not be read.
 *
 * @example
 * ```ts
 * import { readNotebook } from "sagbook/notebook/read_notebook.ts";
 * import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const path = await Deno.makeTempFile({ suffix: ".ipynb" });
 * await writeNotebook(path, { metadata: {}, cells: [] });
 * deepEqual((await readNotebook(path)).notebook.cells, []);
 * await Deno.remove(path);
 * ```
 */
export async function readNotebook(path: string): Promise<ParsedNotebook> {
  let bytes: Uint8Array;
  try {
    bytes = await Deno.readFile(path);
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
    throw new Error(`Cannot read ${path} as there is no such file`);
  }
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new SyntaxError(
      `Cannot read ${path} as a notebook must be UTF-8 text: it holds other bytes`,
    );
  }
  return await parseNotebook(text, path);
}
