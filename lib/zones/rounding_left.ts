/**
 * How much of the display's rounding is left at each place of a session.
 *
 * @module
 */
import { forEachItem } from "../numerics/lazy_list.ts";
import { survivingRounding } from "../statistics/rounding_floor.ts";
import { chiSquareUpper5 } from "./_critical.ts";
import type { MeasuredSet } from "./set_table.ts";

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
 * import { roundingLeft } from "sagbook/zones/rounding_left.ts";
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
    forEachItem(sets, ({ cells }) => {
      const cell = cells[place];
      if (!cell) return;
      const off = cell.sag - mean;
      mean += off / ++count;
      squares += off * (cell.sag - mean);
    });
    if (count < 2) return 1;
    const dof = count - 1;
    // A difference of two such readings would scatter twice as much.
    const twice = 2 * squares / dof / (step * step);
    return survivingRounding(twice, dof, chiSquareUpper5(dof));
  });
}
