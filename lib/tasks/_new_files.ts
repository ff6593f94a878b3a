/**
 * The files of a new folder, written where none are.
 *
 * @module
 */
import { dirname, join } from "node:path";

/** Writes the files; takes back what it made when it cannot make all. */
export async function writeNew(
  folder: string,
  files: ReadonlyMap<string, string>,
): Promise<void> {
  const made: string[] = [];
  try {
    for (const [name, text] of files) {
      const path = join(folder, name);
      await Deno.mkdir(dirname(path), { recursive: true });
      await Deno.writeTextFile(path, text, { createNew: true });
      made.push(path);
    }
    await Deno.mkdir(join(folder, "sheets"), { recursive: true });
  } catch (error) {
    for (const path of made) await Deno.remove(path).catch(() => {});
    throw error;
  }
}

/** Which of these names are there already. */
export async function existing(
  folder: string,
  names: Iterable<string>,
): Promise<string[]> {
  const found: string[] = [];
  for (const name of names) {
    try {
      await Deno.lstat(join(folder, name));
      found.push(name);
    } catch {
      // Not there, as it should be; anything else shows when it is written.
    }
  }
  return found;
}

/** Why files could not be written, in plain words. */
export function fileTrouble(
  error: unknown,
  folder: string,
): string | undefined {
  if (error instanceof Deno.errors.AlreadyExists) {
    return `${folder} holds files already; nothing was overwritten. Name a new folder.`;
  }
  if (
    error instanceof Deno.errors.PermissionDenied ||
    error instanceof Deno.errors.NotCapable
  ) {
    return `${folder} may not be written to. Name a folder of your own.`;
  }
  if (
    error instanceof Deno.errors.NotADirectory ||
    error instanceof Deno.errors.NotFound
  ) {
    return `${folder} cannot be a folder: a part of its path is a file.`;
  }
  return undefined;
}
