/**
 * What the radius may be: the spread found by Monte Carlo.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyInterval, keyLine, keyOf } from "./_key.ts";
import { axisAround, plainLength } from "./_length_axis.ts";
import { flatBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, interval, some } from "./_refuse.ts";
import { ink } from "./_theme.ts";

/** One bar of the histogram. */
export interface DensityFigureBin extends Interval {
  /** Share of all draws in it, 0 to 1. */
  readonly share: number;
}

/** What `densityFigure` draws. */
export interface DensityFigureInput {
  /** The histogram, edges in mm. */
  readonly bins: readonly DensityFigureBin[];
  /** The reported value, in mm. */
  readonly value: number;
  /** The interval found by Monte Carlo, in mm. */
  readonly interval: Interval;
  /** The interval of the first-order budget, in mm. */
  readonly firstOrder?: Interval;
  /** Probability that both intervals are meant to hold; 0.95 where left out. */
  readonly confidence?: number;
  /** What is spread; the radius of curvature where left out. */
  readonly quantity?: string;
}

const ACTION = "the spread";

function check(
  { bins, value, interval: ends, firstOrder }: DensityFigureInput,
) {
  let last = -Infinity;
  for (const bin of some(bins, ACTION, "bin")) {
    interval(bin, ACTION, "a bin");
    finite(bin.share, ACTION, "the share of a bin", "");
    if (bin.share < 0) {
      throw new RangeError(
        `Cannot draw ${ACTION} as the share of a bin must be at least 0: current value is ${bin.share}`,
      );
    }
    if (bin.low < last || bin.high === bin.low) {
      throw new RangeError(
        `Cannot draw ${ACTION} as bins must follow one another and have a width: current value is ${bin.low} to ${bin.high} mm`,
      );
    }
    last = bin.high;
  }
  finite(value, ACTION, "the value");
  interval(ends, ACTION, "the interval");
  if (firstOrder) interval(firstOrder, ACTION, "the first-order interval");
}

/**
 * Draws the spread of a quantity as a histogram by density, with its interval
 * shaded and the first-order interval below for comparison.
 *
 * @param input Histogram and intervals in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no bin, bins overlap or have no width, or a
 * value is not finite.
 *
 * @example
 * ```ts
 * import { densityFigure } from "sagbook/figures/density_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await densityFigure({
 *   bins: [
 *     { low: 2980, high: 3000, share: 0.5 },
 *     { low: 3000, high: 3020, share: 0.5 },
 *   ],
 *   value: 3000,
 *   interval: { low: 2981, high: 3019 },
 * });
 * match(description, /3000 mm, 95 % interval 2981 mm to 3019 mm/);
 * ```
 */
export async function densityFigure(
  input: DensityFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { bins, value, interval: ends, firstOrder, confidence = 0.95 } = input;
  const quantity = input.quantity ?? "Radius of curvature";
  const plain = plainLength(settings.unit ?? "mm");
  const k = plain.perMillimetre;
  const u = (ends.high - ends.low) / 2 || undefined;
  const percent = `${Number((100 * confidence).toFixed(2))} %`;
  const rects = bins.flatMap(({ low, high, share }) => {
    // A bin that the interval cuts is shaded as far as the interval goes.
    const cuts = [low, ends.low, ends.high, high]
      .filter((edge) => edge >= low && edge <= high);
    const density = share / ((high - low) * k);
    return cuts.slice(1).map((to, i) => ({
      x1: cuts[i] * k,
      x2: to * k,
      y: density,
      inside: cuts[i] >= ends.low && to <= ends.high,
    })).filter(({ x1, x2 }) => x2 > x1);
  });
  const outline = bins.flatMap(({ low, high, share }) => {
    const y = share / ((high - low) * k);
    return [{ x: low * k, y }, { x: high * k, y }];
  });
  const top = outline.reduce((most, { y }) => Math.max(most, y), 0) || 1;
  const x = axisAround(
    [bins[0].low, bins.at(-1)!.high, ends.low, ends.high, value]
      .concat(firstOrder ? [firstOrder.low, firstOrder.high] : [])
      .map((edge) => edge * k),
    { pad: 0.02, count: 4, tight: true },
  );
  const said = (edges: Interval) =>
    `${plain.text(edges.low, u)} to ${plain.text(edges.high, u)}`;
  const bar = firstOrder === undefined
    ? []
    : [{ y: -0.09 * top, x1: firstOrder.low * k, x2: firstOrder.high * k }];
  return svgFigure(
    await drawPage({
      title: settings.title ?? `${quantity}: how far it may be off`,
      description: settings.description ??
        `${quantity} ${plain.text(value, u)}, ${percent} interval ${
          said(ends)
        } by simulation${
          firstOrder ? `, ${said(firstOrder)} by the first-order budget` : ""
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyLine(`value, ${plain.text(value, u)}`, "ink", { width: 2.2 }),
        keyArea(`${percent} by simulation, ${said(ends)}`, "haze", "first"),
        firstOrder &&
          keyInterval(
            `${percent} by the budget, ${said(firstOrder)}`,
            "second",
          ),
      ),
      panels: [{
        xTitle: `${quantity} (${plain.unit})`,
        height: 220,
        x,
        domains: {
          x: [x.domain[0], x.domain[1]],
          y: [firstOrder ? -0.16 * top : 0, 1.05 * top],
        },
        marks: (Plot) => [
          ...[false, true].map((inside) =>
            Plot.rect(rects.filter((rect) => rect.inside === inside), {
              x1: "x1",
              x2: "x2",
              y1: 0,
              y2: "y",
              fill: ink(inside ? "haze" : "veil"),
              shapeRendering: "crispEdges",
            })
          ),
          Plot.line(outline, {
            x: "x",
            y: "y",
            stroke: ink("first"),
            strokeWidth: 1.5,
          }),
          Plot.ruleX([ends.low * k, ends.high * k], {
            y1: 0,
            y2: top,
            stroke: ink("first"),
            strokeDasharray: "4 3",
            strokeWidth: 1.5,
          }),
          Plot.ruleY([0], { stroke: ink("quiet") }),
          Plot.ruleX([value * k], {
            y1: 0,
            y2: 1.05 * top,
            stroke: ink("ink"),
            strokeWidth: 2.2,
          }),
          ...flatBars(Plot, bar, { role: "second", width: 2.5 }),
        ],
      }],
    }),
  );
}
