/**
 * Looks at the flat within one zeroing.
 *
 * @module
 */
import type { PlaceGroups } from "../numerics/group_places.ts";
import type { ItemMaker } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";

/** A look at the flat. */
export interface Knot {
  /** When: milliseconds, or the running number of the reading. */
  readonly at: number;
  /** What it showed, in mm. */
  readonly zero: number;
}

/** The looks of one zeroing with one after the work was read. */
export interface Looks {
  /** In order, the opening look first. */
  readonly knots: readonly Knot[];
  /** Closing look less opening look, in mm. */
  readonly moved: number;
  /** Whether the clock places the readings between them. */
  readonly timed: boolean;
}

/** When a reading was taken, by the clock or by its order. */
export function momentOf(
  at: ItemMaker<Reading>,
  index: number,
  timed: boolean,
): number {
  return timed ? Date.parse(at(index).takenAt!) : index;
}

/** Whether the clock was written down and tells the readings apart. */
function clockServes(
  at: ItemMaker<Reading>,
  members: readonly number[],
): boolean {
  const times = members.map((index) => Date.parse(at(index).takenAt!));
  return times.every((time, k) =>
    Number.isFinite(time) && (k === 0 || time >= times[k - 1])
  ) && times[times.length - 1] > times[0];
}

/** The looks of one zeroing, where there is one after the work was read. */
export function looksBack(
  at: ItemMaker<Reading>,
  members: readonly number[],
): Looks | undefined {
  const work = members.filter((index) => at(index).on === "work");
  const looks = members.filter((index) => at(index).on === "flat");
  const last = work.at(-1);
  if (last === undefined || !looks.some((index) => index > last)) {
    return undefined;
  }
  const timed = clockServes(at, members);
  const knots: Knot[] = looks.map((index) => ({
    at: momentOf(at, index, timed),
    zero: at(index).sag,
  }));
  if (looks[0] > work[0]) {
    // Pressing zero was the opening look: with the first reading by the clock,
    // which says nothing of it, and one step before it by order.
    const opening = momentOf(at, members[0], timed) - (timed ? 0 : 1);
    knots.unshift({ at: opening, zero: 0 });
  }
  return { knots, moved: knots[knots.length - 1].zero - knots[0].zero, timed };
}

/** The largest move from one look to the next, with its sign. */
export function largestMove(knots: readonly Knot[]): number {
  return knots.slice(1).reduce((most, { zero }, k) => {
    const move = zero - knots[k].zero;
    return Math.abs(move) > Math.abs(most) ? move : most;
  }, 0);
}

/** How far between the first look and the last a moment lies, 0 to 1. */
export function progressOf(knots: readonly Knot[], at: number): number {
  const [start, end] = [knots[0].at, knots[knots.length - 1].at];
  return end === start
    ? 1
    : Math.min(1, Math.max(0, (at - start) / (end - start)));
}

/** The zero at a moment, in proportion between the looks around it. */
export function zeroAt(knots: readonly Knot[], at: number): number {
  let k = 1;
  while (k < knots.length - 1 && at > knots[k].at) k++;
  const [a, b] = [knots[k - 1], knots[k]];
  if (b.at === a.at) return b.zero;
  const share = Math.min(1, Math.max(0, (at - a.at) / (b.at - a.at)));
  return a.zero + share * (b.zero - a.zero);
}

/** Half the mean square difference of successive readings of one place. */
export function repeatVariance(
  at: ItemMaker<Reading>,
  { keys, placesOf }: PlaceGroups,
): { readonly variance: number; readonly dof: number } | undefined {
  let sum = 0;
  let count = 0;
  for (let set = 0; set < keys.length; set++) {
    const members = placesOf(set);
    for (let k = 1; k < members.length; k++) {
      const [a, b] = [at(members[k - 1]), at(members[k])];
      const same = a.on === b.on && a.zone.label === b.zone.label &&
        a.offset === b.offset && a.diameterDegrees === b.diameterDegrees;
      if (!same) continue;
      sum += (a.sag - b.sag) ** 2;
      count++;
    }
  }
  return count === 0 ? undefined : { variance: sum / count / 2, dof: count };
}
