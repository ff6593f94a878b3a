/**
 * What a display step adds to an interval, and when averaging stops helping.
 *
 * @module
 */
/**
 * How far two rounded readings of steady values can mislead.
 *
 * The rounding errors of two steady values are each uniform over one step, so
 * the error of their difference is triangular from -1 to +1 step; it is beyond
 * `1 - sqrt(tail)` steps with probability `tail`. It does not shrink by
 * repeating.
 *
 * @param tail Probability outside, both sides together, between 0 and 1.
 * @returns The half width in display steps, between 0 and 1.
 * @throws {RangeError} If the tail is not between 0 and 1.
 *
 * @see Convolution of two uniform distributions; JCGM 101:2008, 6.4.5.
 *
 * @example
 * ```ts
 * import { roundingHalfWidth } from "sagbook/statistics/rounding_floor.ts";
 * import { ok } from "node:assert/strict";
 *
 * ok(Math.abs(roundingHalfWidth(0.05) - 0.7764) < 1e-4);
 * ```
 */
export function roundingHalfWidth(tail: number): number {
  if (!(tail > 0 && tail < 1)) {
    throw new RangeError(
      `Cannot find a rounding interval as tail must be between 0 and 1: current value is ${tail}`,
    );
  }
  return 1 - Math.sqrt(tail);
}

/**
 * How much of the rounding error survives averaging.
 *
 * Scatter between readings spreads a steady value over several display steps
 * and so lets averaging see between them. For normal scatter of `deviation`
 * the rounding error of the mean falls by `exp(-2 pi² deviation²)` with
 * `deviation` in steps (the first harmonic of the saw-tooth), so by
 * `exp(-pi² deviation²)` in terms of the scatter of a difference of two. The
 * scatter is not known but estimated from a few sets, so its lower 95 % limit
 * is used, less what rounding itself adds.
 *
 * @param varianceInSteps Variance of the differences in steps squared, as
 * computed from the rounded readings.
 * @param dof Its degrees of freedom, at least 1.
 * @param chiSquareUpper5 The value a chi-square with `dof` degrees of freedom
 * exceeds with probability 0.05.
 * @returns Between 0 (averaging removes it) and 1 (averaging does not help).
 *
 * @see Widrow and Kollár, Quantization Noise (2008), on the characteristic
 * function of a dithered quantizer (from memory); confirmed by simulation in
 * `tests/statistics/rounding_floor_test.ts`.
 *
 * @example Identical differences prove nothing: all of it survives
 * ```ts
 * import { survivingRounding } from "sagbook/statistics/rounding_floor.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(survivingRounding(0, 2, 5.991), 1);
 * ```
 */
export function survivingRounding(
  varianceInSteps: number,
  dof: number,
  chiSquareUpper5: number,
): number {
  const scatter = varianceInSteps * dof / chiSquareUpper5 - 1 / 6;
  return scatter <= 0 ? 1 : Math.exp(-(Math.PI ** 2) * scatter);
}
