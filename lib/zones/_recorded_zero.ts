/**
 * A zero that was written down instead of pressed.
 *
 * @module
 */
import type { PlaceGroups } from "../numerics/group_places.ts";
import type { ItemMaker } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** What the flat showed before the work was read, where that was not 0. */
export interface RecordedZero {
  /** The zeroing. */
  readonly zeroing: string;
  /** What the flat showed, in mm. */
  readonly zero: Millimetres;
}

/** Fewer display steps than these are what pressing zero leaves. */
const STEPS = 3;
/** Fewer standard deviations of two looks are chance. */
const DEVIATIONS = 3;
/** The least amount where no display step is known, in mm. */
const LEAST = 0.003;

/** Mean of the looks at the flat before the work was read; 0 without any. */
function openingOf(at: ItemMaker<Reading>, members: readonly number[]): number {
  let [sum, count] = [0, 0];
  for (const index of members) {
    const { on, sag } = at(index);
    if (on === "work") break;
    sum += sag;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

/**
 * Finds the zeroings whose flat did not show 0 before the work was read: zero
 * was not pressed, and every reading counts from what the flat showed.
 *
 * @param variance Variance of a reading, in mm², where it is known.
 * @returns By the group of its zeroing.
 */
export function recordedZeros(
  at: ItemMaker<Reading>,
  groups: PlaceGroups,
  step: number,
  variance: number,
): ReadonlyMap<number, RecordedZero> {
  const limit = Math.max(
    step === 0 ? LEAST : STEPS * step,
    DEVIATIONS * Math.sqrt(2 * variance),
  );
  const found = new Map<number, RecordedZero>();
  groups.keys.forEach((zeroing, group) => {
    const zero = openingOf(at, groups.placesOf(group));
    if (Math.abs(zero) < limit) return;
    found.set(group, { zeroing, zero: millimetres(zero) });
  });
  return found;
}
