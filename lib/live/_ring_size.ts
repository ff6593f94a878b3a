import {
  bestCircleForAsphericity,
  paraboloidRadiusGrowth,
  peakToValley,
  quarticFromConic,
} from "../geometry/asphericity.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { contactSag } from "../geometry/contact_sag.ts";
import { conicSurface } from "../geometry/contact_surface.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { evenTermResponse } from "../geometry/three_foot_mean.ts";
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

const BALL = 6.35;

function draw({ numbers }: Settings): Picture {
  const { radius, half, part } = numbers;
  const quartic = quarticFromConic(-1, mm(radius));
  // One foot out, the ring reaches as far as the rim lets it.
  const difference = (ring: number) =>
    quartic *
    (evenTermResponse(4, mm(ring), mm(half - ring), 0) -
      evenTermResponse(4, mm(ring), mm(0), 0)) *
    -1e6;
  const ring = part * half;
  const offset = half - ring;
  const surface = conicSurface(radius, -1);
  const gauge = ringGauge(ring, BALL);
  const feet = { circleRadius: mm(ring), ballRadius: mm(BALL) };
  const [middle, edge] = [0, offset].map((x) =>
    contactSag(surface, "concave", gauge, { x, y: 0, footDegrees: 0 })
  );
  const seen = middle - edge;
  const growth = radiusFromSag(edge, feet, "concave") -
    radiusFromSag(middle, feet, "concave");
  const best = bestCircleForAsphericity(mm(half));
  const rings = spread(0.02 * half, 0.98 * half, 65);
  const high = roundedReach([difference(best)]);
  const plot = chart(
    [78, 40],
    [386, 200],
    { label: "ring radius, mm", from: 0, to: half },
    { label: "sag at the edge falls short by, nm", from: 0, to: high },
  );
  const [x, y] = plot.at(ring, seen * 1e6);
  return {
    width: 480,
    height: 290,
    shapes: [
      ...plot.shapes,
      line(plot.at(best, 0), plot.at(best, difference(best)), "second", {
        width: 2,
        dash: "7 5",
      }),
      words([plot.x(best) + 8, plot.y(0) - 10], "half", { role: "second" }),
      curve(rings.map((one) => plot.at(one, difference(one))), "first", {
        width: 3,
      }),
      dot([x, y], 8, "alarm"),
      words([458, 62], "dot: this ring, exact contact", {
        anchor: "end",
        role: "alarm",
      }),
    ],
    description:
      `How much less sag a ring shows at the edge of a paraboloid than at its centre, against the ring's radius, on a disc of ${half} mm half diameter. Nothing for a very small and for a very large ring, most for a ring of half the half diameter.`,
    numbers: [
      { label: "Ring radius", text: formatLength(mm(ring), "mm", 1) },
      {
        label: "Sag falls by, exact contact",
        text: formatLength(mm(seen), "nm", 0),
      },
      {
        label: "Radius grows by, exact contact",
        text: formatLength(mm(growth), "mm", 3),
      },
      {
        label: "By c²/R",
        text: formatLength(
          paraboloidRadiusGrowth(mm(offset), mm(radius)),
          "mm",
          3,
        ),
      },
      {
        label: "Height of the surface error, peak to valley",
        text: formatLength(
          mm(Math.abs(peakToValley(quartic, mm(half)))),
          "nm",
          0,
        ),
      },
    ],
  };
}

/** Which ring shows most of the difference between sphere and paraboloid. */
export const RING_SIZE: Drawing = {
  title: "Sphere or paraboloid: which ring shows most",
  controls: [
    slider("part", "Ring radius, part of the half diameter", "", [
      0.1,
      0.9,
      0.01,
    ], 0.4),
    slider("radius", "Vertex radius", "mm", [1500, 6000, 10], 3000),
    slider("half", "Half diameter", "mm", [75, 225, 1], 150),
  ],
  draw,
};
