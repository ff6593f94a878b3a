/**
 * How small a difference a few sets of readings can show.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { normalProbability } from "../statistics/normal_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";

/**
 * Half the width of the interval an analysis puts round a mean, from the
 * variance it found between `sets` sets; in the unit of the mean.
 */
export type HalfWidthRule = (variance: number, sets: number) => number;

/** A planned comparison: sets of readings, and the scatter they will have. */
export interface PlannedComparison {
  /** Standard deviation from set to set of what is averaged, above 0. */
  readonly deviation: number;
  /** Number of sets, at least 2. */
  readonly sets: number;
  /** Standard uncertainty of what no set averages out; 0 unless stated. */
  readonly shared?: number;
  /** How the analysis finds half its interval; {@link studentRule} unless stated. */
  readonly halfWidth?: HalfWidthRule;
}

const NODES = 200;
const variances = new Map<number, Float64Array>();

/** Variance ratios S²/σ² at the middles of 200 equal chances. */
function varianceRatios(dof: number): Float64Array {
  let known = variances.get(dof);
  if (known === undefined) {
    known = Float64Array.from(
      { length: NODES },
      (_, i) => chiSquareQuantile((i + 0.5) / NODES, dof) / dof,
    );
    variances.set(dof, known);
  }
  return known;
}

/**
 * Makes the rule of Student's t with a display floor.
 *
 * `t √(S²/n + shared²)` with Welch and Satterthwaite's degrees of freedom.
 * With a display step, and scatter of single readings below two steps, joined
 * in quadrature by the `1 − √level` steps that two rounded steady readings may
 * hide: identical readings do not make an interval of no width.
 *
 * @param level Chance outside, both sides together; 0.05 unless stated.
 * @param shared Standard uncertainty of what no set averages out.
 * @param step Display step of each of two readings, 0 for none.
 * @returns The rule.
 *
 * @see JCGM 100:2008, G.4.1; JCGM 101:2008, 6.4.5 (two roundings).
 *
 * @example
 * ```ts
 * import { studentRule } from "sagbook/uncertainty/detection.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentRule()(4, 4).toFixed(3), "3.182");
 * equal(studentRule(0.05, 0, 1)(0, 4).toFixed(3), "0.776");
 * ```
 */
export function studentRule(
  level: number = 0.05,
  shared: number = 0,
  step: number = 0,
): HalfWidthRule {
  return (variance, sets) => {
    const own = variance / sets;
    const total = own + shared * shared;
    const floor = variance < 8 * step * step
      ? (1 - Math.sqrt(level)) * step
      : 0;
    if (total === 0) return floor;
    const dof = own === 0 ? Infinity : (sets - 1) * (total / own) ** 2;
    const t = studentTQuantile(level / 2, dof, "upper");
    return Math.hypot(t * Math.sqrt(total), floor);
  };
}

/**
 * Finds the chance that an analysis shows a difference that is really there.
 *
 * Shown means that the interval round the mean does not hold 0. The mean is
 * normal about the true difference and independent of the variance found,
 * which is chi-square; the chance is the mean over 200 equal parts of it, good
 * to 0.002.
 *
 * @param difference The true difference, in the unit of the deviation.
 * @param plan Scatter, sets and the rule of the analysis.
 * @returns A chance from 0 to 1.
 * @throws {RangeError} If the deviation is not above 0, or there are fewer
 * than two sets.
 *
 * @see Student's t with a variance of its own; for the plain rule it is the
 * noncentral t distribution.
 *
 * @example No difference is shown in 5 % all the same
 * ```ts
 * import { chanceToShow } from "sagbook/uncertainty/detection.ts";
 * import { ok } from "node:assert/strict";
 *
 * ok(Math.abs(chanceToShow(0, { deviation: 1, sets: 5 }) - 0.05) < 0.001);
 * ```
 */
export function chanceToShow(
  difference: number,
  plan: PlannedComparison,
): number {
  const { deviation, sets, shared = 0 } = plan;
  const { halfWidth = studentRule(0.05, shared) } = plan;
  if (!(deviation > 0 && Number.isFinite(deviation))) {
    throw new RangeError(
      `Cannot find a chance as the deviation between sets must be finite and above 0: current value is ${deviation}`,
    );
  }
  if (!(Number.isInteger(sets) && sets >= 2)) {
    throw new RangeError(
      `Cannot find a chance as there must be at least 2 sets: current value is ${sets}`,
    );
  }
  const spread = Math.sqrt(deviation ** 2 / sets + shared ** 2);
  let sum = 0;
  for (const ratio of varianceRatios(sets - 1)) {
    const half = halfWidth(ratio * deviation ** 2, sets);
    sum += normalProbability((half - difference) / spread, "upper") +
      normalProbability((-half - difference) / spread, "lower");
  }
  return sum / NODES;
}

/**
 * Finds the smallest difference that is shown with a given chance.
 *
 * @param plan Scatter, sets and the rule of the analysis.
 * @param power Chance wanted, above 0.06 and below 1; 0.8 unless stated.
 * @returns The difference, in the unit of the deviation, above 0.
 * @throws {RangeError} If the power or the plan is out of range.
 *
 * @example Five sets show 1.7 standard deviations with 80 %
 * ```ts
 * import { detectableDifference } from "sagbook/uncertainty/detection.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(detectableDifference({ deviation: 1, sets: 5 }).toFixed(2), "1.68");
 * ```
 */
export function detectableDifference(
  plan: PlannedComparison,
  power: number = 0.8,
): number {
  if (!(power > 0.06 && power < 1)) {
    throw new RangeError(
      `Cannot find a detectable difference as the power must be above 0.06 and below 1: current value is ${power}`,
    );
  }
  const { deviation, sets, shared = 0 } = plan;
  const excess = (difference: number): number =>
    chanceToShow(difference, plan) - power;
  if (excess(0) >= 0) {
    throw new RangeError(
      `Cannot find a detectable difference as no difference must be shown less often than ${power}: current value is ${
        chanceToShow(0, plan)
      }`,
    );
  }
  let high = 4 * Math.hypot(deviation / Math.sqrt(sets), shared);
  while (excess(high) < 0) high *= 2;
  return findRoot(excess, 0, high, { tolerance: 1e-6 * high });
}
