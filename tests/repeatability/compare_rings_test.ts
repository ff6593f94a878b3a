import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { compareRings } from "sagbook/repeatability/compare_rings.ts";

const small = {
  value: 3001,
  own: 3,
  dof: Infinity,
  common: { "ring 50": 2, scale: 1.5 },
};
const large = {
  value: 3008,
  own: 2,
  dof: Infinity,
  common: { "ring 80": 1, scale: 1.5, flat: 0 },
};

Deno.test("compareRings() takes a shared source off before squaring", () => {
  const found = compareRings(small, large);
  // By hand: u² = 3² + 2² + 2² + 1², the scale cancels.
  const expanded = 1.959963984540054 * Math.sqrt(18);
  ok(Math.abs(found.difference.expanded - expanded) < 1e-9);
  ok(Math.abs(found.normalisedError - 7 / expanded) < 1e-9);
  equal(found.agree, true);
  equal(found.form, "with covariance");
  deepEqual(found.shared, ["scale"]);
  deepEqual(found.blindTo, ["spherical reference flat"]);
});

Deno.test("compareRings() uses the independent form only where nothing is shared", () => {
  const apart = { ...large, common: { "ring 80": 1 } };
  const found = compareRings(small, apart);
  equal(found.form, "independent");
  ok(
    Math.abs(found.difference.standardUncertainty ** 2 - (18 + 1.5 ** 2)) <
      1e-9,
  );
});

Deno.test("compareRings() keeps the sign of a shared contribution", () => {
  const opposed = { ...large, common: { scale: -1.5 } };
  const found = compareRings({ ...small, common: { scale: 1.5 } }, opposed);
  ok(Math.abs(found.difference.standardUncertainty ** 2 - (13 + 9)) < 1e-9);
});

Deno.test("compareRings() widens with few degrees of freedom and refuses a difference known exactly", () => {
  const few = compareRings({ ...small, dof: 2 }, { ...large, dof: 2 });
  ok(few.difference.factor > 2);
  const exact = { value: 1, own: 0, dof: Infinity, common: {} };
  throws(() => compareRings(exact, exact), {
    name: "RangeError",
    message:
      "Cannot compare two rings as their difference must have an uncertainty above 0 mm: current value is 0 mm",
  });
});
