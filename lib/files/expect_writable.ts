/**
 * Finding out before the work that its result cannot be kept.
 *
 * @module
 */
import { join } from "node:path";
import { describeFault } from "./describe_fault.ts";
import { processMark } from "./process_mark.ts";

/** Bytes that any page takes at least. */
const ROOM = 65_536;

/**
 * Makes a folder unless it is there, and writes a file of 64 kB into it
 * for a moment.
 *
 * @param folder The folder.
 * @param what What is to be written there, such as "the report".
 * @throws {Error} If it cannot be written, with a message that says what to do.
 *
 * @example
 * ```ts
 * import { expectWritable } from "sagbook/files/expect_writable.ts";
 * import { rejects } from "node:assert/strict";
 *
 * const file = await Deno.makeTempFile();
 * await rejects(expectWritable(file, "the report"), {
 *   message: /^Cannot write the report as /,
 * });
 * await Deno.remove(file);
 * ```
 */
export async function expectWritable(
  folder: string,
  what: string,
): Promise<void> {
  const unique = crypto.randomUUID().slice(0, 8);
  const probe = join(folder, `.probe.${processMark()}.${unique}.part`);
  try {
    await Deno.mkdir(folder, { recursive: true });
    await Deno.writeFile(probe, new Uint8Array(ROOM), { createNew: true });
  } catch (error) {
    const { why, remedy } = describeFault(error);
    const words = error instanceof Error ? error.message : String(error);
    throw new Error(
      `Cannot write ${what} as ${folder} must be a folder that can be written: ${why} (${words}). Nothing was changed. ${remedy}`,
    );
  } finally {
    await Deno.remove(probe).catch(() => {});
  }
}
