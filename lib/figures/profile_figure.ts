/**
 * The shape of the surface, as far as the zones tell it.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import type { Interval } from "../statistics/interval.ts";
import { keyArea, keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, placeText, smallLength } from "./_length_axis.ts";
import { between, path, points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import type { Axis } from "./_panel.ts";
import { finite, interval, positive, some } from "./_refuse.ts";
import { ink } from "./_theme.ts";
import { linearTicks, written } from "./_ticks.ts";

/** One point of the profile. */
export interface ProfileFigurePoint {
  /** Distance from the centre of the work, in mm. */
  readonly distance: number;
  /** Height above the sphere that fits best, in mm, with its 95 % interval. */
  readonly departure: {
    readonly value: number;
    readonly interval95?: Interval;
  };
}

/** What `profileFigure` draws. */
export interface ProfileFigureInput {
  /** The profile from the centre outward. */
  readonly points: readonly ProfileFigurePoint[];
  /** Half the clear diameter, in mm. */
  readonly halfDiameter: number;
  /** Largest distance from the centre that a foot or the probe touched, in mm. */
  readonly seenTo: number;
  /** Where the gauge's axis stood. */
  readonly zones?: readonly {
    readonly label: string;
    readonly distance: number;
  }[];
}

const ACTION = "the profile";

/** A fault narrower than this part of what was touched can lie off the band. */
const NARROW = 0.2;

function check(input: ProfileFigureInput) {
  positive(input.halfDiameter, ACTION, "half the diameter");
  positive(input.seenTo, ACTION, "the largest distance seen");
  for (const { distance, departure } of some(input.points, ACTION, "point")) {
    finite(distance, ACTION, "a distance");
    finite(departure.value, ACTION, `the departure at ${distance} mm`);
    if (departure.interval95) {
      interval(departure.interval95, ACTION, `the interval at ${distance} mm`);
    }
  }
  for (const zone of input.zones ?? []) {
    finite(zone.distance, ACTION, `the distance of ${zone.label}`);
  }
}

/**
 * Draws the departure from a sphere along a diameter, with its band.
 *
 * The shape is of revolution, so both halves are the same. Beyond the outermost
 * point touched nothing was seen: the ground is grey there and no line is drawn.
 *
 * @param input Profile in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no point, or a value is not finite.
 *
 * @example
 * ```ts
 * import { profileFigure } from "sagbook/figures/profile_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await profileFigure({
 *   points: [0, 75, 150].map((distance) => ({
 *     distance,
 *     departure: { value: 1e-3 * (distance / 150) ** 4 },
 *   })),
 *   halfDiameter: 150,
 *   seenTo: 150,
 * });
 * match(description, /from the lowest to the highest point of the shape that fits 1 µm/);
 * ```
 */
export async function profileFigure(
  input: ProfileFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { halfDiameter, zones = [] } = input;
  const seenTo = Math.min(input.seenTo, halfDiameter);
  const { unit = "mm" } = settings;
  const small = smallLength(unit);
  const k = small.perMillimetre;
  const half = [...input.points].sort((a, b) => a.distance - b.distance)
    .map(({ distance, departure: { value, interval95 } }) => ({
      x: distance,
      y: value * k,
      y1: (interval95?.low ?? value) * k,
      y2: (interval95?.high ?? value) * k,
    }));
  const touched = half.filter(({ x }) => x <= seenTo * (1 + 1e-9));
  const whole = [
    ...touched.filter(({ x }) => x > 0).reverse()
      .map((p) => ({ ...p, x: -p.x })),
    ...touched,
  ];
  const banded = input.points.some(({ departure }) => departure.interval95);
  const toUser = unit === "mm" ? 1 : 1 / 25.4;
  const ticks = linearTicks(-halfDiameter * toUser, halfDiameter * toUser, 4);
  const inside = ticks.values.filter((v) =>
    Math.abs(v) <= halfDiameter * toUser
  );
  const x: Axis = {
    domain: [-halfDiameter, halfDiameter],
    ticks: inside.map((v) => v / toUser),
    label: (v) => written(Math.abs(v) * toUser, ticks.decimals),
  };
  const y = axisAround(whole.flatMap((p) => [p.y1, p.y2]).concat(0), {
    least: 0.2,
    signs: true,
  });
  const [low, high] = y.domain;
  const stands = [...new Set(zones.flatMap(({ distance: d }) => [d, -d]))]
    .map((at) => ({ x: at, y: low }));
  const values = touched.map(({ y }) => y / k);
  const span = Math.max(...values) - Math.min(...values);
  return svgFigure(
    await drawPage({
      title: settings.title ?? "Shape of the surface against a sphere",
      description: settings.description ??
        `Height above the sphere that fits best, from the lowest to the highest point of the shape that fits ${
          small.text(span)
        } as far as ${
          placeText(seenTo, unit)
        } from the centre. Feet and probe saw nothing beyond ${
          placeText(seenTo, unit)
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyLine("shape that fits", "first", { width: 2.5 }),
        banded && keyArea("95 % band", "haze", "first"),
        seenTo < halfDiameter &&
          keyArea("no foot or probe stood here", "veil", "quiet", "4 4"),
        stands.length > 0 &&
          keyShape("gauge stood here", "triangle", { fill: "ink", size: 4 }),
      ),
      notes: [
        banded
          ? `The band rests on smoothness alone: 95 % of the shapes that are smooth, the same all round, and would read like this. The line is their average. A fault narrower than about ${
            placeText(NARROW * seenTo, unit)
          } can hide between the points touched.`
          : "Without repeated sets nothing says how sure this shape is, so no band is drawn.",
        "Three feet cannot see astigmatism.",
      ],
      panels: [{
        yTitle: `Height above the sphere that fits best (${small.unit})`,
        xTitle: `Distance from the centre of the work (${unit})`,
        height: 220,
        x,
        y,
        marks: (Plot) => [
          seenTo < halfDiameter && Plot.rect(
            [[-halfDiameter, -seenTo], [seenTo, halfDiameter]],
            { x1: "0", x2: "1", y1: low, y2: high, fill: ink("veil") },
          ),
          banded && between(Plot, whole, "haze"),
          seenTo < halfDiameter && Plot.ruleX([-seenTo, seenTo], {
            stroke: ink("quiet"),
            strokeDasharray: "4 4",
          }),
          ...(["y1", "y2"] as const).map((edge) =>
            banded &&
            path(Plot, whole.map((p) => ({ x: p.x, y: p[edge] })), "first", {
              width: 0.8,
            })
          ),
          Plot.ruleY([0], { stroke: ink("quiet") }),
          path(Plot, whole, "first", { width: 2.5 }),
          points(Plot, stands, "triangle", { fill: "ink", size: 4 }),
        ],
      }],
    }),
  );
}
