import { conicSag } from "../geometry/conic.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { spread } from "./_chart.ts";
import { type Drawing, type Settings, slider } from "./_drawing.ts";
import {
  area,
  arrowHead,
  circle,
  curve,
  line,
  pathThrough,
  type Shape,
  words,
} from "./_shape.ts";

/** Half the width that both panels show, in mm: the largest ring fits. */
const HALF_VIEW = 125;
const MIDDLE = 240;
/** Pixels of a millimetre along the chord, in both panels. */
const SCALE = 225 / HALF_VIEW;

/** The surface with glass below it, its sag drawn `magnified` times. */
function glass(
  radius: number,
  vertex: number,
  magnified: number,
  foot: number,
) {
  const points = spread(-HALF_VIEW, HALF_VIEW, 61).map((x) =>
    [
      MIDDLE + x * SCALE,
      vertex - conicSag(mm(x), mm(radius), 0) * SCALE * magnified,
    ] as const
  );
  const floor: [number, number][] = [
    [MIDDLE + HALF_VIEW * SCALE, foot],
    [MIDDLE - HALF_VIEW * SCALE, foot],
  ];
  return [
    area(pathThrough([...points, ...floor]) + "Z", "haze"),
    curve(points, "first", { width: 2.5 }),
  ];
}

function draw({ numbers }: Settings) {
  const { radius, circle: ring, ball, magnified } = numbers;
  const feet = { circleRadius: mm(ring), ballRadius: mm(ball) };
  const sag = sagFromRadius(mm(radius), feet, "concave");
  const shown = mm(Number(roundDecimal(sag, 3)));
  const found = radiusFromSag(shown, feet, "concave");
  const [left, right] = [MIDDLE - ring * SCALE, MIDDLE + ring * SCALE];

  const level = 96;
  const centre = level - (ball + sag) * SCALE;
  const toScale: Shape[] = [
    words([12, 26], "To scale", { bold: true }),
    ...glass(radius, level, 1, level + 24),
    ...(ball > 0
      ? [left, right].map((x) =>
        circle([x, centre], ball * SCALE, "ink", { width: 2 })
      )
      : [left, right].map((x) =>
        line([x, level - sag * SCALE], [x, level - sag * SCALE - 20], "ink")
      )),
    line([left, centre], [right, centre], "ink", { width: 1.5, dash: "5 5" }),
    line([MIDDLE, centre - 24], [MIDDLE, level], "ink", { width: 2 }),
  ];

  // The deepest curve, at the largest magnification, still fits.
  const vertex = 292;
  const height = sag * SCALE * magnified;
  const chordLevel = vertex - height;
  const fits = chordLevel > 168;
  const top = Math.max(chordLevel, 168);
  const large: Shape[] = [
    words([12, 152], `Sag drawn ${magnified} times as large`, { bold: true }),
    ...glass(radius, vertex, magnified, vertex + 22).map((shape) => shape),
  ];
  const arrow: Shape[] = fits
    ? [
      line([left, top], [right, top], "second", { width: 2.5 }),
      line([MIDDLE, vertex], [MIDDLE, top], "alarm", { width: 2.5 }),
      ...(height > 24
        ? [
          arrowHead([MIDDLE, top + 20], [MIDDLE, top], "alarm"),
          arrowHead([MIDDLE, vertex - 20], [MIDDLE, vertex], "alarm"),
        ]
        : []),
      words([MIDDLE + 8, (vertex + top) / 2 + 5], "sag", { role: "alarm" }),
      words([right, top - 8], "chord", { role: "second", anchor: "end" }),
    ]
    : [
      words([MIDDLE, 200], "Too large to draw: magnify less", {
        role: "alarm",
        anchor: "middle",
      }),
    ];
  return {
    width: 480,
    height: 326,
    shapes: [...toScale, ...large, ...arrow],
    description:
      `A concave surface of radius ${radius} mm under a ring of radius ${ring} mm, once to scale, where the curve can hardly be seen, and once with its sag drawn ${magnified} times as large.`,
    numbers: [
      { label: "Sag that the gauge shows", text: formatLength(sag, "mm", 4) },
      {
        label: "On a display in 0.001 mm",
        text: formatLength(shown, "mm", 3),
      },
      { label: "Radius from that display", text: formatLength(found, "mm", 1) },
    ],
  };
}

/** Why sag gives radius: the chord, the sag and the curve. */
export const CHORD_AND_SAG: Drawing = {
  title: "The chord and the sag",
  controls: [
    slider("radius", "Radius of curvature", "mm", [800, 6000, 10], 3000),
    slider("circle", "Ring radius", "mm", [20, 100, 0.5], 60),
    slider("ball", "Ball radius", "mm", [0, 12, 0.05], 6.35),
    slider("magnified", "Sag drawn larger by", "times", [1, 100, 1], 50),
  ],
  draw,
};
