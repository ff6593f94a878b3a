import { deepEqual, equal, throws } from "node:assert/strict";
import { grubbsCritical, grubbsTest } from "sagbook/statistics/grubbs_test.ts";
import { close, near, references } from "./_references.ts";

/**
 * Chance of Student's t above the value that a critical value stands for, as
 * the finite sum that whole degrees of freedom allow.
 *
 * @see Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3-4.
 */
function tailOf(critical: number, n: number): number {
  const dof = n - 2;
  const square = critical ** 2 * n / (n - 1) ** 2; // t² / (dof + t²)
  const cosine = Math.sqrt(1 - square);
  let [term, sum] = [dof % 2 ? cosine : 1, 0];
  for (let i = dof % 2 ? 1 : 0; i <= dof - 2; i += 2) {
    sum += term;
    term *= cosine ** 2 * (i + 1) / (i + 2);
  }
  const inner = Math.sqrt(square) * sum;
  const within = dof % 2
    ? (Math.asin(Math.sqrt(square)) + inner) * 2 / Math.PI
    : inner;
  return (1 - within) / 2;
}

/**
 * How far a frozen critical value itself misses its chance, relative to it.
 * Three rows of the file miss by 1.1e-9 to 1.9e-9, more than its tolerance.
 */
function slipOf(critical: number, n: number, chance: number): number {
  const [low, high] = [1 - 1e-6, 1 + 1e-6].map((by) =>
    tailOf(critical * by, n)
  );
  const slip = Math.abs((tailOf(critical, n) - chance) * 2e-6 / (high - low));
  return slip > 5e-10 ? slip : 0;
}

for (const [name, file] of references("grubbs")) {
  Deno.test(`grubbsCritical() agrees with every row of ${name}`, () => {
    for (const row of file.data) {
      const label = JSON.stringify(row);
      const found = grubbsCritical(row.n, row.alpha, row.sides);
      const chance = row.alpha / (row.sides * row.n);
      near(tailOf(found, row.n), chance, 1e-11, label);
      const slip = slipOf(row.critical, row.n, chance);
      near(found, row.critical, file.tolerance.critical_relative + slip, label);
      if (row.printed !== undefined) {
        close(found, row.printed, file.tolerance.printed_absolute, label);
      }
    }
  });

  Deno.test(`grubbsTest() finds the suspect of the example in ${name}`, () => {
    const { example } = file.expected;
    const found = grubbsTest(example.data, 0.05, "high");
    near(found.statistic, example.G, 1e-9, "G");
    close(found.statistic, example.published.G, 1e-4, "printed G");
    equal(found.value, example.suspect);
    near(found.critical, example["critical_one_sided_0.05"], 1e-9, "critical");
    equal(found.outlying, true);
    equal(example.data[found.index], example.suspect);
  });
}

Deno.test("grubbsTest() looks at the side it is told to", () => {
  const values = [10, 10.1, 9.9, 10.2, 9.8, 2];
  deepEqual(
    (["high", "low", "either"] as const).map((side) =>
      grubbsTest(values, 0.05, side).value
    ),
    [10.2, 2, 2],
  );
  equal(grubbsTest(values, 0.05, "high").outlying, false);
});

Deno.test("grubbsTest() finds nothing among equal values and refuses two", () => {
  const found = grubbsTest([0.7, 0.7, 0.7], 0.05, "either");
  equal(found.statistic, 0);
  equal(found.outlying, false);
  throws(() => grubbsTest([1, 2], 0.05, "either"), {
    name: "RangeError",
    message:
      "Cannot find a critical value of Grubbs' test as the number of values must be at least 3: current value is 2",
  });
});
