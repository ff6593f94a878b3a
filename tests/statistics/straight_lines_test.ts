import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { fitDemingLine } from "sagbook/statistics/deming_line.ts";
import { interceptColumn } from "sagbook/statistics/design_columns.ts";
import { fitLine } from "sagbook/statistics/fit_line.ts";
import { generalisedLeastSquares } from "sagbook/statistics/generalised_least_squares.ts";
import { invertLine, predictLine } from "sagbook/statistics/straight_line.ts";
import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
import { fitYorkLine } from "sagbook/statistics/york_line.ts";
import { close, near, type Reference, references } from "./_references.ts";

const files = references("regression-");
const columns = (file: Reference) => ({
  x: file.data.map((row: Reference) => row.x) as number[],
  y: file.data.map((row: Reference) => row.y) as number[],
});

/** Files that state a plain or weighted line. */
const lines = files.filter(([, { expected }]) =>
  expected.certified || expected.computed?.residual_sd
);
for (const [name, file] of lines) {
  Deno.test(`fitLine() and predictLine() agree with ${name}`, () => {
    const { x, y } = columns(file);
    const weighted = file.data[0].sd !== undefined;
    const weights = weighted
      ? file.data.map((row: Reference) => 1 / row.sd ** 2)
      : undefined;
    const { certified = {}, computed = {}, published = {} } = file.expected;
    const throughOrigin = certified.r_squared_uncentred !== undefined;
    const line = fitLine(x, y, { weights, throughOrigin });
    const half = (se: number, p: number) => se * studentTQuantile(p, line.dof);
    const found: Record<string, number> = {
      intercept: line.intercept,
      slope: line.slope,
      se_intercept: line.interceptError,
      se_slope: line.slopeError,
      residual_sd: line.residualDeviation,
      r_squared: line.rSquared!,
      r_squared_uncentred: line.rSquared!,
      f: line.f!,
      df: line.dof,
      residual_ss: line.residualSquares,
      residual_sum_of_squares: line.residualSquares,
      regression_ss: line.lineSquares,
      cov_intercept_slope: line.covariance,
      p_slope: line.p!,
    };
    const { tolerance } = file;
    for (const [key, value] of Object.entries<number>(certified)) {
      near(found[key], value, tolerance.certified_relative, key);
    }
    for (const [key, value] of Object.entries<number>(computed)) {
      if (typeof value === "number" && found[key] !== undefined) {
        near(found[key], value, tolerance.computed_relative, key);
      }
    }
    for (const [key, value] of Object.entries<number>(published)) {
      close(found[key], value, tolerance.published_absolute, `printed ${key}`);
    }
    if (computed.ci95) {
      const { intercept, slope } = computed.ci95;
      const relative = tolerance.computed_relative;
      near(
        line.intercept - half(line.interceptError, 0.975),
        intercept[0],
        relative,
        "intercept low",
      );
      near(
        line.slope + half(line.slopeError, 0.975),
        slope[1],
        relative,
        "slope high",
      );
    }
    for (const row of computed.at ?? []) {
      const relative = tolerance.computed_relative;
      const mean = predictLine(line, row.x);
      near(mean.value, row.fit, relative, "fit");
      near(mean.standardError, row.se_fit, relative, "se of fit");
      near(mean.interval.low, row.mean_lower_95, relative, "mean low");
      near(mean.interval.high, row.mean_upper_95, relative, "mean high");
      if (row.single_lower_95 === undefined) continue;
      const single = predictLine(line, row.x, line.residualDeviation);
      near(single.interval.low, row.single_lower_95, relative, "single low");
      near(single.interval.high, row.single_upper_95, relative, "single high");
      const wide = predictLine(line, row.x, line.residualDeviation, 0.99);
      near(
        wide.interval.high - wide.value,
        row.single_half_width_99,
        relative,
        "99 %",
      );
    }
    if (computed.se_with_known_sd) {
      const known = fitLine(x, y, { weights, scale: "known" });
      const { intercept, slope, cov } = computed.se_with_known_sd;
      const relative = tolerance.computed_relative;
      near(known.interceptError, intercept, relative, "known intercept");
      near(known.slopeError, slope, relative, "known slope");
      near(known.covariance, cov, relative, "known covariance");
      equal(known.dof, Infinity);
      near(known.residualSquares, computed.chi_square, relative, "chi-square");
      const general = generalisedLeastSquares(
        y,
        [interceptColumn(x.length), { name: "x", values: x }],
        x.map((_, i) => x.map((_, j) => i === j ? 1 / weights[i] : 0)),
      );
      near(
        general.coefficients[1].estimate!,
        computed.slope,
        relative,
        "GLS slope",
      );
      near(
        general.coefficients[1].standardError!,
        slope,
        relative,
        "GLS error",
      );
      near(general.covariance[0][1], cov, relative, "GLS covariance");
      near(general.chiSquare, computed.chi_square, relative, "GLS chi-square");
      near(general.p!, computed.chi_square_p, relative, "GLS p");
    }
  });
}

