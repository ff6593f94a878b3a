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
  return keys.map((_, group) => pickItems(readings, placesOf(group)));
}
