import { turnedEdge } from "../geometry/contact_departures.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { contactSag } from "../geometry/contact_sag.ts";
import { conicSurface, withDepartures } from "../geometry/contact_surface.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { chart, spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { feetAt, gaugeShapes } from "./_plan_view.ts";
import { circle, curve, dot, line, words } from "./_shape.ts";

const [RADIUS, HALF, RING, BALL] = [3000, 150, 60, 6.35];
const VIEW = { centre: [114, 132], scale: 0.68 } as const;
const GAUGE = ringGauge(RING, BALL);

/** The change that the turned edge makes, by exact contact, in mm of sag. */
function change(
  width: number,
  depth: number,
  offset: number,
): (footDegrees: number) => number {
  const sphere = conicSurface(RADIUS, 0);
  const worn = withDepartures(
    sphere,
    turnedEdge({ halfDiameter: HALF, width, depth, power: 2 }),
  );
  return (footDegrees) => {
    const place = { x: offset, y: 0, footDegrees };
    return contactSag(worn, "concave", GAUGE, place) -
      contactSag(sphere, "concave", GAUGE, place);
  };
}

function draw({ numbers }: Settings): Picture {
  const { width, depth, offset, foot } = numbers;
  const seen = change(width, depth / 1000, offset);
  const part = (degrees: number) => 100 * seen(degrees) / (depth / 1000);
  const turns = spread(0, 180, 46);
  const values = turns.map(part);
  const least = Math.min(-10, ...values);
  const plot = chart(
    [296, 46],
    [164, 170],
    {
      label: "foot 1 from outward, °",
      from: 0,
      to: 180,
      marks: [0, 60, 120, 180],
    },
    { label: "change, % of depth", from: least * 1.15, to: 5 },
  );
  const points = feetAt(RADIUS, RING, BALL, offset, foot);
  const outermost = Math.max(
    ...points.feet.map(({ x, y }) => Math.hypot(x, y)),
  );
  const here = seen(foot);
  const band = HALF - width / 2;
  return {
    width: 480,
    height: 272,
    shapes: [
      circle(VIEW.centre, band * VIEW.scale, "veil", {
        width: width * VIEW.scale,
      }),
      circle(VIEW.centre, HALF * VIEW.scale, "ink", { width: 2 }),
      circle(VIEW.centre, (HALF - width) * VIEW.scale, "second", {
        width: 2,
        dash: "6 5",
      }),
      ...gaugeShapes(VIEW, points, (distance) => distance <= HALF),
      words([12, 20], "grey: the turned edge", { role: "second" }),
      ...(outermost > HALF
        ? [
          words([114, 262], "a foot is past the rim", {
            role: "alarm",
            anchor: "middle",
          }),
        ]
        : []),
      ...plot.shapes,
      line(
        [plot.x(foot), plot.y(0)],
        [plot.x(foot), plot.y(part(foot))],
        "alarm",
        {
          width: 2,
          dash: "5 5",
        },
      ),
      curve(turns.map((turn, k) => plot.at(turn, values[k])), "first", {
        width: 3,
      }),
      dot(plot.at(foot, part(foot)), 7, "alarm"),
    ],
    description:
      `Left, the work from above with a turned edge ${width} mm wide and the gauge at ${offset} mm, foot 1 turned ${foot} degrees from the outward radius. Right, the change of the reading against that turn: a dip with one foot out, ${
        Math.abs(part(180)) < 0.05 ? "nothing" : "little"
      } with two feet out.`,
    numbers: [
      {
        label: "Change of the reading, exact contact",
        text: formatLength(mm(here), "µm", 2),
      },
      {
        label: "As a part of the edge's depth",
        text: roundDecimal(here / (depth / 1000), 2).replace("-", "−"),
      },
      {
        label: "The outermost foot touches at",
        text: formatLength(mm(outermost), "mm", 1),
      },
    ],
  };
}

/** A turned edge is seen by the foot that stands on it. */
export const TURNED_EDGE: Drawing = {
  title: "A turned edge, one foot out and two",
  controls: [
    slider("foot", "Foot 1 from the outward radius", "°", [0, 180, 1], 0),
    slider("width", "Width of the turned edge", "mm", [5, 60, 1], 20),
    slider("depth", "Its depth at the rim", "µm", [1, 20, 0.5], 10),
    slider("offset", "Gauge from the centre", "mm", [0, 108, 1], 88),
  ],
  draw,
};
