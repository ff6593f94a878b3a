/**
 * The disk as a recorder meets it: other programs, no room, things that are no
 * files.
 *
 * @module
 */
import { describeFault } from "../files/describe_fault.ts";
import { readOrdinaryFileSync } from "../files/read_ordinary_file.ts";

/** A line that could not be saved, in words for the user. */
export class SaveError extends Error {}

/** The file has other columns now; opened again it can be written to. */
export class HeaderChanged extends SaveError {}

/** What tells one state of a file from another. */
export interface Look {
  readonly inode: number | null;
  readonly size: number;
  readonly modified: number | undefined;
}

/** The state of a file; undefined when there is none. */
export function look(path: string): Look | undefined {
  try {
    const { ino, size, mtime } = Deno.statSync(path);
    return { inode: ino, size, modified: mtime?.getTime() };
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
}

/** Whether a file has changed between two looks. */
export function differs(
  before: Look | undefined,
  now: Look | undefined,
): boolean {
  return now?.inode !== before?.inode || now?.size !== before?.size ||
    now?.modified !== before?.modified;
}

/** Why a file could not be written, for someone who has never heard of errno. */
export function troubleWords(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  if (error instanceof TypeError) {
    return text.replace(/^.*: it is /, "it must be an ordinary file, and is ");
  }
  if (/no space|quota|disk full|os error (?:28|122|112)\b/i.test(text)) {
    return "there is no room left on the disk";
  }
  if (/os error 27\b|file too large/i.test(text)) {
    return "the file may not grow any larger";
  }
  if (
    error instanceof Deno.errors.PermissionDenied ||
    error instanceof Deno.errors.NotCapable || /read-only/i.test(text)
  ) return "the file may not be written to";
  if (error instanceof Deno.errors.NotFound) return "the folder is gone";
  const { why } = describeFault(error);
  return why === "the system refused it" ? text : why;
}

/** What to do about it, as a sentence after a space; or nothing. */
export function remedyFor(error: unknown): string {
  if (error instanceof TypeError) return " Rename it or take it away.";
  const { why, remedy } = describeFault(error);
  return why === "the system refused it" ? "" : ` ${remedy}`;
}

/** The text of a file, its byte-order mark kept; undefined if there is none. */
export function textOf(path: string): string | "undecodable" | undefined {
  let bytes: Uint8Array;
  try {
    bytes = readOrdinaryFileSync(path);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
  try {
    const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });
    const text = decoder.decode(bytes);
    return text.includes("\u0000") ? "undecodable" : text;
  } catch {
    return "undecodable";
  }
}

/** Refuses a link that leads to nothing: its disk may only be missing. */
export function refuseDeadLink(path: string, name: string): void {
  let isLink: boolean;
  try {
    isLink = Deno.lstatSync(path).isSymlink;
  } catch {
    return; // not there
  }
  if (!isLink || look(path) !== undefined) return;
  throw new SaveError(
    `Cannot record to ${name}: it is a link, and what it leads to is not there. Bring back the folder or the disk it leads to, or take the link away.`,
  );
}

/** True when a file's last byte is no line end. */
export function endsOpen(file: Deno.FsFile, size: number): boolean {
  if (size === 0) return false;
  const last = new Uint8Array(1);
  file.seekSync(size - 1, Deno.SeekMode.Start);
  file.readSync(last);
  return last[0] !== 0x0a && last[0] !== 0x0d;
}

/** How long, in ms, another recorder is waited for. */
const PATIENCE = 2_000;

/**
 * Opens a file for rows at its end, made if it is not there, and keeps other
 * recorders out of it until it is closed.
 *
 * A recorder that has the file meanwhile may put another in its place, so the
 * place is looked at again. Where a disk knows no locks, or somebody keeps one,
 * a reading counts for more than order: it is opened all the same.
 */
export function openAlone(path: string): Deno.FsFile {
  const end = Date.now() + PATIENCE;
  for (;;) {
    const file = Deno.openSync(path, {
      read: true,
      append: true,
      create: true,
    });
    const { isFile, ino } = file.statSync();
    if (!isFile) {
      file.close();
      throw new SaveError("it is no ordinary file any more");
    }
    const alone = tryLock(file);
    const late = Date.now() > end;
    if (late || alone && look(path)?.inode === ino) return file;
    file.close();
    if (!alone) pause(5);
  }
}

/** Closes a file that may be closed already. */
export function closeQuietly(file: Deno.FsFile | undefined): void {
  try {
    file?.close();
  } catch {
    // It was.
  }
}

function tryLock(file: Deno.FsFile): boolean {
  try {
    return file.tryLockSync(true);
  } catch {
    return true; // no locks here
  }
}

function pause(ms: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}
