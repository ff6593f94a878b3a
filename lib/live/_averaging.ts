import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { chart, spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { circle, curve, dot, line, words } from "./_shape.ts";

function draw({ numbers }: Settings): Picture {
  const { radius, circle: ring, scatter } = numbers;
  const feet = { circleRadius: mm(ring), ballRadius: mm(0) };
  const sag = sagFromRadius(mm(radius), feet, "concave");
  const found = (micrometres: number) =>
    radiusFromSag(mm(sag + micrometres / 1000), feet, "concave");
  const [short, long] = [found(scatter), found(-scatter)];
  const ofMean = found(0);
  const mean = (short + long) / 2;
  const reach = 1.5 * scatter;
  const [low, high] = [found(reach), found(-reach)];
  const plot = chart(
    [78, 40],
    [386, 210],
    {
      label: "reading, µm of sag",
      from: sag * 1000 - reach,
      to: sag * 1000 + reach,
    },
    { label: "radius, mm", from: low, to: high },
  );
  const at = (micrometres: number, value: number) =>
    plot.at(sag * 1000 + micrometres, value);
  const all = spread(-reach, reach, 61);
  return {
    width: 480,
    height: 300,
    shapes: [
      ...plot.shapes,
      line(at(-scatter, long), at(scatter, short), "second", {
        width: 2,
        dash: "7 5",
      }),
      curve(all.map((one) => at(one, found(one))), "first", { width: 3 }),
      dot(at(-scatter, long), 7, "first"),
      dot(at(scatter, short), 7, "first"),
      circle(at(0, mean), 8, "second", { width: 3 }),
      dot(at(0, ofMean), 7, "alarm"),
      words([458, 62], "two readings: dots", { anchor: "end", role: "first" }),
      words([458, 84], "their radii averaged: ring", {
        anchor: "end",
        role: "second",
      }),
      words([458, 106], "their sag averaged: low dot", {
        anchor: "end",
        role: "alarm",
      }),
    ],
    description:
      `The radius against the reading, for a sharp-edged ring of ${ring} mm on a sphere of ${radius} mm. The curve bends, so two readings ${scatter} µm too small and too large average to a radius that is too long by ${
        formatLength(mm(mean - ofMean), "mm", 2)
      }; their average sag gives the true one.`,
    numbers: [
      { label: "Sag", text: formatLength(sag, "µm", 1) },
      {
        label: "Radius from the average sag",
        text: formatLength(ofMean, "mm", 1),
      },
      {
        label: "Average of the two radii",
        text: formatLength(mm(mean), "mm", 1),
      },
      {
        label: "Too long by",
        text: formatLength(mm(mean - ofMean), "mm", 2),
      },
    ],
  };
}

/** Why sags are averaged and not radii. */
export const AVERAGING: Drawing = {
  title: "Averaging sag against averaging radius",
  controls: [
    slider("circle", "Ring radius", "mm", [10, 60, 0.5], 10),
    slider("scatter", "Two readings, off by", "µm", [0.1, 3, 0.1], 1),
    slider("radius", "Radius of curvature", "mm", [1000, 4000, 10], 3000),
  ],
  draw,
};
