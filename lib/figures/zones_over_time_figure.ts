/**
 * How the zones came together, session by session.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyOf, keyShape } from "./_key.ts";
import { axisAround, smallLength } from "./_length_axis.ts";
import { levelBand, path, points, uprightBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, interval, positive, some } from "./_refuse.ts";
import { columnsAxis } from "./_rows.ts";
import { shapeOf } from "./_symbols.ts";
import { ink, seriesRole } from "./_theme.ts";

/** One zone through the sessions. */
export interface ZonesOverTimeFigureZone {
  /** The zone's name. */
  readonly label: string;
  /** One entry for each session; undefined where the zone was not read. */
  readonly differences: readonly ({
    /** Sag less that at the reference zone, in mm. */
    readonly value: number;
    /** Its 95 % interval, in mm. */
    readonly interval95?: Interval;
  } | undefined)[];
}

/** What `zonesOverTimeFigure` draws. */
export interface ZonesOverTimeFigureInput {
  /** Names of the sessions, in order. */
  readonly sessions: readonly string[];
  /** The zone all others are compared with. */
  readonly reference: string;
  /** The other zones. */
  readonly zones: readonly ZonesOverTimeFigureZone[];
  /** Largest good difference of sag either way, in mm. */
  readonly tolerance?: number;
}

const ACTION = "the zones over time";
const DASHES = [undefined, "6 3", "2 3", "8 3 2 3"];

function check({ sessions, zones, tolerance }: ZonesOverTimeFigureInput) {
  some(sessions, ACTION, "session");
  for (const { label, differences } of some(zones, ACTION, "zone")) {
    if (differences.length !== sessions.length) {
      throw new RangeError(
        `Cannot draw ${ACTION} as ${label} must have an entry for each of ${sessions.length} sessions: current value is ${differences.length} entries`,
      );
    }
    for (const entry of differences) {
      if (entry === undefined) continue;
      finite(entry.value, ACTION, `a difference of ${label}`);
      if (entry.interval95) {
        interval(entry.interval95, ACTION, `an interval of ${label}`);
      }
    }
  }
  if (tolerance !== undefined) positive(tolerance, ACTION, "the tolerance");
}

/**
 * Draws how far each zone's sag differs from that of a reference zone, one
 * column for each session, with 95 % intervals and the tolerance.
 *
 * A session that did not read a zone leaves a gap in its line.
 *
 * @param input Differences in mm of sag.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no session or zone, a zone lacks an entry,
 * or a value is not finite.
 *
 * @example
 * ```ts
 * import { zonesOverTimeFigure } from "sagbook/figures/zones_over_time_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await zonesOverTimeFigure({
 *   sessions: ["1", "2"],
 *   reference: "centre",
 *   zones: [{ label: "edge", differences: [{ value: -0.006 }, { value: -0.001 }] }],
 * });
 * match(description, /edge from −6 µm to −1 µm/);
 * ```
 */
export async function zonesOverTimeFigure(
  input: ZonesOverTimeFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { sessions, reference, zones, tolerance } = input;
  const small = smallLength(settings.unit ?? "mm");
  const k = small.perMillimetre;
  const lines = zones.map(({ label, differences }, i) => {
    // Zones side by side in a column, so that their intervals stay apart.
    const aside = (i - (zones.length - 1) / 2) * 0.5 /
      Math.max(2, zones.length);
    const all = differences.map((entry, session) => ({
      x: session + aside,
      y: entry === undefined ? NaN : entry.value * k,
      y1: (entry?.interval95?.low ?? 0) * k,
      y2: (entry?.interval95?.high ?? 0) * k,
      read: entry !== undefined,
      sure: entry?.interval95 !== undefined,
    }));
    return { label, all, read: all.filter(({ read }) => read) };
  });
  const limit = tolerance === undefined ? undefined : tolerance * k;
  const y = axisAround([
    0,
    ...(limit === undefined ? [] : [-limit, limit]),
    ...lines.flatMap(({ read }) =>
      read.flatMap((p) => p.sure ? [p.y, p.y1, p.y2] : [p.y])
    ),
  ], { least: 1, signs: true });
  const x = columnsAxis(sessions);
  const words = zones.map(({ label, differences }) => {
    const read = differences.filter((entry) => entry !== undefined);
    return read.length === 0
      ? `${label} was not read`
      : `${label} from ${small.signedText(read[0].value)} to ${
        small.signedText(read.at(-1)!.value)
      }`;
  });
  return svgFigure(
    await drawPage({
      title: settings.title ?? "How the zones came together",
      description: settings.description ??
        `Sag less sag at ${reference} over ${sessions.length} ${
          sessions.length === 1 ? "session" : "sessions"
        }: ${words.join("; ")}.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ...lines.map(({ label }, i) =>
          keyShape(label, shapeOf(i), { fill: seriesRole(i) })
        ),
        tolerance !== undefined &&
          keyArea(
            `tolerance ±${small.text(tolerance)}`,
            "band",
            "bandEdge",
            "5 3",
          ),
      ),
      panels: [{
        yTitle: `Sag less sag at ${reference} (${small.unit})`,
        xTitle: "Session",
        height: 240,
        x,
        y,
        marks: (Plot) => [
          ...(limit === undefined
            ? []
            : levelBand(Plot, x.domain, [-limit, limit])),
          Plot.ruleY([0], { stroke: ink("quiet") }),
          ...lines.flatMap(({ all, read }, i) => [
            path(Plot, all, seriesRole(i), {
              width: 1.5,
              dash: DASHES[i % DASHES.length],
            }),
            ...uprightBars(Plot, read.filter(({ sure }) => sure), {
              role: seriesRole(i),
              caps: sessions.length <= 20,
            }),
            points(Plot, read, shapeOf(i), {
              fill: seriesRole(i),
              stroke: "paper",
              width: 1,
              size: sessions.length > 40 ? 3 : 5,
            }),
          ]),
        ],
      }],
    }),
  );
}
