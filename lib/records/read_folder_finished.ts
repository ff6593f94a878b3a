/**
 * The finished pieces of a shop's folder.
 *
 * @module
 */
import { join } from "node:path";
import { type FinishedPieces, readFinishedPieces } from "./finished_pieces.ts";
import type { LengthUnit } from "./piece.ts";
import { readBytes } from "./_read_bytes.ts";

/**
 * Reads `finished.csv` of a shop's folder.
 *
 * @param path The folder, as the user names it.
 * @param unit The unit of a length that names none.
 * @returns The pieces; none when the folder keeps no such file.
 *
 * @example A folder without finished pieces
 * ```ts
 * import { readFolderFinished } from "sagbook/records/read_folder_finished.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * deepEqual((await readFolderFinished(path)).pieces, []);
 * await Deno.remove(path);
 * ```
 */
export async function readFolderFinished(
  path: string,
  unit?: LengthUnit,
): Promise<FinishedPieces> {
  const file = "finished.csv";
  const read = await readBytes(join(path, file), file);
  if (read.kind === "bytes") {
    return await readFinishedPieces(read.bytes, file, unit);
  }
  return {
    pieces: [],
    lines: { read: 0, used: 0, reported: 0 },
    problems: read.kind === "absent" ? [] : [read.problem],
  };
}
