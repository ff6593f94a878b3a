/**
 * Which sets count as independent looks at the surface.
 *
 * @module
 */
import { itemMaker } from "../numerics/lazy_list.ts";
import type { MeasuredSet } from "./set_table.ts";

/**
 * Whether an answer is meant for any diameter of the work or for those read.
 *
 * For `any diameter` the scatter from one diameter to the next counts as
 * uncertainty, so that sets on one diameter are averaged first; for `these
 * diameters` it does not, and only what repeats on the same diameter counts.
 */
export type Scope = "any diameter" | "these diameters";

/** The diameter of a set, in degrees from 0 to below 180, where known. */
export type Direction = Pick<MeasuredSet, "diameterDegrees">;

/** A mean with its standard error. */
export interface ReplicatedMean {
  /** The mean. */
  readonly mean: number;
  /** Standard error of the mean, undefined without a degree of freedom. */
  readonly standardError?: number;
  /** Degrees of freedom of the standard error. */
  readonly dof: number;
  /** Variance of one set's value about its expectation in this scope. */
  readonly variance?: number;
  /** How many independent values went in. */
  readonly replicates: number;
}

/**
 * Averages one value a set over sets, with the standard error that fits the
 * scope.
 *
 * For any diameter: mean of the diameters' means, scatter between diameters
 * (a set without a diameter counts as a diameter of its own). When all sets
 * lie on one diameter there is nothing to say about others, and the scatter
 * between sets on that diameter is used. For these diameters: the same mean,
 * with the scatter of repeated sets within diameters, pooled; without a
 * repeated set there is no standard error.
 *
 * @param values One value for each set; undefined where it has none.
 * @param sets The sets, in the same order.
 * @param scope What the answer is meant for.
 * @returns Mean, standard error and degrees of freedom.
 *
 * @example Three sets on three diameters
 * ```ts
 * import { replicatedMean } from "sagbook/zones/replicates.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sets = [0, 60, 120].map((diameterDegrees) => ({ diameterDegrees }));
 * const found = replicatedMean([28, 28, 27], sets, "any diameter");
 * equal(found.dof, 2);
 * equal(found.standardError?.toFixed(4), "0.3333");
 * ```
 */
export function replicatedMean(
  values: readonly (number | undefined)[],
  sets: readonly Pick<MeasuredSet, "diameterDegrees">[],
  scope: Scope,
): ReplicatedMean {
  const at = itemMaker(sets);
  const known = new Map<number, number>();
  const all: number[] = [];
  const groupOf: number[] = [];
  values.forEach((value, index) => {
    if (value === undefined) return;
    // A set without a diameter is one of its own: no direction is negative.
    const key = at(index).diameterDegrees ?? -1 - index;
    const group = known.get(key) ?? known.size;
    if (group === known.size) known.set(key, group);
    all.push(value);
    groupOf.push(group);
  });
  if (known.size === 0) return { mean: 0, dof: 0, replicates: 0 };
  const groups = known.size;
  const counts = new Uint32Array(groups);
  const means = new Array<number>(groups).fill(0);
  all.forEach((value, k) => {
    means[groupOf[k]] += value;
    counts[groupOf[k]]++;
  });
  means.forEach((sum, group) => means[group] = sum / counts[group]);
  if (scope === "any diameter" || groups === 1) {
    const looks = groups === 1 ? all : means;
    const mean = meanOf(looks);
    const replicates = looks.length;
    const dof = replicates - 1;
    if (dof === 0) return { mean, dof, replicates };
    const variance = sumOfSquares(looks) / dof;
    const standardError = Math.sqrt(variance / replicates);
    return { mean, standardError, dof, variance, replicates };
  }
  const mean = meanOf(means);
  const dof = all.length - groups;
  const replicates = all.length;
  if (dof === 0) return { mean, dof, replicates };
  const squares = new Array<number>(groups).fill(0);
  all.forEach((value, k) => {
    squares[groupOf[k]] += (value - means[groupOf[k]]) ** 2;
  });
  const variance = squares.reduce((sum, group) => sum + group, 0) / dof;
  const spread = counts.reduce((sum, count) => sum + 1 / count, 0);
  const standardError = Math.sqrt(variance * spread) / groups;
  return { mean, standardError, dof, variance, replicates };
}

function meanOf(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

function sumOfSquares(values: readonly number[]): number {
  const mean = meanOf(values);
  let sum = 0;
  for (const value of values) sum += (value - mean) ** 2;
  return sum;
}
