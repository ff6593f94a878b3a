/**
 * How far two places differ, with the intervals that decide.
 *
 * @module
 */
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import type { Interval } from "../statistics/interval.ts";
import { roundingHalfWidth, survivingRounding } from "./display_floor.ts";
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

/** The factors an interval needs; the same for all sessions of one size. */
interface Critical {
  readonly t90: number;
  readonly t95: number;
  readonly tSimultaneous: number;
  readonly chiSquareUpper5: number;
}

const remembered = new Map<string, Critical>();

function critical(dof: number, comparisons: number): Critical {
  const key = `${dof} ${comparisons}`;
  const known = remembered.get(key);
  if (known) return known;
  const made = {
    t90: studentTQuantile(0.05, dof, "upper"),
    t95: studentTQuantile(0.025, dof, "upper"),
    tSimultaneous: studentTQuantile(0.025 / comparisons, dof, "upper"),
    chiSquareUpper5: chiSquareQuantile(0.05, dof, "upper"),
  };
  remembered.set(key, made);
  return made;
}

/**
 * Puts intervals round the mean of within-set differences.
 *
 * Each half width joins, in quadrature, Student's t times the standard error
 * and what rounding to the display step may hide however often the reading is
 * repeated ({@link roundingHalfWidth}), as far as the scatter has not been
 * shown to average it out ({@link survivingRounding}). With scatter above two
 * display steps the intervals cover what they state; below, they cover more.
 * The simultaneous interval divides the 5 % by the number of comparisons
 * (Bonferroni), which holds whatever the correlation between them.
 *
 * @param replicated Mean, standard error and degrees of freedom, in mm.
 * @param step Display step in mm, at least 0.
 * @param comparisons How many differences share the 5 %, at least 1.
 * @param noise Length of the contrast in readings: sqrt(2) for a difference of
 * two readings, which is the default.
 * @returns Intervals in mm; undefined without a degree of freedom.
 *
 * @see Student (1908); Bonferroni's inequality.
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
  noise: number = Math.SQRT2,
): Pick<
  ZoneDifference,
  "rounding" | "interval90" | "interval95" | "simultaneous95"
> {
  const { mean, standardError, dof, variance } = replicated;
  if (standardError === undefined || variance === undefined) {
    return { rounding: 1 };
  }
  const factors = critical(dof, comparisons);
  const unit = step * noise / Math.SQRT2;
  const rounding = step === 0 ? 0 : survivingRounding(
    variance / (unit * unit),
    dof,
    factors.chiSquareUpper5,
  );
  const around = (t: number, tail: number): Interval => {
    const half = Math.hypot(
      t * standardError,
      roundingHalfWidth(tail) * unit * rounding,
    );
    return { low: mean - half, high: mean + half };
  };
  return {
    rounding,
    interval90: around(factors.t90, 0.1),
    interval95: around(factors.t95, 0.05),
    simultaneous95: around(factors.tSimultaneous, 0.05 / comparisons),
  };
}
