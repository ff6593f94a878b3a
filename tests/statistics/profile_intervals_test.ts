import { close, references } from "./_references.ts";
import { profileCoefficients } from "sagbook/statistics/profile_coefficients.ts";
import { profileDeviations } from "sagbook/statistics/profile_intervals.ts";
import { interceptColumn } from "sagbook/statistics/design_columns.ts";
import { modelOf } from "./_mixed_models.ts";

/** "sd_(Intercept)|block" and "sigma" as our names. */
function componentOf(parameter: string): string | undefined {
  if (parameter === "sigma") return "residual";
  return parameter.match(/^sd_\(Intercept\)\|(.*)$/)?.[1];
}

for (const [name, file] of references("reml-")) {
  const { expected, tolerance } = file;
  const model = modelOf(file.model, file.data);

  Deno.test(`profileDeviations() finds the restricted intervals of ${name}`, () => {
    const found = profileDeviations(model, 0.95);
    const allowed = tolerance.profile_ci_95_reml_deviance;
    for (const row of expected.profile_ci_95_reml_deviance.rows) {
      const { interval } = found.find((one) => one.name === row.component)!;
      close(
        interval.low,
        row.lower,
        allowed * row.lower,
        `${row.component} low`,
      );
      close(
        interval.high,
        row.upper,
        allowed * row.upper,
        `${row.component} high`,
      );
    }
  });

  Deno.test(`profileDeviations() and profileCoefficients() find the full intervals of ${name}`, () => {
    const deviations = profileDeviations(model, 0.95, "full");
    const coefficients = profileCoefficients(model, 0.95);
    const allowed = tolerance.profile_ci_95_ml_deviance;
    for (const row of expected.profile_ci_95_ml_deviance.rows) {
      const component = componentOf(row.parameter);
      const { interval } = component
        ? deviations.find((one) => one.name === component)!
        : coefficients.find((one) => one.name === row.parameter)!;
      const width = row.upper - row.lower;
      close(interval.low, row.lower, allowed * width, `${row.parameter} low`);
      close(interval.high, row.upper, allowed * width, `${row.parameter} high`);
    }
  });
}

Deno.test("profileDeviations() with the small-sample threshold is exact for one variance", () => {
  // For variance alone twice the loss is n(x - 1 - ln x), x chi-square over n;
  // with 3 degrees of freedom Bartlett's factor is 1 + 1/9.
  const model = {
    response: [1, 4, 2, 8],
    fixed: [interceptColumn(4)],
    random: [],
  };
  const [plain] = profileDeviations(model);
  const [small] = profileDeviations(model, 0.95, "restricted", "small sample");
  const variance = 28.75 / 3;
  const lossAt = (deviation: number) => {
    const x = variance / deviation ** 2;
    return 3 * (x - 1 - Math.log(x));
  };
  const quantile = 3.841458820694124;
  for (const end of [plain.interval.low, plain.interval.high]) {
    close(lossAt(end), quantile, 1e-6, "chi-square");
  }
  for (const end of [small.interval.low, small.interval.high]) {
    close(lossAt(end), quantile * 10 / 9, 1e-6, "small sample");
  }
});
