import { match, ok, rejects } from "node:assert/strict";
import { rateFigure } from "sagbook/figures/rate_figure.ts";
import { textsOf } from "./_picture.ts";

Deno.test("rateFigure() says which work went away from the target and greys that side only then", async () => {
  const good = { label: "80", rate: 0.004 };
  const bad = { label: "120", rate: -0.002, expected: 0.003 };
  const figure = await rateFigure({ workUnit: "wet", stretches: [good, bad] });
  match(figure.description, /80 4 µm; 120 −2 µm \(away from the target\)/);
  ok(
    textsOf(figure).includes("away from the target") &&
      textsOf(figure).includes("expected"),
  );
  ok(
    !textsOf(
      await rateFigure({
        workUnit: "wet",
        stretches: [good, { ...good, label: "b", rate: 0.001 }],
      }),
    ).includes("expected"),
  );
});

Deno.test("rateFigure() names the unit of work once on its axis", async () => {
  const texts = textsOf(
    await rateFigure({
      workUnit: "minute",
      stretches: [{ label: "80", rate: 0.004 }],
    }),
  );
  ok(texts.includes("Change of sag for one minute (µm)"));
});

Deno.test("rateFigure() breaks no word of a name, however many stretches there are", async () => {
  const texts = textsOf(
    await rateFigure({
      workUnit: "wet",
      stretches: Array.from({ length: 14 }, (_, i) => ({
        label: i === 0 ? "polishing\nmirror" : `F${80 + i}\nmirror`,
        rate: i === 3 ? -0.001 : 0.004,
      })),
    }),
  );
  ok(texts.includes("polishing") && texts.includes("mirror"), `${texts}`);
  ok(texts.includes("went the wrong way"));
});

Deno.test("rateFigure() names every stretch of a whole piece, in lines where it must", async () => {
  const grades = ["F80", "F120", "F220", "F320", "F500", "F800"];
  const texts = textsOf(
    await rateFigure({
      workUnit: "wet",
      stretches: grades.map((grade) => ({ label: `${grade} mirror`, rate: 1 })),
    }),
  ).join(" ");
  for (const grade of grades) ok(texts.includes(grade), grade);
});

Deno.test("rateFigure() raises no alarm where the interval leaves the direction open", async () => {
  const circles = async (high: number) =>
    (await rateFigure({
      workUnit: "wet",
      stretches: [{ label: "a", rate: -1, interval95: { low: -3, high } }],
    })).svg.match(/alarm/g)?.length ?? 0;
  ok(await circles(-0.5) > await circles(1));
});

Deno.test("rateFigure() refuses no work and a rate that is no number", async () => {
  await rejects(rateFigure({ workUnit: "wet", stretches: [] }), {
    name: "RangeError",
    message:
      "Cannot draw the rates as there must be at least one stretch of work: current value is 0 of them",
  });
  await rejects(
    rateFigure({ workUnit: "wet", stretches: [{ label: "80", rate: NaN }] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the rates as the rate of 80 must be a finite number: current value is NaN mm",
    },
  );
});
