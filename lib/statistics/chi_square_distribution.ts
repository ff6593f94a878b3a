/**
 * The chi-square distribution.
 *
 * @module
 */
import { requireDegreesOfFreedom, requireProbability } from "./_guards.ts";
import {
  incompleteGamma,
  inverseIncompleteGamma,
  type Tail,
} from "./_special_functions.ts";

/**
 * Finds the probability that a chi-square variable lies below, or above, a
 * value.
 *
 * Relative accuracy of the smaller tail 1e-10 or better.
 *
 * @param x Value, 0 or more.
 * @param dof Degrees of freedom, above 0 and finite; fractions are allowed.
 * @param tail Which side is asked for.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If `x` is negative or not a number, or `dof` is out of
 * range.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.6.6.
 *
 * @example With two degrees of freedom the upper tail is exp(-x/2)
 * ```ts
 * import { chiSquareProbability } from "sagbook/statistics/chi_square_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(chiSquareProbability(2, 2, "upper").toFixed(12), Math.exp(-1).toFixed(12));
 * ```
 */
export function chiSquareProbability(
  x: number,
  dof: number,
  tail: Tail = "lower",
): number {
  requireChiSquareDof(dof, "find a chi-square probability");
  if (!(x >= 0)) {
    throw new RangeError(
      `Cannot find a chi-square probability as the value must be 0 or more: current value is ${x}`,
    );
  }
  if (x === Infinity) return tail === "upper" ? 0 : 1;
  return incompleteGamma(x / 2, dof / 2, tail);
}

/**
 * Finds the value that a chi-square variable stays below, or above, with a
 * given probability.
 *
 * Relative accuracy 1e-9 or better for tails down to 1e-15.
 *
 * @param probability Probability of the tail, above 0 and below 1.
 * @param dof Degrees of freedom, above 0 and finite; fractions are allowed.
 * @param tail Which side of the value has that probability.
 * @returns The value, above 0.
 * @throws {RangeError} If `probability` or `dof` is out of range.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4.
 *
 * @example
 * ```ts
 * import { chiSquareQuantile } from "sagbook/statistics/chi_square_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(chiSquareQuantile(0.05, 10, "upper").toFixed(3), "18.307");
 * ```
 */
export function chiSquareQuantile(
  probability: number,
  dof: number,
  tail: Tail = "lower",
): number {
  requireProbability(probability, "find a chi-square quantile");
  requireChiSquareDof(dof, "find a chi-square quantile");
  return 2 * inverseIncompleteGamma(probability, dof / 2, tail);
}

/** Refuses degrees of freedom at which a chi-square variable has no spread. */
function requireChiSquareDof(dof: number, action: string): void {
  requireDegreesOfFreedom(dof, action);
  if (dof === Infinity) {
    throw new RangeError(
      `Cannot ${action} as degrees of freedom must be finite: current value is ${dof}`,
    );
  }
}
