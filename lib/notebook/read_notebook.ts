/**
 * A notebook file to a notebook in memory.
 *
 * @module
 */
import { readOrdinaryFile } from "../files/read_ordinary_file.ts";
import { type ParsedNotebook, parseNotebook } from "./parse_notebook.ts";

/**
 * Reads a notebook file of format 4; see `parseNotebook` for what is mended.
 *
 * @param path The .ipynb file.
 * @returns The notebook, and a sentence for each mend.
 * @throws {SyntaxError} If the file is not UTF-8, not JSON or not a notebook.
 * @throws {TypeError} If it is a folder, a pipe or a device.
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
    bytes = await readOrdinaryFile(path);
  } catch (error) {
    if (error instanceof TypeError) throw error; // a pipe, a folder
    const isMissing = error instanceof Deno.errors.NotFound ||
      error instanceof Deno.errors.NotADirectory;
    if (!isMissing && !(error instanceof Deno.errors.PermissionDenied)) {
      throw error;
    }
    throw new Error(
      `Cannot read ${path} as ${
        isMissing ? "there is no such file" : "you may not read it"
      }`,
    );
  }
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    const [first, second] = bytes;
    const isWide = (first === 0xff && second === 0xfe) ||
      (first === 0xfe && second === 0xff);
    throw new SyntaxError(
      `Cannot read ${path} as a notebook must be UTF-8 text: it ${
        isWide ? "is UTF-16; save it as UTF-8" : "holds other bytes"
      }`,
    );
  }
  return await parseNotebook(text, path);
}
