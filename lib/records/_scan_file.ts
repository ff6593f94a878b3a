/**
 * A file of readings, whatever its size.
 *
 * @module
 */
import type { FileAccount } from "./folder.ts";
import { LARGEST_FILE, readBytes } from "./_read_bytes.ts";
import { LARGE_FILE, scanInBlocks } from "./_scan_in_blocks.ts";
import { type ScanSource, scanText } from "./_scan_text.ts";

async function sizeOf(path: string): Promise<number> {
  try {
    const { isFile, size } = await Deno.stat(path);
    return isFile ? size : 0;
  } catch {
    // Why it cannot be read is said when it is read.
    return 0;
  }
}

/**
 * Walks a file; every line of readings in it is used or reported.
 *
 * @param path Where it is.
 * @param source What the scan needs to know.
 * @param onBytes Told how many bytes of a long file have been read, of how many.
 * @returns The account; `undefined` when there is no file, or it cannot be read
 * and the problems say so.
 */
export async function scanFile(
  path: string,
  source: ScanSource,
  onBytes: (bytes: number, size: number) => void,
): Promise<FileAccount | undefined> {
  const size = await sizeOf(path);
  if (size > LARGE_FILE && size <= LARGEST_FILE) {
    const account = await scanInBlocks(
      path,
      size,
      source,
      (bytes) => onBytes(bytes, size),
    );
    if (account !== undefined) return account;
  }
  const read = await readBytes(path, source.file);
  if (read.kind === "bytes") return await scanText(read.bytes, source);
  if (read.kind === "unreadable") source.problems.add(read.problem);
  return undefined;
}
