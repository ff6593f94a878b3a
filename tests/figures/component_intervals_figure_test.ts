import { deepEqual, match, ok, rejects } from "node:assert/strict";
import { componentIntervalsFigure } from "sagbook/figures/component_intervals_figure.ts";
import { textsOf } from "./_picture.ts";

Deno.test("componentIntervalsFigure() numbers the axis on top in radius", async () => {
  const figure = await componentIntervalsFigure({
    components: [{
      label: "repeat",
      deviation: 0.004,
      interval95: { low: 0.002, high: 0.0049 },
    }],
    radiusPerSag: -5000,
  });
  const texts = textsOf(figure);
  // 1 µm of sag is 5 mm of radius here.
  const numbers = texts.filter((text) => /^\d+$/.test(text));
  deepEqual(numbers, [
    "0",
    "1",
    "2",
    "3",
    "4",
    "5",
    "0",
    "5",
    "10",
    "15",
    "20",
    "25",
  ]);
  ok(texts.includes("Standard deviation in radius (mm)"));
});

Deno.test("componentIntervalsFigure() cuts an interval that would flatten the others, and names its end", async () => {
  const figure = await componentIntervalsFigure({
    components: [
      {
        label: "repeat",
        deviation: 0.001,
        interval95: { low: 0.0008, high: 0.0013 },
      },
      {
        label: "operator",
        deviation: 0.001,
        interval95: { low: 0, high: 0.9 },
      },
    ],
    radiusPerSag: -5000,
  });
  ok(textsOf(figure).includes("Cut at the edge: operator up to 900 µm."));
  match(figure.description, /operator 1 µm \(0 µm to 900 µm\)/);
});

Deno.test("componentIntervalsFigure() names what the readings cannot tell and draws no mark for it", async () => {
  const figure = await componentIntervalsFigure({
    components: [{ label: "repeat", deviation: 0.001 }, {
      label: "zone × zeroing",
    }],
    radiusPerSag: -5000,
  });
  ok(textsOf(figure).includes("These readings cannot tell: zone × zeroing."));
});

Deno.test("componentIntervalsFigure() refuses no component and a factor of zero", async () => {
  await rejects(componentIntervalsFigure({ components: [], radiusPerSag: 1 }), {
    name: "RangeError",
    message:
      "Cannot draw the intervals of the components as there must be at least one component: current value is 0 of them",
  });
  await rejects(
    componentIntervalsFigure({ components: [{ label: "a" }], radiusPerSag: 0 }),
    {
      name: "RangeError",
      message:
        "Cannot draw the intervals of the components as the change of radius for one mm of sag must be above 0: current value is 0 mm",
    },
  );
});
