/**
 * Chances in words.
 *
 * @module
 */

/**
 * Writes a chance as a whole per cent that never says 0 or 100, since no
 * number of readings makes anything certain.
 *
 * @param chance From 0 to 1.
 * @returns Such as `95 %`, with a space that does not break.
 *
 * @example
 * ```ts
 * import { writeWholeChance } from "sagbook/narrative/write_whole_chance.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeWholeChance(0.953), "95\u00a0%");
 * equal(writeWholeChance(0.9999), "more than 99\u00a0%");
 * equal(writeWholeChance(0), "less than 1\u00a0%");
 * ```
 */
export function writeWholeChance(chance: number): string {
  const percent = Math.round(100 * chance);
  return percent < 1
    ? "less than 1\u00a0%"
    : percent > 99
    ? "more than 99\u00a0%"
    : `${percent}\u00a0%`;
}
