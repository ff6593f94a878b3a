import { deepEqual, equal, ok, throws } from "node:assert/strict";
import type { AnovaTable } from "sagbook/statistics/anova_table.ts";
import { crossedAnova } from "sagbook/statistics/crossed_anova.ts";
import { nestedAnova } from "sagbook/statistics/nested_anova.ts";
import {
  oneWayAnova,
  oneWayAnovaOfSummaries,
} from "sagbook/statistics/one_way_anova.ts";
import { fQuantile } from "sagbook/statistics/f_distribution.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import { interceptColumn } from "sagbook/statistics/design_columns.ts";
import {
  satterthwaiteInterval,
  varianceInterval,
} from "sagbook/statistics/variance_interval.ts";
import { close, near, type Reference, references } from "./_references.ts";

const sourceOf = (table: AnovaTable, name: string) =>
  table.sources.find((source) => source.name === name)!;
const componentOf = (table: AnovaTable, name: string) =>
  table.components.find((component) => component.name === name)!;

/** Groups of the second column by the first. */
function groupsOf(rows: Reference[]): number[][] {
  const [group, value] = Object.keys(rows[0]);
  const groups = new Map<unknown, number[]>();
  for (const row of rows) {
    if (!groups.has(row[group])) groups.set(row[group], []);
    groups.get(row[group])!.push(row[value]);
  }
  return [...groups.values()];
}

for (const [name, file] of references("nist-anova-")) {
  Deno.test(`oneWayAnova() agrees with ${name} as doubles hold its data`, () => {
    const table = oneWayAnova(groupsOf(file.data));
    const found: Record<string, number> = {
      df_between: sourceOf(table, "between").dof,
      df_within: sourceOf(table, "within").dof,
      ss_between: sourceOf(table, "between").sumOfSquares,
      ss_within: sourceOf(table, "within").sumOfSquares,
      ms_between: sourceOf(table, "between").meanSquare!,
      ms_within: sourceOf(table, "within").meanSquare!,
      f: sourceOf(table, "between").f!,
      r_squared: table.rSquared!,
      residual_sd: Math.sqrt(sourceOf(table, "within").meanSquare!),
      variance_component_between_anova_estimator:
        componentOf(table, "between").estimate,
    };
    const { tolerance } = file;
    for (
      const [key, value] of Object.entries<number>(
        file.expected_for_double_inputs,
      )
    ) {
      const allowed = key.startsWith("df")
        ? 0
        : tolerance.against_expected_for_double_inputs;
      near(found[key], value, Math.min(allowed, 1e-9), key);
    }
    for (const [key, value] of Object.entries<number>(file.expected)) {
      near(
        found[key],
        value,
        key.startsWith("df") ? 0 : tolerance.against_expected,
        key,
      );
    }
  });
}

for (const [name, file] of references("gum-h5")) {
  Deno.test(`oneWayAnovaOfSummaries() agrees with ${name}`, () => {
    const groups = (file.data as Reference[]).map((row) => ({
      count: row.n,
      mean: row.mean_V,
      standardDeviation: row.s_V,
    }));
    const table = oneWayAnovaOfSummaries(groups);
    const [between, within] = table.sources;
    const component = componentOf(table, "between");
    const found: Record<string, number> = {
      grand_mean: table.grandMean,
      sd_of_daily_means: Math.sqrt(between.meanSquare! / groups[0].count),
      s_a: Math.sqrt(between.meanSquare!),
      s_b: Math.sqrt(within.meanSquare!),
      df_a: between.dof,
      df_b: within.dof,
      F: between.f!,
      "F_critical_0.05": fQuantile(0.05, between.dof, within.dof, "upper"),
      "F_critical_0.025": fQuantile(0.025, between.dof, within.dof, "upper"),
      p: between.p!,
      between_day_variance_untruncated: component.estimate,
      s_between_day: Math.sqrt(component.variance),
      s_within_day: Math.sqrt(within.meanSquare!),
      u_grand_mean_if_between_day_effect: table.standardErrorIfGroupsDiffer!,
      df_if_between_day_effect: table.dofIfGroupsDiffer,
      s_pooled_if_none: Math.sqrt(table.total.sumOfSquares / table.total.dof),
      u_grand_mean_if_none: table.standardErrorIfAlike!,
      df_if_none: table.dofIfAlike,
    };
    const { tolerance } = file;
    for (
      const [key, value] of Object.entries<number>(file.expected.recomputed)
    ) {
      // Variances of means lose digits to the common level of 10 V.
      const allowed = /^df/.test(key)
        ? 0
        : /a$|F$|^p$|between|daily/.test(key)
        ? tolerance.recomputed_relative_variances_of_means
        : tolerance.recomputed_relative;
      near(found[key], value, allowed, key);
    }
    for (
      const [key, value] of Object.entries<number>(file.expected.published)
    ) {
      close(
        found[key],
        value,
        tolerance.published_absolute[key],
        `printed ${key}`,
      );
    }
  });
}

