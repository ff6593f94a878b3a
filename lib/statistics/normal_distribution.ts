/**
 * The standard normal distribution.
 *
 * @module
 */
import { requireProbability } from "./_guards.ts";
import {
  complementaryErrorFunction,
  inverseComplementaryErrorFunction,
  type Tail,
} from "./_special_functions.ts";

export type { Tail };

/**
 * Finds the probability that a standard normal variable lies below, or above,
 * a value.
 *
 * The upper tail is found as such, not as one minus the lower one, and so
 * keeps its digits far out. Relative accuracy 1e-10 or better down to tails of
 * 1e-300.
 *
 * @param z Value in standard deviations from the mean.
 * @param tail Which side is asked for.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If `z` is not a number.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.6.1.
 *
 * @example One side of two standard deviations
 * ```ts
 * import { normalProbability } from "sagbook/statistics/normal_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(normalProbability(2, "upper").toFixed(6), "0.022750");
 * ```
 */
export function normalProbability(z: number, tail: Tail = "lower"): number {
  if (Number.isNaN(z)) {
    throw new RangeError(
      `Cannot find a normal probability as the value must be a number: current value is ${z}`,
    );
  }
  return complementaryErrorFunction((tail === "lower" ? -z : z) / Math.SQRT2) /
    2;
}

/**
 * Finds the value that a standard normal variable stays below, or above, with
 * a given probability.
 *
 * Relative accuracy 1e-9 or better for tails down to 1e-15.
 *
 * @param probability Probability of the tail, above 0 and below 1.
 * @param tail Which side of the value has that probability.
 * @returns The value in standard deviations from the mean.
 * @throws {RangeError} If `probability` is not above 0 and below 1.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.6.1.
 *
 * @example The factor of a two-sided 95 % interval
 * ```ts
 * import { normalQuantile } from "sagbook/statistics/normal_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(normalQuantile(0.025, "upper").toFixed(6), "1.959964");
 * ```
 */
export function normalQuantile(
  probability: number,
  tail: Tail = "lower",
): number {
  requireProbability(probability, "find a normal quantile");
  const z = Math.SQRT2 * inverseComplementaryErrorFunction(2 * probability);
  return tail === "upper" ? z : 0 - z;
}
