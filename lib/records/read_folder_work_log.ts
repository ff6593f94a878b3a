/**
 * The work log of a folder.
 *
 * @module
 */
import { join } from "node:path";
import type { LengthUnit } from "./piece.ts";
import { readBytes } from "./_read_bytes.ts";
import { readWorkLog, type WorkLog } from "./work_log.ts";

/**
 * Reads `worklog.csv` of a folder.
 *
 * @param path The folder, as the user names it.
 * @param unit The unit of a thickness that names none.
 * @returns The log; without entries when the folder keeps none.
 *
 * @example A folder without a log
 * ```ts
 * import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * deepEqual((await readFolderWorkLog(path)).entries, []);
 * await Deno.remove(path);
 * ```
 */
export async function readFolderWorkLog(
  path: string,
  unit?: LengthUnit,
): Promise<WorkLog> {
  const file = "worklog.csv";
  const read = await readBytes(join(path, file), file);
  if (read.kind === "bytes") return await readWorkLog(read.bytes, file, unit);
  return {
    entries: [],
    lines: { read: 0, used: 0, reported: 0 },
    problems: read.kind === "absent" ? [] : [read.problem],
  };
}
