import { ballRing } from "../geometry/ball_ring.ts";
import { conicSag } from "../geometry/conic.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import type { SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import {
  area,
  circle,
  clipped,
  curve,
  dot,
  line,
  pathThrough,
  type Shape,
  words,
} from "./_shape.ts";

/** Half the width shown, in mm, and pixels of a millimetre. */
const HALF_VIEW = 82;
const SCALE = 232 / HALF_VIEW;
const [MIDDLE, FLOOR] = [240, 290];

function scene(
  { numbers }: Settings,
  form: SurfaceForm,
  sag: number,
  touch: number,
): Shape[] {
  const { radius, circle: ring, ball } = numbers;
  const up = form === "concave" ? 1 : -1;
  const vertex = form === "concave" ? 250 : 120;
  const at = (x: number, height: number) =>
    [MIDDLE + x * SCALE, vertex - height * SCALE] as const;
  const surface = (x: number) => up * conicSag(mm(x), mm(radius), 0);
  const points = spread(-HALF_VIEW, HALF_VIEW, 81).map((x) =>
    at(x, surface(x))
  );
  const glass = area(
    pathThrough([
      ...points,
      [MIDDLE + HALF_VIEW * SCALE, FLOOR],
      [MIDDLE - HALF_VIEW * SCALE, FLOOR],
    ]) + "Z",
    "haze",
  );
  // The balls stand on the plane of the flat, `sag` above or below the vertex.
  const plane = up * sag;
  const foot = (side: 1 | -1): Shape[] => {
    const x = side * ring;
    return [
      ...(ball > 0
        ? [circle(at(x, plane + ball), ball * SCALE, "ink", { width: 2.5 })]
        : []),
      line(at(x, plane - 4), at(x, plane + ball + 14), "ink", {
        width: 1.5,
        dash: "4 4",
      }),
      dot(at(side * touch, surface(touch)), 5, "alarm"),
    ];
  };
  return [
    ...clipped("glass", [0, 0], [480, FLOOR], [
      glass,
      curve(points, "first", { width: 2.5 }),
    ]),
    line(at(-ring - 10, plane), at(ring + 10, plane), "second", {
      width: 2,
      dash: "8 5",
    }),
    ...foot(-1),
    ...foot(1),
    line(at(0, Math.max(0, plane) + 26), at(0, 0), "ink", { width: 3 }),
    words([12, 26], form === "concave" ? "Concave" : "Convex", { bold: true }),
    words([468, 26], "dashed: plane of the flat", {
      anchor: "end",
      role: "second",
    }),
    words([468, 48], "dot: where a foot touches", {
      anchor: "end",
      role: "alarm",
    }),
  ];
}

function draw(settings: Settings): Picture {
  const { radius, circle: ring, ball } = settings.numbers;
  const form: SurfaceForm = settings.choices.form === "convex"
    ? "convex"
    : "concave";
  const balls = { circleRadius: mm(ring), ballRadius: mm(ball) };
  const sharp = { circleRadius: mm(ring), ballRadius: mm(0) };
  const sag = sagFromRadius(mm(radius), balls, form);
  const touch = contactCircleRadius(
    ballRing(mm(ring), mm(ball)),
    form,
    mm(radius),
  );
  return {
    width: 480,
    height: 300,
    shapes: scene(settings, form, sag, touch),
    description:
      `To scale: a ${form} surface of ${radius} mm radius under three balls of ${ball} mm radius on a circle of ${ring} mm. On concave work a ball touches outside its own middle, on convex work inside.`,
    numbers: [
      { label: "Sag with these balls", text: formatLength(sag, "mm", 4) },
      {
        label: "Sag with a sharp edge on the same circle",
        text: formatLength(sagFromRadius(mm(radius), sharp, form), "mm", 4),
      },
      {
        label: "A ball touches this far from the middle",
        text: formatLength(touch, "mm", 3),
      },
      {
        label: "Radius if the balls were forgotten",
        text: formatLength(radiusFromSag(sag, sharp, form), "mm", 2),
      },
    ],
  };
}

/** What balls do that a sharp edge does not, on concave and convex work. */
export const BALLS_AND_EDGE: Drawing = {
  title: "Balls and sharp edge, concave and convex",
  controls: [
    {
      kind: "choice",
      id: "form",
      label: "The work is",
      options: { concave: "concave", convex: "convex" },
      start: "concave",
    },
    slider("radius", "Radius of curvature", "mm", [100, 3000, 1], 150),
    slider("circle", "Ring radius", "mm", [20, 60, 0.5], 50),
    slider("ball", "Ball radius", "mm", [0, 15, 0.05], 10),
  ],
  draw,
};
