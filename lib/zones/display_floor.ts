/**
 * What a display step adds to an interval, and when averaging stops helping.
 *
 * @module
 */
import { chiSquareUpper5 } from "./_critical.ts";
import type { MeasuredSet } from "./set_table.ts";

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
 * import { roundingHalfWidth } from "sagbook/zones/display_floor.ts";
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
 * `tests/zones/display_floor_test.ts`.
 *
 * @example Identical differences prove nothing: all of it survives
 * ```ts
 * import { survivingRounding } from "sagbook/zones/display_floor.ts";
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

/**
 * Finds for each place how much of its rounding error survives averaging.
 *
 * What lets averaging see between the steps at one place is how far the
 * readings of that place wander, zero and diameter included. A difference can
 * scatter although one of its two places stands still (a surface that varies
 * from diameter to diameter does that to the edge, never to the centre); then
 * the rounding at that place survives.
 *
 * @param sets The sets.
 * @param places How many places there are.
 * @param step Display step in mm, at least 0.
 * @returns For each place between 0 and 1; 1 for fewer than two readings.
 *
 * @example The edge wanders over several steps, the centre stands still
 * ```ts
 * import { roundingLeft } from "sagbook/zones/display_floor.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const sets = [0.702, 0.690, 0.711, 0.697].map((edge) => ({
 *   label: "", zeroing: "",
 *   cells: [0.715, edge].map((sag) => ({ sag, readings: 1 })),
 * }));
 * const [centre, edge] = roundingLeft(sets, 2, 0.001);
 * deepEqual([centre, edge < 1e-9], [1, true]);
 * ```
 */
export function roundingLeft(
  sets: readonly MeasuredSet[],
  places: number,
  step: number,
): readonly number[] {
  return Array.from({ length: places }, (_, place) => {
    if (step === 0) return 0;
    let [count, mean, squares] = [0, 0, 0];
    for (const { cells } of sets) {
      const cell = cells[place];
      if (!cell) continue;
      const off = cell.sag - mean;
      mean += off / ++count;
      squares += off * (cell.sag - mean);
    }
    if (count < 2) return 1;
    const dof = count - 1;
    // A difference of two such readings would scatter twice as much.
    const twice = 2 * squares / dof / (step * step);
    return survivingRounding(twice, dof, chiSquareUpper5(dof));
  });
}
