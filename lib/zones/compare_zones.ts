/**
 * Every pair of places compared within sets.
 *
 * @module
 */
import { forEachItem } from "../numerics/lazy_list.ts";
import { roundingLeft } from "./rounding_left.ts";
import type { DriftLeft } from "./drift.ts";
import type { MeasuredSet } from "./set_table.ts";
import { replicatedMean, type Scope } from "./replicates.ts";
import {
  type Contrast,
  intervalsOf,
  type ZoneDifference,
} from "./zone_difference.ts";

interface Pair {
  readonly first: number;
  readonly second: number;
  readonly values: readonly (number | undefined)[];
  /** How much later the first place was read, in parts of the set. */
  readonly later: number;
}

function pairOf(
  sets: readonly MeasuredSet[],
  first: number,
  second: number,
): Pair | undefined {
  let [count, later] = [0, 0];
  const values: (number | undefined)[] = [];
  forEachItem(sets, ({ cells }) => {
    const [a, b] = [cells[first], cells[second]];
    values.push(a && b ? a.sag - b.sag : undefined);
    if (!a || !b) return;
    count++;
    later += (a.progress ?? 0) - (b.progress ?? 0);
  });
  return count === 0
    ? undefined
    : { first, second, values, later: later / count };
}

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
 * @param drift What is not known of the drift of the zero within a set.
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
  drift?: DriftLeft,
): readonly ZoneDifference[] {
  const pairs: Pair[] = [];
  for (let first = 0; first < places; first++) {
    for (let second = first + 1; second < places; second++) {
      const pair = pairOf(sets, first, second);
      if (pair) pairs.push(pair);
    }
  }
  const left = roundingLeft(sets, places, step);
  return pairs.map(({ first, second, values, later }): ZoneDifference => {
    const replicated = replicatedMean(values, sets, scope);
    const { mean, dof, variance } = replicated;
    const contrast: Contrast = {
      length: Math.SQRT2,
      rounding: Math.hypot(left[first], left[second]) / Math.SQRT2,
      progress: later,
      ...(drift === undefined ? {} : { drift }),
    };
    return {
      first,
      second,
      sets: values.filter((value) => value !== undefined).length,
      mean,
      dof,
      ...(variance === undefined ? {} : { deviation: Math.sqrt(variance) }),
      ...intervalsOf(replicated, step, pairs.length + further, contrast),
    };
  });
}
