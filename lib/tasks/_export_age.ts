/**
 * How old the user's own files of a piece are.
 *
 * @module
 */
import { join } from "node:path";

/** The file of a piece that was changed last. */
export interface NewestRecord {
  /** Its path. */
  readonly path: string;
  /** When it was changed. */
  readonly changed: Date;
}

/**
 * Finds the file of a piece's folder that was changed last: settings, readings,
 * work log, and sheets. What programs write (`report/`, hidden files) is left
 * out.
 */
export async function newestRecord(
  folder: string,
): Promise<NewestRecord | undefined> {
  let newest: NewestRecord | undefined;
  const look = async (inside: string): Promise<void> => {
    for await (const { name, isFile } of Deno.readDir(inside)) {
      if (!isFile || !/\.(?:json|csv|tsv|txt|log)$/i.test(name)) continue;
      const path = join(inside, name);
      const { mtime } = await Deno.stat(path);
      if (mtime === null || newest && newest.changed >= mtime) continue;
      newest = { path, changed: mtime };
    }
  };
  await look(folder);
  await look(join(folder, "sheets")).catch(() => {});
  return newest;
}
