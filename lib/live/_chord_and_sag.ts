import { conicSag } from "../geometry/conic.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import {
  area,
  arrowHead,
  circle,
  clipped,
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
/** Top of the lower panel, and where the vertex lies in it. */
const [TOP, VERTEX] = [176, 306];

/** The surface with glass below it, its sag drawn `magnified` times. */
function glass(
  radius: number,
  vertex: number,
  magnified: number,
  below: number,
): Shape[] {
  const points = spread(-HALF_VIEW, HALF_VIEW, 61).map((x) =>
    [
      MIDDLE + x * SCALE,
      vertex - conicSag(mm(x), mm(radius), 0) * SCALE * magnified,
    ] as const
  );
  const floor: [number, number][] = [
    [MIDDLE + HALF_VIEW * SCALE, below],
    [MIDDLE - HALF_VIEW * SCALE, below],
  ];
  return [
    area(pathThrough([...points, ...floor]) + "Z", "haze"),
    curve(points, "first", { width: 2.5 }),
  ];
}

function toScale({ numbers }: Settings, sag: number): Shape[] {
  const { radius, circle: ring, ball } = numbers;
  const vertex = 100;
  const [left, right] = [MIDDLE - ring * SCALE, MIDDLE + ring * SCALE];
  const centre = vertex - (ball + sag) * SCALE;
  const foot = (x: number): Shape =>
    ball > 0
      ? circle([x, centre], ball * SCALE, "ink")
      : line([x, centre], [x, centre - 20], "ink", { width: 3 });
  return [
    words([12, 26], "To scale", { bold: true }),
    ...glass(radius, vertex, 1, vertex + 22),
    foot(left),
    foot(right),
    line([left, centre], [right, centre], "quiet", { width: 1.5, dash: "5 5" }),
    line([MIDDLE, centre - 26], [MIDDLE, vertex], "ink", { width: 2.5 }),
  ];
}

function magnifiedSag({ numbers }: Settings): Shape[] {
  const { radius, circle: ring, magnified } = numbers;
  const [left, right] = [MIDDLE - ring * SCALE, MIDDLE + ring * SCALE];
  // Where a sharp edge of that radius would stand on the surface.
  const depth = conicSag(mm(ring), mm(radius), 0) * SCALE * magnified;
  const chord = VERTEX - depth;
  const shapes = clipped(
    "large",
    [0, TOP],
    [480, VERTEX + 24 - TOP],
    glass(radius, VERTEX, magnified, VERTEX + 24),
  );
  const caption = words(
    [12, TOP - 12],
    `Sag drawn ${magnified} ${magnified === 1 ? "time" : "times"} as large`,
    { bold: true },
  );
  if (chord < TOP + 22) {
    return [
      caption,
      ...shapes,
      words([MIDDLE, TOP + 40], "too deep for the picture", {
        role: "alarm",
        anchor: "middle",
      }),
    ];
  }
  return [
    caption,
    ...shapes,
    line([left, chord], [right, chord], "second", { width: 2.5 }),
    words([right - 6, chord - 8], "chord", { role: "second", anchor: "end" }),
    line([MIDDLE, VERTEX], [MIDDLE, chord], "alarm", { width: 2.5 }),
    ...(depth > 24
      ? [
        arrowHead([MIDDLE, chord + 20], [MIDDLE, chord], "alarm"),
        arrowHead([MIDDLE, VERTEX - 20], [MIDDLE, VERTEX], "alarm"),
        words([MIDDLE + 9, VERTEX - depth / 2 + 5], "sag", { role: "alarm" }),
      ]
      : []),
  ];
}

function draw(settings: Settings): Picture {
  const { radius, circle: ring, ball, magnified } = settings.numbers;
  const feet = { circleRadius: mm(ring), ballRadius: mm(ball) };
  const sag = sagFromRadius(mm(radius), feet, "concave");
  const shown = mm(Number(roundDecimal(sag, 3)));
  const found = radiusFromSag(shown, feet, "concave");
  return {
    width: 480,
    height: VERTEX + 30,
    shapes: [...toScale(settings, sag), ...magnifiedSag(settings)],
    description:
      `A ring of ${ring} mm radius on a concave surface of ${radius} mm radius. Above to scale: the curve can hardly be seen. Below with its sag drawn ${magnified} times as large: the chord between the feet, and the sag from its middle to the surface.`,
    numbers: [
      { label: "Sag", text: formatLength(sag, "mm", 4) },
      {
        label: "As a display in steps of 0.001 mm shows it",
        text: formatLength(shown, "mm", 3),
      },
      {
        label: "Radius found from that display",
        text: formatLength(found, "mm", 1),
      },
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
    slider("magnified", "Sag drawn larger by", "×", [1, 100, 1], 50),
  ],
  draw,
};
