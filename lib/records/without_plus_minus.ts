/**
 * A tolerance as people write it.
 *
 * @module
 */

/** A ± of any spelling at the beginning. */
const PLUS_MINUS = /^\s*(?:±|\+\s?\/?\s?[-\u2212])\s*/;

/**
 * Takes off the ± that people write before a tolerance: `±`, `+-`, `+/-`.
 *
 * @param typed As it was typed.
 * @returns The rest; all of it where no ± stands before it.
 *
 * @example
 * ```ts
 * import { withoutPlusMinus } from "sagbook/records/without_plus_minus.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(withoutPlusMinus("+/- 15 mm"), "15 mm");
 * equal(withoutPlusMinus("15 mm"), "15 mm");
 * ```
 */
export function withoutPlusMinus(typed: string): string {
  return typed.replace(PLUS_MINUS, "");
}
