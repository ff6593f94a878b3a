/**
 * The figures of a study of the gauge.
 *
 * @module
 */
import { canTellApartFigure } from "../figures/can_tell_apart_figure.ts";
import { componentIntervalsFigure } from "../figures/component_intervals_figure.ts";
import { componentsFigure } from "../figures/components_figure.ts";
import { controlChartFigure } from "../figures/control_chart_figure.ts";
import type { Figure } from "../figures/figure.ts";
import { powerFigure } from "../figures/power_figure.ts";
import type { ZeroChart } from "../repeatability/zero_chart.ts";
import { nameSources } from "./scatter_words.ts";
import type { GaugeReport } from "./gauge_report.ts";

/**
 * Draws the readings zeroing by zeroing, with the scatter of both as bands.
 *
 * @param report The report.
 * @returns The figure; undefined when there is no component to draw.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawComponents(
  report: GaugeReport,
): Promise<Figure | undefined> {
  const { main, folder: { readings, piece }, corrected } = report;
  const repeat = figureOf(report, "repeat");
  if (!main || repeat === undefined) return undefined;
  const rows = readings.flatMap((reading, index) =>
    reading.on === "work" && reading.ring === main.ring &&
      reading.grade === main.grade
      ? [{ reading, sag: corrected.sag[index] }]
      : []
  );
  const zones = new Map<string, number[]>();
  for (const { reading, sag } of rows) {
    const list = zones.get(reading.zone.label);
    if (list) list.push(sag);
    else zones.set(reading.zone.label, [sag]);
  }
  const means = new Map(
    [...zones].map(([label, sags]) => [label, meanOf(sags)]),
  );
  const sets = new Map<string, number[]>();
  for (const { reading, sag } of rows) {
    const residual = sag - means.get(reading.zone.label)!;
    const list = sets.get(reading.zeroing);
    if (list) list.push(residual);
    else sets.set(reading.zeroing, [residual]);
  }
  const zeroing = figureOf(report, "zeroing");
  const several = new Set(rows.map(({ reading }) => reading.session)).size > 1;
  return await componentsFigure({
    zeroings: [...sets].map(([label, residuals]) => ({
      label: several ? label : label.split(" / ").slice(1).join(" / ") || label,
      level: meanOf(residuals),
      readings: residuals,
    })),
    repeat,
    ...(zeroing === undefined ? {} : { zeroing }),
  }, { unit: piece.unit });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The deviation of one source that has a figure of its own. */
function figureOf(
  { main }: GaugeReport,
  source: "repeat" | "zeroing",
): number | undefined {
  return main?.figures.find(({ sources }) =>
    sources.length === 1 && sources[0] === source
  )?.sag.deviation;
}

/**
 * Draws every component with its interval, in sag and in radius.
 *
 * @param report The report.
 * @returns The figure; undefined without components or a radius.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawComponentIntervals(
  { main, folder: { piece } }: GaugeReport,
): Promise<Figure | undefined> {
  if (!main || main.figures.length === 0 || main.perSag === undefined) {
    return undefined;
  }
  const all = main.total ? [...main.figures, main.total] : main.figures;
  return await componentIntervalsFigure({
    components: all.map((figure) => ({
      label: figure === main.total
        ? "a reading on a fresh zero"
        : nameSources(figure.sources),
      deviation: figure.sag.deviation,
      ...(figure.sag.interval === undefined
        ? {}
        : { interval95: figure.sag.interval }),
    })),
    radiusPerSag: main.perSag,
  }, { unit: piece.unit });
}

/**
 * Draws the history of the zero as a control chart: looks at the flat, or what
 * it showed before zero was pressed.
 *
 * @param report The report.
 * @param which Which record of the zero; the looks unless stated.
 * @returns The figure; undefined when too little was recorded.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawZeroChart(
  { zero, folder: { piece } }: GaugeReport,
  which: "before" | "looks" = "looks",
): Promise<Figure | undefined> {
  const found: ZeroChart = zero[which];
  if (found.kind === "none") return undefined;
  const { chart: { location, range }, form, points } = found;
  // Moving ranges begin with the second value; the chart shows both alike.
  const skipped = location.points.length - range.points.length;
  const labels = points.map(({ zeroing }) => zeroing.split(" / ").at(-1)!);
  const panel = (quantity: string, chart: typeof location, skip: number) => ({
    quantity,
    values: chart.points.slice(skip),
    centre: chart.centre,
    lower: chart.limits.low,
    upper: chart.limits.high,
    signals: [...new Set(chart.signals.map(({ to }) => to - skip))]
      .filter((index) => index >= 0),
  });
  return await controlChartFigure({
    labels: labels.slice(skipped),
    labelled: "Zeroing",
    charts: [
      panel(
        form === "groups" ? "Mean of the looks" : "Zero",
        location,
        skipped,
      ),
      panel(
        form === "groups" ? "Range of the looks" : "Moving range",
        range,
        0,
      ),
    ],
  }, {
    unit: piece.unit,
    title: which === "looks"
      ? "The zero, as looks at the flat found it"
      : "What the flat showed before zero was pressed",
  });
}

/**
 * Draws the chance to decide against the number of zeroings.
 *
 * @param report The report.
 * @returns The figure; undefined without a plan.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawPower(
  { plans, folder: { piece } }: GaugeReport,
): Promise<Figure | undefined> {
  if (plans.length === 0) return undefined;
  const chosen = plans.flatMap(({ answer }) =>
    answer.kind === "plan" ? [answer.best.zeroings] : []
  );
  return await powerFigure({
    plans: plans.map(({ about, power }) => ({
      label: about === "radius" ? "radius within tolerance" : "a sphere",
      points: power.map(({ zeroings, chance, chanceError }) => ({
        zeroings,
        power: chance,
        error: chanceError,
      })),
    })),
    wanted: 0.8,
    ...(chosen.length === 1 ? { chosen: chosen[0] } : {}),
  }, { unit: piece.unit });
}

/**
 * Draws what the gauge can tell apart: what it does by itself beside what is
 * asked of it.
 *
 * @param report The report.
 * @returns The figure; undefined when the gauge was not judged.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawCanTellApart(
  { main, capability, change, folder: { piece } }: GaugeReport,
): Promise<Figure | undefined> {
  if (!main || capability?.kind !== "judged") return undefined;
  const { smallestChange, sagTolerance } = capability;
  const step = main.display.step ?? 0;
  const bars = [
    ...(step > 0
      ? [{ label: "display step", amount: step, kind: "gauge" as const }]
      : []),
    ...(main.total && main.total.sag.deviation > 0
      ? [{
        label: "scatter of one reading",
        amount: main.total.sag.deviation,
        kind: "gauge" as const,
      }]
      : []),
    ...(sagTolerance === undefined ? [] : [{
      label: "tolerance of the radius",
      amount: sagTolerance,
      kind: "question" as const,
    }]),
    ...(change === undefined ? [] : [{
      label: "one stretch of work",
      amount: change as number,
      kind: "question" as const,
    }]),
  ];
  if (bars.length === 0 || smallestChange <= 0) return undefined;
  return await canTellApartFigure({
    bars,
    smallest: smallestChange,
    ...(main.perSag === undefined ? {} : { radiusPerSag: main.perSag }),
  }, { unit: piece.unit });
}
