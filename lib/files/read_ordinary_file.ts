/**
 * Reading a file that ends.
 *
 * @module
 */

/** What cannot be read to its end, in words. */
function wrongKind(stat: Deno.FileInfo): string | undefined {
  if (stat.isFile) return undefined;
  if (stat.isDirectory) return "a folder";
  if (stat.isFifo) return "a pipe";
  if (stat.isSocket) return "a socket";
  return "a device";
}

function expectOrdinary(path: string, stat: Deno.FileInfo): void {
  const kind = wrongKind(stat);
  if (kind === undefined) return;
  throw new TypeError(
    `Cannot read ${path} as it must be an ordinary file: it is ${kind}`,
  );
}

/**
 * Reads a whole file, and no pipe, device or folder: a pipe would make the
 * program wait for ever, and a device may have no end.
 *
 * Limits: a file that becomes a pipe between the look and the reading is read.
 *
 * @param path The file; a link to one will do.
 * @returns Its bytes.
 * @throws {TypeError} If it is something else.
 * @throws {Error} As the system says, of Deno's own class.
 *
 * @example
 * ```ts
 * import { readOrdinaryFile } from "sagbook/files/read_ordinary_file.ts";
 * import { rejects } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * await rejects(readOrdinaryFile(path), {
 *   name: "TypeError",
 *   message: `Cannot read ${path} as it must be an ordinary file: it is a folder`,
 * });
 * await Deno.remove(path);
 * ```
 */
export async function readOrdinaryFile(
  path: string,
): Promise<Uint8Array<ArrayBuffer>> {
  expectOrdinary(path, await Deno.stat(path));
  return await Deno.readFile(path);
}

/**
 * Does what {@linkcode readOrdinaryFile} does before it returns.
 *
 * @param path The file; a link to one will do.
 * @returns Its bytes.
 * @throws {TypeError} If it is something else.
 */
export function readOrdinaryFileSync(path: string): Uint8Array<ArrayBuffer> {
  expectOrdinary(path, Deno.statSync(path));
  return Deno.readFileSync(path);
}
