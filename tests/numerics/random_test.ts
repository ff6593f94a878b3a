import { deepEqual, equal, notDeepEqual, ok, throws } from "node:assert/strict";
import { hash64, splitMix64 } from "../../lib/numerics/_split_mix.ts";
import { Random } from "sagbook/numerics/random.ts";

const draws = (count: number, seed: number): Float64Array => {
  const target = new Float64Array(count);
  new Random(seed).fillNormal(target);
  return target;
};

Deno.test("Random gives the bits of the reference programs for seed 0", () => {
  // xoshiro128++ seeded by SplitMix64 from 0: the frozen vector in the tests of
  // the general-purpose crate rand_xoshiro (made with the authors' C program).
  const random = new Random(0);
  deepEqual(Array.from({ length: 5 }, () => random.bits()), [
    1179900579,
    1938959192,
    3089844957,
    3657088315,
    1015453891,
  ]);
});

Deno.test("Random seeds as SplitMix64 and FNV-1a are published to do", () => {
  // Rosetta Code, "Pseudo-random numbers/Splitmix64", seed 1234567.
  const words = splitMix64(1234567n);
  deepEqual(Array.from({ length: 5 }, () => words.next().value), [
    6457827717110365317n,
    3203168211198807973n,
    9817491932198370423n,
    4593380528125082431n,
    16408922859458223821n,
  ]);
  // Vectors of the FNV authors.
  equal(hash64(""), 0xcbf29ce484222325n);
  equal(hash64("a"), 0xaf63dc4c8601ec8cn);
  equal(hash64("foobar"), 0x85944171f73967e8n);
});

Deno.test("Random keeps its numbers from version to version", () => {
  const random = new Random(7);
  const frozen = [
    random.uniform(),
    random.normal(),
    random.integer(1000),
    random.fork("ring").uniform(),
    random.fork(1).uniform(),
  ];
  deepEqual(frozen, [
    0.095083535556996,
    2.0661996881621922,
    457,
    0.1551239043090319,
    0.9109525531635269,
  ]);
});

Deno.test("Random.fork depends on seed and label alone", () => {
  const fresh = new Random(3);
  const used = new Random(3);
  for (let i = 0; i < 10; i++) used.uniform();
  equal(fresh.fork("a").bits(), used.fork("a").bits());
  const first = (label: string | number) => new Random(3).fork(label).bits();
  equal(new Set([first("a"), first("b"), first("1"), first(1)]).size, 4);
});

Deno.test("Random.fillUniform and fillNormal give what single draws give", () => {
  for (const seed of [1, 2, 3]) {
    const bulk = new Float64Array(20_000);
    const single = new Random(seed);
    const filled = new Random(seed);
    filled.fillUniform(bulk);
    ok(bulk.every((value) => value === single.uniform()));
    filled.fillNormal(bulk);
    ok(bulk.every((value) => value === single.normal()));
    equal(filled.bits(), single.bits());
  }
});

Deno.test("Random.uniform stays inside (0, 1) and fills 1000 cells evenly", () => {
  // Chi-square with 999 degrees of freedom: mean 999, standard deviation 44.7.
  for (const seed of [1, 2, 3, 4, 5]) {
    const values = new Float64Array(1_000_000);
    new Random(seed).fillUniform(values);
    const cells = new Float64Array(1000);
    for (const value of values) {
      ok(value > 0 && value < 1);
      cells[Math.floor(value * 1000)]++;
    }
    const chiSquare = cells.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    ok(Math.abs(chiSquare - 999) < 4.5 * Math.sqrt(2 * 999), `${chiSquare}`);
  }
});

Deno.test("Random.uniform has no serial correlation at lags 1 to 20, nor pairs that cluster", () => {
  const n = 1_000_000;
  const values = new Float64Array(n);
  new Random(11).fillUniform(values);
  for (let lag = 1; lag <= 20; lag++) {
    let sum = 0;
    for (let i = lag; i < n; i++) {
      sum += (values[i] - 0.5) * (values[i - lag] - 0.5);
    }
    ok(Math.abs(12 * sum / Math.sqrt(n - lag)) < 4.5, `lag ${lag}`);
  }
  const cells = new Float64Array(64 * 64);
  for (let i = 0; i < n; i += 2) {
    cells[64 * Math.floor(values[i] * 64) + Math.floor(values[i + 1] * 64)]++;
  }
  const mean = n / 2 / cells.length;
  const chiSquare = cells.reduce((sum, c) => sum + (c - mean) ** 2 / mean, 0);
  const dof = cells.length - 1;
  ok(Math.abs(chiSquare - dof) < 4.5 * Math.sqrt(2 * dof), `${chiSquare}`);
});

