/**
 * Where the gauge stood on the work, and what each reading saw there.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import type { PlanFigureInput } from "./plan_figure_input.ts";
import { departureSteps } from "./_departure_steps.ts";
import { keyOf, keyShape } from "./_key.ts";
import { placeText, plainLength, smallLength } from "./_length_axis.ts";
import { points, words } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { standsOf } from "./_plan_layout.ts";
import { finite, positive, some } from "./_refuse.ts";
import { ink } from "./_theme.ts";
import { decimalsOf, niceStep, written } from "./_ticks.ts";

const ACTION = "the plan of the work";
/** With more places than this the feet would hide the readings. */
const MOST_WITH_FEET = 60;
/** The finest difference of sag that a picture tells apart, in mm. */
const NANOMETRE = 1e-6;

function check(input: PlanFigureInput) {
  positive(input.halfDiameter, ACTION, "half the diameter");
  positive(input.contactRadius, ACTION, "the contact radius");
  finite(input.bevel, ACTION, "the bevel");
  if (input.displayStep !== undefined) {
    positive(input.displayStep, ACTION, "the display step");
  }
  for (const reading of some(input.readings, ACTION, "reading")) {
    finite(reading.offset, ACTION, "an offset");
    finite(reading.departure, ACTION, "a departure");
    finite(reading.diameterDegrees ?? 0, ACTION, "a diameter", "degrees");
  }
}

/**
 * Draws the work from above, to scale, with the points each reading saw: the
 * probe, marked by how far that reading lies from the mean of its set, and the
 * feet.
 *
 * Where the direction of the feet is not known, the circle they stood on is
 * drawn instead. Readings at one place are drawn as their mean.
 *
 * @param input The work and its readings, lengths in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no reading, or a value is not finite.
 *
 * @example
 * ```ts
 * import { planFigure } from "sagbook/figures/plan_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const foot = { kind: "foot out" } as const;
 * const { description } = await planFigure({
 *   halfDiameter: 150,
 *   bevel: 1.5,
 *   contactRadius: 60,
 *   feet: "balls",
 *   readings: [
 *     { offset: 0, diameterDegrees: 0, foot, departure: 0 },
 *     { offset: 85, diameterDegrees: 0, foot, departure: -0.002 },
 *   ],
 * });
 * match(description, /2 places .* −2 µm to 0 µm/);
 * ```
 */
export async function planFigure(
  input: PlanFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { halfDiameter, bevel, contactRadius, readings } = input;
  const { unit = "mm" } = settings;
  const small = smallLength(unit);
  const plain = plainLength(unit);
  const layout = standsOf(input);
  const { probes, stands } = layout;
  const steps = departureSteps(
    probes.map(({ departure }) => departure * small.perMillimetre),
    small.unit,
    Math.max(NANOMETRE, (input.displayStep ?? 0) / 2) * small.perMillimetre,
  );
  const frame = halfDiameter * 1.14;
  const tall = halfDiameter * 1.04;
  const bar = niceStep(halfDiameter * plain.perMillimetre * 0.25);
  const barLength = bar / plain.perMillimetre;
  const crowded = stands.length > MOST_WITH_FEET;
  const feet = crowded ? [] : stands.flatMap((stand) => stand.feet);
  const legs = crowded
    ? []
    : stands.flatMap((stand) =>
      stand.feet.map((foot) => ({
        x1: stand.x,
        y1: stand.y,
        x2: foot.x,
        y2: foot.y,
      }))
    );
  const rings = crowded
    ? []
    : stands.filter((stand) => stand.feet.length === 0);
  const all = readings.map(({ departure }) => departure);
  const [least, greatest] = [
    all.reduce((a, b) => Math.min(a, b)),
    all.reduce((a, b) => Math.max(a, b)),
  ];
  const text = (value: number) =>
    Math.abs(value) < NANOMETRE / 2
      ? `0 ${small.text(1e-3).split(" ")[1]}`
      : small.text(value);
  return svgFigure(
    await drawPage({
      title: settings.title ?? "What each reading saw",
      description: settings.description ??
        `The work from above, ${
          placeText(2 * halfDiameter, unit)
        } across, read at ${probes.length} ${
          probes.length === 1 ? "place" : "places"
        } of the gauge; sag less the mean of its set ${text(least)} to ${
          text(greatest)
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ...steps.classes.map(({ label, look }) =>
          keyShape(label, look.shape, look)
        ),
        feet.length > 0 &&
          keyShape("foot", "circle", { stroke: "quiet", size: 3.5 }),
        rings.length > 0 &&
          keyShape(
            input.feet === "edge"
              ? "edge of the ring"
              : "feet somewhere on this circle",
            "circle",
            { stroke: "quiet", size: 8 },
          ),
      ),
      notes: [
        "Amounts are sag less the mean of the reading's set.",
        ...(readings.length > probes.length
          ? [
            "Each mark is the mean of the readings with the probe at that place.",
          ]
          : []),
        ...(layout.unknownDiameter
          ? ["Readings without a direction of the diameter are drawn along 0°."]
          : []),
        ...(crowded
          ? ["The feet are left out: there are too many places."]
          : []),
      ],
      panels: [{
        height: { perWidth: tall / frame },
        domains: { x: [-frame, frame], y: [-tall, tall] },
        marks: (Plot, area) => {
          const px = (mm: number) => mm / (2 * frame) * area.width;
          const circle = (mm: number, look: object) =>
            Plot.dot([[0, 0]], {
              r: px(mm),
              fill: "none",
              stroke: ink("ink"),
              ...look,
            });
          return [
            circle(halfDiameter, { fill: ink("veil"), strokeWidth: 1.8 }),
            circle(halfDiameter - bevel, {
              fill: ink("paper"),
              stroke: ink("quiet"),
            }),
            Plot.link([[[halfDiameter, 0], [halfDiameter * 1.03, 0]]], {
              x1: (d) => d[0][0],
              x2: (d) => d[1][0],
              y1: 0,
              y2: 0,
              stroke: ink("ink"),
              strokeWidth: 2,
            }),
            words(Plot, "0°", halfDiameter * 1.04, 0, {
              anchor: "start",
              role: "quiet",
            }),
            Plot.dot([[0, 0]], { symbol: "plus", r: 7, stroke: ink("quiet") }),
            Plot.dot(rings, {
              x: "x",
              y: "y",
              r: px(contactRadius),
              stroke: ink("quiet"),
              strokeDasharray: input.feet === "edge" ? undefined : "2 4",
            }),
            Plot.link(legs, {
              x1: "x1",
              y1: "y1",
              x2: "x2",
              y2: "y2",
              stroke: ink("quiet"),
              strokeWidth: 0.9,
              strokeOpacity: 0.6,
            }),
            points(Plot, feet, "circle", {
              fill: "paper",
              stroke: "quiet",
              size: 3.2,
            }),
            ...steps.classes.map(({ look }, level) =>
              points(
                Plot,
                probes.filter(({ departure }) =>
                  steps.levelOf(departure * small.perMillimetre) === level
                ),
                look.shape,
                { ...look, stroke: "paper", width: 1 },
              )
            ),
            Plot.ruleY([-tall * 0.97], {
              x1: -frame,
              x2: -frame + barLength,
              stroke: ink("ink"),
              strokeWidth: 3,
            }),
            words(
              Plot,
              `${written(bar, decimalsOf(bar))} ${unit}`,
              -frame,
              -tall * 0.97,
              { anchor: "start", dy: -11 },
            ),
          ];
        },
      }],
    }),
  );
}
