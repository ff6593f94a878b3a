/**
 * Writing files whole or not at all.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { basename, dirname, join } from "node:path";
import { explainFault, UNCHANGED } from "./_explain_fault.ts";
import { isAbandoned, processMark } from "./process_mark.ts";

/** One file to write, or to take away. */
export interface FileToWrite {
  /** Where to. */
  readonly path: string;
  /** Text, written as UTF-8, or bytes; undefined takes an old file away. */
  readonly content: string | Uint8Array | undefined;
}

/**
 * Writes a file so that a reader sees the old one or the new one, whole.
 *
 * The content goes to a temporary file in the same folder, is flushed to the
 * disk, and then takes the file's name in one step. When anything fails before
 * that step (a full disk, a kill, a folder that vanished) the old file is
 * untouched, and the temporary file is taken away unless the process died; the
 * next process that writes the same file then does so. Its name begins with a
 * point and ends in `.part`, and nothing reads such files.
 *
 * The file keeps the permissions of the one it replaces. Through a symbolic
 * link the link itself is replaced, not what it points to.
 *
 * @param path The file to write; its folder must exist.
 * @param content Text, written as UTF-8, or bytes.
 * @throws {Error} As the system says (no folder, no space, read-only), of
 * Deno's own class, with a message that says what to do.
 *
 * @example
 * ```ts
 * import { writeAtomically } from "sagbook/files/write_atomically.ts";
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
  await writeAllAtomically([{ path, content }]);
}

/**
 * Writes files that belong together: what can fail is done for all of them
 * before the first takes its name, so that a full disk leaves all old ones.
 *
 * A folder where a file is to stand is refused before anything is written.
 *
 * Limits: a kill in the moment between two names leaves some files new and
 * some old, each whole; so does a folder that vanishes in that moment, and the
 * message then names them.
 *
 * @param files What to write, in the order in which they take their names.
 * @throws {Error} As {@linkcode writeAtomically} does.
 *
 * @example
 * ```ts
 * import { writeAllAtomically } from "sagbook/files/write_atomically.ts";
 * import { rejects } from "node:assert/strict";
 *
 * const folder = await Deno.makeTempDir();
 * await rejects(writeAllAtomically([
 *   { path: `${folder}/page.html`, content: "new" },
 *   { path: `${folder}/no/such/folder`, content: "new" },
 * ]), Deno.errors.NotFound);
 * await rejects(Deno.stat(`${folder}/page.html`));
 * await Deno.remove(folder, { recursive: true });
 * ```
 */
export async function writeAllAtomically(
  files: readonly FileToWrite[],
): Promise<void> {
  const staged: { temporary: string; path: string }[] = [];
  const renewed: string[] = [];
  let at = files[0]?.path ?? "";
  try {
    for (const { path } of files) await refuseFolder(at = path);
    for (const { path, content } of files) {
      if (content === undefined) continue;
      at = path;
      const unique = crypto.randomUUID().slice(0, 8);
      const name = `.${partName(path)}.${processMark()}.${unique}.part`;
      const temporary = join(dirname(path), name);
      staged.push({ temporary, path });
      await stage(temporary, path, content);
    }
    for (const { path, content } of files) {
      at = path;
      if (content === undefined) await removeIfThere(path);
      else {
        await Deno.rename(staged[0].temporary, path);
        staged.shift();
      }
      renewed.push(basename(path));
    }
  } catch (error) {
    for (const { temporary } of staged) {
      await Deno.remove(temporary).catch(() => {});
    }
    throw explainFault(
      error,
      at,
      renewed.length === 0
        ? UNCHANGED
        : `New already: ${renewed.join(", ")}; the rest is as it was.`,
    );
  }
  for (const folder of new Set(files.map(({ path }) => dirname(path)))) {
    await sweepParts(folder, files);
  }
}

/** A folder is neither written over nor taken away, not even an empty one. */
async function refuseFolder(path: string): Promise<void> {
  let found: Deno.FileInfo;
  try {
    found = await Deno.lstat(path);
  } catch {
    return; // nothing there, or writing says what is wrong
  }
  if (!found.isDirectory) return;
  throw new Deno.errors.IsADirectory("Is a directory");
}

/** Longest part of a file's own name that its temporary name bears. */
const LONGEST = 100;

/** A file's name as its temporary name bears it, which may not grow too long. */
function partName(path: string): string {
  const name = basename(path);
  return new TextEncoder().encode(name).length <= LONGEST
    ? name
    : createHash("sha256").update(name).digest("hex").slice(0, 32);
}

/** Writes the content under a temporary name, and to the disk. */
async function stage(
  temporary: string,
  path: string,
  content: string | Uint8Array,
): Promise<void> {
  const bytes = typeof content === "string"
    ? new TextEncoder().encode(content)
    : content;
  const old = await Deno.stat(path).catch(() => undefined);
  const file = await Deno.open(temporary, { write: true, createNew: true });
  try {
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
}

async function removeIfThere(path: string): Promise<void> {
  try {
    await Deno.remove(path);
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
}

/** Takes away what killed processes left of the same files. */
async function sweepParts(
  folder: string,
  files: readonly FileToWrite[],
): Promise<void> {
  const names = new Set(files.map(({ path }) => partName(path)));
  try {
    for await (const { name } of Deno.readDir(folder)) {
      const found = /^\.(.+)\.([0-9a-f]{4}-\d+)\.[0-9a-f]{8}\.part$/.exec(name);
      if (found && names.has(found[1]) && isAbandoned(found[2])) {
        await Deno.remove(join(folder, name)).catch(() => {});
      }
    }
  } catch {
    // The folder cannot be listed; what was to be written is.
  }
}
