/**
 * Fits linear mixed models with independent random shifts.
 *
 * @module
 */
import { describeFit } from "./_describe_fit.ts";
import { findHighest } from "./_highest_likelihood.ts";
import { identify } from "./_identifiability.ts";
import { type MixedDesign, reduceModel } from "./_mixed_design.ts";
import { MixedLikelihood } from "./_mixed_likelihood.ts";
import { profileAt } from "./_profile_likelihood.ts";
import type {
  LikelihoodKind,
  MixedModel,
  MixedModelFit,
} from "./mixed_model.ts";

/** A residual variance that stands for 0, as a share of all scatter. */
const VANISHING = 1e-7;

/**
 * Fits y = X β + Σ Z_k u_k + e by the highest restricted likelihood (REML).
 *
 * Factors may be crossed or nested, balanced or not, with cells missing; give
 * levels that belong to different parents different labels. Variances on the
 * zero boundary come out as exactly 0. A factor that the design cannot tell
 * from another source is left out and named (`confoundedWith`), its variance
 * going to the source that stands in for it; a fixed column that follows from
 * earlier ones is left out and named (`aliasedWith`).
 *
 * Variances and coefficients are within 1e-6 relative of the exact optimum,
 * the logarithm of the likelihood within 1e-8. The sums of products take one
 * pass over the readings; after that the cost does not depend on their number.
 * Memory grows with the levels that remain when sparse ones are eliminated,
 * squared: some 2,000 of them are practical.
 *
 * If fixed part and shifts together meet every reading exactly, as they may
 * when a coarse display repeats itself, the likelihood has no highest point: the
 * residual variance is 0, and the others are found to 1e-6 as the limit of
 * their best values for ever smaller residuals.
 *
 * @param model Readings, fixed columns and random factors of equal length.
 * @param likelihood `"restricted"` for variances, `"full"` to compare models
 * that differ in their fixed part.
 * @returns The fit, as plain data.
 * @throws {RangeError} If there is no reading, lengths differ, a number is not
 * finite or two factors have one name.
 *
 * @see H. D. Patterson, R. Thompson (1971), Biometrika 58, 545-554; C. R.
 * Henderson (1975), Biometrics 31, 423-447.
 *
 * @example Two readings after each of three zeroings
 * ```ts
 * import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
 * import { interceptColumn } from "sagbook/statistics/design_columns.ts";
 * import { equal } from "node:assert/strict";
 *
 * const fit = fitMixedModel({
 *   response: [1, 2, 5, 6, 3, 4],
 *   fixed: [interceptColumn(6)],
 *   random: [{ name: "zeroing", labels: ["a", "a", "b", "b", "c", "c"] }],
 * });
 * const [zeroing, residual] = fit.components;
 * equal(zeroing.variance!.toFixed(6), "3.750000"); // (8 - 0.5) / 2
 * equal(residual.variance!.toFixed(6), "0.500000");
 * ```
 */
export function fitMixedModel(
  model: MixedModel,
  likelihood: LikelihoodKind = "restricted",
): MixedModelFit {
  const whole = reduceModel(model);
  const rank = whole.fixed.basis.length;
  if (whole.observations <= rank) {
    return describeFit({
      model,
      design: whole,
      status: "saturated",
      likelihood,
    });
  }
  if (whole.residualSquares === 0) {
    return describeFit({
      model,
      design: whole,
      status: "no scatter",
      likelihood,
    });
  }
  const identifiability = identify(whole);
  const { kept, guess } = identifiability;
  const design = kept.length === model.random.length
    ? whole
    : keepFactors(model, kept);
  const system = new MixedLikelihood(design, likelihood === "restricted");
  const { ratios, unbounded } = findHighest(system, guess);
  if (unbounded) {
    const vanishing = VANISHING * whole.residualSquares /
      (whole.observations - rank);
    return describeFit({
      model,
      design,
      status: "no residual scatter",
      likelihood,
      identifiability,
      system,
      ratios: ratiosWithoutResidual(system, guess, vanishing),
      vanishing,
    });
  }
  return describeFit({
    model,
    design,
    status: "fitted",
    likelihood,
    identifiability,
    system,
    ratios,
  });
}

/**
 * The ratios at which the likelihood is highest for a residual variance that
 * is next to nothing; shares smaller than that are exactly 0.
 */
function ratiosWithoutResidual(
  system: MixedLikelihood,
  guess: readonly number[],
  vanishing: number,
): number[] {
  const { factors, observations } = system.design;
  const start = guess.map((ratio) => 0.01 * ratio / VANISHING);
  const found = profileAt(
    system,
    factors.length,
    Math.sqrt(vanishing),
    start,
    vanishing,
  );
  return found.ratios.map((ratio, k) =>
    ratio * observations < factors[k].labels.length ? 0 : ratio
  );
}

/** The sums of products with some of the factors only. */
function keepFactors(model: MixedModel, kept: readonly number[]): MixedDesign {
  return reduceModel({ ...model, random: kept.map((k) => model.random[k]) });
}
