/**
 * The bytes of a user's file, or plain words why there are none.
 *
 * @module
 */
import type { Problem } from "./problem.ts";

/** A file larger than this is not read whole. */
export const LARGEST_FILE: number = 512 * 1024 * 1024;

/** Bytes, or the reason. */
export type FileBytes =
  | { readonly kind: "bytes"; readonly bytes: Uint8Array }
  | { readonly kind: "absent" }
  | { readonly kind: "unreadable"; readonly problem: Problem };

async function isLink(path: string): Promise<boolean> {
  try {
    return (await Deno.lstat(path)).isSymlink;
  } catch {
    return false;
  }
}

/** Reads the first byte of a file, which shows that it can be read. */
export async function firstByte(path: string): Promise<Uint8Array> {
  using file = await Deno.open(path);
  const byte = new Uint8Array(1);
  return byte.subarray(0, await file.read(byte) ?? 0);
}

/** Reads a file, all of it unless told; absence is an answer, anything else that fails a problem. */
export async function readBytes(
  path: string,
  file: string,
  read: (path: string) => Promise<Uint8Array> = Deno.readFile,
): Promise<FileBytes> {
  const refuse = (message: string, mend: string): FileBytes => ({
    kind: "unreadable",
    problem: { severity: "refused", code: "unreadable", file, message, mend },
  });
  try {
    const { isFile, isDirectory, size } = await Deno.stat(path);
    if (isDirectory) {
      return refuse(
        "this is a folder, not a file",
        "take it away or rename it",
      );
    }
    if (!isFile) {
      return refuse(
        "this is not an ordinary file",
        "take it away or rename it",
      );
    }
    if (size > LARGEST_FILE) {
      return refuse(
        "the file is larger than 512 MB",
        "split it into one file per session under sheets/",
      );
    }
    return { kind: "bytes", bytes: await read(path) };
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) {
      return await isLink(path)
        ? refuse(
          "this is a link, and what it leads to is not there",
          "bring back the folder or the disk it leads to, or take the link away",
        )
        : { kind: "absent" };
    }
    if (error instanceof Deno.errors.NotADirectory) return { kind: "absent" };
    return refuse(
      error instanceof Deno.errors.PermissionDenied ||
        error instanceof Deno.errors.NotCapable
        ? "the file may not be read"
        : "the file cannot be read",
      "check who may read it, and that no other program holds it open",
    );
  }
}
