/**
 * Text from a user's file made safe for a terminal.
 *
 * @module
 */

/** True for a letter that a terminal obeys, or that nobody sees. */
function isHidden(code: number): boolean {
  return code < 0x20 || (code >= 0x7f && code < 0xa0) || code === 0xad ||
    code === 0x61c || code === 0x180e || code === 0xfeff ||
    (code >= 0x200b && code <= 0x200f) || (code >= 0x2028 && code <= 0x202e) ||
    (code >= 0x2060 && code <= 0x206f) || (code >= 0xfff9 && code <= 0xfffb) ||
    (code >= 0xe0000 && code <= 0xe007f);
}

/**
 * Shows the control codes in a text as escapes, so that no file can move the
 * cursor, colour or clear a terminal, or turn the direction of a line.
 *
 * Line ends stay; so do spaces of any width. JSON text stays the same JSON.
 *
 * @param text Text that may hold what a user or a stranger typed.
 * @returns The text with `\u001b` and the like written out.
 *
 * @example
 * ```ts
 * import { printable } from "sagbook/records/printable.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(printable("blank \u001b[31m7"), "blank \\u001b[31m7");
 * equal(printable("two\nlines"), "two\nlines");
 * ```
 */
export function printable(text: string): string {
  let safe = "";
  let from = 0;
  for (let at = 0; at < text.length;) {
    const code = text.codePointAt(at)!;
    const end = at + (code > 0xffff ? 2 : 1);
    if (code !== 0x0a && isHidden(code)) {
      safe += text.slice(from, at);
      for (; at < end; at++) {
        safe += `\\u${text.charCodeAt(at).toString(16).padStart(4, "0")}`;
      }
      from = end;
    }
    at = end;
  }
  return from === 0 ? text : safe + text.slice(from);
}
