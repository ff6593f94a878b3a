/**
 * A picture that a notebook, a page and a printer can all show.
 *
 * @module
 */
import {
  type Displayable,
  jupyterDisplay,
  type MimeBundle,
} from "../display/bundle.ts";
import type { LengthUnit } from "../records/piece.ts";
import { drawCellPlot } from "./_cell_plot.ts";

/** A finished picture as one SVG text that needs nothing else. */
export interface Figure extends Displayable {
  /** The title, which also stands in the picture. */
  readonly title: string;
  /** What the picture shows, in words, for those who cannot see it. */
  readonly description: string;
  /** The picture: one `svg` element that any page may hold as it is. */
  readonly svg: string;
  /** Width in px at which its text has its own size. */
  readonly width: number;
  /** Height in px. */
  readonly height: number;
  /** The picture as SVG, and its title and description as text. */
  [jupyterDisplay](): MimeBundle;
}

/** What may be set for every figure. */
export interface FigureSettings {
  /** The unit for axes and numbers; mm where left out. */
  readonly unit?: LengthUnit;
  /** The title; each figure has a plain one of its own. */
  readonly title?: string;
  /** The description; each figure makes one of its own from its data. */
  readonly description?: string;
  /**
   * Width in px, 300 to 2000, at which text has its own size; 480 where left
   * out, which stays legible on a phone.
   */
  readonly width?: number;
  /** Start of every id in the picture; made from the content where left out. */
  readonly idPrefix?: string;
}

/**
 * What a cell gives to `figure`: a title, a description, and any option of
 * Observable Plot's `plot` but `document`.
 */
export interface CellFigureOptions {
  /** The title, drawn above. */
  readonly title: string;
  /** What the picture shows, in words. */
  readonly description: string;
  /** A sentence drawn below. */
  readonly caption?: string;
  /** Marks made with Observable Plot. */
  readonly marks: readonly unknown[];
  /** Width in px. */
  readonly width?: number;
  /** Height of the plot in px. */
  readonly height?: number;
  /** Start of every id in the picture; made from the content where left out. */
  readonly idPrefix?: string;
  /** Any other option of Observable Plot. */
  readonly [option: string]: unknown;
}

/**
 * Makes a figure from an SVG text.
 *
 * @param parts Title, description, the text of one `svg` element, and its size
 * in px.
 * @returns The figure, ready to be returned from a notebook cell.
 * @throws {SyntaxError} If the text does not start with an `svg` element.
 *
 * @example
 * ```ts
 * import { svgFigure } from "sagbook/figures/figure.ts";
 * import { jupyterDisplay } from "sagbook/display/bundle.ts";
 * import { equal } from "node:assert/strict";
 *
 * const dot = svgFigure({
 *   title: "One reading",
 *   description: "A single dot.",
 *   svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"></svg>',
 *   width: 9,
 *   height: 9,
 * });
 * equal(dot[jupyterDisplay]()["text/plain"], "One reading. A single dot.");
 * ```
 */
export function svgFigure(
  parts: Omit<Figure, typeof jupyterDisplay>,
): Figure {
  const { title, description, svg, width, height } = parts;
  if (!/^<svg[\s>]/.test(svg)) {
    throw new SyntaxError(
      `Cannot make a figure as its text must start with <svg: current value is ${
        JSON.stringify(svg.slice(0, 20))
      }`,
    );
  }
  return {
    title,
    description,
    svg,
    width,
    height,
    [jupyterDisplay]: () => ({
      "image/svg+xml": svg,
      "text/plain": `${title.replace(/\.$/, "")}. ${description}`,
    }),
  };
}

/**
 * Makes a figure of the user's own marks, without a DOM in the cell.
 *
 * Title, caption and legends (`color: { legend: true }`, also of a continuous
 * scale, in five steps) become part of the drawing, so that the root is always
 * an SVG. Legends of radius and opacity are not drawn. Up to four classes get
 * colours that suit light and dark pages, unless the cell names its own.
 *
 * @param options Title, description, marks, and what else Observable Plot's
 * `plot` takes.
 * @returns The figure, ready to be returned from a notebook cell.
 *
 * @example
 * ```ts
 * import * as Plot from "@observablehq/plot";
 * import { figure } from "sagbook/figures/figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const sags = [{ set: 1, sag: 0.601 }, { set: 2, sag: 0.602 }];
 * const { svg } = await figure({
 *   title: "Sag by set",
 *   description: "Two sets, 0.601 mm and 0.602 mm.",
 *   marks: [Plot.dot(sags, { x: "set", y: "sag" })],
 * });
 * match(svg, /^<svg [^>]*role="img"/);
 * ```
 */
export async function figure(options: CellFigureOptions): Promise<Figure> {
  return svgFigure(await drawCellPlot(options));
}
