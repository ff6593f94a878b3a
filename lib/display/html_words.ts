/**
 * The words of a piece of HTML.
 *
 * @module
 */

const NAMED: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: "\u00a0",
};

function character(whole: string, name: string): string {
  if (!name.startsWith("#")) return NAMED[name.toLowerCase()] ?? whole;
  const code = /^#x/i.test(name)
    ? parseInt(name.slice(2), 16)
    : parseInt(name.slice(1), 10);
  return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff)
    ? String.fromCodePoint(code)
    : whole;
}

/**
 * Takes the words out of finished HTML or SVG, on one line, as they show.
 *
 * Entities are read once; of the named ones those that this program writes.
 *
 * @param html HTML whose tags are closed.
 * @returns Plain text.
 *
 * @example
 * ```ts
 * import { htmlWords } from "sagbook/display/html_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(htmlWords("<b>edge</b> &lt; 0.5<br>and up"), "edge < 0.5 and up");
 * ```
 */
export function htmlWords(html: string): string {
  return html
    .replace(/<(?:br|\/p|\/li|\/div)\b[^>]*>/gi, " ")
    .replace(/<[^>]*>/g, "")
    .replace(/&(#x[0-9a-f]{1,6}|#\d{1,7}|[a-z]{2,31});/gi, character)
    .replace(/[ \t\r\n\f]+/g, " ")
    .replace(/^ | $/g, "");
}
