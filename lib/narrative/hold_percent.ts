/**
 * A number and its per cent sign, kept on one line.
 *
 * @module
 */

/**
 * Keeps every number and its per cent sign on one line.
 *
 * The space between them becomes one that no line breaks at; all else, and the
 * number of characters, stays.
 *
 * @param list Sentences.
 * @returns The same sentences in the same order.
 *
 * @see ISO 80000-1:2022, 7.2.4: a space stands between number and %.
 *
 * @example
 * ```ts
 * import { holdPercent } from "sagbook/narrative/hold_percent.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(holdPercent(["50 % sure"]), ["50\u00a0% sure"]);
 * ```
 */
export function holdPercent(list: readonly string[]): readonly string[] {
  return list.map((sentence) => sentence.replace(/(\d) %/g, "$1\u00a0%"));
}