const inverse = files.filter(([, { expected }]) =>
  expected.computed?.[0]?.fieller_lower
);
for (const [name, file] of inverse) {
  Deno.test(`invertLine() agrees with ${name}`, () => {
    const { x, y } = columns(file);
    const line = fitLine(x, y);
    for (const row of file.expected.computed as Reference[]) {
      const scatter = line.residualDeviation / Math.sqrt(row.m);
      const found = invertLine(line, row.y0, scatter);
      const relative = file.tolerance.computed_relative;
      near(found.x, row.x0, relative, "x");
      near(found.g, row.g, relative, "g");
      near(found.interval!.low, row.fieller_lower, relative, "low");
      near(found.interval!.high, row.fieller_upper, relative, "high");
      near(found.standardError, row.delta_method_se, relative, "first order");
    }
  });
}

const deming = files.filter(([, { expected }]) =>
  expected.computed?.[0]?.lambda
);
for (const [name, file] of deming) {
  Deno.test(`fitDemingLine() agrees with ${name}`, () => {
    const { x, y } = columns(file);
    const relative = file.tolerance.computed_relative;
    for (const row of file.expected.computed as Reference[]) {
      const line = fitDemingLine(x, y, row.lambda);
      const t = studentTQuantile(0.975, line.dof);
      const pairs: [number, number][] = [
        [line.intercept, row.intercept],
        [line.slope, row.slope],
        [line.interceptError, row.jackknife_se_intercept],
        [line.slopeError, row.jackknife_se_slope],
        [
          line.intercept - t * line.interceptError,
          row.jackknife_ci95_intercept[0],
        ],
        [
          line.intercept + t * line.interceptError,
          row.jackknife_ci95_intercept[1],
        ],
        [line.slope - t * line.slopeError, row.jackknife_ci95_slope[0]],
        [line.slope + t * line.slopeError, row.jackknife_ci95_slope[1]],
        [line.objective * objectiveUnit(row, line.objective), row.objective],
      ];
      pairs.forEach(([a, b], i) => near(a, b, relative, `${row.lambda}, ${i}`));
    }
    const { published } = file.expected;
    const printed = fitDemingLine(x, y, published.lambda);
    close(
      printed.slope,
      published.slope,
      file.tolerance.published_absolute,
      "printed",
    );
  });
}

/** The file's objective is in units of the x or of the y variance. */
function objectiveUnit(row: Reference, objective: number): number {
  return Math.abs(row.objective / objective - row.lambda) < 1e-6
    ? row.lambda
    : 1;
}

