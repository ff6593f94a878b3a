/**
 * The spacings of a ring's feet, from a small file of caliper figures.
 *
 * @module
 */
import type { Spacings } from "../geometry/ring_from_spacings.ts";
import type { Millimetres } from "../units/length.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { readTypedTable } from "./_typed_table.ts";

/** Spacings of three feet, or why there are none. */
export interface RingSpacings {
  /** The spacings 1–2, 2–3 and 3–1, in mm, when three were read. */
  readonly spacings?: Spacings;
  /** Everything the reader has to say. */
  readonly problems: readonly Problem[];
}

const SPEC = {
  columns: {
    foot_pair: ["pair", "feet"],
    spacing: ["spacings", "distance"],
    unit: ["units"],
  },
  required: ["spacing"],
} as const;

/**
 * Reads the three spacings of a ring's feet.
 *
 * A file has the columns `foot_pair,spacing,unit` and three lines. Whether the
 * figures are centre to centre or over the outsides of the balls the file does
 * not say; a ring in `bench.json` does, under `spacings_measured`.
 *
 * @param content Text, or the bytes of the file.
 * @param file The file's name, for messages.
 * @param unit The unit of a spacing that names none; without it such a
 * spacing is refused.
 * @returns The spacings in mm, or the problems.
 *
 * @example
 * ```ts
 * import { readRingSpacings } from "sagbook/records/ring_spacings.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { spacings } = await readRingSpacings(
 *   "foot_pair,spacing,unit\nA-B,103.0,mm\nB-C,104.0,mm\nC-A,104.8,mm\n",
 *   "ring.csv",
 * );
 * deepEqual(spacings, [103, 104, 104.8]);
 * ```
 */
export async function readRingSpacings(
  content: string | Uint8Array,
  file: string,
  unit?: LengthUnit,
): Promise<RingSpacings> {
  const { records, lines, problems } = await readTypedTable<Millimetres>(
    content,
    file,
    SPEC,
    unit,
    (line) =>
      line.length("spacing") ??
        (line.text("spacing") === undefined
          ? line.refuse("spacing", {
            code: "blank-cell",
            message: "the line gives no spacing",
          })
          : undefined),
  );
  const [a, b, c] = records;
  if (records.length === 3 && lines.reported === 0) {
    return { spacings: [a, b, c], problems };
  }
  if (problems.some((one) => one.severity === "refused")) return { problems };
  return {
    problems: [...problems, {
      severity: "refused",
      code: "not-three",
      file,
      message: `a ring of three feet has three spacings; ${records.length} ${
        records.length === 1 ? "was" : "were"
      } read`,
      mend: "give one line for each pair of feet",
    }],
  };
}
