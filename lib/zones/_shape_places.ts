/**
 * What the places of a session see of a surface of revolution, and how well.
 *
 * @module
 */
import type { Place } from "./place.ts";
import { roundingLeft } from "./rounding_left.ts";
import type { Scope } from "./replicates.ts";
import type { MeasuredSet } from "./set_table.ts";

/** Heights on nodes from the centre outward, weighted. */
export type NodeWeights = Float64Array;

/** Adds the value at a distance to weights on even nodes, linear between. */
function addAt(
  weights: NodeWeights,
  distance: number,
  spacing: number,
  weight: number,
): void {
  const at = distance / spacing;
  const below = Math.min(Math.floor(at), weights.length - 2);
  weights[below] += weight * (1 - (at - below));
  weights[below + 1] += weight * (at - below);
}

/** Mean height under the three feet less that at the probe, as node weights. */
function seenAt(
  distance: number,
  ring: number,
  degrees: number,
  nodes: number,
  spacing: number,
): NodeWeights {
  const weights = new Float64Array(nodes);
  addAt(weights, distance, spacing, -1);
  for (const turn of [0, 120, 240]) {
    const angle = (degrees + turn) * Math.PI / 180;
    const foot = Math.hypot(
      distance + ring * Math.cos(angle),
      ring * Math.sin(angle),
    );
    addAt(weights, foot, spacing, 1 / 3);
  }
  return weights;
}

/**
 * What one place sees: its weights, and half the difference between one foot
 * out and two where the direction of the feet is not known.
 */
export function seenFrom(
  { distance, threefold }: Place,
  ring: number,
  nodes: number,
  spacing: number,
): { readonly weights: NodeWeights; readonly doubt?: NodeWeights } {
  const at = (degrees: number): NodeWeights =>
    seenAt(distance, ring, degrees, nodes, spacing);
  if (threefold !== undefined) {
    const degrees = Math.acos(Math.max(-1, Math.min(1, threefold))) * 60 /
      Math.PI;
    return { weights: at(degrees) };
  }
  const [out, inward] = [at(0), at(60)];
  return {
    weights: out.map((one, k) => (one + inward[k]) / 2),
    doubt: out.map((one, k) => (one - inward[k]) / 2),
  };
}

/** Mean sag at each place, and its variance from set to set. */
export interface PlaceMeans {
  /** Mean sag at each place, in mm; only differences matter. */
  readonly means: readonly number[];
  /** Variance of each mean beyond the level that its set shares, in mm². */
  readonly variances: readonly number[];
  /** Degrees of freedom of the scatter; 0 when one look is all there is. */
  readonly dof: number;
}

/**
 * Mean sags over looks: a set, or a diameter where the answer is for any.
 *
 * The scatter is pooled over places once the level of each look is taken off;
 * what rounding has left and a drift nobody saw come on top.
 */
export function placeMeans(
  whole: readonly MeasuredSet[],
  places: number,
  step: number,
  scope: Scope,
  drift: number,
): PlaceMeans {
  const looks = new Map<string, number[][]>();
  whole.forEach(({ cells, diameterDegrees }, index) => {
    const alone = diameterDegrees === undefined || scope === "these diameters";
    const key = alone ? `set ${index}` : `${diameterDegrees}`;
    const row = cells.map((cell) => cell!.sag);
    const known = looks.get(key);
    if (known) known.push(row);
    else looks.set(key, [row]);
  });
  const grouped = [...looks.values()];
  const rows = grouped.length === 1 ? grouped[0] : grouped.map(meanRow);
  const means = meanRow(rows);
  const level = meanRow(means.map((one) => [one]))[0];
  let squares = 0;
  for (const row of rows) {
    const shift = meanRow(row.map((one) => [one]))[0] - level;
    row.forEach((one, k) => squares += (one - shift - means[k]) ** 2);
  }
  const dof = rows.length - 1;
  const variance = dof === 0 ? 0 : squares / (dof * (places - 1));
  const left = roundingLeft(whole, places, step);
  return {
    means,
    variances: left.map((share) =>
      variance / rows.length + (share * step) ** 2 / 12 + drift * drift
    ),
    dof: dof * (places - 1),
  };
}

function meanRow(rows: readonly (readonly number[])[]): number[] {
  return rows[0].map((_, k) =>
    rows.reduce((sum, row) => sum + row[k], 0) / rows.length
  );
}
