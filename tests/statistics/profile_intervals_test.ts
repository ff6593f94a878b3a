import { close, references } from "./_references.ts";
import {
  profileCoefficients,
  profileDeviations,
} from "sagbook/statistics/profile_intervals.ts";
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
