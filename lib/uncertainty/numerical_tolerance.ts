/**
 * How closely a number must agree for the figures that are kept of it.
 *
 * @module
 */

/**
 * Finds the numerical tolerance that goes with a few figures of an
 * uncertainty.
 *
 * Written as c × 10^l with c of `figures` figures, the uncertainty is not
 * changed by anything smaller than ½ × 10^l.
 *
 * @param standardUncertainty Finite and above 0.
 * @param figures Figures that matter, 1 or 2 as a rule.
 * @returns ½ × 10^l in the unit of the uncertainty.
 * @throws {RangeError} If the uncertainty is not finite and above 0.
 *
 * @see JCGM 101:2008, 7.9.2.
 *
 * @example Two figures of 0.0754 are 75 × 10⁻³
 * ```ts
 * import { toleranceOf } from "sagbook/uncertainty/numerical_tolerance.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(toleranceOf(0.0754, 2), 0.0005);
 * equal(toleranceOf(0.0754, 1), 0.005);
 * ```
 */
export function toleranceOf(
  standardUncertainty: number,
  figures: number,
): number {
  if (!(standardUncertainty > 0 && Number.isFinite(standardUncertainty))) {
    throw new RangeError(
      `Cannot find a numerical tolerance as the uncertainty must be finite and above 0: current value is ${standardUncertainty}`,
    );
  }
  const exponent = Number(
    standardUncertainty.toExponential(figures - 1).split("e")[1],
  );
  return Number(`5e${exponent - figures}`);
}
