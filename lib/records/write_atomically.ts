/**
 * Writing a file whole or not at all.
 *
 * @module
 */

/**
 * Writes a file so that a reader sees the old one or the new one, whole.
 *
 * The content goes to a temporary file in the same folder, is flushed to the
 * disk, and then takes the file's name in one step. When anything fails before
 * that step (a full disk, a kill, a folder that vanished) the old file is
 * untouched, and the temporary file is taken away unless the process died; its
 * name begins with a point and ends in `.part`, and nothing reads such files.
 *
 * The file keeps the permissions of the one it replaces. Through a symbolic
 * link the link itself is replaced, not what it points to.
 *
 * @param path The file to write.
 * @param content Text, written as UTF-8, or bytes.
 * @throws {Deno.errors.NotFound} If the folder does not exist; other errors of
 * the file system as Deno throws them.
 *
 * @example
 * ```ts
 * import { writeAtomically } from "sagbook/records/write_atomically.ts";
 * import { equal } from "node:assert/strict";
 *
 * const path = await Deno.makeTempFile();
 * await writeAtomically(path, "R 3000 mm\n");
 * equal(await Deno.readTextFile(path), "R 3000 mm\n");
 * await Deno.remove(path);
 * ```
 */
export async function writeAtomically(
  path: string,
  content: string | Uint8Array,
): Promise<void> {
  const slash = Math.max(path.lastIndexOf("/"), path.lastIndexOf("\\"));
  const folder = path.slice(0, slash + 1);
  const name = path.slice(slash + 1);
  const temporary = `${folder}.${name}.${crypto.randomUUID()}.part`;
  const bytes = typeof content === "string"
    ? new TextEncoder().encode(content)
    : content;
  const mode = await modeOf(path);
  try {
    const file = await Deno.open(temporary, {
      write: true,
      createNew: true,
      ...(mode === undefined ? {} : { mode }),
    });
    try {
      let written = 0;
      while (written < bytes.length) {
        written += await file.write(bytes.subarray(written));
      }
      await file.sync();
    } finally {
      file.close();
    }
    await Deno.rename(temporary, path);
  } catch (error) {
    await Deno.remove(temporary).catch(() => {});
    throw error;
  }
}

async function modeOf(path: string): Promise<number | undefined> {
  try {
    return (await Deno.stat(path)).mode ?? undefined;
  } catch {
    return undefined;
  }
}
