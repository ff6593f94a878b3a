/**
 * The F distribution.
 *
 * @module
 */
import { requireDegreesOfFreedom, requireProbability } from "./_guards.ts";
import {
  incompleteBeta,
  inverseIncompleteBeta,
  type Tail,
} from "./_special_functions.ts";
import {
  chiSquareProbability,
  chiSquareQuantile,
} from "./chi_square_distribution.ts";

/** Above this many degrees of freedom a mean square counts as known. */
const AS_GOOD_AS_KNOWN = 1e12;

/**
 * Finds the probability that a ratio of two independent mean squares lies
 * below, or above, a value.
 *
 * Relative accuracy of the smaller tail 1e-10 or better.
 *
 * @param f Value, 0 or more.
 * @param numeratorDof Degrees of freedom above the line, above 0 and finite.
 * @param denominatorDof Degrees of freedom below the line, above 0; `Infinity`
 * is allowed.
 * @param tail Which side is asked for.
 * @returns The probability, 0 to 1.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.6.5.
 *
 * @example Two equal mean squares with one degree of freedom each
 * ```ts
 * import { fProbability } from "sagbook/statistics/f_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(fProbability(1, 1, 1, "upper").toFixed(12), "0.500000000000");
 * ```
 */
export function fProbability(
  f: number,
  numeratorDof: number,
  denominatorDof: number,
  tail: Tail = "lower",
): number {
  requireDofPair(numeratorDof, denominatorDof, "find a probability of F");
  if (!(f >= 0)) {
    throw new RangeError(
      `Cannot find a probability of F as the value must be 0 or more: current value is ${f}`,
    );
  }
  if (f === Infinity) return tail === "upper" ? 0 : 1;
  if (denominatorDof > AS_GOOD_AS_KNOWN) {
    return chiSquareProbability(f * numeratorDof, numeratorDof, tail);
  }
  const [a, b] = [numeratorDof / 2, denominatorDof / 2];
  const above = numeratorDof * f;
  return above > denominatorDof
    ? incompleteBeta(
      1 / (1 + above / denominatorDof),
      b,
      a,
      tail === "upper" ? "lower" : "upper",
    )
    : incompleteBeta(above / (denominatorDof + above), a, b, tail);
}

/**
 * Finds the value that a ratio of two independent mean squares stays below,
 * or above, with a given probability.
 *
 * Relative accuracy 1e-9 or better for tails down to 1e-15.
 *
 * @param probability Probability of the tail, above 0 and below 1.
 * @param numeratorDof Degrees of freedom above the line, above 0 and finite.
 * @param denominatorDof Degrees of freedom below the line, above 0; `Infinity`
 * is allowed.
 * @param tail Which side of the value has that probability.
 * @returns The value, above 0.
 * @throws {RangeError} If an argument is out of range.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.3.
 *
 * @example
 * ```ts
 * import { fQuantile } from "sagbook/statistics/f_distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(fQuantile(0.05, 2, 10, "upper").toFixed(3), "4.103");
 * ```
 */
export function fQuantile(
  probability: number,
  numeratorDof: number,
  denominatorDof: number,
  tail: Tail = "lower",
): number {
  requireProbability(probability, "find a quantile of F");
  requireDofPair(numeratorDof, denominatorDof, "find a quantile of F");
  if (denominatorDof > AS_GOOD_AS_KNOWN) {
    return chiSquareQuantile(probability, numeratorDof, tail) / numeratorDof;
  }
  const [lower, upper] = tail === "lower"
    ? [probability, 1 - probability]
    : [1 - probability, probability];
  const [x, complement] = inverseIncompleteBeta(
    numeratorDof / 2,
    denominatorDof / 2,
    lower,
    upper,
  );
  return denominatorDof * x / (numeratorDof * complement);
}

/** Refuses a pair of degrees of freedom outside the range of F. */
function requireDofPair(
  numeratorDof: number,
  denominatorDof: number,
  action: string,
): void {
  requireDegreesOfFreedom(numeratorDof, action, "numerator degrees of freedom");
  requireDegreesOfFreedom(
    denominatorDof,
    action,
    "denominator degrees of freedom",
  );
  if (numeratorDof === Infinity) {
    throw new RangeError(
      `Cannot ${action} as numerator degrees of freedom must be finite: current value is ${numeratorDof}`,
    );
  }
}
