import { deepEqual, equal, throws } from "node:assert/strict";
import type { Estimate } from "sagbook/statistics/estimate.ts";
import {
  addEstimates,
  combineEstimates,
  scaleEstimate,
  subtractEstimates,
} from "sagbook/statistics/estimate_arithmetic.ts";
import {
  effectiveDof,
  expandUncertainty,
  standardUncertainty,
} from "sagbook/statistics/estimate_uncertainty.ts";
import { close, near, type Reference, references } from "./_references.ts";

const ring: Estimate = { value: 3000, own: 3, dof: 6, common: { ring: 4 } };

for (const [name, file] of references("gum-g4")) {
  Deno.test(`addEstimates() has the effective degrees of freedom of ${name}`, () => {
    const total = addEstimates(file.data.map((row: Reference): Estimate => ({
      value: 0,
      own: row.relative_u_percent,
      dof: row.nu,
      common: {},
    })));
    const { published, recomputed } = file.expected;
    const u = standardUncertainty(total);
    const relative = file.tolerance.recomputed_relative;
    near(u, recomputed.u_c_percent, relative, "u");
    near(effectiveDof(total), recomputed.nu_eff, relative, "dof");
    const allowed = file.tolerance.published_absolute;
    close(u, published.u_c_percent, allowed.u_c_percent, "u");
    close(effectiveDof(total), published.nu_eff, allowed.nu_eff, "dof");
    close(
      expandUncertainty(total).expanded,
      published.U95_percent,
      allowed.U95_percent,
      "U",
    );
  });
}

Deno.test("subtractEstimates() cancels what is shared and keeps what is not", () => {
  const other: Estimate = { value: 2990, own: 4, dof: 6, common: { ring: 4 } };
  const change = subtractEstimates(ring, other);
  deepEqual(change.common, {});
  equal(change.value, 10);
  equal(standardUncertainty(change), 5);
  const lens: Estimate = { ...other, common: { ring: -4, flat: 1 } };
  deepEqual(subtractEstimates(ring, lens).common, { ring: 8, flat: -1 });
});

Deno.test("addEstimates() adds a shared source fully, not in quadrature", () => {
  const sum = addEstimates([ring, ring]);
  equal(sum.common.ring, 8);
  near(sum.own, 3 * Math.SQRT2, 1e-15, "own");
  near(sum.dof, 12, 1e-14, "degrees of freedom of two equal parts");
});

Deno.test("scaleEstimate() by a negative factor turns the shared contribution only", () => {
  deepEqual(scaleEstimate(ring, -2), {
    value: -6000,
    own: 6,
    dof: 6,
    common: { ring: -8 },
  });
});

Deno.test("effectiveDof() counts shared sources as known", () => {
  near(effectiveDof(ring), 6 * (5 / 3) ** 4, 1e-14, "dof");
  equal(effectiveDof({ ...ring, own: 0 }), Infinity);
  equal(effectiveDof({ ...ring, dof: Infinity }), Infinity);
});

Deno.test("expandUncertainty() uses the normal factor where all is known", () => {
  const known: Estimate = { value: 1, own: 2, dof: Infinity, common: {} };
  const found = expandUncertainty(known, 0.95);
  near(found.factor, 1.959963984540054, 1e-12, "factor");
  near(found.interval.high - 1, 2 * found.factor, 1e-12, "upper end");
  near(1 - found.interval.low, 2 * found.factor, 1e-12, "lower end");
  const exact: Estimate = { value: 1, own: 0, dof: Infinity, common: {} };
  equal(expandUncertainty(exact).expanded, 0);
});

Deno.test("combineEstimates() refuses nothing at all and a factor that is no number", () => {
  throws(() => combineEstimates([]), {
    name: "RangeError",
    message:
      "Cannot combine estimates as there must be at least one: current value is 0",
  });
  throws(() => scaleEstimate(ring, NaN), {
    name: "RangeError",
    message:
      "Cannot combine estimates as a factor must be a finite number: current value is NaN",
  });
});
