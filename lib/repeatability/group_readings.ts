/**
 * Readings of one ring on one grade of surface.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";

/** Readings of one ring on one grade of surface. */
export interface ReadingGroup {
  /** The ring. */
  readonly ring: string;
  /** Grade, where recorded. */
  readonly grade?: string;
  /** Places of its readings in the list they came from. */
  readonly indices: readonly number[];
}

/**
 * Puts together readings of one ring on one grade of surface.
 *
 * Scatter changes with the grade, since the feet stand on the peaks of a
 * coarse surface, and a sag belongs to its ring.
 *
 * @param readings Readings, flat included, in order.
 * @returns The groups that hold readings of the work, by first appearance.
 *
 * @example
 * ```ts
 * import { groupReadings } from "sagbook/repeatability/group_readings.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(groupReadings([]).length, 0);
 * ```
 */
export function groupReadings(readings: readonly Reading[]): ReadingGroup[] {
  const groups = new Map<
    string,
    { ring: string; grade?: string; indices: number[] }
  >();
  readings.forEach(({ ring, grade }, index) => {
    const key = JSON.stringify([ring, grade ?? null]);
    const group = groups.get(key);
    if (group) group.indices.push(index);
    else {
      groups.set(key, {
        ring,
        ...(grade === undefined ? {} : { grade }),
        indices: [index],
      });
    }
  });
  return [...groups.values()].filter(({ indices }) =>
    indices.some((index) => readings[index].on === "work")
  );
}
