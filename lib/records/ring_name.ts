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

/**
 * Names a ring where a sentence begins with it. A name that is the user's own
 * word for word keeps its letters.
 *
 * @param id The ring's name in the bench file.
 * @returns As {@link ringName}, with a capital where "ring" was added.
 *
 * @example
 * ```ts
 * import { ringNameFirst } from "sagbook/records/ring_name.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(ringNameFirst("120"), "Ring 120");
 * equal(ringNameFirst("brass ring"), "brass ring");
 * ```
 */
export function ringNameFirst(id: string): string {
  const name = ringName(id);
  return name === id ? name : `R${name.slice(1)}`;
}
