/**
 * Every pair of places compared within sets.
 *
 * @module
 */
import type { MeasuredSet } from "./set_table.ts";
import { replicatedMean, type Scope } from "./replicates.ts";
import { intervalsOf, type ZoneDifference } from "./zone_difference.ts";

/**
 * Compares every pair of places that some set read together.
 *
 * Both readings of a set carry the same zero, so their difference is free of
 * it; differences between sets would not be. A pair that no set read together
 * is left out.
 *
 * @param sets The sets.
 * @param places How many places there are.
 * @param step Display step in mm.
 * @param scope Whether the answer is meant for any diameter or for those read.
 * @param further How many further statements share the simultaneous 5 %.
 * @returns The differences, centre outward.
 *
 * @example The shared zero leaves no trace
 * ```ts
 * import { compareZones } from "sagbook/zones/compare_zones.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sets = [0, 0.01, -0.02].map((zero, k) => ({
 *   label: "", zeroing: "", diameterDegrees: 60 * k,
 *   cells: [0.730, 0.702].map((sag) => ({ sag: sag + zero, readings: 1 })),
 * }));
 * const [difference] = compareZones(sets, 2, 0.001, "any diameter");
 * equal(difference.mean.toFixed(6), "0.028000");
 * ```
 */
export function compareZones(
  sets: readonly MeasuredSet[],
  places: number,
  step: number,
  scope: Scope,
  further: number = 0,
): readonly ZoneDifference[] {
  const pairs: {
    first: number;
    second: number;
    values: (number | undefined)[];
  }[] = [];
  for (let first = 0; first < places; first++) {
    for (let second = first + 1; second < places; second++) {
      const values = sets.map(({ cells }) => {
        const [a, b] = [cells[first], cells[second]];
        return a && b ? a.sag - b.sag : undefined;
      });
      if (values.some((value) => value !== undefined)) {
        pairs.push({ first, second, values });
      }
    }
  }
  return pairs.map(({ first, second, values }): ZoneDifference => {
    const replicated = replicatedMean(values, sets, scope);
    const { mean, dof, variance } = replicated;
    return {
      first,
      second,
      sets: values.filter((value) => value !== undefined).length,
      mean,
      dof,
      ...(variance === undefined ? {} : { deviation: Math.sqrt(variance) }),
      ...intervalsOf(replicated, step, pairs.length + further),
    };
  });
}
