import { match, ok, rejects } from "node:assert/strict";
import { canTellApartFigure } from "sagbook/figures/can_tell_apart_figure.ts";
import { textsOf } from "./_picture.ts";

const bars = [
  { label: "display step", amount: 0.001, kind: "gauge" },
  { label: "tolerance", amount: 0.002, kind: "question" },
] as const;

Deno.test("canTellApartFigure() says of each question, and of no property of the gauge, whether it can be told", async () => {
  const { description } = await canTellApartFigure({ bars, smallest: 0.002 });
  match(description, /display step 1 µm; tolerance 2 µm, can be told\.$/);
  match(
    (await canTellApartFigure({ bars, smallest: 0.0021 })).description,
    /tolerance 2 µm, cannot be told\.$/,
  );
});

Deno.test("canTellApartFigure() gives each amount in radius too where the factor is known", async () => {
  const texts = textsOf(
    await canTellApartFigure({ bars, smallest: 0.002, radiusPerSag: -5000 }),
  );
  ok(
    texts.includes("1 µm = 5 mm of R") && texts.includes("2 µm = 10 mm of R"),
    `${texts}`,
  );
});

Deno.test("canTellApartFigure() refuses an amount of zero", async () => {
  await rejects(
    canTellApartFigure({ bars: [{ ...bars[0], amount: 0 }], smallest: 0.002 }),
    {
      name: "RangeError",
      message:
        "Cannot draw what the gauge can tell apart as display step must be above 0: current value is 0 mm",
    },
  );
});
