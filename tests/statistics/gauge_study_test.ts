import { equal, ok, throws } from "node:assert/strict";
import {
  type CrossedAnova,
  crossedAnova,
} from "sagbook/statistics/crossed_anova.ts";
import { gaugeTerms, gaugeVariances } from "sagbook/statistics/gauge_study.ts";
import { rangeStudy } from "sagbook/statistics/range_study.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import { interceptColumn } from "sagbook/statistics/design_columns.ts";
import {
  satterthwaiteInterval,
  varianceInterval,
} from "sagbook/statistics/variance_interval.ts";
import { close, near, type Reference, references } from "./_references.ts";

const named = (key: string) => key === "repeatability" ? "residual" : key;
const factorsOf = (rows: Reference[]) => [
  { name: "part", labels: rows.map((row) => row.part) },
  { name: "operator", labels: rows.map((row) => row.operator) },
];

/** Everything a file may state about one table, by dotted path. */
function figuresOf(
  table: CrossedAnova,
  prefix: string,
): Record<string, number> {
  const figures: Record<string, number> = {};
  for (const { name, estimate } of table.components) {
    figures[
      `${prefix}.untruncated.${name === "residual" ? "repeatability" : name}`
    ] = estimate;
  }
  figures[`${prefix}.untruncated.interaction`] ??= 0;
  const variances = gaugeVariances(table)!;
  const byKey: Record<string, number> = {
    total_gauge_rr: variances.gauge,
    repeatability: variances.repeatability,
    reproducibility: variances.reproducibility,
    operator: variances.operator,
    operator_by_part: variances.interaction,
    part_to_part: variances.surface,
    total_variation: variances.total,
  };
  for (const [key, variance] of Object.entries(byKey)) {
    const sd = Math.sqrt(variance);
    figures[`${prefix}.variance.${key}`] = variance;
    figures[`${prefix}.percent_contribution.${key}`] = 100 * variance /
      variances.total;
    figures[`${prefix}.sd.${key}`] = sd;
    figures[`${prefix}.study_variation_6sd.${key}`] = 6 * sd;
    figures[`${prefix}.percent_study_variation.${key}`] = 100 * sd /
      Math.sqrt(variances.total);
  }
  const categories = Math.sqrt(2 * variances.surface / variances.gauge);
  figures[`${prefix}.ndc_unrounded`] = categories;
  figures[`${prefix}.ndc`] = Math.floor(categories);
  return figures;
}

/** Dotted paths of all numbers in a block. */
function flatten(block: unknown, prefix: string): [string, number][] {
  if (typeof block === "number") return [[prefix, block]];
  if (block === null || typeof block !== "object") return [];
  return Object.entries(block).flatMap(([key, value]) =>
    flatten(value, prefix ? `${prefix}.${key}` : key)
  );
}

const crossed = references("grr-").filter(([, file]) =>
  file.expected.with_interaction
);
for (const [name, file] of crossed) {
  const { expected, tolerance } = file;
  const rows = file.data as Reference[];
  const response = rows.map((row) => row.y);
  const [part, operator] = factorsOf(rows);
  const separate = crossedAnova(response, part, operator, "separate");
  const pooled = crossedAnova(response, part, operator, "pooled");

  Deno.test(`crossedAnova() and gaugeVariances() agree with ${name}`, () => {
    const figures: Record<string, number> = {
      ...figuresOf(separate, "with_interaction"),
      ...figuresOf(pooled, "interaction_pooled"),
      "df.total": separate.total.dof,
      "ss.total": separate.total.sumOfSquares,
    };
    for (const source of separate.sources) {
      const key = source.name === "residual" ? "repeatability" : source.name;
      figures[`df.${key}`] = source.dof;
      figures[`ss.${key}`] = source.sumOfSquares;
      figures[`ms.${key}`] = source.meanSquare!;
      figures[`f.${key}`] = source.f!;
      figures[`p.${key}`] = source.p!;
    }
    const [ofPart, ofOperator, ofError] = pooled.sources;
    Object.assign(figures, {
      "pooled_error.ms_error": ofError.meanSquare,
      "pooled_error.df_error": ofError.dof,
      "pooled_error.f_part": ofPart.f,
      "pooled_error.f_operator": ofOperator.f,
      "pooled_error.p_part": ofPart.p,
      "pooled_error.p_operator": ofOperator.p,
    });
    const { published, intervals_95: _, reml_full_model: __, ...computed } =
      expected;
    for (const [key, value] of flatten(computed, "")) {
      near(figures[key], value, 1e-9, key);
    }
    for (const [key, value] of Object.entries<number>(published)) {
      close(
        figures[key],
        value,
        tolerance.published_absolute[key],
        `printed ${key}`,
      );
    }
  });

  Deno.test(`varianceInterval() agrees with the intervals of ${name}`, () => {
    const { gauge, total } = gaugeTerms(separate)!;
    for (
      const [key, value] of Object.entries<Reference>(expected.intervals_95)
    ) {
      if (key === "formulas") continue;
      const what = key.replace(/_(mls|exact|satterthwaite)$/, "");
      const terms = what === "gauge"
        ? gauge
        : what === "total"
        ? total
        : separate.components.find((one) => one.name === named(what))!.terms;
      if (key.endsWith("satterthwaite")) {
        const found = satterthwaiteInterval(terms)!;
        near(found.estimate, value.estimate, 1e-9, key);
        near(found.dof, value.df, 1e-9, key);
        near(found.interval.low, value.lower, 1e-9, key);
        near(found.interval.high, value.upper, 1e-9, key);
      } else {
        const found = varianceInterval(terms);
        near(found.low, value.lower, 1e-9, `${key} low`);
        near(found.high, value.upper, 1e-9, `${key} high`);
      }
    }
  });

  Deno.test(`fitMixedModel() agrees with the REML fit of ${name}`, () => {
    const fit = fitMixedModel({
      response,
      fixed: [interceptColumn(rows.length)],
      random: [part, operator, {
        name: "interaction",
        labels: rows.map((row) => `${row.part}/${row.operator}`),
      }],
    });
    const { variance, log_restricted_likelihood: log } =
      expected.reml_full_model;
    for (const component of fit.components) {
      const key = component.name === "residual"
        ? "repeatability"
        : component.name;
      close(
        component.variance!,
        variance[key],
        1e-4 * variance.repeatability,
        key,
      );
    }
    close(fit.logLikelihood!, log, 1e-6, "log");
  });
}

