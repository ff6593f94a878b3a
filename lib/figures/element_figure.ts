/**
 * An element that some plot made, as something a notebook can show.
 *
 * @module
 */
import {
  type Displayable,
  jupyterDisplay,
  type MimeBundle,
} from "../display/bundle.ts";
import { type Figure, svgFigure } from "./figure.ts";
import { contentId, renumbered } from "./_content_id.ts";
import { type DomNode, isElement, writeNode } from "./_dom.ts";
import { escapeAttribute } from "./_escape.ts";
import { finishPage } from "./_page.ts";
import { ID, standIn } from "./_theme.ts";

/** A picture that is HTML: a plot with a legend or a caption of its own. */
export interface HtmlFigure extends Displayable {
  /** The title. */
  readonly title: string;
  /** What the picture shows, in words. */
  readonly description: string;
  /** The picture: one element that any page may hold as it is. */
  readonly html: string;
  /** The picture as HTML, and its title and description as text. */
  [jupyterDisplay](): MimeBundle;
}

/** Words that go with an element. */
export interface ElementLabels {
  /** The title. */
  readonly title: string;
  /** What the picture shows, in words. */
  readonly description: string;
}

function sizeOf(svg: DomNode): { width: number; height: number } {
  const box = (svg.getAttribute?.("viewBox") ?? "").trim().split(/[\s,]+/)
    .map(Number);
  const side = (name: string, i: number) => {
    // A share of the page or a height of type is no size in px.
    const typed = svg.getAttribute?.(name) ?? "";
    const value = Number(/^\s*([\d.]+)(?:px)?\s*$/i.exec(typed)?.[1]);
    if (value > 0) return value;
    return box[i] > 0 ? box[i] : 300;
  };
  return { width: side("width", 2), height: side("height", 3) };
}

/**
 * Wraps an element for display: an `svg` as a figure, anything else as HTML.
 *
 * Observable Plot returns an `svg`, but a `figure` of HTML when it has drawn a
 * legend, a title or a caption; only the first may be called an image. A cell
 * that uses `figure` never meets the second.
 *
 * @param element The element, of any DOM.
 * @param labels Title and description.
 * @returns A figure for an `svg`, else an HTML figure.
 * @throws {TypeError} If it is no element.
 *
 * @example
 * ```ts
 * import { elementFigure } from "sagbook/figures/element_figure.ts";
 * import { throws } from "node:assert/strict";
 *
 * const labels = { title: "None", description: "No element." };
 * throws(() => elementFigure("<svg/>", labels), TypeError);
 * ```
 */
export function elementFigure(
  element: unknown,
  labels: ElementLabels,
): Figure | HtmlFigure {
  if (!isElement(element)) {
    throw new TypeError(
      `Cannot show a picture as it must be an element of a DOM: current value is ${
        JSON.stringify(element)?.slice(0, 40) ?? String(element)
      }`,
    );
  }
  const { title, description } = labels;
  if (element.localName === "svg") {
    const svg = writeNode(element, `${ID}-`, true);
    return svgFigure(
      finishPage({ title, description, svg, ...sizeOf(element) }),
    );
  }
  const text = renumbered(writeNode(element, `${ID}-`, false))
    .replaceAll(standIn("ink"), "currentColor");
  const says = `${title.replace(/\.$/, "")}. ${description}`;
  const html = `<div role="group" aria-label="${escapeAttribute(says)}">${
    text.replaceAll(ID, contentId(says + text))
  }</div>`;
  return {
    title,
    description,
    html,
    [jupyterDisplay]: () => ({ "text/html": html, "text/plain": says }),
  };
}
