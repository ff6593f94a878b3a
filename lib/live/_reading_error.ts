import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { chart, roundedReach, spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { curve, dot, line, words } from "./_shape.ts";

const BALL = mm(6.35);

const feet = (circle: number) => ({
  circleRadius: mm(circle),
  ballRadius: BALL,
});

/** How far the radius found moves when the reading is wrong by `micrometres`. */
function change(radius: number, circle: number, micrometres: number): number {
  const sag = sagFromRadius(mm(radius), feet(circle), "concave");
  return radiusFromSag(
    mm(sag + micrometres / 1000),
    feet(circle),
    "concave",
  ) - radius;
}

function draw({ numbers }: Settings): Picture {
  const { radius, circle, error, wrongRing } = numbers;
  const rings = spread(25, 100, 76);
  const changes = rings.map((ring) => change(radius, ring, error));
  const reach = roundedReach(changes, 1);
  const plot = chart(
    [70, 40],
    [394, 210],
    { label: "ring radius, mm", from: 20, to: 100 },
    {
      label: "change of the radius found, mm",
      from: changes.some((one) => one < 0) ? -reach : 0,
      to: changes.some((one) => one < 0) ? 0 : reach,
    },
  );
  const here = change(radius, circle, error);
  const [x, y] = plot.at(circle, here);
  const sag = sagFromRadius(mm(radius), feet(circle), "concave");
  const slope = radiusSensitivities(sag, feet(circle), "concave");
  return {
    width: 480,
    height: 300,
    shapes: [
      ...plot.shapes,
      line([x, plot.y(0)], [x, y], "alarm", { width: 2, dash: "5 5" }),
      curve(rings.map((ring, k) => plot.at(ring, changes[k])), "first", {
        width: 3,
      }),
      dot([x, y], 7, "alarm"),
      words([456, error > 0 ? 240 : 64], "this ring: the dot", {
        anchor: "end",
        role: "alarm",
      }),
    ],
    description:
      `How far the radius found moves when a reading is wrong by ${error} µm, for ring radii from 25 to 100 mm on a surface of ${radius} mm radius. The smaller the ring, the farther, as one over its square. With a ring of ${circle} mm it moves by ${
        formatLength(mm(here), "mm", 1)
      }.`,
    numbers: [
      { label: "Sag under this ring", text: formatLength(sag, "mm", 4) },
      {
        label: "The reading's error moves the radius by",
        text: formatLength(mm(here), "mm", 2),
      },
      {
        label: "By the slope alone",
        text: formatLength(mm(slope.sag * error / 1000), "mm", 2),
      },
      {
        label: "The ring's error moves it by",
        text: formatLength(mm(slope.circleRadius * wrongRing / 1000), "mm", 2),
      },
    ],
  };
}

/** From the error of a reading, and of the ring, to the error of the radius. */
export const READING_ERROR: Drawing = {
  title: "From reading error to radius error",
  controls: [
    slider("error", "The reading is wrong by", "µm", [-5, 5, 0.1], 1),
    slider("circle", "Ring radius", "mm", [25, 100, 0.5], 60),
    slider("wrongRing", "The ring radius is wrong by", "µm", [
      -100,
      100,
      1,
    ], 10),
    slider("radius", "Radius of curvature", "mm", [1000, 6000, 10], 3000),
  ],
  draw,
};
