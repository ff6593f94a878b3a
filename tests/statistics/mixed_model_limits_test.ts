import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  interceptColumn,
  levelColumns,
  treatmentColumns,
} from "sagbook/statistics/design_columns.ts";
import { fixedContrast } from "sagbook/statistics/fixed_contrast.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import type {
  MixedModel,
  MixedModelFit,
} from "sagbook/statistics/mixed_model.ts";
import { profileCoefficients } from "sagbook/statistics/profile_coefficients.ts";
import { profileDeviations } from "sagbook/statistics/profile_intervals.ts";
import { close, near } from "./_references.ts";

/** Fails if any number in a fit is NaN, infinite or a negative spread. */
function checkPlain(fit: MixedModelFit): void {
  const visit = (value: unknown, path: string): void => {
    if (typeof value === "number") {
      ok(Number.isFinite(value), `${path}: ${value}`);
    } else if (value && typeof value === "object") {
      for (const [key, inner] of Object.entries(value)) {
        visit(inner, `${path}.${key}`);
      }
    }
  };
  visit(fit, "fit");
  for (const { variance = 0, standardDeviation = 0 } of fit.components) {
    ok(variance >= 0 && standardDeviation >= 0);
  }
}

function fitOf(
  response: number[],
  random: Record<string, (string | number)[]>,
  fixed = [interceptColumn(response.length)],
): MixedModelFit {
  const fit = fitMixedModel({
    response,
    fixed,
    random: Object.entries(random).map(([name, labels]) => ({ name, labels })),
  });
  checkPlain(fit);
  return fit;
}

const componentOf = (fit: MixedModelFit, name: string) =>
  fit.components.find((component) => component.name === name)!;

Deno.test("fitMixedModel() leaves out a factor with one reading a level and names it", () => {
  const fit = fitOf([713, 716, 714, 717], { zeroing: [1, 2, 3, 4] });
  equal(componentOf(fit, "zeroing").variance, undefined);
  deepEqual(componentOf(fit, "zeroing").confoundedWith, ["residual"]);
  near(componentOf(fit, "residual").variance!, 10 / 3, 1e-12, "together");
  deepEqual(componentOf(fit, "residual").confoundedWith, ["zeroing"]);
});

Deno.test("fitMixedModel() names every source of three that one column cannot tell apart", () => {
  const labels = [1, 2, 3, 4];
  const fit = fitOf([713, 716, 714, 717], { session: labels, zeroing: labels });
  equal(componentOf(fit, "session").variance, undefined);
  equal(componentOf(fit, "zeroing").variance, undefined);
  deepEqual(componentOf(fit, "residual").confoundedWith, [
    "session",
    "zeroing",
  ]);
});

Deno.test("fitMixedModel() names two factors that go together and fits their sum", () => {
  const fit = fitOf([1, 2, 5, 6, 3, 4], {
    operator: ["a", "a", "b", "b", "c", "c"],
    session: [1, 1, 2, 2, 3, 3],
  });
  near(componentOf(fit, "operator").variance!, 3.75, 1e-7, "sum");
  deepEqual(componentOf(fit, "operator").confoundedWith, ["session"]);
  equal(componentOf(fit, "session").variance, undefined);
  deepEqual(componentOf(fit, "session").confoundedWith, ["operator"]);
  deepEqual(fit.shifts.map(({ name }) => name), ["operator"]);
});

Deno.test("fitMixedModel() leaves out a factor with one level or within the fixed part", () => {
  const one = fitOf([1, 2, 4], { operator: ["a", "a", "a"] });
  equal(componentOf(one, "operator").variance, undefined);
  deepEqual(componentOf(one, "operator").confoundedWith, ["the fixed part"]);
  const zones = ["c", "c", "e", "e"];
  const within = fitOf([1, 2, 4, 6], { zone: zones }, levelColumns("", zones));
  deepEqual(componentOf(within, "zone").confoundedWith, ["the fixed part"]);
});

