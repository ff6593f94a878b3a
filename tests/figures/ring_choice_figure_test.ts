import { equal, match, ok, rejects } from "node:assert/strict";
import { ringChoiceFigure } from "sagbook/figures/ring_choice_figure.ts";
import { textsOf } from "./_picture.ts";

const curve = [20, 40, 80].map((ringRadius) => ({
  ringRadius,
  detectable: 160 / ringRadius,
}));
const radius = {
  label: "radius",
  scale: "radius",
  curve,
  owned: [{ ring: 0, ringRadius: 40, detectable: 4 }],
} as const;

Deno.test("ringChoiceFigure() gives each question a panel, one axis of ring sizes, and names what no ring can see", async () => {
  const figure = await ringChoiceFigure({
    rings: ["A"],
    questions: [
      radius,
      {
        ...radius,
        label: "edge fault",
        scale: "surface",
        best: { ringRadius: 20, detectable: 0.001 },
      },
      { label: "astigmatism", scale: "surface", curve: [], owned: [] },
    ],
  });
  const texts = textsOf(figure);
  ok(texts.includes("Smallest detectable: radius (mm)"));
  ok(texts.includes("Smallest detectable: edge fault (µm)"));
  equal(
    texts.filter((text) => text.startsWith("Radius of the foot circle")).length,
    1,
  );
  ok(texts.includes("No ring with three feet can see: astigmatism."));
  match(
    figure.description,
    /radius: A 4 mm\. edge fault: A 4000 µm; best possible 1 µm at 20 mm\. No ring can see: astigmatism/,
  );
});

Deno.test("ringChoiceFigure() draws a power law as a straight line on its logarithmic axis over equal ratios", async () => {
  const law = [20, 30, 40, 50].map((r) => ({
    ringRadius: r,
    detectable: 10 ** (r / 20),
  }));
  const { svg } = await ringChoiceFigure({
    rings: [],
    questions: [{ ...radius, curve: law, owned: [] }],
  });
  const line = [...svg.matchAll(/ d="(M[\d.,L-]+)"/g)].map(([, d]) =>
    d.slice(1).split("L").map((p) => p.split(",").map(Number))
  )
    .find((points) => points.length === 4)!;
  const slopes = line.slice(1).map(([x, y], i) =>
    (y - line[i][1]) / (x - line[i][0])
  );
  ok(slopes.every((slope) => Math.abs(slope - slopes[0]) < 2e-3), `${slopes}`);
});

Deno.test("ringChoiceFigure() refuses an amount of zero, which has no logarithm", async () => {
  await rejects(
    ringChoiceFigure({
      rings: [],
      questions: [{ ...radius, curve: [{ ringRadius: 20, detectable: 0 }] }],
    }),
    {
      name: "RangeError",
      message:
        "Cannot draw the choice of ring as a detectable amount of radius must be above 0: current value is 0 mm",
    },
  );
});
