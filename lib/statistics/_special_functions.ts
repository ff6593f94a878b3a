/**
 * The special functions behind the distributions, loaded at their first call.
 *
 * The packages take about 0.1 s to evaluate. A deferred import puts that off
 * to the first use and keeps every function synchronous.
 *
 * @module
 */
// @ts-types="./_types/betainc.d.ts"
import defer * as betainc from "@stdlib/math-base-special-betainc";
// @ts-types="./_types/one_argument.d.ts"
import defer * as erfc from "@stdlib/math-base-special-erfc";
// @ts-types="./_types/one_argument.d.ts"
import defer * as erfcinv from "@stdlib/math-base-special-erfcinv";
// @ts-types="./_types/gammainc.d.ts"
import defer * as gammainc from "@stdlib/math-base-special-gammainc";
// @ts-types="./_types/gammaincinv.d.ts"
import defer * as gammaincinv from "@stdlib/math-base-special-gammaincinv";
// @ts-types="./_types/one_argument.d.ts"
import defer * as gammaln from "@stdlib/math-base-special-gammaln";
// @ts-types="./_types/kernel_betaincinv.d.ts"
import defer * as kernelBetaincinv from "@stdlib/math-base-special-kernel-betaincinv";

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
  return betainc.default(x, a, b, true, tail === "upper");
}

/** The pair x, 1 - x at which I_x(a, b) is `lower` and its complement `upper`. */
export function inverseIncompleteBeta(
  a: number,
  b: number,
  lower: number,
  upper: number,
): [number, number] {
  return kernelBetaincinv.default(a, b, lower, upper);
}

/** Regularised incomplete gamma function P(a, x), or Q(a, x) in the upper tail. */
export function incompleteGamma(x: number, a: number, tail: Tail): number {
  return gammainc.default(x, a, true, tail === "upper");
}

/** The x at which P(a, x), or Q(a, x) in the upper tail, is `probability`. */
export function inverseIncompleteGamma(
  probability: number,
  a: number,
  tail: Tail,
): number {
  return gammaincinv.default(probability, a, tail === "upper");
}

/** Complementary error function. */
export function complementaryErrorFunction(x: number): number {
  return erfc.default(x);
}

/** Inverse of the complementary error function. */
export function inverseComplementaryErrorFunction(y: number): number {
  return erfcinv.default(y);
}

/** Natural logarithm of the gamma function. */
export function logGamma(x: number): number {
  return gammaln.default(x);
}
