/**
 * How large each source of scatter is, and how surely that is known.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyInterval, keyOf, keyShape } from "./_key.ts";
import { axisAround, plainLength, smallLength } from "./_length_axis.ts";
import { flatBars, points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, interval, positive, some } from "./_refuse.ts";
import { ROW, rowsAxis } from "./_rows.ts";

/** One source of scatter. */
export interface ComponentIntervalsFigureComponent {
  /** Its name. */
  readonly label: string;
  /** Its standard deviation in mm of sag; left out where it cannot be told. */
  readonly deviation?: number;
  /** The 95 % interval of that, in mm of sag. */
  readonly interval95?: Interval;
}

/** What `componentIntervalsFigure` draws. */
export interface ComponentIntervalsFigureInput {
  /** The sources. */
  readonly components: readonly ComponentIntervalsFigureComponent[];
  /** Change of the radius for one mm of sag, in mm, either sign. */
  readonly radiusPerSag: number;
}

const ACTION = "the intervals of the components";
/** Intervals longer than this many times the largest value leave the picture. */
const LONGEST = 4;

/**
 * Draws the standard deviation of each source of scatter with its 95 %
 * interval, in sag below and in radius above.
 *
 * An interval that reaches far beyond all values is cut at the edge and named
 * below; a source that the readings cannot tell apart has a row without a
 * mark.
 *
 * @param input Components in mm of sag.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no component, or a value is not finite.
 *
 * @example
 * ```ts
 * import { componentIntervalsFigure } from "sagbook/figures/component_intervals_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await componentIntervalsFigure({
 *   components: [
 *     { label: "repeat", deviation: 0.0004, interval95: { low: 0.0003, high: 0.0006 } },
 *     { label: "operator" },
 *   ],
 *   radiusPerSag: -4977,
 * });
 * match(description, /repeat 0\.40 µm \(0\.30 µm to 0\.60 µm\); operator cannot be told/);
 * ```
 */
export async function componentIntervalsFigure(
  input: ComponentIntervalsFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const components = some(input.components, ACTION, "component");
  for (const { label, deviation, interval95 } of components) {
    if (deviation !== undefined) {
      finite(deviation, ACTION, `the deviation of ${label}`);
    }
    if (interval95) interval(interval95, ACTION, `the interval of ${label}`);
  }
  const perSag = positive(
    Math.abs(input.radiusPerSag),
    ACTION,
    "the change of radius for one mm of sag",
  );
  const { unit = "mm" } = settings;
  const [small, plain] = [smallLength(unit), plainLength(unit)];
  const k = small.perMillimetre;
  const known = components.flatMap((component, row) =>
    component.deviation === undefined
      ? []
      : [{ ...component, row, x: component.deviation * k, y: row }]
  );
  const largest = Math.max(0, ...known.map(({ x }) => x));
  const limit = largest > 0 ? LONGEST * largest : Infinity;
  const bars = known.flatMap(({ interval95: ends, row }) =>
    ends
      ? [{ y: row, x1: ends.low * k, x2: Math.min(ends.high * k, limit) }]
      : []
  );
  const cut = known.filter(({ interval95 }) =>
    interval95 !== undefined && interval95.high * k > limit
  );
  const axis = axisAround([0, largest, ...bars.map(({ x2 }) => x2)], {
    least: 1,
    pad: 0.01,
    fromZero: true,
  });
  const inRadius = perSag * plain.perMillimetre / k;
  // Round numbers of its own for the radius, over the same stretch.
  const above = axisAround([0, axis.domain[1] * inRadius], {
    pad: 0,
    fromZero: true,
  });
  const names = rowsAxis(components.map(({ label }) => label), 165, 4);
  const most = Math.max(
    2,
    ...names.ticks.map((i) => names.label(i).split("\n").length),
  );
  const words = components.map(({ label, deviation, interval95: ends }) => {
    if (deviation === undefined) return `${label} cannot be told`;
    const u = ends ? (ends.high - ends.low) / 2 : undefined;
    return `${label} ${small.text(deviation, u)}${
      ends ? ` (${small.text(ends.low, u)} to ${small.text(ends.high, u)})` : ""
    }`;
  });
  const unknown = components.filter(({ deviation }) => deviation === undefined);
  return svgFigure(
    await drawPage({
      title: settings.title ?? "How large each source of scatter is",
      description: settings.description ??
        `Standard deviations in sag with 95 % intervals: ${words.join("; ")}.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyShape("standard deviation", "circle", { fill: "ink" }),
        bars.length > 0 && keyInterval("95 % interval", "first"),
      ),
      notes: [
        ...(cut.length > 0
          ? [
            `Cut at the edge: ${
              cut.map(({ label, interval95 }) =>
                `${label} up to ${small.text(interval95!.high)}`
              ).join("; ")
            }.`,
          ]
          : []),
        ...(unknown.length > 0
          ? [
            `These readings cannot tell: ${
              unknown.map(({ label }) => label).join(", ")
            }.`,
          ]
          : []),
      ],
      panels: [{
        top: {
          title: `Standard deviation in radius (${plain.unit})`,
          ticks: above.ticks.map((radius) => radius / inRadius)
            .filter((x) => x <= axis.domain[1] * (1 + 1e-9)),
          label: (x) => above.label(x * inRadius),
        },
        xTitle: `Standard deviation in sag (${small.unit})`,
        height: Math.max(ROW, 20 * most + 4) * components.length,
        x: axis,
        y: names,
        marks: (Plot) => [
          ...flatBars(Plot, bars, { role: "first", width: 2.5 }),
          points(Plot, known, "circle", { fill: "ink", size: 5.5 }),
        ],
      }],
    }),
  );
}
