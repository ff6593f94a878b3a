/**
 * Which readings a file holds, told by what they say.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";

/** What makes two lines the same reading, however a program wrote it. */
export const sameAs = ({ zeroing, on, sag }: Reading): string =>
  `${zeroing}|${on}|${sag.toFixed(6)}`;

/** How often each reading stands. */
export function tally(readings: readonly Reading[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const one of readings) {
    found.set(sameAs(one), (found.get(sameAs(one)) ?? 0) + 1);
  }
  return found;
}
