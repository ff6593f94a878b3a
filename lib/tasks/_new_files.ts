/**
 * The files of a new folder, written where none are.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { describeFault } from "../files/describe_fault.ts";
import { makeFolder } from "../files/make_folder.ts";

/**
 * Writes the files, and an empty `sheets/`; takes back what it made when it
 * cannot make all. A folder that is not there yet is made whole or not at all.
 */
export async function writeNew(
  folder: string,
  files: ReadonlyMap<string, string>,
): Promise<void> {
  if (await isFolder(folder)) return await writeInto(folder, files);
  await makeFolder(folder, (making) => writeInto(making, files));
}

/** Takes a link to a folder for one. */
async function isFolder(path: string): Promise<boolean> {
  try {
    return (await Deno.stat(path)).isDirectory;
  } catch {
    return false;
  }
}

async function writeInto(
  folder: string,
  files: ReadonlyMap<string, string>,
): Promise<void> {
  const made: string[] = [];
  let path = folder;
  try {
    for (const [name, text] of files) {
      await makeFolders(path = join(folder, dirname(name)), made);
      path = join(folder, name);
      const file = await Deno.open(path, { write: true, createNew: true });
      made.push(path);
      await writeAndClose(file, text);
    }
    await makeFolders(path = join(folder, "sheets"), made);
  } catch (error) {
    // The last first, so that folders are empty by then.
    for (const one of made.reverse()) await Deno.remove(one).catch(() => {});
    throw new Error(fileTrouble(error, path));
  }
}

async function writeAndClose(file: Deno.FsFile, text: string): Promise<void> {
  try {
    const bytes = new TextEncoder().encode(text);
    for (let done = 0; done < bytes.length;) {
      done += await file.write(bytes.subarray(done));
    }
  } finally {
    file.close();
  }
}

/** Makes a folder unless it is there, and notes that it did. */
async function makeFolders(path: string, made: string[]): Promise<void> {
  if (await isFolder(path)) return;
  await Deno.mkdir(path);
  made.push(path);
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

/** Why a folder could not be made, in plain words; what is known is kept. */
export function fileTrouble(error: unknown, folder: string): string {
  const text = error instanceof Error ? error.message : String(error);
  if (/^Cannot /.test(text)) return text;
  const { why, remedy } = describeFault(error);
  return `Cannot make ${folder} as ${why} (${text}). Nothing was made. ${remedy}`;
}
