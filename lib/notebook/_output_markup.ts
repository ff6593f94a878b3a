/**
 * What a code cell left behind, as HTML.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import { cleanMarkup } from "./_clean_markup.ts";
import type { MarkdownRenderer } from "./_markdown_markup.ts";
import type { MathRenderer } from "./_math_markup.ts";
import { textForPage, tooLargeForPage } from "./_page_limit.ts";
import { stripEscapes, terminalHtml, terminalText } from "./_terminal_text.ts";
import {
  type DataOutput,
  type ErrorOutput,
  isJsonObject,
  type JsonValue,
  type Output,
} from "./document.ts";

/** The tools that outputs share. */
export interface OutputTools {
  readonly markdown: MarkdownRenderer;
  readonly math: MathRenderer;
}

/** Where an output stands. */
export interface OutputPlace {
  /** Id of its element; ids inside get it as prefix. */
  readonly scope: string;
  /** "cell 3, output 1", for labels. */
  readonly label: string;
}

const PICTURES = ["image/png", "image/jpeg", "image/gif", "image/webp"];

/** A figure that does not know dark pages lies on a light card there. */
function figureClass(inner: string): string {
  return inner.includes("prefers-color-scheme")
    ? "sb-figure"
    : "sb-figure sb-card";
}

function figure(inner: string, { scope }: OutputPlace): string {
  return `<div class="${figureClass(inner)}" id="${scope}">${inner}</div>`;
}

/** A figure that a narrow screen scrolls before its words become too small. */
function wideFigure(inner: string, width: number, place: OutputPlace): string {
  // Up to 480 px wide it is still legible on a phone; wider ones scroll.
  const least = width <= 480 ? "19rem" : "28rem";
  return `<div class="${
    figureClass(inner)
  }" id="${place.scope}" role="group" aria-label="Figure, ${place.label}" tabindex="0"><div style="min-width:min(${
    Math.ceil(width)
  }px,${least})">${inner}</div></div>`;
}

/** The plain form, if it says more than the name of a class. */
function shortText(output: DataOutput): string | undefined {
  const text = output.data["text/plain"];
  if (typeof text !== "string") return undefined;
  const line = terminalText(text).trim();
  return line === "" || line.includes("\n") || line.length > 200
    ? undefined
    : line;
}

function vectorFigure(svg: string, output: DataOutput, place: OutputPlace) {
  const clean = cleanMarkup(svg, { scope: place.scope, isXml: true }).trim();
  const tag = /^<svg([^>]*)>/.exec(clean);
  if (tag === null) return undefined;
  const isNamed = / aria-label(?:ledby)?="/.test(tag[1]);
  const role = / role="/.test(tag[1]) ? "" : ' role="img"';
  const label = isNamed
    ? ""
    : ` aria-label="${
      escapeHtml(shortText(output) ?? `Figure, ${place.label}`)
    }"`;
  const wide = / width="([\d.]+)(?:px)?"/.exec(tag[1]);
  const inner = `<svg${role}${label}${clean.slice(4)}`;
  return wide === null
    ? figure(inner, place)
    : wideFigure(inner, Number(wide[1]), place);
}

function pixelFigure(
  type: string,
  base64: string,
  output: DataOutput,
  place: OutputPlace,
): string | undefined {
  const data = base64.replace(/\s/g, "");
  if (!/^[A-Za-z0-9+/]+=*$/.test(data)) return undefined;
  const hints = output.metadata[type];
  const size = (key: string): string =>
    isJsonObject(hints) && typeof hints[key] === "number"
      ? ` ${key}="${hints[key]}"`
      : "";
  const alt = escapeHtml(shortText(output) ?? `Figure, ${place.label}`);
  return figure(
    `<img src="data:${type};base64,${data}" alt="${alt}"${size("width")}${
      size("height")
    }>`,
    place,
  );
}

