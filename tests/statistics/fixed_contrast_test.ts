import { equal, throws } from "node:assert/strict";
import { levelColumns } from "sagbook/statistics/design_columns.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import { fixedContrast } from "sagbook/statistics/fixed_contrast.ts";
import { pairedInterval } from "sagbook/statistics/student_interval.ts";
import { modelOf } from "./_mixed_models.ts";
import { near, type Reference, references } from "./_references.ts";

const withZones = references("reml-").filter(([, file]) =>
  file.expected.neighbour_differences
);
for (const [name, file] of withZones) {
  Deno.test(`fixedContrast() finds the differences between neighbours of ${name}`, () => {
    const { expected, tolerance } = file;
    const fit = fitMixedModel(modelOf(file.model, file.data, "cell means"));
    for (const row of expected.neighbour_differences as Reference[]) {
      const found = fixedContrast(fit, { [row.to]: 1, [row.from]: -1 })!;
      const what = `${row.from} to ${row.to}`;
      near(found.estimate, row.estimate, 1e-6, what);
      near(
        found.standardError,
        row.standard_error,
        tolerance.standard_error,
        what,
      );
      if (expected.at_zero_boundary) continue;
      near(found.dof, row.satterthwaite_df, tolerance.satterthwaite_df, what);
      near(found.p, row.p_value, 0.01, what);
    }
  });
}

Deno.test("fixedContrast() of two balanced zones is the paired interval", () => {
  const first = [700.2, 704.9, 701.1, 698.7];
  const second = [702.1, 707.5, 704.9, 700.4];
  const fit = fitMixedModel({
    response: [...first, ...second],
    fixed: levelColumns("", ["a", "a", "a", "a", "b", "b", "b", "b"]),
    random: [{ name: "zeroing", labels: [1, 2, 3, 4, 1, 2, 3, 4] }],
  });
  const contrast = fixedContrast(fit, { b: 1, a: -1 })!;
  const paired = pairedInterval(first, second);
  near(contrast.estimate, paired.mean, 1e-9, "estimate");
  near(contrast.dof, 3, 1e-6, "dof");
  near(contrast.interval.low, paired.interval.low, 1e-6, "low");
  near(contrast.interval.high, paired.interval.high, 1e-6, "high");
});

Deno.test("fixedContrast() says nothing of an aliased column or without scatter", () => {
  const zones = ["a", "b", "a", "b"];
  const columns = levelColumns("", zones);
  const fit = fitMixedModel({
    response: [1, 2, 1.5, 2.75],
    fixed: [...columns, { name: "total", values: [1, 1, 1, 1] }],
    random: [],
  });
  equal(fixedContrast(fit, { total: 1 }), undefined);
  equal(
    fixedContrast(fit, { b: 1, a: -1 })?.estimate.toFixed(9),
    "1.125000000",
  );
  equal(fixedContrast(fit, {}), undefined);
  const still = fitMixedModel({
    response: [1, 2, 1, 2],
    fixed: columns,
    random: [],
  });
  equal(fixedContrast(still, { b: 1 }), undefined);
  throws(() => fixedContrast(fit, { c: 1 }), {
    name: "RangeError",
    message:
      "Cannot find a contrast as a weight must name one of a, b, total: current value is c",
  });
});
