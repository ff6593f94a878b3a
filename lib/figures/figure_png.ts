/**
 * Figures as PNG pictures.
 *
 * @module
 */
import type { HtmlFigure } from "./element_figure.ts";
import type { Figure } from "./figure.ts";
import { figureSvg } from "./figure_svg.ts";
import { rasterise } from "./_rasteriser.ts";

/** How a figure becomes a picture. */
export interface FigurePngOptions {
  /** Colours for a light page (default) or a dark one. */
  readonly theme?: "light" | "dark";
  /**
   * Width in pixels, a whole number of 50 to 10 000; three times the figure's
   * own where left out, which prints 12 cm wide at 300 pixels an inch.
   */
  readonly width?: number;
}

/**
 * Draws a figure as a PNG picture, for a place that takes no SVG. No browser is
 * needed; the words are set in one face on every machine.
 *
 * The first picture fetches a rasteriser and that face from npm, 15 MB, once;
 * later ones need no network, and SVG never does. A process of its own draws
 * it, so a notebook that is run with limits cannot: take {@link figureSvg}
 * there. Limit: letters that the face lacks, such as Chinese ones, are not
 * drawn.
 *
 * @param figure A figure, as `drawZones` or `figure` makes it.
 * @param options Theme and width.
 * @returns The bytes of the file.
 * @throws {RangeError} If the width is not a whole number of 50 to 10 000.
 * @throws {Error} If the packages are not there and cannot be fetched.
 *
 * @example
 * ```ts
 * import { figurePng, zonesFigure } from "sagbook/figures/mod.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const figure = await zonesFigure({
 *   reference: { label: "centre", distance: 0 },
 *   zones: [{ label: "edge", distance: 88, difference: -0.0012 }],
 * });
 * const png = await figurePng(figure, { width: 960 });
 * deepEqual([...png.subarray(1, 4)], [..."PNG"].map((c) => c.charCodeAt(0)));
 * // In a notebook: await Deno.writeFile("zones.png", png);
 * ```
 */
export async function figurePng(
  figure: Figure | HtmlFigure,
  options: FigurePngOptions = {},
): Promise<Uint8Array> {
  const [png] = await figurePngs([figure], options);
  return png;
}

/**
 * Draws several figures as PNG pictures at once, which takes less time than
 * one by one.
 *
 * @param figures The figures.
 * @param options Theme and width, for all of them; see {@link figurePng}.
 * @returns The bytes of each file, in the same order.
 * @throws As {@link figurePng}.
 *
 * @example
 * ```ts
 * import { figurePngs } from "sagbook/figures/mod.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(await figurePngs([]), []);
 * ```
 */
export async function figurePngs(
  figures: readonly (Figure | HtmlFigure)[],
  options: FigurePngOptions = {},
): Promise<Uint8Array[]> {
  const { theme = "light", width } = options;
  const isWidth = width === undefined ||
    Number.isInteger(width) && width >= 50 && width <= 10_000;
  if (!isWidth) {
    throw new RangeError(
      `Cannot draw a picture as its width must be a whole number of 50 to 10000 pixels: current value is ${width}`,
    );
  }
  const orders = await Promise.all(figures.map(async (figure) => ({
    svg: await figureSvg(figure, { theme }),
    ...(width === undefined ? {} : { width }),
  })));
  return await rasterise(orders);
}
