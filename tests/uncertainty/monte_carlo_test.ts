import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { sortedTails } from "../../lib/uncertainty/_order_statistics.ts";
import { Random } from "sagbook/numerics/random.ts";
import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
import { coverageIntervals } from "sagbook/uncertainty/coverage_interval.ts";
import type {
  Distribution,
  UncertainInput,
} from "sagbook/uncertainty/distribution.ts";
import { histogramOf } from "sagbook/uncertainty/histogram.ts";
import { checkBudget, monteCarlo } from "sagbook/uncertainty/monte_carlo.ts";

const input = (distribution: Distribution, value = 0): UncertainInput => ({
  source: "x",
  unit: "",
  value,
  distribution,
});

Deno.test("coverageIntervals() finds what a full sort finds, for any shape and size", () => {
  const random = new Random(1);
  const shapes: ((x: number) => number)[] = [
    (x) => x,
    (x) => Math.exp(x),
    (x) => 1 / x,
    (x) => Math.round(x),
    (x) => x < 0 ? x - 100 : x,
  ];
  for (const shape of shapes) {
    for (const size of [100, 16_383, 16_385, 60_000]) {
      const values = Float64Array.from(
        { length: size },
        () => shape(random.normal()),
      );
      const sorted = values.toSorted();
      for (const confidence of [0.5, 0.9, 0.95, 0.99]) {
        const span = Math.floor(confidence * size + 0.5);
        let best = 0;
        for (let r = 0; r + span < size; r++) {
          const width = sorted[r + span] - sorted[r];
          if (width < sorted[best + span] - sorted[best]) best = r;
        }
        const { shortest, symmetric } = coverageIntervals(values, confidence);
        deepEqual(shortest, {
          lower: sorted[best],
          upper: sorted[best + span],
        });
        const middle = Math.floor((size - span + 1) / 2) - 1;
        deepEqual(symmetric, {
          lower: sorted[middle],
          upper: sorted[middle + span],
        });
      }
    }
  }
});

Deno.test("sortedTails() is exact also when its sample misleads, and with many equal values", () => {
  const size = 100_000;
  const wave = new Float64Array(size);
  // A wave with the period of the sample, so that the sample sees one value.
  for (let i = 0; i < size; i++) {
    wave[i] = Math.sin(2 * Math.PI * (i + 0.5) * 4096 / size) + i * 1e-9;
  }
  const steps = Float64Array.from(wave, (value) => Math.round(3 * value));
  for (const values of [wave, steps]) {
    const sorted = values.toSorted();
    for (const count of [1, 100, 5000, 60_000]) {
      const { lows, highs } = sortedTails(values, count);
      deepEqual(lows, sorted.slice(0, count));
      deepEqual(highs, sorted.slice(size - count));
    }
  }
});

Deno.test("coverageIntervals() refuses too few values and shares outside 0 to 1", () => {
  throws(() => coverageIntervals(new Float64Array(9), 0.95), {
    name: "RangeError",
    message:
      "Cannot find a coverage interval as there must be more than 20 values: current value is 9",
  });
  throws(() => coverageIntervals(new Float64Array(100), 1), {
    name: "RangeError",
    message:
      "Cannot find a coverage interval as the confidence must be above 0 and below 1: current value is 1",
  });
});

Deno.test("monteCarlo() draws every distribution with its deviation and its tails", () => {
  const cases: [Distribution, number, number][] = [
    [{ kind: "normal", standardDeviation: 2 }, 2, 2 * 1.959964],
    [{ kind: "rectangular", halfWidth: 3 }, Math.sqrt(3), 3 * 0.95],
    [
      { kind: "triangular", halfWidth: 3 },
      3 / Math.sqrt(6),
      3 * (1 - Math.sqrt(0.05)),
    ],
    [
      { kind: "arcsine", halfWidth: 3 },
      3 / Math.SQRT2,
      3 * Math.sin(0.95 * Math.PI / 2),
    ],
    [
      { kind: "student", scale: 2, dof: 9 },
      2 * Math.sqrt(9 / 7),
      2 * studentTQuantile(0.025, 9, "upper"),
    ],
    [
      { kind: "student", scale: 2, dof: Infinity },
      2,
      2 * 1.959964,
    ],
  ];
  for (const [distribution, deviation, end] of cases) {
    const drawn = monteCarlo(([x]) => x, [input(distribution, 7)], {
      random: new Random(3),
      draws: 400_000,
    });
    ok(Math.abs(drawn.mean - 7) < 0.02, distribution.kind);
    ok(Math.abs(drawn.standardUncertainty / deviation - 1) < 0.01);
    ok(Math.abs(drawn.symmetric.upper - 7 - end) < 0.02 * end);
    ok(Math.abs(drawn.symmetric.lower - 7 + end) < 0.02 * end);
  }
});