Deno.test("fitMixedModel() sets a fixed column aside that follows from others and names them", () => {
  const zones = ["c", "e", "c", "e", "c", "e"];
  const fit = fitOf([1, 2, 4, 6, 3, 5], { zeroing: [1, 1, 2, 2, 3, 3] }, [
    interceptColumn(6),
    ...levelColumns("", zones),
  ]);
  equal(fit.rank, 2);
  equal(fit.fixed[2].estimate, undefined);
  deepEqual(fit.fixed[2].aliasedWith, ["(Intercept)", "c"]);
});

Deno.test("fitMixedModel() of equal readings has no scatter and says so", () => {
  const fit = fitOf(Array(9).fill(0.715), {
    zeroing: [1, 1, 1, 2, 2, 2, 3, 3, 3],
  });
  equal(fit.status, "no scatter");
  deepEqual(fit.components.map(({ variance }) => variance), [0, 0]);
  close(fit.fixed[0].estimate!, 0.715, 1e-15, "mean");
  equal(fit.fixed[0].standardError, 0);
  equal(fit.logLikelihood, undefined);
  deepEqual(
    profileDeviations({
      response: [1, 1],
      fixed: [interceptColumn(2)],
      random: [],
    }),
    [],
  );
  deepEqual(
    profileCoefficients({
      response: [1, 1],
      fixed: [interceptColumn(2)],
      random: [],
    }),
    [],
  );
});

Deno.test("fitMixedModel() of as many columns as readings is saturated", () => {
  const single = fitOf([5], {});
  equal(single.status, "saturated");
  equal(single.fixed[0].estimate, 5);
  equal(single.fixed[0].standardError, undefined);
  equal(single.components[0].variance, undefined);
  equal(
    fitOf([5, 6], { zeroing: [1, 2] }, levelColumns("", ["c", "e"])).status,
    "saturated",
  );
});

Deno.test("fitMixedModel() gives all scatter to the factor where repeats agree exactly", () => {
  const fit = fitOf([1, 1, 1, 5, 5, 5, 3, 3, 3], {
    zeroing: [1, 1, 1, 2, 2, 2, 3, 3, 3],
  });
  equal(fit.status, "no residual scatter");
  equal(componentOf(fit, "residual").variance, 0);
  ok(componentOf(fit, "residual").atBoundary);
  near(componentOf(fit, "zeroing").variance!, 4, 1e-6, "variance of 1, 5, 3");
  near(componentOf(fit, "zeroing").standardError!, 4, 1e-6, "4 √(2/2)");
  near(fit.fixed[0].standardError!, 2 / Math.sqrt(3), 1e-6, "standard error");
  near(fit.fixed[0].dof!, 2, 1e-6, "degrees of freedom");
});

Deno.test("fitMixedModel() finds the scatter of zeroings that move all zones alike", () => {
  const zones = ["c", "e", "c", "e", "c", "e"];
  const fit = fitOf([715, 716, 717, 718, 716, 717], {
    zeroing: [1, 1, 2, 2, 3, 3],
  }, levelColumns("", zones));
  equal(fit.status, "no residual scatter");
  near(componentOf(fit, "zeroing").variance!, 1, 1e-6, "variance of 0, 2, 1");
  equal(componentOf(fit, "residual").variance, 0);
  near(fit.fixed[0].standardError!, 1 / Math.sqrt(3), 1e-6, "standard error");
  equal(fixedContrast(fit, { e: 1, c: -1 }), undefined);
  const two = fitOf([10, 11, 12, 14, 15, 16, 11, 12, 13], {
    zeroing: [1, 1, 1, 2, 2, 2, 3, 3, 3],
    diameter: [1, 2, 3, 1, 2, 3, 1, 2, 3],
  });
  equal(two.status, "no residual scatter");
  near(componentOf(two, "zeroing").variance!, 13 / 3, 1e-5, "of 0, 4, 1");
  near(componentOf(two, "diameter").variance!, 1, 1e-5, "of 0, 1, 2");
});

Deno.test("fitMixedModel() puts a negative component at exactly 0 and pools the rest", () => {
  const fit = fitOf([
    714,
    716,
    715,
    716,
    714,
    715,
    715,
    713,
    717,
    715,
    716,
    717,
  ], {
    zeroing: [1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4],
  });
  equal(componentOf(fit, "zeroing").variance, 0);
  ok(componentOf(fit, "zeroing").atBoundary);
  equal(componentOf(fit, "zeroing").standardError, undefined);
  near(componentOf(fit, "residual").variance!, 16.25 / 11, 1e-12, "pooled");
  ok(fit.shifts[0].shifts.every((shift) => shift === 0));
});

