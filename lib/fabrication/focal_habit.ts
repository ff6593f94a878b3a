/**
 * What a shop's ground radii became: its habit from finished pieces.
 *
 * @module
 */
import { medianOf } from "../statistics/median.ts";
import { leaveOneOut } from "./_leave_one_out.ts";
import type { HabitLine, MeanRatio } from "./focal_habit_forms.ts";
import { lineHabit } from "./_line_habit.ts";
import { meanRatio } from "./_mean_ratio.ts";

/** A finished piece as the habit needs it, lengths in mm. */
export interface HabitPiece {
  /** Radius at the end of grinding. */
  readonly radius: number;
  /** Its standard uncertainty. */
  readonly radiusUncertainty?: number;
  /** Focal length measured later. */
  readonly focalLength: number;
  /** Its standard uncertainty. */
  readonly focalLengthUncertainty?: number;
}

/** A piece with both uncertainties, and whether they were assumed. */
export interface KnownPiece {
  /** Radius at the end of grinding, in mm. */
  readonly radius: number;
  /** Its standard uncertainty, in mm. */
  readonly radiusUncertainty: number;
  /** Focal length measured later, in mm. */
  readonly focalLength: number;
  /** Its standard uncertainty, in mm. */
  readonly focalLengthUncertainty: number;
}

/** The habit of a shop. */
export interface FocalHabit {
  /** Pieces it rests on. */
  readonly pieces: readonly KnownPiece[];
  /** Uncertainties that were assumed, since the file has none. */
  readonly assumed: number;
  /** Whether any uncertainty was stated; else the scatter alone tells. */
  readonly stated: boolean;
  /** The mean of 2f/R less 1. */
  readonly mean: MeanRatio;
  /** The straight line, where there are pieces enough for one. */
  readonly line?: HabitLine;
  /** Which of them predictions use. */
  readonly used: "mean ratio" | "straight line";
  /** Root mean square error, each piece foretold from the others, in mm. */
  readonly leaveOneOut?: {
    /** Of the mean ratio. */
    readonly mean: number;
    /** Of the straight line. */
    readonly line: number;
  };
}

/** Pieces below which no line is tried. */
const FEWEST_FOR_LINE = 8;

/**
 * A line must foretell pieces it has not seen with at most this part of the
 * mean ratio's error, else chance alone would often choose it.
 */
const EARNS = 0.8;

/**
 * Relative uncertainty where nobody states any: so large that the scatter of
 * the pieces alone sets the scale, split evenly between radius and focus.
 */
const UNSTATED = 1;

/**
 * Finds a shop's habit from its finished pieces.
 *
 * The mean of 2f/R − 1, pieces weighed by their uncertainties and by the
 * scatter between pieces that these leave over. With eight pieces or more a
 * straight line with errors in both is fitted as well, and used if it foretells
 * pieces it has not seen clearly better. A piece without an uncertainty takes
 * the median relative one of the others; where no piece has any, the scatter
 * alone sets the scale.
 *
 * An error that all radii share, such as one ring's, becomes part of the habit
 * and cancels where the next piece is read with the same ring.
 *
 * @param pieces At least two.
 * @returns The habit.
 * @throws {RangeError} If there are fewer than two pieces or a number is out of
 * range.
 *
 * @see R. C. Paule, J. Mandel (1982), Journal of Research of the National
 * Bureau of Standards 87, 377-385; J. Hartung, G. Knapp (2001), Statistics in
 * Medicine 20, 1771-1782; D. York and others (2004), American Journal of
 * Physics 72, 367-375.
 *
 * @example
 * ```ts
 * import { focalHabit } from "sagbook/fabrication/focal_habit.ts";
 * import { equal } from "node:assert/strict";
 *
 * const habit = focalHabit([
 *   { radius: 2400, focalLength: 1198.8 },
 *   { radius: 3000, focalLength: 1497 },
 * ]);
 * equal(habit.mean.value.toFixed(4), "-0.0015");
 * ```
 */
export function focalHabit(pieces: readonly HabitPiece[]): FocalHabit {
  const action = "find a shop's habit";
  if (pieces.length < 2) {
    throw new RangeError(
      `Cannot ${action} as there must be two finished pieces or more: current value is ${pieces.length}`,
    );
  }
  for (const piece of pieces) {
    for (const [name, value] of Object.entries(piece)) {
      const size = value as number | undefined;
      if (size !== undefined && !(size > 0 && size < Infinity)) {
        throw new RangeError(
          `Cannot ${action} as ${name} must be above 0 mm and finite: current value is ${size} mm`,
        );
      }
    }
  }
  const { known, assumed } = filledIn(pieces);
  const stated = assumed < 2 * pieces.length;
  const mean = meanRatio(known, stated);
  const base = { pieces: known, assumed, stated, mean };
  if (known.length < FEWEST_FOR_LINE) return { ...base, used: "mean ratio" };
  const line = lineHabit(known, stated);
  if (line === undefined) return { ...base, used: "mean ratio" };
  const errors = leaveOneOut(known, stated);
  return {
    ...base,
    line,
    used: errors.line <= EARNS * errors.mean ? "straight line" : "mean ratio",
    leaveOneOut: errors,
  };
}

function filledIn(
  pieces: readonly HabitPiece[],
): { known: KnownPiece[]; assumed: number } {
  const ofRadius = medianOf(
    pieces.flatMap(({ radius, radiusUncertainty: u }) =>
      u === undefined ? [] : u / radius
    ),
  );
  const ofFocus = medianOf(
    pieces.flatMap(({ focalLength, focalLengthUncertainty: u }) =>
      u === undefined ? [] : u / focalLength
    ),
  );
  let assumed = 0;
  const take = (given: number | undefined, other: number): number => {
    if (given === undefined) assumed++;
    return given ?? other;
  };
  const known = pieces.map((piece) => ({
    radius: piece.radius,
    radiusUncertainty: take(
      piece.radiusUncertainty,
      (ofRadius ?? ofFocus ?? UNSTATED) * piece.radius,
    ),
    focalLength: piece.focalLength,
    focalLengthUncertainty: take(
      piece.focalLengthUncertainty,
      (ofFocus ?? ofRadius ?? UNSTATED) * piece.focalLength,
    ),
  }));
  return { known, assumed };
}
