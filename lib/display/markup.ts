/**
 * HTML written with every inserted value escaped.
 *
 * @module
 */
import { escapeHtml } from "./escape_html.ts";

/** Finished HTML; the only thing that `markup` inserts unescaped. */
export class Markup {
  /** The HTML. */
  readonly html: string;

  /**
   * Marks HTML as finished.
   *
   * @param html HTML made by this program, never a user's text.
   */
  constructor(html: string) {
    this.html = html;
  }

  /** The HTML, so that a template or a join takes it as it is. */
  toString(): string {
    return this.html;
  }
}

/** What may stand in a `markup` template. */
export type MarkupPart =
  | string
  | number
  | Markup
  | null
  | undefined
  | readonly MarkupPart[];

function htmlOf(part: MarkupPart): string {
  if (part === null || part === undefined) return "";
  if (part instanceof Markup) return part.html;
  if (typeof part === "object") return part.map(htmlOf).join("");
  return escapeHtml(String(part));
}

/**
 * Builds HTML from a template. Texts and numbers are escaped, lists are
 * joined, `null` and `undefined` leave nothing, and only `Markup` made before
 * goes in as it is: a name or a note from a file cannot become HTML.
 *
 * It escapes for text and for quoted attribute values. It does not make a
 * user's text safe inside `<script>`, `<style>`, or as the address of a link.
 *
 * The name is not `html`, since formatters take templates of that name for
 * HTML whose spaces they may change.
 *
 * @param strings The fixed HTML.
 * @param parts The values between.
 * @returns The finished HTML.
 *
 * @example
 * ```ts
 * import { markup } from "sagbook/display/markup.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = ["centre", "<edge>"];
 * const list = markup`<ul>${zones.map((zone) => markup`<li>${zone}</li>`)}</ul>`;
 * equal(list.html, "<ul><li>centre</li><li>&lt;edge&gt;</li></ul>");
 * ```
 */
export function markup(
  strings: TemplateStringsArray,
  ...parts: readonly MarkupPart[]
): Markup {
  return new Markup(
    strings.map((fixed, i) => fixed + htmlOf(parts[i])).join(""),
  );
}
