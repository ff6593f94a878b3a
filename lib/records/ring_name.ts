/**
 * A ring by its name in a sentence.
 *
 * @module
 */

/**
 * Names a ring, without saying "ring" twice or calling a bar one.
 *
 * @param id The ring's name in the bench file.
 * @returns The name itself where it says what it is, else after "ring".
 *
 * @example
 * ```ts
 * import { ringName } from "sagbook/records/ring_name.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(ringName("120"), "ring 120");
 * equal(ringName("Ring 120"), "Ring 120");
 * equal(ringName("brass ring"), "brass ring");
 * ```
 */
export function ringName(id: string): string {
  return /\b(?:ring|bar)\b/i.test(id) ? id : `ring ${id}`;
}
