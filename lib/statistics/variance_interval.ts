/**
 * Intervals for sums and differences of expected mean squares.
 *
 * @module
 */
import { requireDegreesOfFreedom, requireProbability } from "./_guards.ts";
import type { MeanSquareTerm } from "./anova_table.ts";
import { chiSquareQuantile } from "./chi_square_distribution.ts";
import { fQuantile } from "./f_distribution.ts";
import type { Interval } from "./interval.ts";

/** Distances of the ends of a mean square's own interval, as fractions. */
function reaches(dof: number, alpha: number): { down: number; up: number } {
  return {
    down: 1 - dof / chiSquareQuantile(alpha / 2, dof, "upper"),
    up: dof / chiSquareQuantile(alpha / 2, dof, "lower") - 1,
  };
}

/**
 * Finds an interval for a sum of multiples of expected mean squares, or for one
 * multiple less another, by modified large samples.
 *
 * One term has the exact chi-square interval. A sum of positive terms combines
 * the exact intervals of each so that it is exact when all but one vanish. A
 * difference of two takes the extra term that makes it exact when either
 * vanishes. The interval is not cut off at 0: a component's low end may be
 * negative. Coverage is close to what is stated at any sample size.
 *
 * @param terms Mean squares (0 or more) with their factors and degrees of
 * freedom; all factors positive, or one positive and one negative.
 * @param confidence Probability that such an interval holds the truth, between
 * 0 and 1.
 * @returns The interval, in the unit of the mean squares.
 * @throws {RangeError} If the terms have another pattern of signs, a number is
 * out of range or `confidence` is not between 0 and 1.
 *
 * @see R. K. Burdick, F. A. Graybill, Confidence Intervals on Variance
 * Components (1992); R. K. Burdick, C. M. Borror, D. C. Montgomery, Design and
 * Analysis of Gauge R&R Studies (2005).
 *
 * @example The component between six groups of five
 * ```ts
 * import { varianceInterval } from "sagbook/statistics/variance_interval.ts";
 * import { equal } from "node:assert/strict";
 *
 * const interval = varianceInterval([
 *   { coefficient: 0.2, meanSquare: 11271.5, dof: 5 },
 *   { coefficient: -0.2, meanSquare: 2451.25, dof: 24 },
 * ]);
 * equal(interval.low > 0, true);
 * ```
 */
export function varianceInterval(
  terms: readonly MeanSquareTerm[],
  confidence: number = 0.95,
): Interval {
  const action = "find an interval of a variance";
  requireProbability(confidence, action, "confidence");
  for (const { meanSquare, dof } of terms) {
    requireDegreesOfFreedom(dof, action);
    if (!(meanSquare >= 0 && meanSquare < Infinity)) {
      throw new RangeError(
        `Cannot ${action} as a mean square must be finite and 0 or more: current value is ${meanSquare}`,
      );
    }
  }
  const alpha = 1 - confidence;
  const negative = terms.filter(({ coefficient }) => coefficient < 0);
  if (negative.length === 0) return sumInterval(terms, alpha);
  if (negative.length > 1 || terms.length !== 2) {
    throw new RangeError(
      `Cannot ${action} as terms must all be positive, or one positive and one negative: current value is ${negative.length} negative of ${terms.length}`,
    );
  }
  const plus = terms.find(({ coefficient }) => coefficient > 0);
  if (!plus) {
    throw new RangeError(
      `Cannot ${action} as one term must be positive: current value is 0 positive`,
    );
  }
  return differenceInterval(plus, negative[0], alpha);
}

/** The interval of a sum. */
function sumInterval(
  terms: readonly MeanSquareTerm[],
  alpha: number,
): Interval {
  let [estimate, below, above] = [0, 0, 0];
  for (const { coefficient, meanSquare, dof } of terms) {
    const part = coefficient * meanSquare;
    const { down, up } = reaches(dof, alpha);
    estimate += part;
    below += (down * part) ** 2;
    above += (up * part) ** 2;
  }
  return {
    low: estimate - Math.sqrt(below),
    high: estimate + Math.sqrt(above),
  };
}

/** The interval of a difference. */
function differenceInterval(
  plus: MeanSquareTerm,
  minus: MeanSquareTerm,
  alpha: number,
): Interval {
  const a = plus.coefficient * plus.meanSquare;
  const b = -minus.coefficient * minus.meanSquare;
  const [one, two] = [reaches(plus.dof, alpha), reaches(minus.dof, alpha)];
  const upper = fQuantile(alpha / 2, plus.dof, minus.dof, "upper");
  const lower = fQuantile(alpha / 2, plus.dof, minus.dof, "lower");
  const downCross = ((upper - 1) ** 2 - (one.down * upper) ** 2 - two.up ** 2) /
    upper;
  const upCross = ((1 - lower) ** 2 - (one.up * lower) ** 2 - two.down ** 2) /
    lower;
  const below = (one.down * a) ** 2 + (two.up * b) ** 2 + downCross * a * b;
  const above = (one.up * a) ** 2 + (two.down * b) ** 2 + upCross * a * b;
  return {
    low: a - b - Math.sqrt(Math.max(0, below)),
    high: a - b + Math.sqrt(Math.max(0, above)),
  };
}

/** Satterthwaite's degrees of freedom and interval of a combined variance. */
export interface SatterthwaiteInterval {
  /** The combination. */
  readonly estimate: number;
  /** Degrees of freedom of the chi-square distribution it resembles. */
  readonly dof: number;
  /** The interval. */
  readonly interval: Interval;
}

/**
 * Finds Satterthwaite's interval for a combination of expected mean squares.
 *
 * Simple, and good for sums of positive terms; for differences the modified
 * large sample interval is the better one.
 *
 * @param terms Mean squares with their factors and degrees of freedom.
 * @param confidence Probability that such an interval is meant to hold,
 * between 0 and 1.
 * @returns Estimate, degrees of freedom and interval; undefined where the
 * combination is not above 0.
 * @throws {RangeError} If degrees of freedom are not above 0 or `confidence` is
 * not between 0 and 1.
 *
 * @see F. E. Satterthwaite (1946), Biometrics Bulletin 2, 110-114.
 *
 * @example A single mean square keeps its degrees of freedom
 * ```ts
 * import { satterthwaiteInterval } from "sagbook/statistics/variance_interval.ts";
 * import { equal } from "node:assert/strict";
 *
 * const found = satterthwaiteInterval([{ coefficient: 1, meanSquare: 2, dof: 9 }]);
 * equal(found?.dof, 9);
 * ```
 */
export function satterthwaiteInterval(
  terms: readonly MeanSquareTerm[],
  confidence: number = 0.95,
): SatterthwaiteInterval | undefined {
  const action = "find Satterthwaite's interval";
  requireProbability(confidence, action, "confidence");
  let [estimate, spread] = [0, 0];
  for (const { coefficient, meanSquare, dof } of terms) {
    requireDegreesOfFreedom(dof, action);
    const part = coefficient * meanSquare;
    estimate += part;
    spread += part * part / dof;
  }
  if (!(estimate > 0)) return undefined;
  const dof = estimate * estimate / spread;
  const alpha = 1 - confidence;
  return {
    estimate,
    dof,
    interval: {
      low: dof * estimate / chiSquareQuantile(alpha / 2, dof, "upper"),
      high: dof * estimate / chiSquareQuantile(alpha / 2, dof, "lower"),
    },
  };
}
