import { equal, ok } from "node:assert/strict";
import { leastSquares } from "sagbook/numerics/least_squares.ts";
import { fProbability, fQuantile } from "sagbook/statistics/f_distribution.ts";
import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
import { summarise } from "sagbook/statistics/summary.ts";
import { budgetOf, effectiveDofOf } from "sagbook/uncertainty/budget.ts";
import type { UncertainInput } from "sagbook/uncertainty/distribution.ts";
import { secondOrderOf } from "sagbook/uncertainty/second_order.ts";
import {
  type ReferenceFile,
  referenceFiles,
  withinAbsolute,
  withinRelative,
} from "./_reference_files.ts";

type Results = Record<string, number>;

const has = ({ data }: ReferenceFile, ...keys: string[]): boolean =>
  keys.every((key) => key in data[0]);

const numbers = ({ data }: ReferenceFile, key: string): number[] =>
  data.map((row) => Number(row[key]));

const normal = (
  source: string,
  value: number,
  standardDeviation: number,
  dof: number | null = null,
): UncertainInput => ({
  source,
  unit: "",
  value,
  distribution: { kind: "normal", standardDeviation },
  ...(dof === null ? {} : { dof }),
});

/** A product of inputs with relative uncertainties (G.4.1, example). */
function product(file: ReferenceFile): Results {
  const inputs = file.data.map((row) =>
    normal(
      String(row.input),
      1,
      Number(row.relative_u_percent) / 100,
      Number(row.nu),
    )
  );
  const budget = budgetOf((x) => x.reduce((y, xi) => y * xi, 1), inputs);
  const found: Results = {
    u_c_percent: 100 * budget.standardUncertainty,
    nu_eff: budget.dof,
  };
  for (const [key, printed] of Object.entries(file.expected.published)) {
    const [, level, dof] = /^t(\d+)_at_(\d+)$/.exec(key) ?? [];
    if (level === undefined) continue;
    const tail = (1 - Number(level) / 100) / 2;
    found[key] = studentTQuantile(tail, Number(dof), "upper");
    // The file multiplies by the factor as the table prints it; we do not.
    found[`U${level}_percent`] = Number(printed) * found.u_c_percent;
    ok(Math.abs(budget.factor / Number(printed) - 1) < 0.005);
  }
  return found;
}

/** A gauge block against a standard, to second order (H.1). */
function endGauge(file: ReferenceFile): Results {
  const row = (quantity: string) => {
    const found = file.data.find((entry) => entry.quantity === quantity);
    ok(found, quantity);
    return found;
  };
  const names = [
    ...["l_S", "d_bar", "d_1", "d_2", "alpha_S", "theta"],
    ...["delta_alpha", "delta_theta"],
  ];
  const nominal = Math.round(Number(row("l_S").estimate) / 1e6) * 1e6;
  const inputs = names.map((name) => {
    const { estimate, u, nu } = row(name);
    const value = Number(estimate) - (name === "l_S" ? nominal : 0);
    return normal(name, value, Number(u), nu === null ? null : Number(nu));
  });
  // Lengths as departures from the nominal one, so that digits are not lost.
  const model = ([s, bar, one, two, alpha, theta, da, dt]: Float64Array) =>
    s + bar + one + two - (nominal + s) * (da * theta + alpha * dt);
  const budget = budgetOf(model, inputs, { confidence: 0.99 });
  const curved = secondOrderOf(model, inputs).standardUncertainty;
  const line = (name: string) =>
    budget.lines.find((entry) => entry.source === name);
  names.forEach((name) => {
    const sensitivity = line(name)?.sensitivity ?? NaN;
    const wanted = Number(row(name).c);
    // θ has no effect at first order because δα is 0, and so has α_S.
    ok(Math.abs(sensitivity - wanted) <= 1e-6 * Math.abs(wanted), name);
  });
  const parts = ["d_bar", "d_1", "d_2"].map((name) => line(name) ?? fail());
  const u = (name: string) => Math.abs(line(name)?.contribution ?? NaN);
  const l = Number(row("l_S").estimate);
  const dofEach = effectiveDofOf(budget.lines);
  equal(dofEach, budget.dof);
  for (
    const [name, share] of Object.entries(
      file.expected.recomputed_budget.share_of_variance as Results,
    )
  ) ok(Math.abs((line(name)?.share ?? NaN) - share) < 1e-9, name);
  const input = (name: string) => Number(row(name).u);
  const withoutSecond = budget.standardUncertainty ** 2;
  const second = curved ** 2 - withoutSecond;
  const crossed = [
    l * input("delta_alpha") * input("theta"),
    l * input("alpha_S") * input("delta_theta"),
  ];
  // Both crossed terms are l_S² u² u², up to u(l_S) in what multiplies them.
  ok(Math.abs(second / (crossed[0] ** 2 + crossed[1] ** 2) - 1) < 1e-6);
  const k = studentTQuantile(0.005, Math.floor(budget.dof), "upper");
  return {
    l: nominal + budget.value,
    u_c: budget.standardUncertainty,
    u_d: Math.hypot(...parts.map((part) => part.contribution)),
    nu_d: effectiveDofOf(parts),
    nu_eff: budget.dof,
    nu_eff_truncated: Math.floor(budget.dof),
    nu_eff_all_inputs_separately: dofEach,
    t99: k,
    U99: k * budget.standardUncertainty,
    u_theta: input("theta"),
    u_delta_alpha_term: u("delta_alpha"),
    u_delta_theta_term: u("delta_theta"),
    second_order_delta_alpha_theta: crossed[0],
    second_order_alpha_delta_theta: crossed[1],
    u_c_with_second_order: curved,
  };
}

