import { match, ok, rejects } from "node:assert/strict";
import { progressFigure } from "sagbook/figures/progress_figure.ts";
import { textsOf } from "./_picture.ts";

const input = {
  quantity: "radius",
  workUnit: "wets",
  sessions: [{ work: 10, value: 3060 }, { work: 0, value: 3120 }],
} as const;

Deno.test("progressFigure() orders sessions by work and names the limit of work with its risk", async () => {
  const { description } = await progressFigure({
    ...input,
    target: 3000,
    stop: { work: 16.4, risk: 0.05 },
  });
  match(
    description,
    /from 3120\.0 mm to 3060\.0 mm, target 3000\.0 mm; up to 16 wets the risk of passing it stays at 5 %/,
  );
});

Deno.test("progressFigure() shows only what it was given", async () => {
  const plain = textsOf(await progressFigure(input)).join("|");
  for (
    const word of ["target", "forecast", "fitted", "stop", "wrong", "interval"]
  ) {
    ok(!plain.includes(word), word);
  }
  const full = textsOf(
    await progressFigure({
      ...input,
      sessions: input.sessions.map((s) => ({
        ...s,
        interval95: { low: s.value - 5, high: s.value + 5 },
        wrongWay: true,
      })),
      fit: [{ work: 0, value: 3120 }, { work: 10, value: 3060 }],
      forecast: [{ work: 10, value: 3060, low: 3050, high: 3070 }, {
        work: 20,
        value: 3000,
        low: 2980,
        high: 3020,
      }],
      target: 3000,
      tolerance: 5,
      stop: { work: 15, risk: 0.05 },
    }),
  ).join("|");
  for (
    const word of [
      "target ± tolerance",
      "forecast, 95 %",
      "fitted",
      "stop here: risk 5 %",
      "went the wrong way",
      "95 % interval",
    ]
  ) {
    ok(full.includes(word), word);
  }
});

Deno.test("progressFigure() shows sag in the user's unit", async () => {
  const texts = textsOf(
    await progressFigure({
      ...input,
      quantity: "sag",
      sessions: [{ work: 0, value: 0.6013 }],
    }, { unit: "in" }),
  );
  ok(
    texts.includes("Sag (in)") &&
      texts.some((text) => text.startsWith("0.023")),
    `${texts}`,
  );
});

Deno.test("progressFigure() refuses no session and a forecast that runs backward", async () => {
  await rejects(progressFigure({ ...input, sessions: [] }), {
    name: "RangeError",
    message:
      "Cannot draw the progress as there must be at least one session: current value is 0 of them",
  });
  await rejects(
    progressFigure({
      ...input,
      forecast: [{ work: 1, value: 1, low: 2, high: 1 }],
    }),
    {
      name: "RangeError",
      message:
        "Cannot draw the progress as the forecast must not end below its start: current value is 2 to 1 mm",
    },
  );
});
