/**
 * Student's interval for a mean, and for a mean difference of pairs.
 *
 * @module
 */
import {
  requireAllFinite,
  requireLength,
  requireProbability,
} from "./_guards.ts";
import type { Interval } from "./interval.ts";
import { studentTQuantile } from "./student_t_distribution.ts";
import { summarise } from "./summary.ts";

/** A mean with the interval that holds its expectation. */
export interface MeanInterval {
  /** How many values, or pairs. */
  readonly count: number;
  /** Their mean. */
  readonly mean: number;
  /** Their standard deviation, with divisor n - 1. */
  readonly standardDeviation: number;
  /** Standard deviation of the mean. */
  readonly standardError: number;
  /** Degrees of freedom, n - 1. */
  readonly dof: number;
  /** The interval. */
  readonly interval: Interval;
}

/**
 * Finds Student's interval for the expectation behind a few values.
 *
 * Holds exactly for independent values of a normal distribution. All values
 * equal give an interval of no width, which is a statement about the values
 * and not about their uncertainty: a display step needs its own allowance.
 *
 * @param values Finite numbers, at least two.
 * @param confidence Probability that such an interval holds the expectation,
 * between 0 and 1.
 * @returns Mean and interval, in the unit of the values.
 * @throws {RangeError} If there are fewer than two values, one is not finite
 * or `confidence` is not between 0 and 1.
 *
 * @see JCGM 100:2008 (GUM), 4.2 and G.3.
 *
 * @example
 * ```ts
 * import { studentInterval } from "sagbook/statistics/student_interval.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { interval } = studentInterval([2, 3, 4], 0.95);
 * equal(interval.high.toFixed(3), "5.484");
 * ```
 */
export function studentInterval(
  values: readonly number[],
  confidence: number = 0.95,
): MeanInterval {
  const action = "find an interval of a mean";
  requireProbability(confidence, action, "confidence");
  requireLength(values.length, 2, action, "values");
  const { count, mean, standardDeviation = 0 } = summarise(values);
  const standardError = standardDeviation / Math.sqrt(count);
  const dof = count - 1;
  const half = standardError === 0
    ? 0
    : standardError * studentTQuantile((1 - confidence) / 2, dof, "upper");
  return {
    count,
    mean,
    standardDeviation,
    standardError,
    dof,
    interval: { low: mean - half, high: mean + half },
  };
}

/**
 * Finds Student's interval for the mean of `second` less `first` over pairs.
 *
 * What the two members of a pair share, such as one zeroing of a gauge,
 * cancels in each difference and does not widen the interval.
 *
 * @param first First member of each pair.
 * @param second Second member of each pair, in the same order.
 * @param confidence Probability that such an interval holds the expectation,
 * between 0 and 1.
 * @returns Mean difference and interval, in the unit of the values.
 * @throws {RangeError} If the lists differ in length, there are fewer than two
 * pairs, a value is not finite or `confidence` is not between 0 and 1.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 7.3.1.
 *
 * @example
 * ```ts
 * import { pairedInterval } from "sagbook/statistics/student_interval.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(pairedInterval([10, 20, 30], [11, 21, 31]).mean, 1);
 * ```
 */
export function pairedInterval(
  first: readonly number[],
  second: readonly number[],
  confidence: number = 0.95,
): MeanInterval {
  const action = "find an interval of paired differences";
  if (first.length !== second.length) {
    throw new RangeError(
      `Cannot ${action} as both lists must have the same length: current values are ${first.length} and ${second.length}`,
    );
  }
  requireAllFinite(first, action, "first value");
  requireAllFinite(second, action, "second value");
  return studentInterval(
    first.map((value, pair) => second[pair] - value),
    confidence,
  );
}
