import { Random } from "sagbook/numerics/random.ts";
import { coverageIntervals } from "sagbook/uncertainty/coverage_interval.ts";
import { monteCarlo } from "sagbook/uncertainty/monte_carlo.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import { radiusModel } from "sagbook/uncertainty/radius_model.ts";
import { RADIUS_CASE } from "./_radius_case.ts";

const random = new Random(1);
const million = new Float64Array(1_000_000);
const { inputs, curvature } = radiusModel(RADIUS_CASE);

Deno.bench("10^6 normal numbers", { group: "random", n: 20 }, () => {
  random.fillNormal(million);
});
Deno.bench("10^6 uniform numbers", { group: "random", n: 20 }, () => {
  random.fillUniform(million);
});
Deno.bench("both intervals of 10^6", { group: "interval", n: 20 }, (bench) => {
  random.fillNormal(million);
  bench.start();
  coverageIntervals(million);
  bench.end();
});
Deno.bench(
  "10^6 draws of a radius, 15 inputs",
  { group: "radius", n: 20 },
  () => {
    monteCarlo((x) => 1 / curvature(x), inputs, { random, draws: 1_000_000 });
  },
);
Deno.bench("budget of a radius, 15 inputs", { group: "radius", n: 20 }, () => {
  radiusBudget(RADIUS_CASE);
});