const york = files.filter(([, { data }]) => data[0].weight_x);
for (const [name, file] of york) {
  const { x, y } = columns(file);
  const errors = {
    x: file.data.map((row: Reference) => 1 / Math.sqrt(row.weight_x)),
    y: file.data.map((row: Reference) => 1 / Math.sqrt(row.weight_y)),
  };
  for (const [key, expected] of Object.entries<Reference>(file.expected)) {
    const match = key.match(/^computed(?:_with_error_correlation_(.*))?$/);
    if (!match) continue;
    Deno.test(`fitYorkLine() agrees with ${key} of ${name}`, () => {
      const correlation = x.map(() => Number(match[1] ?? 0));
      const line = fitYorkLine(x, y, { ...errors, correlation });
      const found: Record<string, number> = {
        intercept: line.intercept,
        slope: line.slope,
        se_intercept: line.interceptError,
        se_slope: line.slopeError,
        cov_intercept_slope: line.covariance,
        S: line.chiSquare,
        df: line.chiSquareDof,
        reduced_chi_square: line.chiSquare / line.chiSquareDof,
        p: line.p,
        se_intercept_scaled: line.interceptError * line.scale,
        se_slope_scaled: line.slopeError * line.scale,
      };
      const relative = file.tolerance.computed_relative;
      for (const [what, value] of Object.entries(expected)) {
        if (typeof value === "number") near(found[what], value, relative, what);
      }
      expected.adjusted_x.forEach((value: number, i: number) =>
        close(line.adjusted.x[i], value, 1e-9 * 10, `adjusted x ${i}`)
      );
      expected.adjusted_y.forEach((value: number, i: number) =>
        near(line.adjusted.y[i], value, relative, `adjusted y ${i}`)
      );
      if (match[1]) return;
      for (
        const [what, value] of Object.entries<number>(file.expected.published)
      ) {
        close(found[what], value, file.tolerance.published_absolute, what);
      }
    });
  }
}

Deno.test("fitYorkLine() with tiny errors in x is the weighted line", () => {
  const [x, y] = [[1, 2, 3, 5, 8], [2.1, 3.8, 6.3, 9.9, 16.2]];
  const sd = [0.1, 0.2, 0.1, 0.3, 0.2];
  const line = fitYorkLine(x, y, { x: x.map(() => 1e-9), y: sd });
  const plain = fitLine(x, y, {
    weights: sd.map((s) => 1 / s ** 2),
    scale: "known",
  });
  near(line.slope, plain.slope, 1e-9, "slope");
  near(line.slopeError, plain.slopeError, 1e-9, "slope error");
});

Deno.test("fitDemingLine() is symmetric: swapping the coordinates inverts the slope", () => {
  const [x, y] = [[1, 2, 3, 5, 8], [2.1, 3.8, 6.3, 9.9, 16.2]];
  for (const ratio of [0.01, 1, 100]) {
    near(
      fitDemingLine(x, y, ratio).slope,
      1 / fitDemingLine(y, x, 1 / ratio).slope,
      1e-13,
      `ratio ${ratio}`,
    );
  }
});

Deno.test("invertLine() has no interval where the slope may be 0", () => {
  const line = fitLine([1, 2, 3, 4], [1, 3, 0, 3]);
  const found = invertLine(line, 2);
  ok(found.g >= 1);
  equal(found.interval, undefined);
});

Deno.test("invertLine() and predictLine() undo each other", () => {
  const line = fitLine([1, 2, 3, 4, 5], [2, 4.1, 5.9, 8.2, 9.9]);
  const { interval } = invertLine(line, 6, line.residualDeviation);
  for (const end of [interval!.low, interval!.high]) {
    const there = predictLine(line, end, line.residualDeviation).interval;
    ok(
      Math.abs(there.low - 6) < 1e-9 || Math.abs(there.high - 6) < 1e-9,
      `${end}: ${there.low} to ${there.high}`,
    );
  }
});

Deno.test("fitLine() through exact points has no scatter and no ratio", () => {
  const line = fitLine([1, 2, 3], [2, 4, 6]);
  equal(line.slope, 2);
  equal(line.residualSquares, 0);
  equal(line.f, undefined);
  equal(predictLine(line, 7).interval.high, 14);
  equal(fitLine([1, 2, 3], [5, 5, 5]).rSquared, undefined);
});

