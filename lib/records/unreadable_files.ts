/**
 * Files of readings that are there and cannot be read.
 *
 * @module
 */
import { join } from "node:path";
import { listReadingFiles } from "./_list_reading_files.ts";
import type { Problem } from "./problem.ts";
import { firstByte, readBytes } from "./_read_bytes.ts";

/**
 * Finds what keeps the files of readings of a folder from being read, without
 * reading more than a byte of each.
 *
 * Readings that cannot be read are not readings that are not there: a report
 * without them would take the place of a better one.
 *
 * @param path The folder.
 * @returns The problems that {@linkcode readPieceFolder} would tell of files it
 * cannot read; none when all can be.
 *
 * @example
 * ```ts
 * import { unreadableFiles } from "sagbook/records/unreadable_files.ts";
 * import { equal } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * await Deno.mkdir(`${path}/readings.csv`);
 * const [problem] = await unreadableFiles(path);
 * equal(problem.message, "this is a folder, not a file");
 * await Deno.remove(path, { recursive: true });
 * ```
 */
export async function unreadableFiles(
  path: string,
): Promise<readonly Problem[]> {
  const { files, problems } = await listReadingFiles(path);
  const found = problems.filter(({ code }) => code === "unreadable");
  for (const file of files) {
    const read = await readBytes(join(path, file), file, firstByte);
    if (read.kind === "unreadable") found.push(read.problem);
  }
  return found;
}
