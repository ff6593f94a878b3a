/**
 * A column that names the piece: a file may hold readings of several.
 *
 * @module
 */
import { plainName } from "./_column_names.ts";
import type { Fault } from "./_line_faults.ts";

const NAMES: ReadonlySet<string> = new Set(
  ["piece", "blank", "disc", "disk", "workpiece", "work_piece", "mirror"]
    .flatMap((name) => [name, `${name}_id`, `${name}_no`, `${name}_name`]),
);

/** True for a heading under which the piece is named. */
export function isPieceColumn(heading: string): boolean {
  return NAMES.has(plainName(heading));
}

const words = (name: string) =>
  plainName(name).split("_").map((word) => word.replace(/^0+(?=\d)/, ""));

/** True where all words of one name stand in the other. */
export function isSameName(one: string, other: string): boolean {
  const [first, second] = [words(one), words(other)];
  const holds = (whole: string[], part: string[]) =>
    part.every((word) => whole.includes(word));
  return holds(first, second) || holds(second, first);
}

/** A line of another piece. */
export function otherPiece(name: string): Fault {
  return {
    code: "other-piece",
    message: `the line names another piece than piece.json (${name})`,
    mend:
      "put the readings of each piece into a folder of its own; if it is the same, write the same name in both",
  };
}