Deno.test("generalisedLeastSquares() gives a shared error its due and names aliases", () => {
  // A common offset of variance 1 on top of variance 0.01 leaves the slope alone.
  const x = [0, 1, 2, 3];
  const own = 0.01;
  const covariance = x.map((_, i) => x.map((_, j) => 1 + (i === j ? own : 0)));
  const fit = generalisedLeastSquares(
    [1, 3, 5, 7],
    [interceptColumn(4), { name: "x", values: x }, {
      name: "twice",
      values: [0, 2, 4, 6],
    }],
    covariance,
  );
  near(fit.coefficients[1].estimate!, 2, 1e-12, "slope");
  near(
    fit.coefficients[1].standardError!,
    Math.sqrt(own / 5),
    1e-10,
    "slope error",
  );
  ok(fit.coefficients[0].standardError! > 1);
  equal(fit.coefficients[2].estimate, undefined);
  deepEqual(fit.coefficients[2].aliasedWith, ["x"]);
  close(fit.chiSquare, 0, 1e-20, "chi-square");
  fit.fitted.forEach((value, i) => close(value, 1 + 2 * i, 1e-12, "fitted"));
});

Deno.test("lines refuse equal places, short lists, bad weights and no slope", () => {
  const refused: [() => unknown, string][] = [
    [
      () => fitLine([1, 1, 1], [1, 2, 3]),
      "Cannot fit a line as x must take more than one value: current value is 1",
    ],
    [
      () => fitLine([1, 2], [1, 2]),
      "Cannot fit a line as the number of points must be at least 3: current value is 2",
    ],
    [
      () => fitLine([1, 2, 3], [1, 2]),
      "Cannot fit a line as there must be as many values as places: current values are 2 and 3",
    ],
    [
      () => fitLine([1, 2, 3], [1, 2, 4], { weights: [1, 1, 0] }),
      "Cannot fit a line as every weight must be finite and above 0: current value is 0",
    ],
    [
      () => fitLine([1, 2, 3], [1, 2, 4], { weights: [1, 1] }),
      "Cannot fit a line as there must be one weight for each of 3 points: current value is 2",
    ],
    [
      () => fitDemingLine([1, 2, 3, 4], [1, 2, 3, 4], 0),
      "Cannot fit a line by Deming's method as the ratio of variances must be finite and above 0: current value is 0",
    ],
    [
      () => fitDemingLine([1, 2, 3, 4], [1, 1, 1, 1], 1),
      "Cannot fit a line by Deming's method as the points must show a slope: current value of their covariance is 0",
    ],
    [
      () => fitYorkLine([1, 2, 3], [1, 2, 3], { x: [1, 1, 1], y: [1, 0, 1] }),
      "Cannot fit a line by York's method as every uncertainty of y must be finite and above 0: current value is 0",
    ],
    [
      () => fitYorkLine([1, 2, 3], [1, 2, 3], { x: [1, 1], y: [1, 1, 1] }),
      "Cannot fit a line by York's method as each of 3 points must have an uncertainty of x: current value is 2",
    ],
    [
      () => fitYorkLine([1, 1, 1], [1, 2, 3], { x: [1, 1, 1], y: [1, 1, 1] }),
      "Cannot fit a line by York's method as x must take more than one value: current value is 1",
    ],
    [
      () =>
        fitYorkLine([1, 2, 3], [1, 2, 3], {
          x: [1, 1, 1],
          y: [1, 1, 1],
          correlation: [0, 0, 1],
        }),
      "Cannot fit a line by York's method as each of 3 points must have a correlation between -1 and 1: current values are 0, 0, 1",
    ],
    [
      () => generalisedLeastSquares([1, 2], [], [[1, 2], [2, 1]]),
      "Cannot fit by generalised least squares as the covariance must be positive definite: current value is not",
    ],
    [
      () => generalisedLeastSquares([1, 2], [], [[1, 2]]),
      "Cannot fit by generalised least squares as the covariance must have 2 rows and columns: current value is 1",
    ],
    [
      () =>
        invertLine({
          intercept: 0,
          slope: 0,
          interceptError: 0,
          slopeError: 1,
          covariance: 0,
          dof: 3,
        }, 1),
      "Cannot invert a line as its slope must not be 0: current value is 0",
    ],
    [
      () => predictLine(fitLine([1, 2, 3], [1, 2, 4]), 1, -1),
      "Cannot predict from a line as the scatter of a new point must be finite and 0 or more: current value is -1",
    ],
  ];
  for (const [call, message] of refused) {
    throws(call, { name: "RangeError", message });
  }
});
