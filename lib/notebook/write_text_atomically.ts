/**
 * Writes a file whole or not at all.
 *
 * @module
 */
import { basename, dirname, join } from "node:path";

/**
 * Writes text to a file so that a reader, a crash or a full disk meets either
 * the old file or the new one, never a part: the text goes to a new file in
 * the same folder, is flushed to the disk and then renamed over the old one.
 *
 * A symbolic link is replaced by the file, and an existing file's permissions
 * are kept.
 *
 * @param path Where to; its folder must exist.
 * @param text What to write, as UTF-8.
 * @throws {Error} What the system says (no space, read-only folder, no
 * folder); the old file is then unchanged and no temporary file is left.
 *
 * @example
 * ```ts
 * import { writeTextAtomically } from "sagbook/notebook/write_text_atomically.ts";
 * import { equal } from "node:assert/strict";
 *
 * const folder = await Deno.makeTempDir();
 * await writeTextAtomically(`${folder}/report.html`, "R 3000 mm");
 * equal(await Deno.readTextFile(`${folder}/report.html`), "R 3000 mm");
 * await Deno.remove(folder, { recursive: true });
 * ```
 */
export async function writeTextAtomically(
  path: string,
  text: string,
): Promise<void> {
  const unique = crypto.randomUUID().slice(0, 8);
  const temporary = join(dirname(path), `.${basename(path)}.${unique}.part`);
  const old = await Deno.stat(path).catch(() => undefined);
  try {
    const file = await Deno.open(temporary, { write: true, createNew: true });
    try {
      const bytes = new TextEncoder().encode(text);
      for (let done = 0; done < bytes.length;) {
        done += await file.write(bytes.subarray(done));
      }
      await file.sync();
    } finally {
      file.close();
    }
    if (typeof old?.mode === "number") {
      await Deno.chmod(temporary, old.mode & 0o777);
    }
    await Deno.rename(temporary, path);
  } catch (error) {
    await Deno.remove(temporary).catch(() => {});
    throw error;
  }
}
