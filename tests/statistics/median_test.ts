import { deepEqual, equal } from "node:assert/strict";
import fc from "fast-check";
import { medianOf } from "sagbook/statistics/median.ts";

Deno.test("medianOf() is the middle of the sorted values, and leaves them as they are", () => {
  equal(medianOf([]), undefined);
  equal(medianOf([7]), 7);
  equal(medianOf([2, 1]), 1.5);
  const numbers = fc.array(fc.integer({ min: -1000, max: 1000 }), {
    minLength: 1,
    maxLength: 40,
  });
  fc.assert(fc.property(numbers, (values) => {
    const before = [...values];
    const sorted = [...values].sort((a, b) => a - b);
    const half = sorted.length >> 1;
    const middle = sorted.length % 2 === 1
      ? sorted[half]
      : (sorted[half - 1] + sorted[half]) / 2;
    equal(medianOf(values), middle);
    deepEqual(values, before);
  }));
});
