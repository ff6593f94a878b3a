/**
 * Readings sorted into sessions.
 *
 * @module
 */
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
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    const key = JSON.stringify([reading.session, reading.ring]);
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  return [...groups.values()];
}
