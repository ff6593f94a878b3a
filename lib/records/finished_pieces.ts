/**
 * The shop's finished pieces: what the ground radius became.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";
import { FOCUS_COLUMNS, focusReadingOf } from "./_focus_of_line.ts";
import type { FocusReading } from "./focus_reading.ts";
import type { LineCount } from "./folder.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { TableLine } from "./_table_line.ts";
import { readTypedTable } from "./_typed_table.ts";

/** One finished piece. */
export interface FinishedPiece {
  /** Line of the file, from 1. */
  readonly line: number;
  /** The user's name for it. */
  readonly piece?: string;
  /** Outer diameter, in mm. */
  readonly diameter?: Millimetres;
  /** Radius of curvature after fine grinding, in mm. */
  readonly groundRadius: Millimetres;
  /** Its standard uncertainty, in mm. */
  readonly groundRadiusUncertainty?: Millimetres;
  /** Focal length of the finished piece in mm, where the line states it. */
  readonly focalLength?: Millimetres;
  /** Its standard uncertainty, in mm. */
  readonly focalLengthUncertainty?: Millimetres;
  /** What was read instead, from which the focal length follows. */
  readonly measured?: FocusReading;
  /** How the focal length was measured, in the user's words. */
  readonly method?: string;
  /** How the piece was figured, in the user's words. */
  readonly figuring?: string;
  /** The user's note. */
  readonly note?: string;
}

/** A shop's finished pieces, and what became of the lines. */
export interface FinishedPieces {
  /** The pieces, in the order of the lines. */
  readonly pieces: readonly FinishedPiece[];
  /** How many lines were read, used and reported. */
  readonly lines: LineCount;
  /** Everything the reader has to say. */
  readonly problems: readonly Problem[];
}

/** The header of a file of finished pieces. */
export const FINISHED_HEADER: readonly string[] = [
  "piece",
  "diameter",
  "ground_radius",
  "ground_radius_uncertainty",
  "focal_length",
  "focal_length_uncertainty",
  "unit",
  "method",
  "figuring",
  "note",
  "centre",
  "zone",
  "source",
  "surface",
  "image",
  "lamp",
  "lamp_uncertainty",
  "distance_uncertainty",
];

const SPEC = {
  columns: {
    piece: ["name"],
    diameter: [],
    ground_radius: ["radius"],
    ground_radius_uncertainty: ["radius_uncertainty", "u_radius"],
    focal_length: ["focus"],
    focal_length_uncertainty: ["focus_uncertainty", "u_focal_length"],
    unit: ["units"],
    method: ["focal_length_method"],
    figuring: ["figured"],
    note: ["notes", "remark", "remarks", "comment"],
    ...FOCUS_COLUMNS,
  },
  required: ["ground_radius"],
  oneOf: ["focal_length", "centre", "image"],
} as const;

/** The columns of which a line fills one. */
const WAYS = ["focal_length", "centre", "image"] as const;

function spoken(column: string): string {
  return column.replace("_", " ");
}

function pieceOf(line: TableLine): FinishedPiece | undefined {
  const groundRadius = line.length("ground_radius");
  const diameter = line.length("diameter");
  const ways = WAYS.filter((way) => line.text(way) !== undefined);
  if (ways.length > 1) {
    return line.refuse(ways[1], {
      code: "wrong-value",
      message: `the line gives ${ways.map(spoken).join(" and ")}`,
      expected: "one of focal_length, centre, image",
      mend: "keep what was read, and leave the rest blank",
    });
  }
  const focalLength = line.length("focal_length");
  const measured = ways[0] === "focal_length"
    ? undefined
    : focusReadingOf(line, diameter);
  const rest = {
    line: line.line,
    piece: line.text("piece"),
    diameter,
    groundRadiusUncertainty: line.length("ground_radius_uncertainty"),
    focalLengthUncertainty: line.length("focal_length_uncertainty"),
    method: line.text("method"),
    figuring: line.text("figuring"),
    note: line.text("note"),
  };
  if (groundRadius !== undefined && focalLength !== undefined) {
    return { ...rest, groundRadius, focalLength };
  }
  if (groundRadius !== undefined && measured !== undefined) {
    return { ...rest, groundRadius, measured };
  }
  const missing = line.text("ground_radius") === undefined
    ? "ground_radius"
    : ways.length === 0
    ? "focal_length"
    : undefined;
  return missing === undefined ? undefined : line.refuse(missing, {
    code: "blank-cell",
    message: `the line gives no ${spoken(missing)}`,
    mend: "fill it, or take the line out until it is known",
  });
}

/**
 * Reads a file of finished pieces.
 *
 * A line needs the ground radius, and either the focal length or what was read
 * to find it: the distance `centre` at which the rays of a `zone` cross near the
 * centre of curvature, with a `source` that moves or is fixed; or the distance
 * of an `image`, of a lamp at the distance `lamp` or else of a star. All else
 * may be blank.
 *
 * @param content Text, or the bytes of the file.
 * @param file The file's name, for messages.
 * @param unit The unit of a length that names none; without it such a length
 * is refused.
 * @returns The pieces and what became of the lines.
 *
 * @example
 * ```ts
 * import { readFinishedPieces } from "sagbook/records/finished_pieces.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { pieces } = await readFinishedPieces(
 *   "piece,ground_radius,focal_length\nblank 3,2520 mm,1257.5 mm\n",
 *   "finished.csv",
 * );
 * equal(pieces[0].focalLength, 1257.5);
 * ```
 */
export async function readFinishedPieces(
  content: string | Uint8Array,
  file: string,
  unit?: LengthUnit,
): Promise<FinishedPieces> {
  const { records, lines, problems } = await readTypedTable(
    content,
    file,
    SPEC,
    unit,
    pieceOf,
  );
  return {
    pieces: records,
    lines,
    problems: [...problems, ...doubledPieces(records, file)],
  };
}

/** Asks about pieces that stand twice with the same figures. */
function doubledPieces(
  pieces: readonly FinishedPiece[],
  file: string,
): Problem[] {
  const first = new Map<string, number>();
  return pieces.flatMap(({ line, ...piece }): Problem[] => {
    const key = JSON.stringify(piece);
    const known = first.get(key);
    if (known === undefined) {
      first.set(key, line);
      return [];
    }
    return [{
      severity: "warning",
      code: "doubled-lines",
      file,
      line,
      message:
        `this line holds the same as line ${known}: was it put in twice?`,
      mend: "take one of the two out: each piece counts once",
    }];
  });
}