function fail(): never {
  throw new Error("a line is missing");
}

/** Resistance, reactance, impedance from correlated means (H.2). */
function impedance(file: ReferenceFile): Results {
  const columns = ["V", "I_A", "phi_rad"].map((key) => numbers(file, key));
  const n = columns[0].length;
  const means = columns.map((column) => summarise(column).mean);
  const covariance = columns.map((a, i) =>
    columns.map((b, j) =>
      a.reduce((sum, x, k) => sum + (x - means[i]) * (b[k] - means[j]), 0) /
      (n - 1) / n
    )
  );
  const u = covariance.map((row, i) => Math.sqrt(row[i]));
  const correlation = covariance.map((row, i) =>
    row.map((entry, j) => entry / (u[i] * u[j]))
  );
  const inputs = means.map((mean, i) => normal(`${i}`, mean, u[i], n - 1));
  const [resistance, reactance, modulus] = [
    ([v, i, phi]: Float64Array) => v / i * Math.cos(phi),
    ([v, i, phi]: Float64Array) => v / i * Math.sin(phi),
    ([v, i]: Float64Array) => v / i,
  ].map((model) => budgetOf(model, inputs, { correlation }));
  equal(resistance.dof, n - 1);
  const together = (a: typeof resistance, b: typeof resistance): number => {
    let sum = 0;
    a.lines.forEach((left, i) =>
      b.lines.forEach((right, j) => {
        sum += left.contribution * correlation[i][j] * right.contribution;
      })
    );
    return sum / (a.standardUncertainty * b.standardUncertainty);
  };
  return {
    V: means[0],
    I_mA: 1000 * means[1],
    phi: means[2],
    u_V: u[0],
    u_I_mA: 1000 * u[1],
    u_phi: u[2],
    r_V_I: correlation[0][1],
    r_V_phi: correlation[0][2],
    r_I_phi: correlation[1][2],
    R: resistance.value,
    X: reactance.value,
    Z: modulus.value,
    u_R: resistance.standardUncertainty,
    u_X: reactance.standardUncertainty,
    u_Z: modulus.standardUncertainty,
    r_R_X: together(resistance, reactance),
    r_R_Z: together(resistance, modulus),
    r_X_Z: together(reactance, modulus),
  };
}