Deno.test("fitMixedModel() takes a missing zone, one zeroing and uneven cells", () => {
  const zones = ["c", "h", "c", "h", "c", "c"];
  const fit = fitOf(
    [1, 2, 4, 5.5, 3, 3.1],
    { zeroing: [1, 1, 2, 2, 3, 3] },
    treatmentColumns("", zones, ["c", "h", "e"]),
  );
  deepEqual(fit.fixed.map(({ name }) => name), ["(Intercept)", "h"]);
  equal(fit.status, "fitted");
  const alone = fitOf(
    [1, 2, 1.5],
    { zeroing: [1, 1, 1] },
    treatmentColumns("", ["c", "h", "h"]),
  );
  deepEqual(componentOf(alone, "zeroing").confoundedWith, ["the fixed part"]);
});

Deno.test("fitMixedModel() does not depend on unit, level or names", () => {
  const zeroing = [1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5];
  const response = [3, 1, 2, 5, 6, 4, 2, 2.5, 8, 7, 7.5, 4];
  const plain = fitOf(response, { zeroing });
  const scaled = fitOf(response.map((y) => 1e-3 * y), { zeroing });
  const shifted = fitOf(response.map((y) => 1e6 + y), {
    zeroing: zeroing.map((z) => `z${z}`),
  });
  for (const k of [0, 1]) {
    const variance = plain.components[k].variance!;
    near(scaled.components[k].variance! * 1e6, variance, 1e-7, "scaled");
    near(shifted.components[k].variance!, variance, 1e-7, "shifted");
  }
});

Deno.test("fitMixedModel() refuses nothing, unequal lengths, what is no number, equal names", () => {
  const refused: [MixedModel, string][] = [
    [
      { response: [], fixed: [], random: [] },
      "Cannot fit a mixed model as there must be at least one reading: current value is 0",
    ],
    [
      { response: [1, NaN], fixed: [], random: [] },
      "Cannot fit a mixed model as every reading must be a finite number: current value is NaN at position 1",
    ],
    [
      { response: [1, 2], fixed: [interceptColumn(3)], random: [] },
      "Cannot fit a mixed model as column (Intercept) must have one value for each of 2 readings: current value is 3",
    ],
    [
      {
        response: [1, 2],
        fixed: [{ name: "x", values: [1, Infinity] }],
        random: [],
      },
      "Cannot fit a mixed model as every value of column x must be a finite number: current value is Infinity at position 1",
    ],
    [
      { response: [1, 2], fixed: [], random: [{ name: "z", labels: [1] }] },
      "Cannot fit a mixed model as factor z must have one label for each of 2 readings: current value is 1",
    ],
    [
      {
        response: [1, 2],
        fixed: [],
        random: [{ name: "residual", labels: [1, 2] }],
      },
      'Cannot fit a mixed model as every factor must have a name of its own other than residual: current value is "residual"',
    ],
  ];
  for (const [model, message] of refused) {
    throws(() => fitMixedModel(model), { name: "RangeError", message });
  }
});

/** Small integers that look random, from a fixed rule. */
function scatter(count: number, seed: number): number[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648 - 0.5;
  });
}

