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
 * Each set still to be read is taken to lie on another diameter.
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
  const covariance = covarianceOfNew(all.length === 1 ? [] : all, rows)
    // The simulation rounds again, so what rounding added is taken off.
    .map((row, i) =>
      row.map((found, k) =>
        i === k ? Math.max(0, found - step * step / 12) : found
      )
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
    ...(all.length > 1 && all.length < sets.length
      ? { diameters: all.length }
      : {}),
    sets: needed.sets + repeated,
    atBest: needed.atBest + repeated,
    ...(needed.atWorst === undefined
      ? {}
      : { atWorst: needed.atWorst + repeated }),
  };
}

/**
 * Covariance of one set on a diameter not yet read.
 *
 * All sets together give its shape, on more degrees of freedom than the
 * diameters alone. Where sets share a diameter they vary less than sets on
 * other diameters would: the whole is scaled up by what an analysis of variance
 * (between diameters, within them) says that hides.
 */
function covarianceOfNew(
  groups: readonly (readonly (readonly number[])[])[],
  rows: readonly (readonly number[])[],
): number[][] {
  const sets = groups.length === 0 ? rows : groups.flat();
  const means = meanRow(sets);
  const count = sets.length;
  const covariance = means.map((_, i) =>
    means.map((_, j) =>
      sets.reduce(
        (sum, row) => sum + (row[i] - means[i]) * (row[j] - means[j]),
        0,
      ) / (count - 1)
    )
  );
  const again = count - groups.length;
  if (groups.length === 0 || again === 0) return covariance;
  const whole = contrastSquares(sets);
  const within = groups.reduce((sum, group) => sum + contrastSquares(group), 0);
  const ofSet = within / again;
  const between = (whole - within) / (groups.length - 1);
  const share = (count -
    groups.reduce((sum, { length }) => sum + length * length, 0) / count) /
    (groups.length - 1);
  const ofDiameter = Math.max(0, (between - ofSet) / share);
  const plain = whole / (count - 1);
  const times = ofDiameter === 0 || plain === 0
    ? 1
    : Math.max(1, (ofSet + ofDiameter) / plain);
  return covariance.map((row) => row.map((one) => one * times));
}

/** Squares of the sags about their means, the level of each set taken off. */
function contrastSquares(sets: readonly (readonly number[])[]): number {
  const levelled = sets.map((row) => {
    const level = row.reduce((sum, one) => sum + one, 0) / row.length;
    return row.map((one) => one - level);
  });
  const means = meanRow(levelled);
  return levelled.reduce(
    (sum, row) =>
      sum + row.reduce((all, one, k) => all + (one - means[k]) ** 2, 0),
    0,
  );
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
