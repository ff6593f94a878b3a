import { equal } from "node:assert/strict";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import { modelOf } from "./_mixed_models.ts";
import { close, near, references } from "./_references.ts";

for (const [name, file] of references("reml-")) {
  const { expected, tolerance } = file;
  const model = modelOf(file.model, file.data);
  const boundary: string[] = expected.at_zero_boundary ?? [];

  Deno.test(`fitMixedModel() finds variances, coefficients and likelihood of ${name}`, () => {
    const fit = fitMixedModel(model);
    equal(fit.observations, expected.n);
    equal(fit.rank, expected.p);
    close(
      fit.logLikelihood!,
      expected.log_restricted_likelihood,
      1e-8,
      "log likelihood",
    );
    for (const component of fit.components) {
      const variance = expected.variance[component.name];
      equal(component.atBoundary, boundary.includes(component.name));
      if (variance === 0) equal(component.variance, 0);
      else {near(
          component.variance!,
          variance,
          tolerance.variance,
          component.name,
        );}
      if (component.name !== "residual") {
        equal(component.levels, expected.levels[component.name]);
      }
    }
    for (const effect of fit.fixed) {
      const error = expected.fixed_effects.standard_error[effect.name];
      close(
        effect.estimate!,
        expected.fixed_effects.estimate[effect.name],
        tolerance.fixed_effects_estimate_in_units_of_se * error,
        effect.name,
      );
      near(effect.standardError!, error, tolerance.standard_error, effect.name);
      const dof = expected.fixed_effects.satterthwaite_df[effect.name];
      // On the zero boundary the file's own figure is no reference.
      if (boundary.length === 0) {
        near(
          effect.dof!,
          dof,
          tolerance.satterthwaite_df,
          `${effect.name} dof`,
        );
      }
    }
  });

  Deno.test(`fitMixedModel() predicts the shifts of ${name} and their errors`, () => {
    const fit = fitMixedModel(model);
    const allowed = tolerance.blup_in_units_of_residual_sd *
      expected.sd.residual;
    for (const { name: factor, labels, shifts, errors } of fit.shifts) {
      equal(labels.length, Object.keys(expected.blup[factor]).length);
      labels.forEach((label, i) => {
        const what = `${factor} ${label}`;
        close(shifts[i], expected.blup[factor][label], allowed, what);
        close(
          errors[i],
          expected.blup_prediction_error_sd[factor][label],
          allowed,
          `${what} error`,
        );
      });
    }
  });

  if (expected.cell_means) {
    Deno.test(`fitMixedModel() gives the cell means of ${name}`, () => {
      const fit = fitMixedModel(modelOf(file.model, file.data, "cell means"));
      const { cell_means: means } = expected;
      close(fit.logLikelihood!, means.log_restricted_likelihood, 1e-8, "log");
      for (const { name: level, estimate, standardError, dof } of fit.fixed) {
        const error = means.standard_error[level];
        close(estimate!, means.estimate[level], 1e-6 * error, level);
        near(standardError!, error, tolerance.standard_error, level);
        if (boundary.length === 0) {
          near(
            dof!,
            means.satterthwaite_df[level],
            tolerance.satterthwaite_df,
            level,
          );
        }
      }
    });
  }

  Deno.test(`fitMixedModel() finds the full likelihood of ${name}`, () => {
    const fit = fitMixedModel(model, "full");
    close(
      fit.logLikelihood!,
      expected.ml.log_likelihood,
      1e-6,
      "log likelihood",
    );
    for (const { name: component, variance } of fit.components) {
      close(
        variance!,
        expected.ml.variance[component],
        tolerance.ml_variance * expected.ml.variance[component] + 1e-9,
        component,
      );
    }
  });
}
