import { deepEqual, equal, ok } from "node:assert/strict";
import { chartZero } from "sagbook/repeatability/zero_chart.ts";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { readCase, readingsOf } from "./_readings.ts";

/** One reading for each zeroing, with what the flat showed before it. */
const withZeros = (zeros: readonly number[]) =>
  readingsOf(zeros.map((_, zeroing) => ({ zeroing }))).map((one, k) => ({
    ...one,
    zeroBefore: mm(zeros[k]),
  }));

Deno.test("chartZero() charts zero_before as single values with moving ranges, as a handbook's example", () => {
  // NIST/SEMATECH e-Handbook, section 6.3.2.2, flow rates of ten batches (from
  // memory, confirmed by recomputation): 50.81, limits 45.82 and 55.80.
  const flows = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const { before, looks } = chartZero(withZeros(flows));
  ok(before.kind === "chart");
  equal(before.form, "individuals");
  equal(before.chart.location.centre.toFixed(2), "50.81");
  equal(before.chart.range.centre.toFixed(4), "1.8778");
  equal(before.chart.location.limits.high.toFixed(2), "55.80");
  equal(before.chart.location.limits.low.toFixed(2), "45.82");
  deepEqual(looks, { kind: "none", reason: "not recorded" });
});

Deno.test("chartZero() flags a zero that leapt, and nothing where all are equal", () => {
  const leapt = chartZero(
    withZeros([0, 0.001, 0, 0.001, 0, 0.001, 0, 0.02, 0, 0.001]),
  );
  ok(leapt.before.kind === "chart");
  ok(
    leapt.before.chart.location.signals.some(({ rule, to }) =>
      rule === "one beyond three sigma" && to === 7
    ),
  );
  const still = chartZero(withZeros([0.001, 0.001, 0.001]));
  ok(still.before.kind === "chart" && still.before.allEqual);
  deepEqual(still.before.chart.location.signals, []);
});

Deno.test("chartZero() charts looks before and after each set as means and ranges, and shows the warm hands", () => {
  const { looks, before } = chartZero(inventStudy({ seed: 1 }).readings);
  ok(looks.kind === "chart");
  equal(looks.form, "groups");
  equal(looks.points.length, 24);
  equal(looks.chart.range.points.length, 24);
  const ranges = (who: string) =>
    looks.points.filter(({ operator }) => operator === who).map(({ shown }) =>
      Math.abs(shown[1] - shown[0])
    );
  const mean = (values: number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  ok(mean(ranges("C")) > 2 * mean(ranges("A")));
  ok(
    before.kind === "chart" && before.points.length === 23,
    "the first zero has no past",
  );
});

Deno.test("chartZero() takes single looks as single values, and needs two", async () => {
  const { readings } = await readCase("G05-hand-heat");
  deepEqual(chartZero(readings), {
    before: { kind: "none", reason: "not recorded" },
    looks: { kind: "none", reason: "fewer than two" },
  });
  const flats = readingsOf([{ zeroing: 1 }, { zeroing: 2 }, { zeroing: 2 }])
    .map((one) => ({ ...one, on: "flat" as const, sag: mm(0) }));
  const { looks } = chartZero(flats);
  ok(looks.kind === "chart" && looks.form === "individuals");
  deepEqual(chartZero([]).looks, { kind: "none", reason: "not recorded" });
});
