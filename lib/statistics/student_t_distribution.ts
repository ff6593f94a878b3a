/**
 * Student's t distribution.
 *
 * @module
 */
import { requireDegreesOfFreedom, requireProbability } from "./_guards.ts";
import {
  incompleteBeta,
  inverseIncompleteBeta,
  type Tail,
} from "./_special_functions.ts";
import { normalProbability, normalQuantile } from "./normal_distribution.ts";

/** Above this the normal distribution agrees to better than 1e-10. */
const AS_GOOD_AS_NORMAL = 1e12;

/**
 * Finds the probability that a variable with Student's t distribution lies
 * below, or above, a value.
 *
 * With ν degrees of freedom, P(|T| > |t|) is the incomplete beta function
 * I_x(ν/2, 1/2) at x = ν/(ν + t²). Relative accuracy of the smaller tail 1e-10
 * or better.
 *
 * @param t Value.
 * @param dof Degrees of freedom, above 0; fractions and `Infinity` are allowed.
 * @param tail Which side is asked for.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If `t` is not a number or `dof` is not above 0.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.6.4.
 *
 * @example With one degree of freedom a quarter lies above 1
 * ```ts
 * import { studentTProbability } from "sagbook/statistics/student_t_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentTProbability(1, 1, "upper").toFixed(12), "0.250000000000");
 * ```
 */
export function studentTProbability(
  t: number,
  dof: number,
  tail: Tail = "lower",
): number {
  requireDegreesOfFreedom(dof, "find a probability of Student's t");
  if (Number.isNaN(t)) {
    throw new RangeError(
      `Cannot find a probability of Student's t as the value must be a number: current value is ${t}`,
    );
  }
  if (dof > AS_GOOD_AS_NORMAL) return normalProbability(t, tail);
  const square = t * t;
  const ofBothTails = square > dof
    ? incompleteBeta(1 / (1 + square / dof), dof / 2, 0.5, "lower")
    : incompleteBeta(square / (dof + square), 0.5, dof / 2, "upper");
  const far = ofBothTails / 2;
  return (tail === "upper") === (t > 0) ? far : 1 - far;
}

/**
 * Finds the value that a variable with Student's t distribution stays below,
 * or above, with a given probability.
 *
 * Relative accuracy 1e-9 or better for tails down to 1e-15.
 *
 * @param probability Probability of the tail, above 0 and below 1.
 * @param dof Degrees of freedom, above 0; fractions and `Infinity` are allowed.
 * @param tail Which side of the value has that probability.
 * @returns The value.
 * @throws {RangeError} If `probability` or `dof` is out of range.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2.
 *
 * @example The factor of a two-sided 95 % interval from five readings
 * ```ts
 * import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(studentTQuantile(0.025, 4, "upper").toFixed(3), "2.776");
 * ```
 */
export function studentTQuantile(
  probability: number,
  dof: number,
  tail: Tail = "lower",
): number {
  requireProbability(probability, "find a quantile of Student's t");
  requireDegreesOfFreedom(dof, "find a quantile of Student's t");
  if (dof > AS_GOOD_AS_NORMAL) return normalQuantile(probability, tail);
  if (probability === 0.5) return 0;
  const far = Math.min(probability, 1 - probability);
  const [x, complement] = inverseIncompleteBeta(
    dof / 2,
    0.5,
    2 * far,
    1 - 2 * far,
  );
  const size = Math.sqrt(dof * complement / x);
  return (tail === "upper") === (probability < 0.5) ? size : -size;
}
