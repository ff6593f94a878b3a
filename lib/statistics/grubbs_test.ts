/**
 * Grubbs' test for one outlier.
 *
 * @module
 */
import { requireLength, requireProbability } from "./_guards.ts";
import { studentTQuantile } from "./student_t_distribution.ts";
import { summarise } from "./summary.ts";

/** The value furthest from the mean, and whether it stands out. */
export interface GrubbsResult {
  /** Position of the suspect value in the list. */
  readonly index: number;
  /** The suspect value. */
  readonly value: number;
  /** Its distance from the mean in standard deviations; 0 if all are equal. */
  readonly statistic: number;
  /** What the statistic must exceed. */
  readonly critical: number;
  /** Whether it does. */
  readonly outlying: boolean;
}

/**
 * Finds the critical value of Grubbs' test.
 *
 * @param count Number of values, a whole number of at least 3.
 * @param alpha Chance of a false alarm, between 0 and 1.
 * @param sides 1 if only the largest, or only the smallest, value is looked at;
 * 2 if whichever is furthest out.
 * @returns The largest distance from the mean, in standard deviations, that
 * chance explains.
 * @throws {RangeError} If `count` is below 3 or `alpha` is not between 0 and 1.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.17.1.
 *
 * @example
 * ```ts
 * import { grubbsCritical } from "sagbook/statistics/grubbs_test.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(grubbsCritical(8, 0.05, 1).toFixed(3), "2.032");
 * ```
 */
export function grubbsCritical(
  count: number,
  alpha: number,
  sides: 1 | 2,
): number {
  const action = "find a critical value of Grubbs' test";
  requireLength(count, 3, action, "values");
  requireProbability(alpha, action, "alpha");
  const t = studentTQuantile(alpha / (sides * count), count - 2, "upper");
  return (count - 1) / Math.sqrt(count) *
    Math.sqrt(t * t / (count - 2 + t * t));
}

/**
 * Tests whether the value furthest from the mean is an outlier.
 *
 * Marks a value for a second look; it is no reason to drop it.
 *
 * @param values Finite numbers, at least three, otherwise normal.
 * @param alpha Chance of a false alarm, between 0 and 1.
 * @param side Which end is looked at, decided before seeing the values.
 * @returns The suspect value and the verdict.
 * @throws {RangeError} If there are fewer than three values or one is not finite.
 *
 * @see F. E. Grubbs, G. Beck (1972), Technometrics 14, 847-854.
 *
 * @example
 * ```ts
 * import { grubbsTest } from "sagbook/statistics/grubbs_test.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { index, outlying } = grubbsTest([4, 5, 4, 6, 5, 4, 60], 0.05, "either");
 * equal(index, 6);
 * equal(outlying, true);
 * ```
 */
export function grubbsTest(
  values: readonly number[],
  alpha: number,
  side: "high" | "low" | "either",
): GrubbsResult {
  const critical = grubbsCritical(
    values.length,
    alpha,
    side === "either" ? 2 : 1,
  );
  const { mean, min, max, standardDeviation = 0 } = summarise(values);
  const high = side === "high" ||
    (side === "either" && max - mean >= mean - min);
  const value = high ? max : min;
  const statistic = standardDeviation === 0
    ? 0
    : Math.abs(value - mean) / standardDeviation;
  return {
    index: values.indexOf(value),
    value,
    statistic,
    critical,
    outlying: statistic > critical,
  };
}
