/**
 * Readings by zeroing, with the sources of scatter as bands.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, smallLength } from "./_length_axis.ts";
import { points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, some } from "./_refuse.ts";
import { columnsAxis } from "./_rows.ts";
import { jitter } from "./_spread.ts";
import { ink } from "./_theme.ts";

/** The readings after one zeroing. */
export interface ComponentsFigureZeroing {
  /** The zeroing's name. */
  readonly label: string;
  /** Its estimated shift from the mean of all zeroings, in mm of sag. */
  readonly level: number;
  /** Each reading less the mean of its zone, in mm of sag. */
  readonly readings: readonly number[];
}

/** What `componentsFigure` draws. */
export interface ComponentsFigureInput {
  /** The zeroings in order. */
  readonly zeroings: readonly ComponentsFigureZeroing[];
  /** Standard deviation of repeated readings, in mm of sag, at least 0. */
  readonly repeat: number;
  /** Standard deviation between zeroings, in mm; left out where it cannot be told. */
  readonly zeroing?: number;
}

const ACTION = "the components";
const MOST_ZEROINGS = 40;
const MOST_READINGS = 60;

function deviation(value: number, what: string): number {
  finite(value, ACTION, what);
  if (value < 0) {
    throw new RangeError(
      `Cannot draw ${ACTION} as ${what} must be at least 0: current value is ${value} mm`,
    );
  }
  return value;
}

/**
 * Draws readings by zeroing: a wide band for the scatter between zeroings, a
 * box for each zeroing's repeated readings, both two standard deviations
 * either side.
 *
 * With more than 40 zeroings the first 40 are drawn, and the figure says so.
 *
 * @param input Zeroings and standard deviations in mm of sag.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no zeroing, a value is not finite, or a
 * standard deviation is below 0.
 *
 * @example
 * ```ts
 * import { componentsFigure } from "sagbook/figures/components_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await componentsFigure({
 *   zeroings: [
 *     { label: "1", level: 0.001, readings: [0.0012, 0.0008] },
 *     { label: "2", level: -0.001, readings: [-0.0013, -0.0007] },
 *   ],
 *   repeat: 0.0004,
 *   zeroing: 0.0014,
 * });
 * match(description, /repeat 0\.4 µm, between zeroings 1\.4 µm/);
 * ```
 */
export async function componentsFigure(
  input: ComponentsFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const all = some(input.zeroings, ACTION, "zeroing");
  for (const { label, level, readings } of all) {
    finite(level, ACTION, `the level of zeroing ${label}`);
    for (const sag of readings) finite(sag, ACTION, `a reading of ${label}`);
  }
  deviation(input.repeat, "the standard deviation of repeats");
  const between = input.zeroing === undefined
    ? undefined
    : deviation(input.zeroing, "the standard deviation between zeroings");
  const small = smallLength(settings.unit ?? "mm");
  const k = small.perMillimetre;
  const zeroings = all.slice(0, MOST_ZEROINGS);
  const half = 2 * input.repeat * k;
  const wide = between === undefined ? undefined : 2 * between * k;
  const boxes = zeroings.map(({ level }, i) => ({
    x1: i - 0.3,
    x2: i + 0.3,
    y: level * k,
    y1: level * k - half,
    y2: level * k + half,
  }));
  const dots = zeroings.flatMap(({ readings }, i) =>
    readings.slice(0, MOST_READINGS).map((sag, n) => ({
      x: i + 0.18 * jitter(n),
      y: sag * k,
    }))
  );
  const y = axisAround(
    [
      ...boxes.flatMap(({ y1, y2 }) => [y1, y2]),
      ...dots.map((dot) => dot.y),
      -(wide ?? 0),
      wide ?? 0,
    ],
    { least: 1, signs: true },
  );
  const hidden = all.length - zeroings.length;
  const apart = between === undefined
    ? "between zeroings cannot be told"
    : `between zeroings ${small.text(between)}`;
  return svgFigure(
    await drawPage({
      title: settings.title ?? "The readings of each zeroing, and its level",
      description: settings.description ??
        `Readings of ${all.length} ${
          all.length === 1 ? "zeroing" : "zeroings"
        }; standard deviations in sag: repeat ${
          small.text(input.repeat)
        }, ${apart}.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyShape("one reading", "circle", { fill: "ink", size: 3 }),
        keyLine("level of the zeroing", "first", { width: 2.5 }),
        keyArea("setting the gauge down again", "haze", "first"),
        wide !== undefined && keyArea("zeroing again", "veil", "quiet", "5 3"),
      ),
      notes: [
        "Areas reach two standard deviations either way.",
        ...(hidden > 0
          ? [`The first ${MOST_ZEROINGS} of ${all.length} zeroings are drawn.`]
          : []),
      ],
      panels: [{
        yTitle: `Sag less the mean of its zone (${small.unit})`,
        xTitle: "Zeroing",
        height: 240,
        x: columnsAxis(zeroings.map(({ label }) => label)),
        y,
        marks: (Plot) => [
          wide !== undefined && Plot.rect([0], {
            x1: -0.5,
            x2: zeroings.length - 0.5,
            y1: -wide,
            y2: wide,
            fill: ink("veil"),
          }),
          wide !== undefined && Plot.ruleY([-wide, wide], {
            stroke: ink("quiet"),
            strokeDasharray: "5 3",
          }),
          Plot.ruleY([0], { stroke: ink("quiet") }),
          Plot.rect(boxes, {
            x1: "x1",
            x2: "x2",
            y1: "y1",
            y2: "y2",
            fill: ink("haze"),
            stroke: ink("first"),
          }),
          Plot.ruleY(boxes, {
            x1: "x1",
            x2: "x2",
            y: "y",
            stroke: ink("first"),
            strokeWidth: 2.5,
          }),
          points(Plot, dots, "circle", { fill: "ink", size: 2.8 }),
        ],
      }],
    }),
  );
}
