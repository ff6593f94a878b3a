/**
 * Finished pieces whose focal length does not belong to their radius.
 *
 * @module
 */

/** What a finished piece needs for this check, in mm. */
export interface CheckedPiece {
  /** Line of the file. */
  readonly line: number;
  /** The user's name for it. */
  readonly piece?: string;
  /** Outer diameter. */
  readonly diameter?: number;
  /** Radius at the end of grinding. */
  readonly groundRadius: number;
  /** Focal length. */
  readonly focalLength: number;
}

/** One piece that cannot be used as it stands. */
export interface FinishedSuspicion {
  /** Line of the file. */
  readonly line: number;
  /** The user's name for it. */
  readonly piece?: string;
  /** Focal length as it was read, in mm. */
  readonly focalLength: number;
  /** Half its ground radius, in mm, which it should come close to. */
  readonly half: number;
  /** What it looks like; `other` where nothing explains it. */
  readonly looksLike:
    | "inches"
    | "millimetres as inches"
    | "f-number"
    | "radius of curvature"
    | "centimetres"
    | "metres"
    | "other";
  /** The focal length it would then be, in mm. */
  readonly wouldBe?: number;
}

/** Farther from half the radius than this part of it, a piece is not used. */
const FAR = 0.05;

/**
 * Finds pieces whose focal length is far from half their ground radius.
 *
 * Polishing and figuring move it by parts in a thousand; five parts in a
 * hundred are a slip of the pen, or of the unit. Such a piece is to be shown
 * and not used.
 *
 * @param pieces Finished pieces, lengths in mm.
 * @returns Suspicions, in the order of the pieces.
 *
 * @example An f-number in the place of a focal length
 * ```ts
 * import { finishedSuspicions } from "sagbook/fabrication/finished_suspicions.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [found] = finishedSuspicions([
 *   { line: 2, diameter: 300, groundRadius: 3000, focalLength: 5 },
 * ]);
 * equal(found.looksLike, "f-number");
 * equal(found.wouldBe, 1500);
 * ```
 */
export function finishedSuspicions(
  pieces: readonly CheckedPiece[],
): readonly FinishedSuspicion[] {
  return pieces.flatMap(
    ({ line, piece, diameter, groundRadius, focalLength }) => {
      const half = groundRadius / 2;
      const near = (value: number) => Math.abs(value / half - 1) <= FAR;
      if (near(focalLength)) return [];
      const readings = [
        ["f-number", diameter === undefined ? NaN : focalLength * diameter],
        ["radius of curvature", focalLength / 2],
        ["inches", focalLength * 25.4],
        ["millimetres as inches", focalLength / 25.4],
        ["centimetres", focalLength * 10],
        ["metres", focalLength * 1000],
      ] as const;
      const found = readings.find(([, value]) => near(value));
      return [{
        line,
        ...(piece === undefined ? {} : { piece }),
        focalLength,
        half,
        ...(found === undefined
          ? { looksLike: "other" as const }
          : { looksLike: found[0], wouldBe: found[1] }),
      }];
    },
  );
}
