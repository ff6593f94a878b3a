import { ballRing } from "../geometry/ball_ring.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { contactSag } from "../geometry/contact_sag.ts";
import { conicSurface } from "../geometry/contact_surface.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { reach as reachOf } from "../geometry/reach.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { chart, roundedReach } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { arrowHead, circle, dot, line, type Shape, words } from "./_shape.ts";

/** The invented disc: half its diameter, and what of it feet may touch, in mm. */
const [HALF, USABLE, BALL] = [150, 148, 6.35];
/** The largest zero error of the slider, in µm. */
const MOST = 5;

function draw({ numbers, choices }: Settings): Picture {
  const { radius, circle: ring, zero } = numbers;
  const shape = ballRing(mm(ring), mm(BALL));
  const edge = reachOf(shape, "concave", mm(radius), mm(USABLE), 0) ?? mm(0);
  const surface = conicSurface(radius, choices.surface === "sphere" ? 0 : -1);
  const gauge = ringGauge(ring, BALL);
  const zones = [
    { name: "centre", anchor: "middle", offset: 0 },
    { name: "half way", anchor: "end", offset: HALF / 2 },
    { name: "edge", anchor: "start", offset: edge },
  ].map(({ name, anchor, offset }) => {
    const place = { x: offset, y: 0, footDegrees: 0 };
    const sag = contactSag(surface, "concave", gauge, place);
    const read = mm(sag + zero / 1000);
    return {
      name,
      anchor: anchor as "start" | "middle" | "end",
      offset,
      sag,
      read,
      radius: radiusFromSag(
        read,
        { circleRadius: mm(ring), ballRadius: mm(BALL) },
        "concave",
      ),
    };
  });
  const [centre, half, rim] = zones;
  const micrometres = (sag: number) => (sag - centre.sag) * 1000;
  const high = roundedReach(
    zones.map(({ sag }) => Math.abs(micrometres(sag)) + MOST),
    6,
  );
  const plot = chart(
    [70, 40],
    [394, 200],
    { label: "distance of the gauge from the centre, mm", from: -12, to: 132 },
    {
      label: "sag less the true sag at the centre, µm",
      from: -high,
      to: high,
    },
  );
  const marks = zones.flatMap(
    ({ name, anchor, offset, sag, read }): Shape[] => {
      const [x, y] = plot.at(offset, micrometres(sag));
      const moved = plot.y(micrometres(read));
      return [
        ...(Math.abs(moved - y) > 14
          ? [
            line([x, y], [x, moved], "alarm", { width: 2 }),
            arrowHead([x, y], [x, moved + (moved < y ? 7 : -7)], "alarm"),
          ]
          : []),
        circle([x, y], 7, "first", { width: 2.5 }),
        dot([x, moved], 6, "alarm"),
        words([x, plot.y(-high) - 8], name, { anchor }),
      ];
    },
  );
  const told = (read: number) => formatLength(mm(read), "mm", 1);
  return {
    width: 480,
    height: 290,
    shapes: [
      ...plot.shapes,
      ...marks,
      words([464, 60], "ring: true", { anchor: "end", role: "first" }),
      words([464, 80], "dot: read", { anchor: "end", role: "alarm" }),
    ],
    description: `Readings at the centre, half way and at the edge of a ${
      choices.surface === "sphere" ? "sphere" : "paraboloid"
    } of ${radius} mm. A zero error of ${zero} µm moves all three by the same amount; the differences between them stay.`,
    numbers: [
      { label: "Radius read at the centre", text: told(centre.radius) },
      { label: "Radius read half way", text: told(half.radius) },
      { label: "Radius read at the edge", text: told(rim.radius) },
      {
        label: "Sag at the edge less sag at the centre",
        text: formatLength(mm(rim.read - centre.read), "µm", 2),
      },
    ],
  };
}

/** A zero error moves all zones together and leaves their differences alone. */
export const ZERO_ERROR: Drawing = {
  title: "A zero error moves all zones together",
  controls: [
    slider("zero", "The zero is wrong by", "µm", [-MOST, MOST, 0.1], 2),
    {
      kind: "choice",
      id: "surface",
      label: "The work is",
      options: { sphere: "a sphere", paraboloid: "a paraboloid" },
      start: "paraboloid",
    },
    slider("circle", "Ring radius", "mm", [40, 70, 0.5], 60),
    slider("radius", "Radius of curvature", "mm", [1500, 6000, 10], 3000),
  ],
  draw,
};
