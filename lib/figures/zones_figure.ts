/**
 * Do the zones agree? Differences of sag with the intervals that decide.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import type { ZonesFigureInput } from "./zones_figure_input.ts";
import { keyArea, keyInterval, keyOf, keyShape } from "./_key.ts";
import { axisAround, placeText, smallLength } from "./_length_axis.ts";
import { levelBand, points, uprightBars } from "./_marks.ts";
import { drawPage, WIDTH } from "./_page.ts";
import { type Axis, TEXT_SIZE } from "./_panel.ts";
import { jitter } from "./_spread.ts";
import { fitText } from "./_text_width.ts";
import { ink } from "./_theme.ts";
import { checkZones, describeZones, placesAlong } from "./_zones_layout.ts";

/** More points than this per zone hide the picture. */
const MOST_POINTS = 200;

/**
 * Draws how far the sag of each zone differs from that of a reference zone,
 * with the 90 % interval that decides, the 95 % interval, the single sets and
 * the tolerance.
 *
 * Zones stand in the order of their distances, to scale where their names
 * leave room. A verdict belongs into the title, which the caller gives.
 *
 * @param input Zones with differences in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no zone, or a value is not finite.
 *
 * @example
 * ```ts
 * import { zonesFigure } from "sagbook/figures/zones_figure.ts";
 * import { ok } from "node:assert/strict";
 *
 * const figure = await zonesFigure({
 *   reference: { label: "centre", distance: 0 },
 *   zones: [{
 *     label: "edge",
 *     distance: 88,
 *     difference: -0.0012,
 *     interval90: { low: -0.0019, high: -0.0005 },
 *     interval95: { low: -0.0021, high: -0.0003 },
 *   }],
 *   tolerance: 0.001,
 * });
 * ok(figure.description.includes("edge −1.20 µm (95 % interval −2.10 µm to −0.30 µm)"));
 * ```
 */
export async function zonesFigure(
  input: ZonesFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  checkZones(input);
  const { reference, zones, tolerance } = input;
  const { unit = "mm", width = WIDTH } = settings;
  const small = smallLength(unit);
  const k = small.perMillimetre;
  const all = [reference, ...zones];
  const labels = all.map(({ label, distance }) =>
    [
      ...fitText(label.replace(" (", "\n("), TEXT_SIZE, 104, 3),
      placeText(distance, unit),
    ].join("\n")
  );
  const { places, pixel, shown: told } = placesAlong(
    labels,
    all.map((z) => z.distance),
    width,
  );
  const x: Axis = {
    domain: [0, 1],
    ticks: places,
    label: (place) => told[places.indexOf(place)],
  };
  const shown = zones.flatMap((zone) => [
    zone.difference,
    ...[zone.interval90, zone.interval95].flatMap((e) =>
      e ? [e.low, e.high] : []
    ),
    ...(zone.sets ?? []).map((set) => set.difference),
  ]).concat(0, tolerance === undefined ? [] : [-tolerance, tolerance])
    .map((value) => value * k);
  const y = axisAround(shown, { least: 1, signs: true });
  const means = zones.map((zone, i) => ({
    ...zone,
    x: places[i + 1],
    y: zone.difference * k,
  }));
  const dots = means.flatMap((zone) =>
    (zone.sets ?? []).slice(0, MOST_POINTS).map((set, n) => ({
      x: zone.x + (18 + 7 * jitter(n)) * pixel,
      y: set.difference * k,
      flagged: set.flagged === true,
    }))
  );
  const bars = (name: "interval90" | "interval95") =>
    means.flatMap((zone) => {
      const ends = zone[name];
      return ends ? [{ x: zone.x, y1: ends.low * k, y2: ends.high * k }] : [];
    });
  const [thick, thin] = [bars("interval90"), bars("interval95")];
  const flagged = dots.filter((point) => point.flagged);
  const limit = tolerance === undefined ? undefined : tolerance * k;
  const key = keyOf(
    keyShape(thin.length > 0 ? "mean" : "difference", "circle", {
      fill: "ink",
    }),
    keyShape(`${reference.label}, compared with`, "diamond", { stroke: "ink" }),
    thin.length > 0 &&
      keyInterval("90 % (thick) and 95 % interval", "ink", "first"),
    dots.length > 0 &&
      keyShape("one set", "circle", { stroke: "quiet", size: 3.5 }),
    flagged.length > 0 &&
      keyShape("stands apart", "circle", { stroke: "alarm", size: 7 }),
    tolerance !== undefined &&
      keyArea(`tolerance ±${small.text(tolerance)}`, "band", "bandEdge", "5 3"),
  );
  const tooMany = zones.some((zone) => (zone.sets?.length ?? 0) > MOST_POINTS);
  const page = await drawPage({
    title: settings.title ?? `Sag of each zone against ${reference.label}`,
    description: settings.description ?? describeZones(input, small),
    width,
    idPrefix: settings.idPrefix,
    key,
    notes: tooMany
      ? [
        `Of each zone the first ${MOST_POINTS} sets are drawn; the mean and its intervals hold all.`,
      ]
      : [],
    panels: [{
      yTitle: `Sag less sag at ${reference.label} (${small.unit})`,
      xTitle: "Gauge's distance from the centre of the work",
      height: 250,
      x,
      y,
      marks: (Plot) => [
        ...limit === undefined ? [] : levelBand(Plot, [0, 1], [-limit, limit]),
        Plot.ruleY([0], { stroke: ink("quiet") }),
        points(Plot, dots, "circle", { stroke: "quiet", size: 3.2 }),
        points(Plot, flagged, "circle", { stroke: "alarm", size: 7, width: 2 }),
        ...uprightBars(Plot, thin),
        ...uprightBars(Plot, thick, { role: "first", width: 7, caps: false }),
        points(Plot, means, "circle", { fill: "ink", stroke: "paper" }),
        points(Plot, [{ x: places[0], y: 0 }], "diamond", {
          fill: "paper",
          stroke: "ink",
        }),
      ],
    }],
  });
  return svgFigure(page);
}
