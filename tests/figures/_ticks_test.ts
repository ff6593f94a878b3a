import { deepEqual, equal, ok } from "node:assert/strict";
import {
  decimalsFor,
  decimalsOf,
  figuresOf,
  linearTicks,
  logTicks,
  niceStep,
  signed,
  written,
} from "../../lib/figures/_ticks.ts";

Deno.test("niceStep() is 1, 2 or 5 times a power of ten, and no smaller than asked", () => {
  deepEqual([0.9, 1, 1.1, 2.1, 5.1, 0.0003].map(niceStep), [
    1,
    1,
    2,
    5,
    10,
    0.0005,
  ]);
});

Deno.test("linearTicks() holds both ends, widens a single value, and stays finite far from zero", () => {
  const { domain, values, decimals } = linearTicks(0.5991, 0.6024, 5);
  ok(domain[0] <= 0.5991 && domain[1] >= 0.6024);
  deepEqual(values.map((v) => written(v, decimals)), [
    "0.599",
    "0.600",
    "0.601",
    "0.602",
    "0.603",
  ]);
  const one = linearTicks(0.6, 0.6, 5, 0.004);
  ok(one.domain[0] < 0.6 && one.domain[1] > 0.6 && one.values.length >= 3);
  ok(linearTicks(1e9, 1e9).values.every(Number.isFinite));
  ok(linearTicks(0, 0).values.length >= 2);
});

Deno.test("logTicks() holds both ends with a tick above and below", () => {
  deepEqual(logTicks(4.2, 112).values, [2, 5, 10, 20, 50, 100, 200]);
  deepEqual(logTicks(0.0011, 900).domain, [0.001, 1000]);
  const { domain } = logTicks(5, 5);
  ok(domain[0] <= 5 && domain[1] > 5);
});

Deno.test("written(), signed() and figuresOf() use a true minus sign and no minus zero", () => {
  equal(written(-1.25, 1), "−1.3");
  equal(written(-0.001, 1), "0.0");
  equal(signed(0.2, 1), "+0.2");
  equal(signed(0, 1), "0.0");
  deepEqual([0, 0.0123, 4977, -12.3].map((v) => figuresOf(v, 2)), [
    "0",
    "0.012",
    "4977",
    "−12",
  ]);
});

Deno.test("decimalsFor() keeps two figures of an uncertainty, decimalsOf() those of a step", () => {
  deepEqual([12, 1.2, 0.12, 0.095, 0].map(decimalsFor), [0, 1, 2, 3, 0]);
  deepEqual([10, 1, 0.5, 0.02].map(decimalsOf), [0, 0, 1, 2]);
});
