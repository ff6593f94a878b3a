/**
 * The words a page uses, explained at its end.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import type { PageWord } from "./export_html.ts";

/** Pictures, formulas and code hold no words for a reader to look up. */
const WORDLESS =
  /<(style|script|svg|math|pre|code)\b[\s\S]*?<\/\1>|<details class="sb-fold">[\s\S]*?<\/details>/g;

const ENTITIES: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#39;": "'",
};

/** The words of finished HTML, as one text. */
function textOf(html: string): string {
  return html.replace(WORDLESS, " ").replace(/<[^>]*>/g, " ")
    .replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity])
    .replace(/\s+/g, " ");
}

/**
 * The fold that explains a page's words, or nothing where it has none.
 *
 * @param html The page's content as finished HTML.
 * @param find Finds words in a text.
 */
export function pageWords(
  html: string,
  find: (text: string) => readonly PageWord[],
): string {
  const words = find(textOf(html));
  if (words.length === 0) return "";
  const list = words.map(({ term, unit, meaning }) =>
    `<dt><strong>${escapeHtml(term)}</strong>${
      unit === undefined ? "" : ` (${escapeHtml(unit)})`
    }</dt>\n<dd>${escapeHtml(meaning)}</dd>`
  ).join("\n");
  return `<div class="sb-cell">\n<details class="sb-fold"><summary>Words used on this page</summary>\n<dl>\n${list}\n</dl>\n</details>\n</div>`;
}
