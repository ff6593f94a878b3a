/**
 * Is it a sphere, as far as these readings can tell?
 *
 * @module
 */
import type { EndsComparison } from "./two_ends.ts";
import type { Scope } from "./replicates.ts";
import type { SetsNeeded } from "./sets_needed.ts";
import type { SagTolerance } from "./tolerance.ts";
import type { Interval } from "../statistics/interval.ts";
import type { ZoneDifference } from "./zone_difference.ts";

/** Why there is no verdict, where there is none. */
export type NoVerdictReason =
  | "no tolerance"
  | "one zone"
  | "one set"
  | "no common sets"
  | "tolerance needs an off-centre zone";

/** The verdict on sphericity, as data; sentences are made elsewhere. */
export interface SphericityVerdict {
  /** `none` when there is nothing to judge, with a reason. */
  readonly verdict: "within" | "outside" | "undecided" | "none";
  /** Why there is none. */
  readonly reason?: NoVerdictReason;
  /** Whether it is meant for any diameter or for those read. */
  readonly scope: Scope;
  /** The tolerance, where one was stated. */
  readonly tolerance?: SagTolerance;
  /** The difference that decided, or that stands in the way. */
  readonly deciding?: ZoneDifference;
  /** True when the two ends of a diameter decided, not two zones. */
  readonly byEnds: boolean;
  /**
   * The smallest tolerance in sag these readings would pass, in mm: every
   * pair of zones, and the ends where both were read, agree within it, each
   * tested at 5 %.
   */
  readonly agreeWithin?: number;
  /** True when the scatter is too small for the display to show. */
  readonly displayLimited: boolean;
  /** For an undecided verdict: what would decide it. */
  readonly setsNeeded?: SetsNeeded;
}

/** The largest size a value inside the interval can have. */
export function farthest(interval: Interval): number {
  return Math.max(Math.abs(interval.low), Math.abs(interval.high));
}

/** The smallest size a value inside the interval can have. */
export function nearest(interval: Interval): number {
  return interval.low <= 0 && interval.high >= 0
    ? 0
    : Math.min(Math.abs(interval.low), Math.abs(interval.high));
}

/**
 * Judges differences against a tolerance.
 *
 * `within`: every difference passes two one-sided tests at 5 %, that is, its
 * 90 % interval lies inside the tolerance. No correction is needed, since all
 * must pass (intersection-union test). `outside`: the simultaneous 95 %
 * interval of some difference lies beyond it. Otherwise `undecided`; "no
 * significant difference" is never "within".
 *
 * Either errs in 5 % at most for a number of sets fixed beforehand. Judged anew
 * after every set and stopped at the first "within", it errs more often.
 *
 * @param differences Every pair of places, with intervals.
 * @param ends The two ends compared, where both were read.
 * @param tolerance Largest good difference of sag in mm, above 0.
 * @returns The verdict and the difference behind it.
 *
 * @see Berger (1982), Technometrics 24, 295-300 (intersection-union tests);
 * Schuirmann (1987), J. Pharmacokin. Biopharm. 15, 657-680.
 *
 * @example
 * ```ts
 * import { judge } from "sagbook/zones/sphericity.ts";
 * import { equal } from "node:assert/strict";
 *
 * const clear = {
 *   first: 0, second: 1, sets: 3, mean: 0.028, dof: 2, rounding: 1,
 *   interval90: { low: 0.027, high: 0.029 },
 *   interval95: { low: 0.0265, high: 0.0295 },
 *   simultaneous95: { low: 0.025, high: 0.031 },
 * };
 * equal(judge([clear], undefined, 0.003).verdict, "outside");
 * equal(judge([clear], undefined, 0.03).verdict, "within");
 * equal(judge([clear], undefined, 0.0285).verdict, "undecided");
 * ```
 */
export function judge(
  differences: readonly ZoneDifference[],
  ends: EndsComparison | undefined,
  tolerance: number,
): {
  verdict: "within" | "outside" | "undecided";
  deciding?: ZoneDifference;
  byEnds: boolean;
} {
  const ordered = [...differences].sort((a, b) =>
    Math.abs(b.mean) - Math.abs(a.mean)
  );
  const beyond = ordered.find((difference) =>
    difference.simultaneous95 !== undefined &&
    nearest(difference.simultaneous95) > tolerance
  );
  if (beyond) return { verdict: "outside", deciding: beyond, byEnds: false };
  if (ends?.lower !== undefined && ends.lower > tolerance) {
    return { verdict: "outside", byEnds: true };
  }
  const widest = [...differences].sort((a, b) => reach90(b) - reach90(a))[0];
  const open = widest === undefined || reach90(widest) > tolerance;
  const openEnds = ends !== undefined &&
    (ends.upper === undefined || ends.upper > tolerance);
  return {
    verdict: open || openEnds ? "undecided" : "within",
    ...(widest === undefined ? {} : { deciding: widest }),
    byEnds: !open && openEnds,
  };
}

function reach90({ interval90 }: ZoneDifference): number {
  return interval90 === undefined ? Infinity : farthest(interval90);
}
