/**
 * What would decide an open verdict, from the sets that left it open.
 *
 * @module
 */
import type { VerdictGround } from "./judge_sets.ts";
import type { MeasuredSet } from "./set_table.ts";
import { type SetsNeeded, setsNeeded } from "./sets_needed.ts";
import type { ZoneDifference } from "./zone_difference.ts";

/**
 * Estimates the surface and its scatter from the sets that read every place
 * and asks how many would decide.
 *
 * For any diameter the unit is a diameter, so sets on the same one are
 * averaged first, and what is still to be read comes on top of all the sets.
 */
export function whatDecides(
  sets: readonly MeasuredSet[],
  differences: readonly ZoneDifference[],
  tolerance: number,
  { scope, step, seed }: VerdictGround,
): SetsNeeded {
  const groups = new Map<string, number[][]>();
  sets.forEach(({ cells, diameterDegrees }, index) => {
    const row = cells.map((cell) => cell?.sag);
    if (!row.every((sag) => sag !== undefined)) return;
    const alone = diameterDegrees === undefined || scope === "these diameters";
    const key = alone ? `set ${index}` : `${diameterDegrees}`;
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  });
  const all = [...groups.values()];
  const rows = all.length === 1 ? all[0] : all.map(meanRow);
  const n = rows.length;
  if (n < 2) return { kind: "unknown" };
  const means = meanRow(rows);
  const covariance = means.map((_, i) =>
    means.map((_, j) => {
      const products = rows.reduce(
        (sum, row) => sum + (row[i] - means[i]) * (row[j] - means[j]),
        0,
      );
      const found = products / (n - 1);
      // The simulation rounds again, so what rounding added is taken off.
      return i === j ? Math.max(0, found - step * step / 12) : found;
    })
  );
  const widest = differences.reduce((a, b) =>
    Math.abs(b.mean) > Math.abs(a.mean) ? b : a
  );
  const { interval95 } = widest;
  const halfWidth = interval95 ? (interval95.high - interval95.low) / 2 : 0;
  const needed = setsNeeded(
    { means, covariance, step, tolerance },
    { halfWidth, dof: n - 1 },
    seed,
  );
  if (needed.kind !== "sets") return needed;
  const repeated = sets.length - n;
  return {
    ...needed,
    sets: needed.sets + repeated,
    atBest: needed.atBest + repeated,
    ...(needed.atWorst === undefined
      ? {}
      : { atWorst: needed.atWorst + repeated }),
  };
}

function meanRow(rows: readonly (readonly number[])[]): number[] {
  return rows[0].map((_, place) =>
    rows.reduce((sum, row) => sum + row[place], 0) / rows.length
  );
}
