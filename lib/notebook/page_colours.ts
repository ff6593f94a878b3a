/**
 * The colours of every page, on a light screen and on a dark one.
 *
 * @module
 */

/** What a colour is for: [on a light page, on a dark one]. */
const COLOURS = {
  paper: ["#fbfaf7", "#171a1d"],
  ink: ["#20242a", "#e3e1da"],
  soft: ["#5b626c", "#a3a89f"],
  line: ["#d9d6cd", "#3a3f44"],
  well: ["#f2f0ea", "#20252a"],
  accent: ["#1d5c63", "#84c5c4"],
  alarm: ["#9c2b22", "#f0a49b"],
  "alarm-well": ["#fbeeec", "#35211f"],
  key: ["#7a3f8f", "#d2a8e0"],
  text: ["#2f6b34", "#a5cf9f"],
  number: ["#1c5d99", "#92c1ec"],
  remark: ["#646a58", "#a0a491"],
} as const;

/**
 * Writes the colours of a page as variables of a style sheet.
 *
 * @param theme 0 for a light page, 1 for a dark one.
 * @returns Declarations such as `--paper:#fbfaf7;--ink:#20242a`.
 *
 * @example
 * ```ts
 * import { pageColours } from "sagbook/notebook/page_colours.ts";
 * import { match } from "node:assert/strict";
 *
 * match(pageColours(1), /^--paper:#171a1d;--ink:#e3e1da;/);
 * ```
 */
export function pageColours(theme: 0 | 1): string {
  return Object.entries(COLOURS)
    .map(([name, pair]) => `--${name}:${pair[theme]}`).join(";");
}
