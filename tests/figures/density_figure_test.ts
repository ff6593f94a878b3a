import { match, ok, rejects } from "node:assert/strict";
import { densityFigure } from "sagbook/figures/density_figure.ts";
import { textsOf } from "./_picture.ts";

const bins = [
  { low: 2990, high: 3000, share: 0.5 },
  { low: 3000, high: 3020, share: 0.5 },
];
const input = { bins, value: 3000, interval: { low: 2995, high: 3010 } };

Deno.test("densityFigure() draws areas, not shares: a bin twice as wide is half as high", async () => {
  const { svg } = await densityFigure(input);
  const heights = [
    ...svg.matchAll(/<rect height="([\d.]+)" [^>]*y="[\d.]+"><\/rect>/g),
  ].map((m) => Number(m[1]))
    .filter((h) => h > 20);
  const [high, low] = [Math.max(...heights), Math.min(...heights)];
  ok(Math.abs(high / low - 2) < 0.01, `${heights}`);
});

Deno.test("densityFigure() shades a bin only as far as the interval goes", async () => {
  const { svg } = await densityFigure(input);
  const widths = [
    ...svg.matchAll(
      /<rect height="[\d.]+" width="([\d.]+)" x="([\d.]+)" y="[\d.]+"><\/rect>/g,
    ),
  ]
    .map((m) => Number(m[1]));
  // 2990–2995, 2995–3000, 3000–3010 and 3010–3020 mm.
  const unit = Math.min(...widths) / 5;
  const found = widths.map((w) => Math.round(w / unit)).sort((a, b) => a - b);
  ok(found.join() === "5,5,10,10", `${found}`);
});

Deno.test("densityFigure() names both intervals to two figures of the half width", async () => {
  const figure = await densityFigure({
    ...input,
    firstOrder: { low: 2993, high: 3007 },
    confidence: 0.9,
  });
  match(
    figure.description,
    /3000\.0 mm, 90 % interval 2995\.0 mm to 3010\.0 mm by simulation, 2993\.0 mm to 3007\.0 mm by the first-order budget/,
  );
  ok(textsOf(figure).some((text) => text.startsWith("90 % by the budget")));
});

Deno.test("densityFigure() refuses bins that overlap or have no width", async () => {
  for (const broken of [[bins[1], bins[0]], [{ low: 1, high: 1, share: 1 }]]) {
    await rejects(densityFigure({ ...input, bins: broken }), {
      name: "RangeError",
      message:
        /^Cannot draw the spread as bins must follow one another and have a width: current value is /,
    });
  }
  await rejects(
    densityFigure({ ...input, bins: [{ ...bins[0], share: -0.1 }] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the spread as the share of a bin must be at least 0: current value is -0.1",
    },
  );
});
