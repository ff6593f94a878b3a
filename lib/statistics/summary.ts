/**
 * Count, mean, spread and extremes of a list of numbers.
 *
 * @module
 */
import { mean, sampleVariance } from "simple-statistics";
import { requireAllFinite, requireLength } from "./_guards.ts";

/** What a list of numbers comes down to. */
export interface Summary {
  /** How many values. */
  readonly count: number;
  /** Arithmetic mean. */
  readonly mean: number;
  /** Standard deviation with divisor n - 1; undefined for a single value. */
  readonly standardDeviation: number | undefined;
  /** Smallest value. */
  readonly min: number;
  /** Largest value. */
  readonly max: number;
}

/**
 * Summarises a list of numbers.
 *
 * Sums are compensated and deviations are taken from the mean, so that a small
 * spread round a large value keeps its digits: mean to 1e-14 relative, standard
 * deviation as well as the rounding of the values themselves allows.
 *
 * @param values Finite numbers, at least one.
 * @returns The summary, in the unit of the values.
 * @throws {RangeError} If the list is empty or holds a value that is not finite.
 *
 * @see NIST Statistical Reference Datasets, univariate summary statistics.
 *
 * @example
 * ```ts
 * import { summarise } from "sagbook/statistics/summary.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(summarise([2, 3, 4]), {
 *   count: 3,
 *   mean: 3,
 *   standardDeviation: 1,
 *   min: 2,
 *   max: 4,
 * });
 * ```
 */
export function summarise(values: readonly number[]): Summary {
  requireLength(values.length, 1, "summarise a list", "values");
  requireAllFinite(values, "summarise a list", "value");
  let [min, max] = [values[0], values[0]];
  for (const value of values) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  const all = values as number[];
  return {
    count: values.length,
    mean: min === max ? min : mean(all),
    standardDeviation: values.length === 1
      ? undefined
      : min === max
      ? 0
      : Math.sqrt(sampleVariance(all)),
    min,
    max,
  };
}

/**
 * Finds the correlation of each value with the next one.
 *
 * Near 0 for independent values, towards 1 where they creep, below 0 where they
 * swing to and fro.
 *
 * @param values Finite numbers in the order they were taken, at least two that
 * differ.
 * @returns The lag-one autocorrelation; undefined where all values are equal.
 * @throws {RangeError} If there are fewer than two values or one is not finite.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.12.
 *
 * @example
 * ```ts
 * import { lagOneAutocorrelation } from "sagbook/statistics/summary.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(lagOneAutocorrelation([1, 3, 2]), -0.5);
 * ```
 */
export function lagOneAutocorrelation(
  values: readonly number[],
): number | undefined {
  const action = "find an autocorrelation";
  requireLength(values.length, 2, action, "values");
  requireAllFinite(values, action, "value");
  const centre = mean(values as number[]);
  let [products, squares] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const deviation = values[i] - centre;
    squares += deviation * deviation;
    if (i > 0) products += deviation * (values[i - 1] - centre);
  }
  return squares > 0 ? products / squares : undefined;
}
