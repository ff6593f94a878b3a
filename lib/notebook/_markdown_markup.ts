/**
 * Markdown cells to HTML.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import type { CodeRenderer } from "./_code_markup.ts";
import { addFoldRule } from "./_fold_rule.ts";
import { addMathRule } from "./_math_rule.ts";
import type { MathRenderer } from "./_math_markup.ts";
import { isJsonObject, type JsonObject } from "./document.ts";

/** Turns the Markdown of one cell or output into HTML. */
export type MarkdownRenderer = (
  text: string,
  attachments?: JsonObject,
) => string;

/** A heading as it stands in the page. */
export interface PageHeading {
  readonly level: number;
  readonly id: string;
  readonly text: string;
}

/** Headings of the page in order: ids differ, and no level is jumped. */
export class Outline {
  readonly headings: PageHeading[] = [];
  readonly #ids = new Set<string>();
  #last = 1;

  /** Gives a heading its place. The page's own title is the only level 1. */
  place(level: number, text: string): PageHeading {
    const fitted = Math.max(2, Math.min(level, this.#last + 1, 6));
    this.#last = fitted;
    const stem = text.toLowerCase().normalize("NFKD")
      .replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "section";
    let id = `h-${stem}`;
    for (let copy = 2; this.#ids.has(id); copy++) id = `h-${stem}-${copy}`;
    this.#ids.add(id);
    const heading = { level: fitted, id, text };
    this.headings.push(heading);
    return heading;
  }
}

/** What the rules share while one text is turned into HTML. */
interface Reading {
  readonly attachments?: JsonObject;
  /** Levels of the headings now open. */
  readonly levels: number[];
}

/** The reader hands the same object back that it was given. */
function reading(environment: unknown): Reading {
  return environment as Reading;
}

const SAFE_LINK = /^(?:https?:\/\/|mailto:|#)/i;
const SAFE_PICTURE = /^data:image\/(?:png|jpeg|gif|webp);base64,[\w+/=%]*$/i;
const PICTURE_TYPES = ["image/png", "image/jpeg", "image/gif", "image/webp"];

/** Text without percent signs for characters, or as it is if they are faulty. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The data address of a picture kept in the cell, if it is one. */
function attachedPicture(
  source: string,
  attachments: JsonObject | undefined,
): string | undefined {
  if (!source.startsWith("attachment:")) return undefined;
  const written = source.slice("attachment:".length);
  const bundle = attachments?.[decoded(written)];
  if (!isJsonObject(bundle)) return undefined;
  const type = PICTURE_TYPES.find((known) => typeof bundle[known] === "string");
  if (type === undefined) return undefined;
  return `data:${type};base64,${String(bundle[type]).replace(/\s/g, "")}`;
}

/**
 * Loads the Markdown reader. Raw HTML in the text shows as typed, but folds; links go
 * to the web, to mail or within the page only, and pictures come from the
 * cell's own attachments or from a data address.
 */
export async function loadMarkdown(
  outline: Outline,
  renderMath: MathRenderer,
  renderCode: CodeRenderer,
): Promise<MarkdownRenderer> {
  const { default: MarkdownIt } = await import("markdown-it");
  const markdown = new MarkdownIt({ html: false, linkify: false });
  markdown.validateLink = (address) =>
    SAFE_LINK.test(address) || SAFE_PICTURE.test(address) ||
    address.startsWith("attachment:");
  addMathRule(markdown, renderMath);
  addFoldRule(markdown);
  const { rules } = markdown.renderer;
  rules.fence = (tokens, index) => {
    const { info, content } = tokens[index];
    const code = renderCode(content.replace(/\n$/, ""), info.trim());
    return `<pre class="sb-code" tabindex="0"><code>${code}</code></pre>\n`;
  };
  rules.code_block = (tokens, index) =>
    `<pre class="sb-code" tabindex="0"><code>${
      escapeHtml(tokens[index].content.replace(/\n$/, ""))
    }</code></pre>\n`;
  rules.table_open = () =>
    '<div class="sb-scroll" role="region" aria-label="Table" tabindex="0"><table>\n';
  rules.table_close = () => "</table></div>\n";
  rules.image = (tokens, index, _options, environment) => {
    const source = String(tokens[index].attrGet("src") ?? "");
    const data = attachedPicture(source, reading(environment).attachments) ??
      (SAFE_PICTURE.test(source) ? source : undefined);
    const words = escapeHtml(tokens[index].content);
    return data === undefined
      ? `<span class="sb-note">[picture outside this page, not shown: ${
        words || escapeHtml(source)
      }]</span>`
      : `<img src="${escapeHtml(data)}" alt="${words}">`;
  };
  rules.heading_open = (tokens, index, _options, environment) => {
    const text = (tokens[index + 1].children ?? [])
      .map((child) => child.type === "softbreak" ? " " : child.content)
      .join("");
    const { level, id } = outline.place(
      Number(tokens[index].tag.slice(1)),
      text,
    );
    reading(environment).levels.push(level);
    return `<h${level} id="${id}">`;
  };
  rules.heading_close = (_tokens, _index, _options, environment) =>
    `</h${reading(environment).levels.pop()}>\n`;
  return (text, attachments) =>
    markdown.render(text.replace(/\r\n?/g, "\n"), { attachments, levels: [] });
}
