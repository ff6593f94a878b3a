import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  controlChartConstants,
  groupsChart,
  individualsChart,
} from "sagbook/statistics/control_chart.ts";
import {
  deviationMean,
  rangeDeviation,
  rangeMean,
  rangeMeanOfOne,
} from "sagbook/statistics/range_constants.ts";
import { findRuns } from "sagbook/statistics/runs_rules.ts";
import { close, near, type Reference, references } from "./_references.ts";

for (const [name, file] of references("control-chart-constants")) {
  Deno.test(`controlChartConstants() agree with every row of ${name}`, () => {
    for (const row of file.data as Reference[]) {
      const found = controlChartConstants(row.n) as unknown as Record<
        string,
        number
      >;
      for (const [key, value] of Object.entries<number>(row.computed)) {
        close(
          found[key],
          value,
          file.tolerance.computed_relative * Math.abs(value),
          `${key} of ${row.n}`,
        );
      }
      for (const [key, value] of Object.entries<number>(row.printed)) {
        close(
          found[key],
          value,
          file.tolerance.printed_absolute,
          `printed ${key} of ${row.n}`,
        );
      }
    }
  });
}

Deno.test("range constants meet their closed forms for two and three values", () => {
  near(rangeMean(2), 2 / Math.sqrt(Math.PI), 1e-13, "d2 of 2");
  near(rangeMean(3), 3 / Math.sqrt(Math.PI), 1e-13, "d2 of 3");
  near(rangeDeviation(2), Math.sqrt(2 - 4 / Math.PI), 1e-11, "d3 of 2");
  near(rangeMeanOfOne(2), Math.SQRT2, 1e-11, "root mean square range of 2");
  near(deviationMean(2), Math.sqrt(2 / Math.PI), 1e-13, "c4 of 2");
  // Tippett (1925): mean range of 1,000 values 6.48287
  close(rangeMean(1000), 6.48287, 1e-5, "d2 of 1000");
});

Deno.test("range constants refuse a sample of one", () => {
  for (
    const find of [rangeMean, rangeDeviation, rangeMeanOfOne, deviationMean]
  ) {
    throws(() => find(1), {
      name: "RangeError",
      message:
        /the sample size must be a whole number of at least 2: current value is 1$/,
    });
  }
});

Deno.test("individualsChart() has limits 2.66 mean moving ranges from the mean", () => {
  const values = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  // NIST/SEMATECH e-Handbook 6.3.2.2: mean 50.81, mean moving range 1.8778,
  // limits 45.8215 and 55.8041 (with d2 printed as 1.128)
  const chart = individualsChart(values);
  close(chart.location.centre, 50.81, 5e-5, "centre");
  close(chart.range.centre, 1.8778, 5e-5, "mean moving range");
  close(chart.location.limits.high, 55.8041, 2e-3, "upper limit");
  close(chart.location.limits.low, 45.8159, 2e-3, "lower limit");
  equal(chart.location.signals.length, 0);
});

Deno.test("individualsChart() shows a drift and a jump in its ranges", () => {
  const drift = individualsChart([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  ok(
    drift.location.signals.some(({ rule }) =>
      rule === "seven rising or falling"
    ),
  );
  const jump = individualsChart([
    5,
    5.1,
    4.9,
    5,
    5.1,
    9,
    5,
    4.9,
    5.1,
    5,
    5.1,
    5,
  ]);
  deepEqual(jump.range.signals.map(({ to }) => to), [4, 5]);
});

Deno.test("charts of equal values have no width and no signal", () => {
  const chart = individualsChart([0.715, 0.715, 0.715]);
  equal(chart.sigma, 0);
  deepEqual(chart.location.limits, { low: 0.715, high: 0.715 });
  deepEqual([chart.location.signals, chart.range.signals], [[], []]);
  equal(groupsChart([[1, 1], [1, 1]]).location.signals.length, 0);
});

Deno.test("groupsChart() uses A2, D3 and D4 of its group size", () => {
  const groups = [[10, 12, 11], [9, 13, 11], [10, 10, 12]];
  const { A2, D3, D4, d2 } = controlChartConstants(3);
  const chart = groupsChart(groups);
  const meanRange = (2 + 4 + 2) / 3;
  near(
    chart.location.limits.high - chart.location.centre,
    A2 * meanRange,
    1e-12,
    "A2",
  );
  near(chart.range.limits.high, D4 * meanRange, 1e-12, "D4");
  equal(chart.range.limits.low, D3 * meanRange);
  near(chart.sigma, meanRange / d2, 1e-12, "sigma");
  throws(() => groupsChart([[1, 2], [1]]), {
    name: "RangeError",
    message:
      "Cannot chart groups as every group must have 2 values: current value is 1",
  });
});

Deno.test("findRuns() finds each rule once its pattern is complete and not before", () => {
  const rules = (values: number[]) =>
    findRuns(values, 0, 1).map(({ rule, to }) => [rule, to]);
  deepEqual(rules([3.01]), [["one beyond three sigma", 0]]);
  deepEqual(rules([3]), []);
  deepEqual(rules([2.1, 0, -2.1]), []);
  deepEqual(rules([2.1, 0, 2.1]), [["two of three beyond two sigma", 2]]);
  deepEqual(rules([-1.1, -1.2, 0.5, -1.1, -1.3]), [
    ["four of five beyond one sigma", 4],
  ]);
  const side = [0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1];
  deepEqual(rules(side), []);
  deepEqual(rules([...side, 0.2]), [["eight on one side", 7]]);
  deepEqual(rules([-0.3, -0.2, -0.1, 0, 0.1, 0.2]), []);
  deepEqual(rules([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3]), [
    ["seven rising or falling", 6],
  ]);
  throws(() => findRuns([1], 0, 0), {
    name: "RangeError",
    message:
      "Cannot look for runs as sigma must be finite and above 0: current value is 0",
  });
});