/** Log restricted likelihood straight from the covariance of the readings. */
function directLikelihood(
  model: MixedModel,
  variances: number[],
  residual: number,
): {
  log: number;
  leftOver: (values: ArrayLike<number>) => number;
  solved: number[];
} {
  const n = model.response.length;
  const p = model.fixed.length;
  const v = Array.from(
    { length: n },
    (_, i) =>
      Array.from({ length: n }, (_, j) =>
        model.random.reduce(
          (sum, { labels }, k) =>
            sum + (labels[i] === labels[j] ? variances[k] : 0),
          i === j ? residual : 0,
        )),
  );
  // Cholesky of V, then whitened X and y by Gram-Schmidt.
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) v[j][j] -= v[j][k] ** 2;
    v[j][j] = Math.sqrt(v[j][j]);
    logDeterminant += 2 * Math.log(v[j][j]);
    for (let i = j + 1; i < n; i++) {
      for (let k = 0; k < j; k++) v[i][j] -= v[i][k] * v[j][k];
      v[i][j] /= v[j][j];
    }
  }
  const whiten = (values: ArrayLike<number>) => {
    const x = Array.from(values);
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < i; k++) x[i] -= v[i][k] * x[k];
      x[i] /= v[i][i];
    }
    return x;
  };
  const dots = (a: number[], b: number[]) =>
    a.reduce((sum, x, i) => sum + x * b[i], 0);
  const units: number[][] = [];
  for (const { values } of model.fixed) {
    const x = whiten(values);
    for (const unit of units) {
      const part = dots(unit, x);
      x.forEach((_, i) => x[i] -= part * unit[i]);
    }
    const length = Math.sqrt(dots(x, x));
    logDeterminant += 2 * Math.log(length);
    units.push(x.map((value) => value / length));
  }
  const y = whiten(model.response);
  for (const unit of units) {
    const part = dots(unit, y);
    y.forEach((_, i) => y[i] -= part * unit[i]);
  }
  const solved = [...y];
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) solved[i] -= v[k][i] * solved[k];
    solved[i] /= v[i][i];
  }
  const log = -0.5 *
    ((n - p) * Math.log(2 * Math.PI) + logDeterminant + dots(y, y));
  const leftOver = (values: ArrayLike<number>) => {
    const x = whiten(values);
    return dots(x, x) -
      units.reduce((sum, unit) => sum + dots(unit, x) ** 2, 0);
  };
  return { log, leftOver, solved };
}

/** A study with more levels than are kept dense, nested and crossed at once. */
function largeStudy(): MixedModel {
  const [sessions, diameters] = [45, 7];
  const rows: [number, number, number, string][] = [];
  const gaps = scatter(2000, 5);
  let slot = 0;
  for (let session = 0; session < sessions; session++) {
    for (let zeroing = 0; zeroing < 3; zeroing++) {
      for (let reading = 0; reading < 3; reading++) {
        if (gaps[slot++] > 0.45) continue;
        const diameter = (session * 5 + zeroing * 3 + reading) % diameters;
        rows.push([
          session,
          3 * session + zeroing,
          diameter,
          ["c", "h", "e"][reading],
        ]);
      }
    }
  }
  const shift = [scatter(45, 1), scatter(135, 2), scatter(7, 3)];
  const noise = scatter(rows.length, 4);
  return {
    response: rows.map(([s, z, d, zone], i) =>
      700 + shift[0][s] + 2 * shift[1][z] + shift[2][d] + 1.5 * noise[i] +
      (zone === "e" ? 1 : 0)
    ),
    fixed: treatmentColumns("", rows.map((row) => row[3])),
    random: ["session", "zeroing", "diameter"].map((name, k) => ({
      name,
      labels: rows.map((row) => row[k] as number),
    })),
  };
}

Deno.test("fitMixedModel() of many levels meets the likelihood of the full covariance at its peak", () => {
  const model = largeStudy();
  const fit = fitMixedModel(model);
  checkPlain(fit);
  ok(fit.shifts.reduce((sum, { labels }) => sum + labels.length, 0) > 170);
  const variances = model.random.map(({ name }) =>
    componentOf(fit, name).variance!
  );
  const residual = componentOf(fit, "residual").variance!;
  const direct = directLikelihood(model, variances, residual);
  close(fit.logLikelihood!, direct.log, 1e-8, "log likelihood");
  for (const k of [0, 1, 2, 3]) {
    for (const by of [0.98, 1.02]) {
      const moved = variances.map((v, l) => k === l ? v * by : v);
      const { log } = directLikelihood(
        model,
        moved,
        k === 3 ? residual * by : residual,
      );
      ok(log < direct.log, `variance ${k} times ${by}`);
    }
  }
  // Shifts are variance times z'Py; their errors have σ² - σ⁴ z'Pz.
  fit.shifts.forEach(({ labels, shifts, errors }, k) =>
    labels.forEach((label, level) => {
      let sum = 0;
      direct.solved.forEach((value, i) => {
        if (String(model.random[k].labels[i]) === label) sum += value;
      });
      close(shifts[level], variances[k] * sum, 1e-7, `${k} ${label}`);
      if (level % 9 !== 0) return;
      const own = direct.leftOver(
        Array.from(
          model.random[k].labels,
          (one) => String(one) === label ? 1 : 0,
        ),
      );
      near(
        errors[level] ** 2,
        variances[k] - variances[k] ** 2 * own,
        1e-6,
        `error of ${k} ${label}`,
      );
    })
  );
});

