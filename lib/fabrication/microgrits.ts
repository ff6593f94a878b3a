/**
 * Grain sizes of loose abrasives.
 *
 * @module
 */

/** One grade of the table. */
export interface Microgrit {
  /** The grade, such as `F320`. */
  readonly grit: string;
  /** Median grain size, in mm. */
  readonly size: number;
  /** What the standard allows the median to differ, in mm. */
  readonly tolerance: number;
}

const micrometres: readonly (readonly [string, number, number])[] = [
  ["F230", 53, 3],
  ["F240", 44.5, 2],
  ["F280", 36.5, 1.5],
  ["F320", 29.2, 1.5],
  ["F360", 22.8, 1.5],
  ["F400", 17.3, 1],
  ["F500", 12.8, 1],
  ["F600", 9.3, 1],
  ["F800", 6.5, 1],
  ["F1000", 4.5, 0.8],
  ["F1200", 3, 0.5],
];

/**
 * Median grain sizes of the microgrits F230 to F1200, by sedimentation.
 *
 * From memory, but for F230, whose 50 to 56 µm a public page confirms.
 *
 * @see FEPA 42-2 / ISO 8486-2:2007 (photosedimentometer, ds50).
 */
export const MICROGRITS: readonly Microgrit[] = micrometres.map((
  [grit, size, tolerance],
) => ({ grit, size: size / 1000, tolerance: tolerance / 1000 }));

/** What a grade's name says about its grain. */
export type GrainSize =
  | {
    readonly kind: "size";
    /** Mean or median size in mm. */
    readonly size: number;
    /** Where it comes from. */
    readonly from: "the name" | "the table";
  }
  | {
    readonly kind: "unknown";
    /** Why no size can be given. */
    readonly why:
      | "paper grit"
      | "number alone"
      | "not in the table"
      | "no grit";
  };

/**
 * Finds the grain size that a grade's name stands for.
 *
 * A size in the name (`9 µm`) wins. `F320` is looked up. A number alone is not
 * guessed: F, P and mesh numbers mean different sizes (F320 is 29 µm, P320
 * about 46 µm), so the user's own size is asked for.
 *
 * @param grade The grade as the user writes it.
 * @returns The size, or why there is none.
 *
 * @example
 * ```ts
 * import { grainSize } from "sagbook/fabrication/microgrits.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(grainSize("F320"), { kind: "size", size: 0.0292, from: "the table" });
 * deepEqual(grainSize("320"), { kind: "unknown", why: "number alone" });
 * ```
 */
export function grainSize(grade: string): GrainSize {
  const stated = /(\d+(?:[.,]\d+)?)\s*(?:µm|μm|um|microns?|micrometres?)\b/i
    .exec(grade);
  if (stated) {
    const size = Number(stated[1].replace(",", ".")) / 1000;
    return { kind: "size", size, from: "the name" };
  }
  const named = /\b([FP])\s?(\d{2,4})\b/i.exec(grade);
  if (named === null) {
    return {
      kind: "unknown",
      why: /\d{2,4}/.test(grade) ? "number alone" : "no grit",
    };
  }
  if (named[1].toUpperCase() === "P") {
    return { kind: "unknown", why: "paper grit" };
  }
  const found = MICROGRITS.find(({ grit }) => grit === `F${named[2]}`);
  return found === undefined
    ? { kind: "unknown", why: "not in the table" }
    : { kind: "size", size: found.size, from: "the table" };
}