const byRange = references("grr-").filter(([, file]) => file.constants);
for (const [name, file] of byRange) {
  Deno.test(`rangeStudy() agrees with ${name}`, () => {
    const rows = file.data as Reference[];
    const [part, operator] = factorsOf(rows);
    const { K1, K2, K3, ndc_factor: factor } = file.constants;
    const response = rows.map((row) => row.y);
    const study = rangeStudy(response, part, operator, {
      repeats: K1,
      operators: K2,
      surfaces: K3,
    });
    const percent = (sd: number) => 100 * sd / study.total;
    const categories = factor * study.surface / study.gauge;
    const found: Record<string, number> = {
      r_bar: study.meanRange,
      x_diff: study.operatorRange,
      r_p: study.surfaceRange,
      ev: study.repeatability,
      av: study.reproducibility,
      grr: study.gauge,
      pv: study.surface,
      tv: study.total,
      percent_ev: percent(study.repeatability),
      percent_av: percent(study.reproducibility),
      percent_grr: percent(study.gauge),
      percent_pv: percent(study.surface),
      ndc_unrounded: categories,
      ndc: Math.floor(categories),
    };
    const { published, recomputed } = file.expected;
    for (const [key, value] of Object.entries<number>(recomputed)) {
      near(found[key], value, file.tolerance.recomputed_relative, key);
    }
    for (const [key, value] of Object.entries<number>(published)) {
      close(found[key], value, file.tolerance.published_absolute[key], key);
    }
    const own = rangeStudy(response, part, operator);
    near(own.gauge, study.gauge, 2e-4, "own factors against printed ones");
  });
}

Deno.test("gaugeVariances() and gaugeTerms() say nothing where a factor has one level", () => {
  const table = crossedAnova(
    [1, 2, 3, 5],
    { name: "surface", labels: [1, 1, 2, 2] },
    { name: "operator", labels: [1, 1, 1, 1] },
    "separate",
  );
  equal(gaugeVariances(table), undefined);
  equal(gaugeTerms(table), undefined);
});

Deno.test("gaugeTerms() add up to the components they stand for", () => {
  const labels = (f: (i: number) => number) =>
    Array.from({ length: 24 }, (_, i) => f(i));
  const table = crossedAnova(
    labels((i) => Math.sin(i * i) + (i % 4)),
    { name: "surface", labels: labels((i) => i % 4) },
    { name: "operator", labels: labels((i) => Math.floor(i / 4) % 3) },
    "separate",
  );
  const sum = (names: string[]) =>
    table.components.filter(({ name }) => names.includes(name)).reduce(
      (s, c) => s + c.estimate,
      0,
    );
  const { gauge, total } = gaugeTerms(table)!;
  const value = (terms: typeof gauge) =>
    terms.reduce((s, t) => s + t.coefficient * t.meanSquare, 0);
  near(
    value(gauge),
    sum(["operator", "interaction", "residual"]),
    1e-12,
    "gauge",
  );
  near(
    value(total),
    sum(["surface", "operator", "interaction", "residual"]),
    1e-12,
    "total",
  );
  ok(total.every(({ coefficient }) => coefficient > 0));
});

Deno.test("rangeStudy() refuses one operator and single readings", () => {
  const make = (surface: number[], operator: number[]) => () =>
    rangeStudy(
      surface.map((x) => x),
      { name: "surface", labels: surface },
      { name: "operator", labels: operator },
    );
  throws(make([1, 1, 2, 2], [1, 1, 1, 1]), {
    name: "RangeError",
    message:
      "Cannot find a gauge's scatter from ranges as the number of operators must be at least 2: current value is 1",
  });
  throws(make([1, 1, 2, 2], [1, 2, 1, 2]), {
    name: "RangeError",
    message:
      "Cannot find a gauge's scatter from ranges as the number of repeats must be at least 2: current value is 1",
  });
});
