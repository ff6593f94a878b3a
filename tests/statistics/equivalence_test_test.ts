import { equal, throws } from "node:assert/strict";
import {
  type EquivalenceResult,
  equivalenceTest,
  pairedEquivalence,
  twoSampleEquivalence,
} from "sagbook/statistics/equivalence_test.ts";
import {
  pairedInterval,
  studentInterval,
} from "sagbook/statistics/student_interval.ts";
import { near, type Reference, references } from "./_references.ts";

/** "…_bounds_-1_4" names the bounds of a case. */
function boundsOf(key: string): { lower: number; upper: number } {
  const [lower, upper] = key.split("_bounds_")[1].split("_").map(Number);
  return { lower, upper };
}

for (const [name, file] of references("tost")) {
  Deno.test(`equivalence tests agree with every case of ${name}`, () => {
    const first = file.data.map((row: Reference) => row.drug_1);
    const second = file.data.map((row: Reference) => row.drug_2);
    for (const [key, expected] of Object.entries<Reference>(file.expected)) {
      const bounds = boundsOf(key);
      const found: EquivalenceResult = key.startsWith("paired")
        ? pairedEquivalence(first, second, bounds)
        : twoSampleEquivalence(
          first,
          second,
          bounds,
          key.includes("welch") ? "unequal" : "equal",
        );
      const pairs: [number, number][] = [
        [found.difference, expected.mean ?? expected.difference],
        [found.standardError, expected.se],
        [found.dof, expected.df],
        [found.tLower!, expected.t_lower],
        [found.tUpper!, expected.t_upper],
        [found.pLower, expected.p_lower],
        [found.pUpper, expected.p_upper],
        [found.p, expected.p],
        [found.interval.low, expected.ci90[0]],
        [found.interval.high, expected.ci90[1]],
      ];
      pairs.forEach(([a, b], i) =>
        near(a, b, file.tolerance.relative, `${key}, figure ${i}`)
      );
      equal(found.equivalent, expected.p < 0.05);
    }
  });
}

Deno.test("equivalenceTest() decides as its interval does", () => {
  for (const difference of [-1.2, -0.9, 0, 0.4, 0.6, 1.1]) {
    const bounds = { lower: -1, upper: 1 };
    const found = equivalenceTest(
      { difference, standardError: 0.3, dof: 7 },
      bounds,
      0.05,
    );
    equal(
      found.equivalent,
      found.interval.low > bounds.lower && found.interval.high < bounds.upper,
    );
  }
});

Deno.test("equivalenceTest() without scatter compares the difference itself", () => {
  const bounds = { lower: -1, upper: 1 };
  const test = (difference: number) =>
    equivalenceTest({ difference, standardError: 0, dof: 3 }, bounds);
  equal(test(0.99).equivalent, true);
  equal(test(1).equivalent, false);
  equal(test(-1.5).p, 1);
  equal(test(0).tLower, undefined);
  equal(pairedEquivalence([1, 1], [1, 1], bounds).equivalent, true);
  equal(
    twoSampleEquivalence([1, 1], [1, 1], bounds, "unequal").equivalent,
    true,
  );
});

Deno.test("equivalence tests refuse crossed bounds, unequal pairs and a negative error", () => {
  throws(
    () =>
      equivalenceTest({ difference: 0, standardError: 1, dof: 3 }, {
        lower: 1,
        upper: -1,
      }),
    {
      name: "RangeError",
      message:
        "Cannot test equivalence as the lower bound must be below the upper bound: current values are 1 and -1",
    },
  );
  throws(
    () =>
      equivalenceTest({ difference: 0, standardError: -1, dof: 3 }, {
        lower: -1,
        upper: 1,
      }),
    {
      name: "RangeError",
      message:
        "Cannot test equivalence as the standard error must be finite and 0 or more: current value is -1",
    },
  );
  throws(() => pairedEquivalence([1, 2], [1], { lower: -1, upper: 1 }), {
    name: "RangeError",
    message:
      "Cannot test equivalence of pairs as both lists must have the same length: current values are 2 and 1",
  });
});

Deno.test("studentInterval() gives the interval of a textbook mean", () => {
  // By hand: mean 3, sd 1, t(0.975; 2) = 4.302653, half width 4.302653/sqrt(3)
  const found = studentInterval([2, 3, 4]);
  near(
    found.interval.high - found.mean,
    4.302652729749464 / Math.sqrt(3),
    1e-12,
    "half",
  );
  equal(found.dof, 2);
  equal(studentInterval([0.5, 0.5]).interval.high, 0.5);
  throws(() => studentInterval([1]), {
    name: "RangeError",
    message:
      "Cannot find an interval of a mean as the number of values must be at least 2: current value is 1",
  });
});

Deno.test("pairedInterval() is free of what both members of a pair share", () => {
  const shared = [0, 50, -20, 300];
  const noise = [0.25, -0.25, 0.5, 0];
  const found = pairedInterval(shared, shared.map((s, i) => s + noise[i]));
  const plain = studentInterval(noise);
  near(found.mean, plain.mean, 1e-12, "mean");
  near(found.interval.high, plain.interval.high, 1e-12, "upper end");
  throws(() => pairedInterval([1, 2], [1]), {
    name: "RangeError",
    message:
      "Cannot find an interval of paired differences as both lists must have the same length: current values are 2 and 1",
  });
});
