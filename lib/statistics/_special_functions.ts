/**
 * The special functions behind the distributions, loaded at their first call.
 *
 * They take a while to evaluate. A deferred import puts that off to the first
 * use and keeps every function synchronous. The code is that of the stdlib
 * project, bundled by `deno task special-functions`.
 *
 * @module
 */
// @ts-types="./_stdlib/special_functions.d.ts"
import defer * as stdlib from "./_stdlib/special_functions.js";

/** Which side of a value a probability lies on. */
export type Tail = "lower" | "upper";

/**
 * Regularised incomplete beta function I_x(a, b), or 1 - I_x(a, b) in the
 * upper tail, without the cancellation of forming it.
 */
export function incompleteBeta(
  x: number,
  a: number,
  b: number,
  tail: Tail,
): number {
  return stdlib.betainc(x, a, b, true, tail === "upper");
}

/** The pair x, 1 - x at which I_x(a, b) is `lower` and its complement `upper`. */
export function inverseIncompleteBeta(
  a: number,
  b: number,
  lower: number,
  upper: number,
): [number, number] {
  return stdlib.kernelBetaincinv(a, b, lower, upper);
}

/** Regularised incomplete gamma function P(a, x), or Q(a, x) in the upper tail. */
export function incompleteGamma(x: number, a: number, tail: Tail): number {
  return stdlib.gammainc(x, a, true, tail === "upper");
}

/** The x at which P(a, x), or Q(a, x) in the upper tail, is `probability`. */
export function inverseIncompleteGamma(
  probability: number,
  a: number,
  tail: Tail,
): number {
  return stdlib.gammaincinv(probability, a, tail === "upper");
}

/** Complementary error function. */
export function complementaryErrorFunction(x: number): number {
  return stdlib.erfc(x);
}

/** Inverse of the complementary error function. */
export function inverseComplementaryErrorFunction(y: number): number {
  return stdlib.erfcinv(y);
}

/** Natural logarithm of the gamma function. */
export function logGamma(x: number): number {
  return stdlib.gammaln(x);
}
