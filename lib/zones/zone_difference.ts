/**
 * How far two places differ, with the intervals that decide.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { chiSquareUpper5, studentT } from "./_critical.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";
import type { DriftLeft } from "./drift.ts";
import type { ReplicatedMean } from "./replicates.ts";

/** The difference of two places within sets: sag of `first` less `second`. */
export interface ZoneDifference {
  /** Index of the first place. */
  readonly first: number;
  /** Index of the second place. */
  readonly second: number;
  /** How many sets hold both. */
  readonly sets: number;
  /** Mean difference of the sag, in mm. */
  readonly mean: number;
  /** Standard deviation of one set's difference, in mm. */
  readonly deviation?: number;
  /** Degrees of freedom of the deviation. */
  readonly dof: number;
  /** Share of the rounding error that averaging does not remove, 0 to 1. */
  readonly rounding: number;
  /** Two-sided 90 %: its ends are the two one-sided tests at 5 %. */
  readonly interval90?: Interval;
  /** Two-sided 95 %, for this difference alone. */
  readonly interval95?: Interval;
  /** Two-sided 95 % for all differences of the session together. */
  readonly simultaneous95?: Interval;
}

/** A weighted sum of places, as far as its interval needs to know it. */
export interface Contrast {
  /** Root sum of squares of the weights; √2 for a difference of two. */
  readonly length: number;
  /**
   * Share of the rounding error of its readings that survives at the places
   * themselves, 0 to 1, see {@link roundingLeft}.
   */
  readonly rounding: number;
  /**
   * Weighted sum of how far between the looks at the flat each place was
   * read, from 0 to 1 each; 0 where nobody looked.
   */
  readonly progress: number;
  /** What is not known of the drift of the zero. */
  readonly drift?: DriftLeft;
}

/** A difference of two readings, nothing known of the places. */
const DIFFERENCE: Contrast = { length: Math.SQRT2, rounding: 0, progress: 0 };

/**
 * Finds what intervals must know of a weighted sum of places.
 *
 * @param weights Weight of each place.
 * @param roundingAt Share of the rounding error that survives at each place.
 * @param progressAt How far between the looks each place was read, 0 to 1.
 * @param drift What is not known of the drift of the zero.
 * @returns The contrast.
 *
 * @example Edge less centre; all of the rounding survives at the centre
 * ```ts
 * import { contrastOf } from "sagbook/zones/zone_difference.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { length, rounding } = contrastOf([-1, 1], [1, 0], [0, 0], undefined);
 * equal(length, Math.SQRT2);
 * equal(rounding.toFixed(4), "0.7071");
 * ```
 */
export function contrastOf(
  weights: readonly number[],
  roundingAt: readonly number[],
  progressAt: readonly number[],
  drift: DriftLeft | undefined,
): Contrast {
  let [squares, left, progress] = [0, 0, 0];
  weights.forEach((weight, place) => {
    squares += weight * weight;
    left += (weight * roundingAt[place]) ** 2;
    progress += weight * progressAt[place];
  });
  return {
    length: Math.sqrt(squares),
    rounding: squares === 0 ? 0 : Math.sqrt(left / squares),
    progress,
    ...(drift === undefined ? {} : { drift }),
  };
}

/**
 * Puts intervals round the mean of within-set differences.
 *
 * Each half width joins in quadrature
 * - Student's t times the standard error;
 * - what rounding to the display step may hide however often the reading is
 *   repeated ({@link roundingHalfWidth}), as far as the scatter of the
 *   differences ({@link survivingRounding}) or of the places themselves has
 *   not been shown to average it out;
 * - what is not known of the drift of the zero between the two places.
 *
 * With scatter above two display steps the intervals cover what they state;
 * below, they cover more. The simultaneous interval divides the 5 % by the
 * number of comparisons (Bonferroni), which holds whatever the correlation
 * between them.
 *
 * @param replicated Mean, standard error and degrees of freedom, in mm.
 * @param step Display step in mm, at least 0.
 * @param comparisons How many differences share the 5 %, at least 1.
 * @param contrast The weighted sum of places that was averaged; a difference
 * of two readings unless stated.
 * @returns Intervals in mm; undefined without a degree of freedom.
 *
 * @see Student (1908); Bonferroni's inequality. Coverage by simulation:
 * `tests/studies/RESULTS.md`.
 *
 * @example
 * ```ts
 * import { intervalsOf } from "sagbook/zones/zone_difference.ts";
 * import { equal } from "node:assert/strict";
 *
 * const replicated = {
 *   mean: 0.0276667, standardError: 0.000333333, dof: 2, variance: 3.333e-7,
 *   replicates: 3,
 * };
 * const { interval95 } = intervalsOf(replicated, 0, 3);
 * equal(interval95?.low.toFixed(5), "0.02623");
 * ```
 */
export function intervalsOf(
  replicated: ReplicatedMean,
  step: number,
  comparisons: number,
  contrast: Contrast = DIFFERENCE,
): Pick<
  ZoneDifference,
  "rounding" | "interval90" | "interval95" | "simultaneous95"
> {
  const { mean, standardError, dof, variance } = replicated;
  if (standardError === undefined || variance === undefined) {
    return { rounding: step === 0 ? 0 : 1 };
  }
  const { length, progress, drift } = contrast;
  const unit = step * length / Math.SQRT2;
  const rounding = unit === 0 ? 0 : Math.max(
    contrast.rounding,
    survivingRounding(variance / (unit * unit), dof, chiSquareUpper5(dof)),
  );
  const moved = drift === undefined ? 0 : Math.abs(progress);
  const around = (tail: number): Interval => {
    const hidden = roundingHalfWidth(tail);
    let half = Math.hypot(
      studentT(tail / 2, dof) * standardError,
      hidden * unit * rounding,
    );
    if (drift !== undefined && moved > 0) {
      half = Math.hypot(
        half,
        studentT(tail / 2, drift.dof) * moved * drift.standardError,
        hidden * moved * step * drift.rounding,
      );
    }
    return { low: mean - half, high: mean + half };
  };
  return {
    rounding,
    interval90: around(0.1),
    interval95: around(0.05),
    simultaneous95: around(0.05 / comparisons),
  };
}