Deno.test("monteCarlo() draws Student's t of few, broken and many degrees of freedom with its tails", () => {
  for (const dof of [1, 1.5, 2, 3, 5.5, 30]) {
    const { symmetric } = monteCarlo(
      ([x]) => x,
      [input({ kind: "student", scale: 1, dof })],
      { random: new Random(4), draws: 400_000 },
    );
    const end = studentTQuantile(0.025, dof, "upper");
    ok(Math.abs(symmetric.upper / end - 1) < 0.03, `${dof}`);
  }
});

Deno.test("monteCarlo() stops when two figures have settled, and says when they have not", () => {
  const normal = input({ kind: "normal", standardDeviation: 1.5 });
  const one = monteCarlo(([x]) => x, [normal], {
    random: new Random(5),
    figures: 1,
  });
  const two = monteCarlo(([x]) => x, [normal], { random: new Random(5) });
  ok(one.settled && two.settled);
  ok(one.draws < two.draws && two.draws < 1_000_000, `${two.draws}`);
  equal(two.tolerance, 0.05);
  ok(Math.abs(two.shortest.upper - 1.5 * 1.959964) < 0.1);
  const cauchy = input({ kind: "student", scale: 1, dof: 1 });
  const never = monteCarlo(([x]) => x, [cauchy], {
    random: new Random(5),
    maximumDraws: 200_000,
  });
  equal(never.settled, false);
  equal(never.draws, 200_000);
});

Deno.test("monteCarlo() gives the same draws for the same seed, and one value for a known model", () => {
  const normal = input({ kind: "normal", standardDeviation: 1 });
  const run = (seed: number) =>
    monteCarlo(([x]) => x, [normal], {
      random: new Random(seed),
      draws: 1000,
    });
  deepEqual(run(1), run(1));
  ok(run(1).mean !== run(2).mean);
  const known = monteCarlo(
    ([x]) => x,
    [input({ kind: "normal", standardDeviation: 0 }, 3)],
    { random: new Random(1) },
  );
  deepEqual([known.mean, known.standardUncertainty, known.settled], [
    3,
    0,
    true,
  ]);
  deepEqual(known.shortest, { lower: 3, upper: 3 });
});

Deno.test("monteCarlo() draws correlated normal inputs, and refuses others", () => {
  const normal = input({ kind: "normal", standardDeviation: 1 });
  const correlation = [[1, 0.9], [0.9, 1]];
  const options = { random: new Random(6), draws: 200_000, correlation };
  const sum = monteCarlo(([x, y]) => x + y, [normal, normal], options);
  const difference = monteCarlo(([x, y]) => x - y, [normal, normal], options);
  ok(Math.abs(sum.standardUncertainty / Math.sqrt(3.8) - 1) < 0.01);
  ok(Math.abs(difference.standardUncertainty / Math.sqrt(0.2) - 1) < 0.01);
  const step = input({ kind: "rectangular", halfWidth: 1 });
  throws(() => monteCarlo(([x, y]) => x + y, [normal, step], options), {
    name: "RangeError",
    message:
      "Cannot draw correlated inputs as they must be normal: current value of x is rectangular",
  });
});

Deno.test("monteCarlo() refuses a model that gives no number", () => {
  throws(
    () =>
      monteCarlo(([x]) => Math.sqrt(x), [
        input({ kind: "normal", standardDeviation: 1 }),
      ], { random: new Random(1) }),
    {
      name: "RangeError",
      message:
        "Cannot draw from a model as its result must be a finite number for every draw: current value of a mean is NaN",
    },
  );
});

Deno.test("checkBudget() accepts half a unit in the last figure and no more", () => {
  const budget = { lower: 1, upper: 3, standardUncertainty: 0.51 };
  const check = (lower: number, upper: number, figures: 1 | 2 = 2) =>
    checkBudget(budget, { lower, upper }, figures);
  equal(check(1.004, 3.004).valid, true);
  equal(check(1.006, 3).valid, false);
  equal(check(1, 2.994).valid, false);
  equal(check(1, 2.96, 1).valid, true);
});

Deno.test("histogramOf() counts every value once", () => {
  const random = new Random(8);
  const values = new Float64Array(10_000);
  random.fillNormal(values);
  const { counts, outside, start, width } = histogramOf(values, {
    lower: -1,
    upper: 1,
  });
  equal(
    counts.reduce((sum, n) => sum + n, 0) + outside[0] + outside[1],
    10_000,
  );
  equal(counts.length, 80);
  ok(Math.abs(start + 2) < 1e-12 && Math.abs(width - 0.05) < 1e-12);
  deepEqual(histogramOf(Float64Array.of(2, 2), { lower: 2, upper: 2 }).counts, [
    2,
  ]);
});
