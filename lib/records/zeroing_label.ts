/**
 * A zeroing as its user named it.
 *
 * @module
 */

/**
 * Takes the session off the name of a zeroing: within a folder a zeroing is
 * named by both, since each session may count from 1.
 *
 * @param reading The zeroing of a reading, and its session.
 * @returns The label as it was typed; the whole name where it has no session.
 *
 * @example
 * ```ts
 * import { zeroingLabel } from "sagbook/records/zeroing_label.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(zeroingLabel({ session: "S1", zeroing: "S1 / 2" }), "2");
 * ```
 */
export function zeroingLabel(
  { session, zeroing }: { readonly session: string; readonly zeroing: string },
): string {
  const lead = `${session} / `;
  return zeroing.startsWith(lead) ? zeroing.slice(lead.length) : zeroing;
}