for (const [name, file] of references("nested-")) {
  const { expected, tolerance } = file;
  const rows = file.data as Reference[];
  const response = rows.map((row) => row.y);
  const outer = { name: "a", labels: rows.map((row) => row.a) };
  const inner = { name: "b_within_a", labels: rows.map((row) => row.b) };
  const named = (key: string) => key === "error" ? "residual" : key;

  Deno.test(`nestedAnova() and its intervals agree with ${name}`, () => {
    const table = nestedAnova(response, [outer, inner]);
    const found: Record<string, number> = {
      "df.total": table.total.dof,
      "ss.total": table.total.sumOfSquares,
    };
    for (const key of ["a", "b_within_a", "error"]) {
      const source = sourceOf(table, named(key));
      found[`df.${key}`] = source.dof;
      found[`ss.${key}`] = source.sumOfSquares;
      found[`ms.${key}`] = source.meanSquare!;
      if (key !== "error") {
        found[`f.${key}`] = source.f!;
        found[`p.${key}`] = source.p!;
      }
      found[`variance_untruncated.${key}`] =
        componentOf(table, named(key)).estimate;
    }
    for (const block of ["df", "ss", "ms", "f", "p", "variance_untruncated"]) {
      for (const [key, value] of Object.entries<number>(expected[block])) {
        near(found[`${block}.${key}`], value, 1e-9, `${block} of ${key}`);
      }
    }
    for (const [key, value] of Object.entries<number>(expected.published)) {
      close(
        found[key],
        value,
        tolerance.published_absolute[key],
        `printed ${key}`,
      );
    }
    near(table.grandMean, expected.grand_mean, 1e-9, "grand mean");
    near(
      table.grandMeanStandardError!,
      expected.grand_mean_standard_error,
      1e-9,
      "its standard error",
    );
    for (
      const [key, value] of Object.entries<Reference>(expected.intervals_95)
    ) {
      if (key === "formulas") continue;
      const terms = key.startsWith("total")
        // σ² + σ_b² + σ_a² in mean squares
        ? totalTerms(table)
        : componentOf(
          table,
          named(key.replace(/_(mls|exact|satterthwaite)$/, "")),
        ).terms;
      if (key.endsWith("satterthwaite")) {
        const found = satterthwaiteInterval(terms)!;
        near(found.estimate, value.estimate, 1e-9, key);
        near(found.dof, value.df, 1e-9, key);
        near(found.interval.low, value.lower, 1e-9, key);
        near(found.interval.high, value.upper, 1e-9, key);
      } else {
        const interval = varianceInterval(terms);
        near(interval.low, value.lower, 1e-9, `${key} low`);
        near(interval.high, value.upper, 1e-9, `${key} high`);
      }
    }
  });

  Deno.test(`fitMixedModel() agrees with the REML fit of ${name}`, () => {
    const fit = fitMixedModel({
      response,
      fixed: [interceptColumn(rows.length)],
      random: [outer, {
        name: "b_within_a",
        labels: rows.map((row) => `${row.a}/${row.b}`),
      }],
    });
    const error = expected.reml.variance.error;
    for (const { name: component, variance } of fit.components) {
      const key = component === "residual" ? "error" : component;
      close(variance!, expected.reml.variance[key], 1e-4 * error, key);
    }
    close(
      fit.logLikelihood!,
      expected.reml.log_restricted_likelihood,
      1e-6,
      "log",
    );
  });
}

/** The total variance of a nested table in mean squares. */
function totalTerms(table: AnovaTable) {
  const [a, b, residual] = table.sources;
  const [r, br] = [b.expected.b_within_a, a.expected.a];
  return [
    { coefficient: 1 / br, meanSquare: a.meanSquare!, dof: a.dof },
    { coefficient: 1 / r - 1 / br, meanSquare: b.meanSquare!, dof: b.dof },
    {
      coefficient: 1 - 1 / r,
      meanSquare: residual.meanSquare!,
      dof: residual.dof,
    },
  ];
}

Deno.test("oneWayAnova() reports a negative component as it comes and 0 for sums", () => {
  // µm; by hand MS 0.75 (3 df) and 1.75 (8 df)
  const table = oneWayAnova([
    [714, 716, 715],
    [716, 714, 715],
    [715, 713, 717],
    [715, 716, 717],
  ]);
  equal(sourceOf(table, "between").meanSquare, 0.75);
  equal(sourceOf(table, "within").meanSquare, 1.75);
  near(componentOf(table, "between").estimate, -1 / 3, 1e-14, "estimate");
  equal(componentOf(table, "between").variance, 0);
});

