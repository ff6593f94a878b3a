/**
 * Where a file lies that another file names.
 *
 * @module
 */
import { dirname, isAbsolute, join } from "node:path";

/** A drive's letter, or a server's name after two strokes. */
const IS_WINDOWS_ROOT = /^(?:[A-Za-z]:|[/\\]{2})/;

/**
 * Finds the path of a file that another one names, such as the bench shared by
 * several pieces.
 *
 * A backslash parts folders as a stroke does, whatever the system: a folder
 * that was made under Windows is read elsewhere. So a name that holds a
 * backslash itself, which other systems allow, cannot be named in a file.
 *
 * @param from The file that holds the name.
 * @param name The name: whole, or as seen from the folder of `from`.
 * @returns The path; a name with a drive's letter stays as it is.
 *
 * @example
 * ```ts
 * import { namedPath } from "sagbook/files/named_path.ts";
 * import { equal } from "node:assert/strict";
 * import { join } from "node:path";
 *
 * const bench = join("shop", "bench.json");
 * equal(namedPath(join("shop", "disc", "piece.json"), "..\\bench.json"), bench);
 * equal(namedPath("piece.json", "C:\\shop\\bench.json"), "C:\\shop\\bench.json");
 * ```
 */
export function namedPath(from: string, name: string): string {
  if (IS_WINDOWS_ROOT.test(name)) return name;
  const path = name.replaceAll("\\", "/");
  return isAbsolute(path) ? path : join(dirname(from), path);
}
