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
 * Estimates the surface and its scatter from the sets that read most places
 * together and asks how many like them would decide.
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
  const together = placesTogether(sets);
  if (together.length < 2) return { kind: "unknown" };
  const groups = new Map<string, number[][]>();
  sets.forEach(({ cells, diameterDegrees }, index) => {
    const row = together.map((place) => cells[place]?.sag);
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
  const largest = Math.max(...means) - Math.min(...means);
  const { interval95 } = differences.filter(({ first, second }) =>
    together.includes(first) && together.includes(second)
  ).reduce((a, b) =>
    Math.abs(Math.abs(b.mean) - largest) < Math.abs(Math.abs(a.mean) - largest)
      ? b
      : a
  );
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

/** The places of the set that read most, of such sets the commonest. */
function placesTogether(sets: readonly MeasuredSet[]): readonly number[] {
  const patterns = new Map<string, { places: number[]; sets: number }>();
  for (const { cells } of sets) {
    const places = cells.flatMap((cell, place) => cell ? [place] : []);
    const known = patterns.get(places.join());
    if (known) known.sets++;
    else patterns.set(places.join(), { places, sets: 1 });
  }
  return [...patterns.values()].reduce((a, b) =>
    b.places.length > a.places.length ||
      (b.places.length === a.places.length && b.sets > a.sets)
      ? b
      : a
  ).places;
}

function meanRow(rows: readonly (readonly number[])[]): number[] {
  return rows[0].map((_, place) =>
    rows.reduce((sum, row) => sum + row[place], 0) / rows.length
  );
}
