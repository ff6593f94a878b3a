/**
 * The middle of a list of numbers.
 *
 * @module
 */
import { median } from "simple-statistics";

/**
 * Finds the median: half of the values lie on either side of it.
 *
 * @param values Finite numbers in any order; they stay as they are.
 * @returns The middle value, or the mean of the middle two; undefined for an
 * empty list.
 *
 * @example
 * ```ts
 * import { medianOf } from "sagbook/statistics/median.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(medianOf([3, 1, 2]), 2);
 * equal(medianOf([4, 1, 2, 3]), 2.5);
 * equal(medianOf([]), undefined);
 * ```
 */
export function medianOf(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : median(values as number[]);
}
