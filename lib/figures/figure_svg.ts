/**
 * A figure as an SVG file.
 *
 * @module
 */
import type { HtmlFigure } from "./element_figure.ts";
import { drawHtmlFigure } from "./_html_figure.ts";
import { standalone } from "./_standalone.ts";
import type { Figure } from "./figure.ts";

/** How a figure is written as a file. */
export interface FigureSvgOptions {
  /** Colours for a light page (default) or a dark one. */
  readonly theme?: "light" | "dark";
  /**
   * Width in px at which a program opens it, 50 to 10 000; its own where left
   * out. The drawing is the same, larger or smaller.
   */
  readonly width?: number;
}

/**
 * Writes a figure as an SVG file that any browser, image viewer and word
 * processor opens: one root with title and description, colours fixed in
 * attributes, a list of common fonts, no script, nothing from outside.
 *
 * On a page a figure follows the reader's light or dark setting; a file has one
 * of both. A plot that is HTML because it has a legend or a caption of its own
 * becomes one drawing with both.
 *
 * @param figure A figure, as `drawZones` or `figure` makes it.
 * @param options Theme and width.
 * @returns The file's text.
 * @throws {TypeError} If the figure would load something from outside.
 * @throws {RangeError} If the width is outside 50 to 10 000 px.
 *
 * @example
 * ```ts
 * import { figureSvg, zonesFigure } from "sagbook/figures/mod.ts";
 * import { match } from "node:assert/strict";
 *
 * const figure = await zonesFigure({
 *   reference: { label: "centre", distance: 0 },
 *   zones: [{ label: "edge", distance: 88, difference: -0.0012 }],
 * });
 * const svg = await figureSvg(figure, { width: 960 });
 * match(svg, /^<svg xmlns="[^"]*" width="960" /);
 * // In a notebook: await Deno.writeTextFile("zones.svg", svg);
 * ```
 */
export async function figureSvg(
  figure: Figure | HtmlFigure,
  options: FigureSvgOptions = {},
): Promise<string> {
  const drawn = "svg" in figure
    ? figure
    : await drawHtmlFigure(figure.html, figure);
  const { theme = "light", width = drawn.width } = options;
  if (options.width !== undefined && !(width >= 50 && width <= 10_000)) {
    throw new RangeError(
      `Cannot write a figure as its width must be 50 to 10000 px: current value is ${width} px`,
    );
  }
  const height = Math.round(drawn.height * width / drawn.width * 100) / 100;
  return standalone(drawn.svg, theme, { width, height });
}
