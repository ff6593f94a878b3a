import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  lagOneAutocorrelation,
  summarise,
} from "sagbook/statistics/summary.ts";
import { RunningMoments } from "sagbook/statistics/running_moments.ts";
import { near, type Reference, references } from "./_references.ts";

/** The rows of a univariate file, or the values its rule describes. */
function values(file: Reference): number[] {
  if (!file.data_rule) {
    return file.data.map((row: Reference) => row.value ?? row.y);
  }
  const { count, first, then_alternating: pair } = file.data[0];
  return Array.from(
    { length: count },
    (_, i) => i === 0 ? first : pair[(i - 1) % 2],
  );
}

for (const [name, file] of references("nist-univariate")) {
  Deno.test(`summarise() and RunningMoments agree with ${name}`, () => {
    const list = values(file);
    const { mean_relative, sd_relative } = file.tolerance;
    equal(list.length, file.expected.n);
    const found = summarise(list);
    near(found.mean, file.expected.mean, mean_relative, "mean");
    near(found.standardDeviation!, file.expected.sd, sd_relative, "sd");
    near(
      lagOneAutocorrelation(list)!,
      file.expected.lag1_autocorrelation,
      Math.max(1e-12, sd_relative),
      "lag-one autocorrelation",
    );
    const stream = new RunningMoments();
    for (const value of list) stream.add(value);
    equal(stream.count, file.expected.n);
    near(stream.mean!, file.expected.mean, mean_relative, "running mean");
    near(
      stream.standardDeviation!,
      file.expected.sd,
      sd_relative,
      "running sd",
    );
    equal(stream.min, found.min);
    equal(stream.max, found.max);
  });
}

Deno.test("RunningMoments.merge() of parts equals one stream over all", () => {
  const all = Array.from({ length: 997 }, (_, i) => 1e7 + Math.sin(i * i));
  const whole = new RunningMoments();
  all.forEach((value) => whole.add(value));
  for (const cut of [0, 1, 400, 997]) {
    const [left, right] = [new RunningMoments(), new RunningMoments()];
    all.forEach((value, i) => (i < cut ? left : right).add(value));
    left.merge(right);
    equal(left.count, 997);
    near(left.mean!, whole.mean!, 1e-15, "mean");
    near(left.variance!, whole.variance!, 1e-10, "variance");
    equal(left.min, whole.min);
    equal(left.max, whole.max);
  }
});

Deno.test("RunningMoments has no mean of nothing and no spread of one value", () => {
  const stream = new RunningMoments();
  equal(stream.mean, undefined);
  equal(stream.min, undefined);
  equal(stream.max, undefined);
  stream.add(0.715);
  equal(stream.mean, 0.715);
  equal(stream.variance, undefined);
  equal(stream.standardDeviation, undefined);
  stream.add(0.715);
  equal(stream.standardDeviation, 0);
  throws(() => stream.add(NaN), {
    name: "RangeError",
    message:
      "Cannot add to running moments as a value must be a finite number: current value is NaN",
  });
});

Deno.test("summarise() gives a spread of exactly 0 for equal values and none for one value", () => {
  // The mean of nine 0.715 summed plainly is not 0.715.
  deepEqual(summarise(Array(9).fill(0.715)), {
    count: 9,
    mean: 0.715,
    standardDeviation: 0,
    min: 0.715,
    max: 0.715,
  });
  equal(summarise([4]).standardDeviation, undefined);
  equal(lagOneAutocorrelation([4, 4]), undefined);
});

Deno.test("lagOneAutocorrelation() tells a creep from a swing", () => {
  ok(lagOneAutocorrelation([1, 2, 3, 4, 5, 6, 7, 8])! > 0.5);
  ok(lagOneAutocorrelation([1, 2, 1, 2, 1, 2, 1, 2])! < -0.8);
});

Deno.test("summarise() refuses an empty list and values that are not finite", () => {
  throws(() => summarise([]), {
    name: "RangeError",
    message:
      "Cannot summarise a list as the number of values must be at least 1: current value is 0",
  });
  throws(() => summarise([1, Infinity]), {
    name: "RangeError",
    message:
      "Cannot summarise a list as every value must be a finite number: current value is Infinity at position 1",
  });
});
