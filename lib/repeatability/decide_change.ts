/**
 * Has the surface changed between two occasions?
 *
 * @module
 */
import { intervalsOfChange } from "./_mean_interval.ts";
import type { Decide, SimulatedSet } from "./scatter_model.ts";

/**
 * Makes the rule that decides whether the mean sag changed from the first
 * occasion to the last.
 *
 * `outside` (it changed) when the 95 % interval of the change leaves out 0;
 * `within` (it did not change by `amount`) when the 90 % interval lies inside
 * ±`amount` and holds 0. Student's interval with one scatter for both
 * occasions, widened by what rounding may hide and by the scatter from one
 * occasion to the next, which two occasions cannot show and must be known. Ring,
 * scale and flat cancel.
 *
 * @param amount The change that matters, in mm of sag, above 0.
 * @returns The rule; without a degree of freedom it leaves all undecided.
 * @throws {RangeError} If `amount` is not above 0.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 7.3.1.
 *
 * @example Twenty micrometres are not overlooked
 * ```ts
 * import { decideChange } from "sagbook/repeatability/decide_change.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sets = [0.715, 0.716, 0.735, 0.736].map((sag, k) => ({
 *   label: `${k}`, zeroing: `${k}`, diameterDegrees: 0,
 *   occasion: k < 2 ? 0 : 1, cells: [{ sag, readings: 1 }],
 * }));
 * equal(decideChange(0.02)(sets, { step: 0.001 }), "outside");
 * ```
 */
export function decideChange(amount: number): Decide {
  if (!(amount > 0 && Number.isFinite(amount))) {
    throw new RangeError(
      `Cannot decide on a change as the amount that matters must be above 0 mm: current value is ${amount} mm`,
    );
  }
  return (sets, { step, occasion = 0 }) => {
    const last = sets.reduce(
      (most, { occasion }) => Math.max(most, occasion),
      0,
    );
    const found = intervalsOfChange(
      meansOn(sets, 0),
      meansOn(sets, last),
      step,
      occasion * Math.SQRT2,
    );
    if (!found || last === 0) return "undecided";
    const { interval90, interval95 } = found;
    if (interval95.low > 0 || interval95.high < 0) return "outside";
    return interval90.low >= -amount && interval90.high <= amount
      ? "within"
      : "undecided";
  };
}

function meansOn(sets: readonly SimulatedSet[], occasion: number): number[] {
  return sets.filter((set) => set.occasion === occasion).map(({ cells }) =>
    cells.reduce((sum, { sag }) => sum + sag, 0) / cells.length
  );
}
