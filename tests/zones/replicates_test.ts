import { deepEqual, equal } from "node:assert/strict";
import { replicatedMean } from "sagbook/zones/replicates.ts";
import { near, setsOf } from "./_session.ts";

const at = (diameters: readonly (number | undefined)[]) =>
  setsOf(diameters.map(() => [0]), diameters);

Deno.test("replicatedMean() counts diameters for any diameter, and repeats for these", () => {
  const sets = at([0, 0, 90, 90]);
  const values = [1, 3, 6, 10];
  // By hand: means 2 and 8; their mean 5, variance 18, error sqrt(18/2) = 3.
  deepEqual(replicatedMean(values, sets, "any diameter"), {
    mean: 5,
    standardError: 3,
    dof: 1,
    variance: 18,
    replicates: 2,
  });
  // Within: (1 + 1) + (4 + 4) = 10 on 2; error sqrt(5 (1/2 + 1/2)) / 2.
  const these = replicatedMean(values, sets, "these diameters");
  deepEqual([these.mean, these.dof, these.variance, these.replicates], [
    5,
    2,
    5,
    4,
  ]);
  near(these.standardError, Math.sqrt(5) / 2, 1e-15);
});

Deno.test("replicatedMean() takes sets without a diameter as diameters of their own", () => {
  const found = replicatedMean(
    [1, 2, 3],
    at([undefined, undefined, undefined]),
    "any diameter",
  );
  equal(found.dof, 2);
  near(found.standardError, 1 / Math.sqrt(3), 1e-15);
});

Deno.test("replicatedMean() uses the scatter between sets where all lie on one diameter", () => {
  const found = replicatedMean([1, 2, 3], at([30, 30, 30]), "any diameter");
  equal(found.dof, 2);
  equal(found.variance, 1);
});

Deno.test("replicatedMean() has no error for a single value, for none, and without a repeat", () => {
  const single = replicatedMean([4, undefined], at([0, 90]), "any diameter");
  deepEqual(single, { mean: 4, dof: 0, replicates: 1 });
  deepEqual(replicatedMean([undefined], at([0]), "any diameter"), {
    mean: 0,
    dof: 0,
    replicates: 0,
  });
  const once = replicatedMean([1, 3], at([0, 90]), "these diameters");
  deepEqual(once, { mean: 2, dof: 0, replicates: 2 });
});
