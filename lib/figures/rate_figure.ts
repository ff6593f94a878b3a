/**
 * How fast each stretch of work changed the surface.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyInterval, keyOf, keyShape } from "./_key.ts";
import { axisAround, smallLength } from "./_length_axis.ts";
import { points, uprightBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, interval, some } from "./_refuse.ts";
import { columnsAxis } from "./_rows.ts";
import { ink } from "./_theme.ts";

/** One stretch of work. */
export interface RateFigureStretch {
  /** Its name: a grade, a day. */
  readonly label: string;
  /** Change of sag for one unit of work, in mm; above 0 toward the target. */
  readonly rate: number;
  /** The 95 % interval of that, in mm. */
  readonly interval95?: Interval;
  /** The rate that was expected, in mm. */
  readonly expected?: number;
}

/** What `rateFigure` draws. */
export interface RateFigureInput {
  /** What work is counted in: one of it is the unit of the rate. */
  readonly workUnit: "wet" | "minute";
  /** The stretches in order. */
  readonly stretches: readonly RateFigureStretch[];
}

const ACTION = "the rates";
/** Room for all names side by side, and the least for one, in px. */
const WIDE = 360;
const NARROW = 76;

/**
 * Draws the rate of each stretch of work with its interval, beside the rate
 * that was expected; what lies below zero went away from the target.
 *
 * @param input Rates in mm of sag for one wet or minute.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no stretch, or a value is not finite.
 *
 * @example
 * ```ts
 * import { rateFigure } from "sagbook/figures/rate_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await rateFigure({
 *   workUnit: "wet",
 *   stretches: [
 *     { label: "80", rate: 0.004, expected: 0.005 },
 *     { label: "120", rate: -0.001 },
 *   ],
 * });
 * match(description, /120 −1 µm \(away from the target\)/);
 * ```
 */
export async function rateFigure(
  input: RateFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const stretches = some(input.stretches, ACTION, "stretch of work");
  for (const { label, rate, interval95, expected } of stretches) {
    finite(rate, ACTION, `the rate of ${label}`);
    if (interval95) interval(interval95, ACTION, `the interval of ${label}`);
    if (expected !== undefined) {
      finite(expected, ACTION, `the expected rate of ${label}`);
    }
  }
  const small = smallLength(settings.unit ?? "mm");
  const k = small.perMillimetre;
  const dots = stretches.map(({ rate }, i) => ({ x: i, y: rate * k }));
  const bars = stretches.flatMap(({ interval95: ends }, i) =>
    ends ? [{ x: i, y1: ends.low * k, y2: ends.high * k }] : []
  );
  const wanted = stretches.flatMap(({ expected }, i) =>
    expected === undefined ? [] : [{ x: i + 0.18, y: expected * k }]
  );
  const y = axisAround([
    0,
    ...[...dots, ...wanted].map((point) => point.y),
    ...bars.flatMap(({ y1, y2 }) => [y1, y2]),
  ], { least: 0.1 });
  const names = stretches.map(({ label }) => label);
  const x = columnsAxis(names, Math.max(NARROW, WIDE / names.length));
  const [floor] = y.domain;
  const wrong = dots.filter((dot, i) =>
    dot.y < 0 && !((stretches[i].interval95?.high ?? -1) > 0)
  );
  const text = stretches.map(({ label, rate }) =>
    `${label.replaceAll("\n", " ")} ${small.text(rate)}${
      rate < 0 ? " (away from the target)" : ""
    }`
  );
  return svgFigure(
    await drawPage({
      title: settings.title ?? "How fast the work goes",
      description: settings.description ??
        `Change of sag for one ${input.workUnit}: ${text.join("; ")}.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyShape("found", "circle", { fill: "ink" }),
        bars.length > 0 && keyInterval("95 % interval", "ink"),
        wanted.length > 0 &&
          keyShape("expected", "diamond", { stroke: "second" }),
        wrong.length > 0 &&
          keyShape("went the wrong way", "circle", {
            stroke: "alarm",
            size: 7,
          }),
        floor < 0 && keyArea("away from the target", "veil"),
      ),
      panels: [{
        yTitle: `Change of sag for one ${input.workUnit} (${small.unit})`,
        xTitle: "Stretch of work",
        height: 220,
        x,
        y,
        marks: (Plot) => [
          floor < 0 && Plot.rect([0], {
            x1: x.domain[0],
            x2: x.domain[1],
            y1: floor,
            y2: 0,
            fill: ink("veil"),
          }),
          Plot.ruleY([0], { stroke: ink("ink") }),
          ...uprightBars(Plot, bars),
          points(Plot, dots, "circle", {
            fill: "ink",
            stroke: "paper",
            width: 1,
          }),
          points(Plot, wrong, "circle", { stroke: "alarm", size: 8, width: 2 }),
          points(Plot, wanted, "diamond", {
            fill: "paper",
            stroke: "second",
            width: 1.8,
          }),
        ],
      }],
    }),
  );
}
