import { equal, match, ok, rejects } from "node:assert/strict";
import { controlChartFigure } from "sagbook/figures/control_chart_figure.ts";
import { textsOf } from "./_picture.ts";

const chart = {
  quantity: "Zero",
  values: [0, 0.001, 0.003],
  centre: 0,
  lower: -0.002,
  upper: 0.002,
};
const input = { labels: ["1", "2", "3"], labelled: "Zeroing", charts: [chart] };

Deno.test("controlChartFigure() marks exactly the values that break a rule", async () => {
  const marked = await controlChartFigure({
    ...input,
    charts: [{ ...chart, signals: [2] }],
  });
  const { svg } = marked;
  const rings = svg.slice(svg.lastIndexOf('class="s-alarm"')).match(/<path /g);
  equal(rings?.length, 1);
  ok(textsOf(marked).includes("breaks a rule"));
  ok(!textsOf(await controlChartFigure(input)).includes("breaks a rule"));
  match(marked.description, /Zero: 3 values, 1 breaks a rule \(3\)/);
  match((await controlChartFigure(input)).description, /none breaks a rule/);
});

Deno.test("controlChartFigure() puts two charts on one axis of labels", async () => {
  const range = {
    quantity: "Moving range",
    values: [0, 0.001, 0.002],
    centre: 0.001,
    upper: 0.003,
  };
  const texts = textsOf(
    await controlChartFigure({ ...input, charts: [chart, range] }),
  );
  equal(texts.filter((text) => text === "Zeroing").length, 1);
  ok(texts.includes("Zero (µm)") && texts.includes("Moving range (µm)"));
  ok(!texts.includes("−1"), "a range has no numbers below zero");
});

Deno.test("controlChartFigure() refuses a chart that does not go with the labels", async () => {
  await rejects(controlChartFigure({ ...input, labels: ["1"] }), {
    name: "RangeError",
    message:
      "Cannot draw the control chart as Zero must have a value for each of 1 labels: current value is 3 values",
  });
  await rejects(
    controlChartFigure({ ...input, charts: [{ ...chart, upper: Infinity }] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the control chart as the upper limit of Zero must be a finite number: current value is Infinity mm",
    },
  );
});

Deno.test("controlChartFigure() starts a range at 0, without signs", async () => {
  const figure = await controlChartFigure({
    labels: ["1", "2", "3"],
    labelled: "Zeroing",
    charts: [{
      quantity: "Range",
      values: [0.001, 0.004, 0],
      centre: 0.0017,
      lower: 0,
      upper: 0.005,
      signals: [],
    }],
  });
  const texts = textsOf(figure);
  ok(!texts.some((text) => /^[+−]\d/.test(text)), texts.join());
  ok(texts.includes("0"));
});
