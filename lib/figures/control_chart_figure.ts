/**
 * Does the zero hold? A control chart.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, smallLength } from "./_length_axis.ts";
import { path, points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import type { Panel } from "./_panel.ts";
import { finite, some } from "./_refuse.ts";
import { columnsAxis } from "./_rows.ts";
import { ink } from "./_theme.ts";

/** One chart: values about a centre line within limits, all in mm. */
export interface ControlChartFigureChart {
  /** What is charted: `Zero`, `Moving range`. */
  readonly quantity: string;
  /** The values in order. */
  readonly values: readonly number[];
  /** The centre line. */
  readonly centre: number;
  /** The lower limit, where there is one. */
  readonly lower?: number;
  /** The upper limit. */
  readonly upper: number;
  /** Places in `values`, from 0, that break a rule. */
  readonly signals?: readonly number[];
}

/** What `controlChartFigure` draws. */
export interface ControlChartFigureInput {
  /** Name of each place along the charts. */
  readonly labels: readonly string[];
  /** What those names are: `Zeroing`, `Set`. */
  readonly labelled: string;
  /** The charts, one below the other; each has one value for each label. */
  readonly charts: readonly ControlChartFigureChart[];
}

const ACTION = "the control chart";
/** With more values than this the dots become small. */
const MANY = 80;

function check({ labels, charts }: ControlChartFigureInput) {
  some(labels, ACTION, "value");
  for (const chart of some(charts, ACTION, "chart")) {
    const { quantity, values, centre, lower, upper } = chart;
    if (values.length !== labels.length) {
      throw new RangeError(
        `Cannot draw ${ACTION} as ${quantity} must have a value for each of ${labels.length} labels: current value is ${values.length} values`,
      );
    }
    for (const value of values) finite(value, ACTION, `a value of ${quantity}`);
    finite(centre, ACTION, `the centre of ${quantity}`);
    finite(lower ?? 0, ACTION, `the lower limit of ${quantity}`);
    finite(upper, ACTION, `the upper limit of ${quantity}`);
  }
}

/**
 * Draws one or two control charts on one axis: values, centre line, limits,
 * and a square around every value that breaks a rule.
 *
 * @param input Charts in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no value, a chart lacks one, or a value is
 * not finite.
 *
 * @example
 * ```ts
 * import { controlChartFigure } from "sagbook/figures/control_chart_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await controlChartFigure({
 *   labels: ["1", "2", "3"],
 *   labelled: "Zeroing",
 *   charts: [{
 *     quantity: "Zero",
 *     values: [0, 0.0004, 0.0031],
 *     centre: 0,
 *     lower: -0.002,
 *     upper: 0.002,
 *     signals: [2],
 *   }],
 * });
 * match(description, /Zero: 3 values, 1 breaks a rule \(3\)/);
 * ```
 */
export async function controlChartFigure(
  input: ControlChartFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { labels, labelled, charts } = input;
  const small = smallLength(settings.unit ?? "mm");
  const k = small.perMillimetre;
  const x = columnsAxis(labels);
  const panels = charts.map((chart, i): Panel => {
    const { values, centre, lower, upper, signals = [] } = chart;
    const data = values.map((value, place) => ({ x: place, y: value * k }));
    const limits = [upper, ...(lower === undefined ? [] : [lower])]
      .map((value) => value * k);
    const last = i === charts.length - 1;
    // A range is never below zero: its axis starts there, without signs.
    const isAmount = (lower ?? 0) >= 0 && values.every((value) => value >= 0);
    return {
      yTitle: `${chart.quantity} (${small.unit})`,
      xTitle: last ? labelled : undefined,
      height: i === 0 ? 190 : 120,
      x: last ? x : { ...x, label: () => "" },
      y: axisAround([...data.map((d) => d.y), ...limits, centre * k], {
        least: 1,
        signs: !isAmount,
        count: i === 0 ? 5 : 3,
        fromZero: isAmount,
      }),
      marks: (Plot) => [
        Plot.ruleY([centre * k], { stroke: ink("bandEdge"), strokeWidth: 1.8 }),
        Plot.ruleY(limits.filter((limit) => !isAmount || limit !== 0), {
          stroke: ink("alarm"),
          strokeWidth: 1.6,
          strokeDasharray: "7 4",
        }),
        path(Plot, data, "quiet", { width: 1 }),
        points(Plot, data, "circle", {
          fill: "first",
          size: values.length > MANY ? 2 : 4,
        }),
        points(Plot, signals.map((place) => data[place]), "square", {
          stroke: "alarm",
          size: 7,
          width: 2,
        }),
      ],
    };
  });
  const words = charts.map(({ quantity, values, signals = [] }) => {
    const broken = signals.length === 0
      ? "none breaks a rule"
      : `${signals.length} ${
        signals.length === 1 ? "breaks" : "break"
      } a rule (${
        signals.slice(0, 10).map((place) => labels[place]).join(", ")
      })`;
    return `${quantity}: ${values.length} values, ${broken}`;
  });
  return svgFigure(
    await drawPage({
      title: settings.title ?? "Does the zero hold?",
      description: settings.description ?? `${words.join(". ")}.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyLine("mean", "bandEdge"),
        keyLine("control limits", "alarm", { dash: "7 4" }),
        charts.some(({ signals }) => (signals?.length ?? 0) > 0) &&
          keyShape("breaks a rule", "square", { stroke: "alarm", size: 6 }),
      ),
      panels,
    }),
  );
}