Deno.test("oneWayAnova() of unequal groups divides by the effective group size", () => {
  // By hand: n0 = (6 - (16 + 1 + 1)/6)/2 = 1.5
  const table = oneWayAnova([[1, 2, 3, 4], [7], [9]]);
  equal(sourceOf(table, "between").expected.between, 1.5);
});

Deno.test("oneWayAnova() has no ratio without scatter and no component from one group", () => {
  const still = oneWayAnova([[0.715, 0.715], [0.715, 0.715]]);
  equal(sourceOf(still, "between").f, undefined);
  equal(sourceOf(still, "between").p, undefined);
  equal(still.rSquared, undefined);
  deepEqual(still.components.map(({ estimate }) => estimate), [0, 0]);
  const single = oneWayAnova([[1, 2, 3]]);
  equal(sourceOf(single, "between").meanSquare, undefined);
  deepEqual(single.components.map(({ name }) => name), ["within"]);
  equal(single.standardErrorIfGroupsDiffer, undefined);
  const lone = oneWayAnova([[1], [2], [4]]);
  deepEqual(lone.components, []);
  equal(oneWayAnova([[5]]).standardErrorIfAlike, undefined);
});

Deno.test("nestedAnova() keeps levels apart that share a label under different parents", () => {
  const table = nestedAnova([712, 713, 717, 716, 716, 717, 713, 712], [
    { name: "session", labels: [1, 1, 1, 1, 2, 2, 2, 2] },
    { name: "zeroing", labels: [1, 1, 2, 2, 1, 1, 2, 2] },
  ]);
  deepEqual(table.sources.map(({ dof }) => dof), [1, 2, 4]);
  deepEqual(table.sources.map(({ meanSquare }) => meanSquare), [0, 16, 0.5]);
  deepEqual(table.components.map(({ estimate }) => estimate), [-4, 7.75, 0.5]);
});

Deno.test("nestedAnova() of three stages adds up and expects the right mean squares", () => {
  const labels = (every: number) =>
    Array.from({ length: 24 }, (_, i) => Math.floor(i / every));
  const response = labels(1).map((i) => Math.sin(i * i + 1));
  const table = nestedAnova(response, [
    { name: "a", labels: labels(12) },
    { name: "b", labels: labels(6) },
    { name: "c", labels: labels(2) },
  ]);
  deepEqual(table.sources.map(({ dof }) => dof), [1, 2, 8, 12]);
  deepEqual(table.sources[0].expected, { a: 12, b: 6, c: 2, residual: 1 });
  const mean = response.reduce((sum, y) => sum + y) / 24;
  near(
    table.total.sumOfSquares,
    response.reduce((sum, y) => sum + (y - mean) ** 2, 0),
    1e-12,
    "total",
  );
});

Deno.test("nestedAnova() and crossedAnova() refuse unequal groups and missing cells", () => {
  throws(() => nestedAnova([1, 2, 3], [{ name: "a", labels: [1, 1, 2] }]), {
    name: "RangeError",
    message:
      "Cannot analyse a nested design as every group of a must have the same number of readings: current values are 2 and others",
  });
  const crossed = (a: number[], b: number[]) => () =>
    crossedAnova(a.map(Number), { name: "a", labels: a }, {
      name: "b",
      labels: b,
    }, "separate");
  throws(crossed([1, 1, 2], [1, 1, 2]), { name: "RangeError" });
  throws(crossed([1, 2, 3, 3], [1, 2, 1, 2]), { name: "RangeError" });
});

Deno.test("crossedAnova() without scatter or with one level gives no ratio", () => {
  const table = crossedAnova(
    [3, 3, 3, 3],
    { name: "a", labels: [1, 1, 2, 2] },
    { name: "b", labels: [1, 1, 1, 1] },
    "separate",
  );
  ok(table.sources.every(({ f }) => f === undefined));
  deepEqual(table.components.map(({ name }) => name), ["residual"]);
});

Deno.test("varianceInterval() is the chi-square interval for one term and refuses others", () => {
  const interval = varianceInterval([{
    coefficient: 1,
    meanSquare: 2,
    dof: 9,
  }]);
  // 18 over chi-square 19.02277 and 2.700389
  close(interval.low, 0.946234, 1e-6, "low");
  close(interval.high, 6.665706, 1e-5, "high");
  const none = { coefficient: -1, meanSquare: 0, dof: 4 };
  deepEqual(
    varianceInterval([{ coefficient: 1, meanSquare: 0, dof: 3 }, none]),
    { low: 0, high: 0 },
  );
  equal(satterthwaiteInterval([none]), undefined);
  throws(() => varianceInterval([none, none]), {
    name: "RangeError",
    message:
      "Cannot find an interval of a variance as terms must all be positive, or one positive and one negative: current value is 2 negative of 2",
  });
});