/** A straight line and what it predicts (H.3). */
function calibrationLine(file: ReferenceFile): Results {
  const reference = 20;
  const x = numbers(file, "t_degC").map((t) => t - reference);
  const fit = leastSquares(x.map((t) => [1, t]), numbers(file, "b_degC"));
  const s = Math.sqrt(fit.residualSumOfSquares / fit.dof);
  const [y1, y2] = fit.coefficients;
  const [[c11, c12], [, c22]] = fit.inverseNormal;
  const [u1, u2] = [s * Math.sqrt(c11), s * Math.sqrt(c22)];
  const r = c12 / Math.sqrt(c11 * c22);
  const predict = (at: number) =>
    budgetOf(
      ([a, b]) => a + b * at,
      [normal("y1", y1, u1, fit.dof), normal("y2", y2, u2, fit.dof)],
      { correlation: [[1, r], [r, 1]] },
    );
  const at30 = predict(10);
  for (const wanted of file.expected.recomputed_predictions_95) {
    const found = predict(wanted.x);
    const single = Math.hypot(found.standardUncertainty, s);
    withinRelative(
      {
        y: found.value,
        u_line: found.standardUncertainty,
        line_half_width_95: found.expanded,
        u_single_observation: single,
        observation_half_width_95: found.factor * single,
        x: wanted.x,
        t_degC: wanted.x + reference,
      },
      wanted,
      file.tolerance.recomputed_relative,
    );
  }
  return {
    y1,
    u_y1: u1,
    y2,
    u_y2: u2,
    r,
    s,
    b_30: at30.value,
    u_b_30: at30.standardUncertainty,
    df: fit.dof,
  };
}

/** Between-day effect from daily means and deviations (H.5). */
function betweenDay(file: ReferenceFile): Results {
  const means = numbers(file, "mean_V");
  const days = means.length;
  const n = Number(file.data[0].n);
  const { mean, standardDeviation = NaN } = summarise(means);
  const within = numbers(file, "s_V").reduce((sum, s) => sum + s * s, 0) / days;
  const [dfA, dfB] = [days - 1, days * (n - 1)];
  const between = n * standardDeviation ** 2;
  const f = between / within;
  const pooled = (dfA * between + dfB * within) / (dfA + dfB);
  return {
    grand_mean: mean,
    sd_of_daily_means: standardDeviation,
    s_a: Math.sqrt(between),
    s_b: Math.sqrt(within),
    df_a: dfA,
    df_b: dfB,
    F: f,
    "F_critical_0.05": fQuantile(0.05, dfA, dfB, "upper"),
    "F_critical_0.025": fQuantile(0.025, dfA, dfB, "upper"),
    p: fProbability(f, dfA, dfB, "upper"),
    between_day_variance_untruncated: (between - within) / n,
    s_between_day: Math.sqrt(Math.max(0, between - within) / n),
    s_within_day: Math.sqrt(within),
    u_grand_mean_if_between_day_effect: standardDeviation / Math.sqrt(days),
    df_if_between_day_effect: dfA,
    s_pooled_if_none: Math.sqrt(pooled),
    u_grand_mean_if_none: Math.sqrt(pooled / (days * n)),
    df_if_none: dfA + dfB,
  };
}

/** Which calculation a file asks for, told by its columns. */
function calculationOf(file: ReferenceFile): (file: ReferenceFile) => Results {
  if (has(file, "relative_u_percent", "nu")) return product;
  if (has(file, "quantity", "estimate", "u", "nu", "c")) return endGauge;
  if (has(file, "V", "I_A", "phi_rad")) return impedance;
  if (has(file, "t_degC", "b_degC")) return calibrationLine;
  if (has(file, "mean_V", "s_V", "n")) return betweenDay;
  throw new Error(`${file.file} has columns that no calculation is known for`);
}

for (const file of referenceFiles("gum-")) {
  Deno.test(`budgetOf() agrees with ${file.name} (${file.source})`, () => {
    const found = calculationOf(file)(file);
    const { published } = file.expected;
    withinAbsolute(found, published, file.tolerance.published_absolute);
    const recomputed = file.expected.recomputed ??
      file.expected.recomputed_first_order_at_means;
    const loose = file.tolerance.recomputed_relative_variances_of_means;
    withinRelative(
      found,
      recomputed,
      loose ?? file.tolerance.recomputed_relative,
    );
  });
}

Deno.test("the five examples of the GUM are there to be held to", () => {
  equal(referenceFiles("gum-").length >= 5, true);
});