Deno.test("fitMixedModel() of many levels has the standard errors of a small exact fit", () => {
  // The likelihood's curvature at the peak by differences of the direct form.
  const model = largeStudy();
  const fit = fitMixedModel(model);
  const names = fit.curvature.names;
  const at = names.map((name) => componentOf(fit, name).variance!);
  const log = (values: number[]) =>
    directLikelihood(model, values.slice(0, -1), values[values.length - 1]).log;
  const step = at.map((value) => 0.01 * value);
  const information = names.map((_, i) =>
    names.map((_, j) => {
      const corner = (a: number, b: number) =>
        log(at.map((value, k) =>
          value + (k === i ? a * step[i] : 0) + (k === j ? b * step[j] : 0)
        ));
      return -(corner(1, 1) - corner(1, -1) - corner(-1, 1) + corner(-1, -1)) /
        (4 * step[i] * step[j]);
    })
  );
  // Information times covariance is one.
  names.forEach((_, i) =>
    names.forEach((_, j) => {
      const entry = information[i].reduce(
        (sum, value, k) => sum + value * fit.curvature.covariance[k][j],
        0,
      );
      close(
        entry * at[j] / at[i],
        i === j ? 1 : 0,
        0.01,
        `${names[i]}, ${names[j]}`,
      );
    })
  );
});

Deno.test("profileDeviations() of many levels loses 1.92 of log-likelihood at each end", () => {
  const model = largeStudy();
  const fit = fitMixedModel(model);
  for (const { name, estimate, interval } of profileDeviations(model)) {
    near(estimate, componentOf(fit, name).standardDeviation!, 1e-6, name);
    ok(interval.low < estimate && estimate < interval.high);
    const { standardError = 0, variance = 0 } = componentOf(fit, name);
    const rough = standardError / (2 * Math.sqrt(variance));
    ok(
      interval.high - interval.low < 6 * rough,
      `${name}: ${interval.low} to ${interval.high}`,
    );
    ok(
      interval.high - interval.low > 3 * rough,
      `${name}: ${interval.low} to ${interval.high}`,
    );
  }
});

Deno.test("fitMixedModel() takes the higher of two peaks", () => {
  // Nine readings whose likelihood also peaks at variances 33.1, 5.72, 0.103.
  const response = [
    687.115,
    700.877,
    696.439,
    696.569,
    698.744,
    702.393,
    688.13,
    697.992,
    697.938,
  ];
  const model: MixedModel = {
    response,
    fixed: levelColumns("", [0, 0, 0, 1, 1, 2, 1, 0, 2]),
    random: [
      { name: "a", labels: [1, 2, 2, 2, 0, 3, 1, 2, 3] },
      { name: "b", labels: [0, 3, 1, 1, 2, 3, 0, 2, 1] },
    ],
  };
  const fit = fitMixedModel(model);
  const lower = directLikelihood(model, [33.0987, 5.72042], 0.102929).log;
  const higher = directLikelihood(model, [0, 34.0335], 0.0738227).log;
  ok(higher > lower + 1);
  ok(fit.logLikelihood! > higher - 1e-5);
  equal(componentOf(fit, "a").variance, 0);
});

Deno.test("fitMixedModel() finds no residual where shifts meet readings with none to spare", () => {
  const fit = fitOf([1, 2, 4, 9, 3, 7, 7], {
    a: [1, 1, 2, 2, 3, 3, 1],
    b: [1, 2, 3, 1, 2, 3, 3],
    c: [1, 2, 2, 3, 1, 3, 1],
  });
  ok(["fitted", "no residual scatter"].includes(fit.status));
  const { variance } = componentOf(fit, "residual");
  ok(variance === 0 || variance! > 1e-3, `residual ${variance}`);
});
