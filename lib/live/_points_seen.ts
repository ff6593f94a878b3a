import { ballRing } from "../geometry/ball_ring.ts";
import { contactRadii } from "../geometry/contact_points.ts";
import { reach as reachOf } from "../geometry/reach.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { feetAt, gaugeShapes, placeIn } from "./_plan_view.ts";
import { circle, dot, line, type Shape, words } from "./_shape.ts";

/** The invented disc, in mm. */
const [RADIUS, HALF, USABLE, BALL] = [3000, 150, 148, 0];
/** Where the line of distances stands. */
const LADDER = 388;
const VIEW = { centre: [156, 158], scale: 0.95 } as const;

/** In words, where the feet point. */
function direction(degrees: number): string {
  const turned = degrees % 120;
  return turned === 0
    ? "one foot out"
    : turned === 60
    ? "two feet out"
    : "between";
}

/** Distances from the centre on a line from 0 to the rim. */
function ladder(distances: readonly number[], probe: number): Shape[] {
  const y = (distance: number) => 300 - distance * 270 / HALF;
  return [
    line([LADDER, y(0)], [LADDER, y(HALF)], "quiet", { width: 2 }),
    words([LADDER, y(HALF) - 10], "rim", { anchor: "middle", role: "quiet" }),
    words([LADDER, y(0) + 20], "centre", { anchor: "middle", role: "quiet" }),
    ...distances.map((distance) => dot([LADDER, y(distance)], 7, "ink")),
    ...spaced(distances, y).map(({ at, distance }) =>
      words([LADDER + 16, at + 5], `foot ${roundDecimal(distance, 0)}`)
    ),
    line([LADDER - 8, y(probe)], [LADDER + 8, y(probe)], "ink", { width: 3 }),
    words([LADDER - 14, y(probe) + 5], `probe ${roundDecimal(probe, 0)}`, {
      anchor: "end",
    }),
  ];
}

/** Places of labels, none on another. */
function spaced(
  distances: readonly number[],
  y: (distance: number) => number,
): { at: number; distance: number }[] {
  let last = -Infinity;
  return [...distances].sort((a, b) => b - a).map((distance) => {
    last = Math.max(y(distance), last + 19);
    return { at: last, distance };
  });
}

function draw({ numbers }: Settings): Picture {
  const { circle: ring, offset, foot } = numbers;
  const shape = ballRing(mm(ring), mm(BALL));
  const limit = reachOf(shape, "concave", mm(RADIUS), mm(USABLE), foot);
  const { feet, probe } = contactRadii(
    shape,
    "concave",
    mm(RADIUS),
    mm(offset),
    foot,
  );
  const isPast = limit === undefined || offset > limit;
  const words_ = direction(foot);
  return {
    width: 480,
    height: 330,
    shapes: [
      circle(VIEW.centre, HALF * VIEW.scale, "ink", { width: 2 }),
      circle(VIEW.centre, HALF / 2 * VIEW.scale, "quiet", {
        width: 1.5,
        dash: "6 5",
      }),
      dot(placeIn(VIEW, 0, 0), 3, "quiet"),
      ...gaugeShapes(
        VIEW,
        feetAt(RADIUS, ring, BALL, offset, foot),
        (distance) => distance <= USABLE,
      ),
      ...ladder(feet, probe),
      words([12, 322], words_, { bold: true }),
      ...(isPast
        ? [
          words([300, 322], "past the reach", {
            role: "alarm",
            bold: true,
            anchor: "end",
          }),
        ]
        : []),
    ],
    description:
      `The work from above, 300 mm across, with the gauge ${offset} mm from the centre, ${words_}. The probe touches at ${
        roundDecimal(probe, 0)
      } mm from the centre, the feet at ${
        feet.map((one) => roundDecimal(one, 0)).join(", ")
      } mm.${isPast ? " A foot stands past the good part of the work." : ""}`,
    numbers: [
      {
        label: "The feet touch at",
        text: `${feet.map((one) => roundDecimal(one, 0)).join(", ")}\u00a0mm`,
      },
      { label: "The probe touches at", text: formatLength(probe, "mm", 0) },
      {
        label: "Reach in this direction",
        text: limit === undefined
          ? "the ring does not fit"
          : formatLength(limit, "mm", 1),
      },
    ],
  };
}

/** The four points that a reading really sees. */
export const POINTS_SEEN: Drawing = {
  title: "The points a reading really sees",
  controls: [
    slider("offset", "Gauge from the centre", "mm", [0, 110, 1], 85),
    slider("foot", "Foot 1 from the outward radius", "°", [0, 180, 5], 180),
    slider("circle", "Ring radius", "mm", [20, 100, 0.5], 60),
  ],
  draw,
};
