/**
 * Readings sorted into sessions.
 *
 * @module
 */
import { groupPlaces } from "../numerics/group_places.ts";
import { itemMaker, pickItems } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";

/**
 * Splits readings into sessions, each with one ring, in the order they began.
 *
 * Where every session has a date they stand in the order of their dates, and
 * those of one day in the order of their times where all have one; else they
 * stand in the order of the files.
 *
 * @param readings Readings of a piece, in the order of the files.
 * @returns One group for each session and ring.
 *
 * @example
 * ```ts
 * import { splitSessions } from "sagbook/zones/split_sessions.ts";
 * import { equal } from "node:assert/strict";
 *
 * const at = (session: string, ring: string) => ({ session, ring }) as
 *   unknown as Parameters<typeof splitSessions>[0][number];
 * equal(splitSessions([at("S1", "60"), at("S2", "60"), at("S1", "60")]).length, 2);
 * ```
 */
export function splitSessions(
  readings: readonly Reading[],
): readonly (readonly Reading[])[] {
  const at = itemMaker(readings);
  const { keys, placesOf } = groupPlaces(readings.length, (place) => {
    const { session, ring } = at(place);
    return JSON.stringify([session, ring]);
  });
  const groups = keys.map((_, group) => pickItems(readings, placesOf(group)));
  const began = new Map<string, string>();
  for (const [{ session, takenAt }] of groups) {
    if (takenAt === undefined) return groups;
    const known = began.get(session);
    if (known === undefined || takenAt < known) began.set(session, takenAt);
  }
  const untimed = new Set(
    [...began.values()].filter((at) => at.length === DAY).map(dayOf),
  );
  const key = ([{ session }]: readonly Reading[]) => {
    const at = began.get(session)!;
    return untimed.has(dayOf(at)) ? dayOf(at) : at;
  };
  return groups.sort((a, b) => key(a) < key(b) ? -1 : +(key(a) > key(b)));
}

/** Figures of an ISO date without a time. */
const DAY = "2000-01-01".length;
const dayOf = (at: string): string => at.slice(0, DAY);
