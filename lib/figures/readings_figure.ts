/**
 * Every reading in the order it was taken, set by set.
 *
 * @module
 */
import { itemMaker } from "../numerics/lazy_list.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, plainLength, smallLength } from "./_length_axis.ts";
import { points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { type Axis, type Panel, TEXT_SIZE } from "./_panel.ts";
import {
  layOutReadings,
  type PlacedReading,
  type ReadingsLayout,
} from "./_readings_layout.ts";
import { finite, some } from "./_refuse.ts";
import { shapeOf } from "./_symbols.ts";
import { shortened } from "./_text_width.ts";
import { ink, seriesRole } from "./_theme.ts";

/** One reading. */
export interface ReadingsFigureReading {
  /** The set it belongs to: the readings between two zeroings. */
  readonly set: string;
  /** The zone's name; not used on the flat. */
  readonly zone: string;
  /** A reading of the work, or a look back at the flat. */
  readonly on: "work" | "flat";
  /** Sag in mm. */
  readonly sag: number;
  /** True for one that stands apart from the others. */
  readonly flagged?: boolean;
}

/** What `readingsFigure` draws. */
export interface ReadingsFigureInput {
  /** The readings in the order they were taken. */
  readonly readings: readonly ReadingsFigureReading[];
}

const ACTION = "the readings";

/** Places along the axis, each once however many stand there. */
function apart(placed: readonly PlacedReading[]): readonly number[] {
  return [...new Set(placed.map(({ x }) => x))];
}

function describe(
  { spans: { work, flat }, sets, flagged }: ReadingsLayout,
  text: (length: number) => string,
): string {
  const looks = flat === undefined
    ? "The flat was not looked at again"
    : `The flat was looked at ${flat.count} ${
      flat.count === 1 ? "time" : "times"
    }`;
  const { least, greatest } = (work ?? flat)!;
  return `${work?.count ?? 0} readings of the work in ${sets} ${
    sets === 1 ? "set" : "sets"
  }, sag ${text(least)} to ${
    text(greatest)
  }. ${looks}. ${flagged} marked as standing apart.`;
}

/**
 * Draws readings in the order they were taken: sets side by side, zones by
 * shape, looks back at the flat on a strip of their own, readings that stand
 * apart ringed.
 *
 * Above 600 readings each set and zone becomes one bar from its least to its
 * greatest reading, and the figure says so. A single wild reading is put at
 * the edge and named below rather than flattening all others.
 *
 * @param input Readings in mm, in order.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no reading, or a sag is not finite.
 *
 * @example
 * ```ts
 * import { readingsFigure } from "sagbook/figures/readings_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await readingsFigure({
 *   readings: [
 *     { set: "1", zone: "centre", on: "work", sag: 0.601 },
 *     { set: "1", zone: "edge", on: "work", sag: 0.6 },
 *     { set: "1", zone: "flat", on: "flat", sag: 0 },
 *   ],
 * });
 * match(description, /^2 readings of the work in 1 set, sag 0.600 mm to 0.601 mm/);
 * ```
 */
export async function readingsFigure(
  input: ReadingsFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const given = some(input.readings, ACTION, "reading");
  const reading = itemMaker(given);
  for (let i = 0; i < given.length; i++) {
    const { sag, zone } = reading(i);
    finite(sag, ACTION, `the sag of ${zone}`);
  }
  const { unit = "mm" } = settings;
  const plain = plainLength(unit);
  const small = smallLength(unit);
  const layout = layOutReadings(input.readings);
  const { placed, bars, borders, middles, end, spans } = layout;
  const zones = layout.zones;
  const x: Axis = {
    domain: [0, end],
    ticks: middles.map(({ x }) => x),
    label: (at) => {
      const { set } = middles.find(({ x }) => x === at)!;
      return shortened(set, TEXT_SIZE, 104);
    },
  };
  const panelOf = (on: "work" | "flat", last: boolean): Panel | undefined => {
    const span = spans[on];
    if (span === undefined) return undefined;
    const mine = placed.filter((reading) => reading.on === on);
    const k = on === "work" ? plain.perMillimetre : small.perMillimetre;
    const { low, high } = span.visible;
    const most = Math.max(Math.abs(low), Math.abs(high), 0.001) * k;
    const y = axisAround(on === "flat" ? [-most, most] : [low * k, high * k], {
      least: 0.004 * k,
      signs: on === "flat",
      count: on === "flat" ? 2 : 5,
    });
    const at = ({ x, sag }: PlacedReading) => ({ x, y: sag * k });
    const [floor, ceiling] = y.domain;
    const inside = mine.filter(({ sag }) => sag >= low && sag <= high);
    const [above, below] = [
      mine.filter(({ sag }) => sag > high),
      mine.filter(({ sag }) => sag < low),
    ];
    const symbols = on === "flat" ? ["flat"] : zones;
    return {
      yTitle: on === "work"
        ? `Sag (${plain.unit})`
        : `Looks back at the flat (${small.unit})`,
      xTitle: last ? "Set" : undefined,
      height: on === "work" ? 240 : 76,
      x: last ? x : { ...x, label: () => "" },
      y,
      marks: (Plot) => [
        Plot.ruleX(borders, { stroke: ink("line"), strokeWidth: 1.5 }),
        on === "flat" && Plot.ruleY([0], { stroke: ink("quiet") }),
        ...symbols.map((zone, i) =>
          Plot.ruleX(
            bars.filter((bar) =>
              bar.on === on && (on === "flat" || bar.zone === zone)
            ),
            {
              x: "x",
              y1: (bar) => Math.max(bar.least, low) * k,
              y2: (bar) => Math.min(bar.greatest, high) * k,
              stroke: ink(on === "flat" ? "ink" : seriesRole(i)),
              strokeWidth: 1.5,
            },
          )
        ),
        ...symbols.map((zone, i) =>
          points(
            Plot,
            inside.filter((reading) =>
              reading.drawn && (on === "flat" || reading.zone === zone)
            ).map(at),
            on === "flat" ? "square" : shapeOf(i),
            on === "flat"
              ? { stroke: "ink", size: 3.5 }
              : { fill: seriesRole(i), size: bars.length > 0 ? 2.5 : 4.5 },
          )
        ),
        points(Plot, inside.filter((r) => r.flagged).map(at), "circle", {
          stroke: "alarm",
          size: 8,
          width: 2,
        }),
        points(Plot, apart(above).map((x) => ({ x, y: ceiling })), "triangle", {
          fill: "alarm",
          size: 6,
        }),
        points(
          Plot,
          apart(below).map((x) => ({ x, y: floor })),
          "triangleDown",
          {
            fill: "alarm",
            size: 6,
          },
        ),
      ],
    };
  };
  const flatPanel = panelOf("flat", true);
  const workPanel = panelOf("work", flatPanel === undefined);
  const panels = [workPanel, flatPanel].filter((panel) => panel !== undefined);
  const beyond = (on: "work" | "flat") => {
    const span = spans[on];
    if (span === undefined) return [];
    const { low, high } = span.visible;
    return placed.filter((reading) =>
      reading.on === on && (reading.sag < low || reading.sag > high)
    );
  };
  const out = [...beyond("work"), ...beyond("flat")];
  const named = out.slice(0, 3).map((reading) =>
    `set ${reading.set}, ${reading.on === "flat" ? "flat" : reading.zone} ${
      plain.text(reading.sag, 0.001)
    }`
  );
  const more = out.length > 3 ? `; and ${out.length - 3} more` : "";
  return svgFigure(
    await drawPage({
      title: settings.title ?? "Readings in the order they were taken",
      description: settings.description ??
        describe(layout, (sag) => plain.text(sag, 0.01)),
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ...(workPanel === undefined
          ? []
          : zones.map((zone, i) =>
            keyShape(zone, shapeOf(i), { fill: seriesRole(i), size: 4.5 })
          )),
        placed.some((reading) => reading.flagged && !out.includes(reading)) &&
          keyShape("stands apart", "circle", { stroke: "alarm", size: 7 }),
        out.length > 0 && keyShape("beyond the picture", "triangle", {
          fill: "alarm",
        }),
        bars.length > 0 &&
          keyLine("least to greatest", "quiet", { width: 1.5 }),
      ),
      notes: [
        ...(out.length > 0
          ? [`Beyond the picture: ${named.join("; ")}${more}.`]
          : []),
        ...(layout.note === undefined ? [] : [layout.note]),
      ],
      panels,
    }),
  );
}
