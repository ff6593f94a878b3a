/**
 * Text made safe to stand in HTML.
 *
 * @module
 */

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Replaces the five characters that mean something in HTML, so that the text
 * shows as typed, between tags and inside a quoted attribute value alike.
 *
 * @param text Any text.
 * @returns Text without `&` (but in entities), `<`, `>`, `"` and `'`.
 *
 * @example
 * ```ts
 * import { escapeHtml } from "sagbook/display/escape_html.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(escapeHtml("edge < 0.5 & up"), "edge &lt; 0.5 &amp; up");
 * ```
 */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES[character]);
}