Deno.test("Random.normal has the moments of a normal to 4.5 standard errors", () => {
  const n = 1_000_000;
  for (const seed of [1, 2, 3, 4, 5]) {
    let [first, second, third, fourth] = [0, 0, 0, 0];
    for (const x of draws(n, seed)) {
      first += x;
      second += x * x;
      third += x ** 3;
      fourth += x ** 4;
    }
    const root = Math.sqrt(n);
    ok(Math.abs(first / root) < 4.5);
    ok(Math.abs((second - n) / root) < 4.5 * Math.sqrt(2));
    ok(Math.abs(third / root) < 4.5 * Math.sqrt(15));
    ok(Math.abs((fourth - 3 * n) / root) < 4.5 * Math.sqrt(96));
  }
});

Deno.test("Random.normal has the share of a normal beyond 1 to 4.5 standard deviations", () => {
  // Two-sided tails of the standard normal (any table), 5 × 10⁶ draws.
  const tails = [
    [1, 0.31731050786],
    [2, 0.04550026390],
    [3, 0.002699796063],
    [3.6541528853610088, 0.00025803],
    [4, 6.334248367e-5],
    [4.5, 6.795346249e-6],
  ] as const;
  const counts = tails.map(() => 0);
  const n = 5_000_000;
  for (const seed of [1, 2, 3, 4, 5]) {
    for (const x of draws(n / 5, seed)) {
      const size = Math.abs(x);
      if (size < 1) continue;
      for (let k = 0; k < tails.length && size > tails[k][0]; k++) counts[k]++;
    }
  }
  tails.forEach(([edge, share], k) => {
    const error = Math.sqrt(n * share * (1 - share));
    ok(Math.abs(counts[k] - n * share) < 4.5 * error, `${edge}: ${counts[k]}`);
  });
});

Deno.test("Random.normal is even within the layers of its table", () => {
  // 200 cells of equal chance cut at quantiles found by counting a second
  // stream would prove nothing: the edges come from the distribution function.
  const cells = new Float64Array(200);
  const n = 1_000_000;
  for (const x of draws(n, 21)) cells[Math.floor(200 * share(x))]++;
  const chiSquare = cells.reduce((s, c) => s + (c - n / 200) ** 2 / 5000, 0);
  ok(Math.abs(chiSquare - 199) < 4.5 * Math.sqrt(398), `${chiSquare}`);
});

/** Φ(x) by its series (A&S 26.2.11), good to 1e-14 below 6. */
function share(x: number): number {
  let term = x;
  let sum = x;
  for (let k = 1; Math.abs(term) > 1e-17; k++) {
    term *= x * x / (2 * k + 1);
    sum += term;
  }
  const phi = 0.5 + sum * Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  return Math.min(Math.max(phi, 0), 1 - 1e-16);
}

Deno.test("Random.integer gives each of n the same chance", () => {
  const random = new Random(5);
  const counts = new Float64Array(7);
  for (let i = 0; i < 70_000; i++) counts[random.integer(7)]++;
  const chiSquare = counts.reduce((s, c) => s + (c - 1e4) ** 2 / 1e4, 0);
  ok(chiSquare < 27.9, `${chiSquare}`); // chi-square, 6 dof, upper 0.01 %
  equal(random.integer(1), 0);
  for (const n of [0, -1, 1.5, NaN, 2 ** 33]) {
    throws(() => random.integer(n), {
      name: "RangeError",
      message:
        `Cannot draw a whole number as their count must be a whole number from 1 to 2^32: current value is ${n}`,
    });
  }
});

Deno.test("Random.shuffled keeps the items and reaches all orders evenly", () => {
  const random = new Random(5);
  const orders = new Map<string, number>();
  for (let i = 0; i < 6000; i++) {
    const order = random.shuffled(["a", "b", "c"]).join("");
    orders.set(order, (orders.get(order) ?? 0) + 1);
  }
  equal(orders.size, 6);
  let chiSquare = 0;
  for (const count of orders.values()) chiSquare += (count - 1000) ** 2 / 1000;
  ok(chiSquare < 25.7, `${chiSquare}`); // chi-square, 5 dof, upper 0.01 %
});

Deno.test("Random refuses a seed that is no whole number, and seeds differ", () => {
  for (const seed of [-1, 0.5, NaN, Infinity, 2 ** 53]) {
    throws(() => new Random(seed), {
      name: "RangeError",
      message:
        `Cannot start random numbers as the seed must be a whole number from 0 to 2^53 - 1: current value is ${seed}`,
    });
  }
  notDeepEqual(draws(3, 1), draws(3, 2));
});
