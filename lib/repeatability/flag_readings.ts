/**
 * Readings that stand apart from the others of their place and zeroing.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { groupReadings } from "./group_readings.ts";

/** A reading that stands apart. */
export interface FlaggedReading {
  /** Its place in the list of readings. */
  readonly index: number;
  /** What it differs by from the others of its place and zeroing, in mm. */
  readonly from: number;
}

/** A display cannot show less than this many steps apart. */
const STEPS = 3;
/** More readings than these of a ring and grade are not looked through. */
const MOST = 100_000;
/** Other places that must have been read twice before anything is judged. */
const FEWEST_DOF = 3;

interface Place {
  readonly indices: number[];
  sum: number;
  squares: number;
}

function placesOf(
  readings: readonly Reading[],
  sag: readonly number[],
  members: readonly number[],
): Place[] {
  const places = new Map<string, Place>();
  for (const index of members) {
    const { on, zeroing, zone, offset, diameterDegrees, operator } =
      readings[index];
    if (on !== "work") continue;
    const key = [zeroing, zone.label, offset, diameterDegrees, operator]
      .join("\u0000");
    const place = places.get(key) ?? { indices: [], sum: 0, squares: 0 };
    place.indices.push(index);
    place.sum += sag[index];
    places.set(key, place);
  }
  const repeated = [...places.values()].filter((one) => one.indices.length > 1);
  for (const place of repeated) {
    const mean = place.sum / place.indices.length;
    place.squares = place.indices.reduce(
      (sum, index) => sum + (sag[index] - mean) ** 2,
      0,
    );
  }
  return repeated;
}

/**
 * Flags readings that differ from the others of their place and zeroing by
 * more than the scatter of all other places explains.
 *
 * Each is held against the rest of its place, and the difference against the
 * pooled scatter of the other places, which it does not touch: Student's t at
 * 5 % over all readings of a ring and grade (Bonferroni). The scatter is never
 * taken to be less than rounding makes it, and nothing less than three display
 * steps is flagged. Of two readings of a place nobody can tell which slipped;
 * the one farther from the place's mean over all zeroings is named. Without
 * three other degrees of freedom, or with more than 100 000 readings of a ring
 * and grade, nothing is said.
 *
 * Nothing is dropped: whoever asks compares the answer with and without.
 *
 * @param readings Readings, flat included.
 * @param sag Their sags in mm, in the same order; as read unless given.
 * @returns What stands apart, the farthest first.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17 on outliers;
 * Cook and Weisberg (1982) for residuals that leave their own case out.
 *
 * @example The last reading of the second zeroing
 * ```ts
 * import { flagReadings } from "sagbook/repeatability/flag_readings.ts";
 * import { equal } from "node:assert/strict";
 *
 * const um = [[715, 716, 715], [716, 715, 735], [715, 715, 716], [716, 716, 715]];
 * const readings = um.flatMap((set, k) => set.map((sag) => ({
 *   on: "work", ring: "A", zeroing: `${k}`, zone: { label: "centre" },
 *   offset: 0, step: 0.001, sag: sag / 1000,
 * } as unknown as Parameters<typeof flagReadings>[0][number])));
 * const [{ index, from }] = flagReadings(readings);
 * equal(index, 5);
 * equal(from.toFixed(4), "0.0195");
 * ```
 */
export function flagReadings(
  readings: readonly Reading[],
  sag: readonly number[] = readings.map((one) => one.sag),
): readonly FlaggedReading[] {
  return groupReadings(readings).flatMap(({ indices }) =>
    flaggedOf(readings, sag, indices)
  ).sort((a, b) => Math.abs(b.from) - Math.abs(a.from));
}

function flaggedOf(
  readings: readonly Reading[],
  sag: readonly number[],
  members: readonly number[],
): FlaggedReading[] {
  if (members.length > MOST) return [];
  const places = placesOf(readings, sag, members);
  let [squares, dof, count] = [0, 0, 0];
  for (const place of places) {
    squares += place.squares;
    dof += place.indices.length - 1;
    count += place.indices.length;
  }
  const step = members.reduce(
    (most, index) => Math.max(most, readings[index].step ?? 0),
    0,
  );
  const least = step * step / 12;
  return places.flatMap(({ indices, squares: own }) => {
    const left = dof - (indices.length - 1);
    if (left < FEWEST_DOF) return [];
    const variance = Math.max(least, (squares - own) / left);
    if (variance === 0) return [];
    const t = studentTQuantile(0.025 / count, left, "upper");
    const found: FlaggedReading[] = [];
    const rest = [...indices];
    // One after another: the farthest would drag the others along.
    while (rest.length > Math.max(1, indices.length / 2)) {
      const n = rest.length;
      const sum = rest.reduce((all, index) => all + sag[index], 0);
      const [{ index, from }] = rest.map((index) => ({
        index,
        from: (n * sag[index] - sum) / (n - 1),
      })).sort((a, b) => Math.abs(b.from) - Math.abs(a.from));
      const limit = t * Math.sqrt(variance * n / (n - 1));
      if (Math.abs(from) <= Math.max(limit, STEPS * step)) break;
      found.push({ index, from });
      rest.splice(rest.indexOf(index), 1);
    }
    return indices.length === 2 && found.length > 0
      ? [fartherOfTwo(indices, found[0], readings, sag, members)]
      : found;
  });
}

/** Of two that differ, the one farther from the place's mean elsewhere. */
function fartherOfTwo(
  two: readonly number[],
  { from }: FlaggedReading,
  readings: readonly Reading[],
  sag: readonly number[],
  members: readonly number[],
): FlaggedReading {
  const { zone, zeroing } = readings[two[0]];
  const others = members.filter((index) =>
    readings[index].zone.label === zone.label &&
    readings[index].zeroing !== zeroing
  );
  const mean = others.reduce((sum, index) => sum + sag[index], 0) /
    others.length;
  const [far] = [...two].sort((a, b) =>
    Math.abs(sag[b] - mean) - Math.abs(sag[a] - mean)
  );
  const [near] = two.filter((index) => index !== far);
  return { index: far, from: Math.sign(sag[far] - sag[near]) * Math.abs(from) };
}