function textBlock(markup: string): string {
  return `<pre class="sb-text" tabindex="0">${markup}</pre>`;
}

/** HTML of one form, or `undefined` if nothing of it can be shown. */
function form(
  type: string,
  value: JsonValue,
  output: DataOutput,
  place: OutputPlace,
  tools: OutputTools,
): string | undefined {
  if (type === "application/json") {
    return textBlock(
      escapeHtml(textForPage(JSON.stringify(value, null, 2))),
    );
  }
  if (typeof value !== "string") return undefined;
  if (PICTURES.includes(type)) return pixelFigure(type, value, output, place);
  switch (type) {
    case "text/html": {
      const clean = cleanMarkup(value, { scope: place.scope, isXml: false });
      const isSeen = /<(?:svg|img|hr|meter|progress)[ >]/.test(clean) ||
        clean.replace(/<style>[\s\S]*?<\/style>|<[^>]*>/g, "").trim() !== "";
      if (!isSeen) return undefined;
      const kind = /<(?:svg|img)[ >]/.test(clean)
        ? ` ${figureClass(clean)}`
        : "";
      return `<div class="sb-scroll${kind}" id="${place.scope}" role="group" aria-label="Result, ${place.label}" tabindex="0">${clean}</div>`;
    }
    case "image/svg+xml":
      return vectorFigure(value, output, place);
    case "text/markdown":
      return tools.markdown(value);
    case "text/latex": {
      const tex = value.trim().replace(/^(\$\$?)([\s\S]*)\1$/, "$2");
      return tools.math(tex, "div");
    }
    case "text/plain":
      return textBlock(terminalHtml(textForPage(value)));
  }
  return undefined;
}

/** Forms from best to plainest. */
const PREFERENCE = [
  "text/html",
  "image/svg+xml",
  ...PICTURES,
  "text/markdown",
  "text/latex",
  "application/json",
  "text/plain",
];

function dataMarkup(
  output: DataOutput,
  place: OutputPlace,
  tools: OutputTools,
): string {
  let note = "";
  for (const type of PREFERENCE) {
    if (!Object.hasOwn(output.data, type)) continue;
    const why = tooLargeForPage(type, output.data[type]);
    if (why !== undefined) {
      note ||= `<p class="sb-note">${escapeHtml(why)}</p>`;
      continue;
    }
    const markup = form(type, output.data[type], output, place, tools);
    if (markup !== undefined) return note + markup;
  }
  if (note !== "") return note;
  const types = Object.keys(output.data).map(escapeHtml).join(", ");
  return types === ""
    ? ""
    : `<p class="sb-note">[a result of the kind ${types} cannot be shown here]</p>`;
}

/** A failure in a sentence, its trace folded away. */
function errorMarkup(output: ErrorOutput): string {
  const name = escapeHtml(stripEscapes(output.ename) || "Error");
  const words = escapeHtml(terminalText(output.evalue));
  const trace = output.traceback.join("\n");
  const folded = trace.trim() === ""
    ? ""
    : `<details><summary>Where it happened</summary>${
      textBlock(terminalHtml(textForPage(trace)))
    }</details>`;
  return `<div class="sb-error"><p><strong>This cell stopped with ${name}.</strong> <span class="sb-words">${words}</span></p>${folded}</div>`;
}

/** Turns one output into HTML; empty if it shows nothing. */
export function outputMarkup(
  output: Output,
  place: OutputPlace,
  tools: OutputTools,
): string {
  switch (output.output_type) {
    case "stream": {
      if (output.text.trim() === "") return "";
      const isError = output.name === "stderr";
      const block = textBlock(
        terminalHtml(textForPage(output.text.replace(/\n$/, ""))),
      );
      return isError
        ? `<div class="sb-stderr"><p class="sb-note">Written to the error stream:</p>${block}</div>`
        : block;
    }
    case "error":
      return errorMarkup(output);
    default:
      return dataMarkup(output, place, tools);
  }
}
