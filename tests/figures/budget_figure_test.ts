import { deepEqual, equal, ok, rejects } from "node:assert/strict";
import { budgetFigure } from "sagbook/figures/budget_figure.ts";
import { textsOf } from "./_picture.ts";

Deno.test("budgetFigure() ranks the sources by size, whatever their sign or order", async () => {
  const texts = textsOf(
    await budgetFigure({
      lines: [
        { source: "repeat", contribution: 1 },
        { source: "ring radius", contribution: -3, common: true },
        { source: "zeroing", contribution: 2 },
      ],
      standardUncertainty: Math.sqrt(14),
    }),
  );
  const rows = texts.filter((text) =>
    ["repeat", "ring radius", "zeroing", "combined"].includes(text)
  );
  deepEqual(rows.slice(-4), ["ring radius", "zeroing", "repeat", "combined"]);
  ok(texts.includes("3.7 mm"));
});

Deno.test("budgetFigure() adds the sources from the ninth on as squares", async () => {
  const lines = Array.from(
    { length: 12 },
    (_, i) => ({ source: `s${i}`, contribution: i < 8 ? 10 : 1.5 }),
  );
  const texts = textsOf(
    await budgetFigure({ lines, standardUncertainty: 28.44 }),
  );
  // Four of 1.5 mm: √4 · 1.5 = 3 mm.
  ok(
    texts.includes("4 others together") && texts.includes("3.0 mm"),
    `${texts}`,
  );
});

Deno.test("budgetFigure() draws bars in proportion", async () => {
  const { svg } = await budgetFigure({
    lines: [{ source: "a", contribution: 3 }, { source: "b", contribution: 4 }],
    standardUncertainty: 5,
  });
  const widths = [...svg.matchAll(/<rect height="24.64" width="([\d.]+)"/g)]
    .map(
      (m) => Number(m[1]),
    );
  equal(widths.length, 3);
  const unit = widths[0] / 4;
  deepEqual(widths.map((w) => Math.round(100 * w / unit) / 100), [4, 3, 5]);
});

Deno.test("budgetFigure() refuses an empty budget and a contribution that is no number", async () => {
  await rejects(budgetFigure({ lines: [], standardUncertainty: 1 }), {
    name: "RangeError",
    message:
      "Cannot draw the budget as there must be at least one source: current value is 0 of them",
  });
  await rejects(
    budgetFigure({
      lines: [{ source: "a", contribution: NaN }],
      standardUncertainty: 1,
    }),
    {
      name: "RangeError",
      message:
        "Cannot draw the budget as the contribution of a must be a finite number: current value is NaN mm",
    },
  );
});
