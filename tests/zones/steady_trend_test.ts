import { equal, ok, throws } from "node:assert/strict";
import { type SteadyTrend, steadyTrend } from "sagbook/zones/steady_trend.ts";

const near = (found: SteadyTrend | undefined, chance: number) =>
  ok(found && Math.abs(found.chance - chance) < 1e-12, `${found?.chance}`);

Deno.test("steadyTrend() gives the chances of R's exact test of Kendall", () => {
  // cor.test(seq_along(x), x, method = "kendall", exact = TRUE) in R 4.
  near(steadyTrend([1, 2, 3, 4, 5]), 0.0166666666666666);
  near(steadyTrend([1, 2, 3, 5, 4, 6]), 0.0166666666666666);
  near(steadyTrend([3, 1, 2, 5, 4, 7, 6, 9, 8]), 0.00588624338624344);
});

Deno.test("steadyTrend() finds a fall as it finds a climb, by the median slope", () => {
  const climb = [0, 1, 2, 3, 4, 50];
  equal(steadyTrend(climb)?.change, 5);
  equal(steadyTrend(climb.map((value) => -value))?.change, -5);
});

Deno.test("steadyTrend() finds none in few, equal or mixed values", () => {
  for (
    const values of [[], [1], [1, 2, 3, 4], [2, 2, 2, 2, 2, 2], [
      1,
      5,
      2,
      4,
      3,
      6,
    ]]
  ) equal(steadyTrend(values), undefined);
});

Deno.test("steadyTrend() goes over to the approximation without a jump", () => {
  const noisy = (count: number) =>
    Array.from({ length: count }, (_, k) => k + 60 * ((k * 7919) % 31) / 31);
  const [counted, approximate] = [noisy(50), noisy(51)].map(steadyTrend);
  ok(counted && approximate);
  ok(Math.abs(Math.log(counted.chance / approximate.chance)) < 0.7);
  ok(steadyTrend(noisy(400)));
});

Deno.test("steadyTrend() refuses what is no number", () => {
  throws(() => steadyTrend([1, NaN, 3]), {
    name: "RangeError",
    message:
      "Cannot look for a trend as every value must be a finite number: current value is NaN",
  });
});
