/**
 * Profile-likelihood intervals of a mixed model's standard deviations.
 *
 * @module
 */
import { requireProbability } from "./_guards.ts";
import { findHighest } from "./_highest_likelihood.ts";
import { identify } from "./_identifiability.ts";
import { reduceModel } from "./_mixed_design.ts";
import { MixedLikelihood } from "./_mixed_likelihood.ts";
import { profileAt } from "./_profile_likelihood.ts";
import { chiSquareQuantile } from "./chi_square_distribution.ts";
import type { Interval } from "./interval.ts";
import type { LikelihoodKind, MixedModel } from "./mixed_model.ts";

/**
 * How far the likelihood may fall within an interval: to the chi-square
 * quantile, which holds for many levels, or a little further for few.
 */
export type ProfileThreshold = "chi-square" | "small sample";

/** The interval of one standard deviation, or of one coefficient. */
export interface ProfileInterval {
  /** Name of the factor, `"residual"`, or of the coefficient. */
  readonly name: string;
  /** Where the likelihood is highest. */
  readonly estimate: number;
  /** All values whose likelihood is high enough; a low end of 0 is the boundary. */
  readonly interval: Interval;
}

/**
 * Finds intervals for the standard deviations of a mixed model.
 *
 * An interval holds every value at which twice the logarithm of the likelihood,
 * the other variances at their best, lies within the chi-square quantile of its
 * maximum. Sources that the design cannot tell apart have none, nor has a model
 * without scatter. Ends are within 1e-6 relative. With few levels such intervals
 * are a little short (94 % for four levels where 95 % are meant); the
 * `"small sample"` threshold multiplies the quantile by 1 + 1/(3ν), ν one less
 * than the levels, which mends that for a variance by itself. Near the boundary
 * intervals hold the truth more often than stated.
 *
 * @param model Readings, fixed columns and random factors.
 * @param confidence Probability that such an interval holds the truth, between
 * 0 and 1.
 * @param likelihood Which likelihood is profiled.
 * @param threshold How far the likelihood may fall.
 * @returns One interval for each source that stands alone or stands in for
 * others, the residual last.
 * @throws {RangeError} If the model cannot be fitted or `confidence` is not
 * between 0 and 1.
 *
 * @see D. A. Harville (1977), Journal of the American Statistical Association
 * 72, 320-338; M. S. Bartlett (1937), Proceedings of the Royal Society A 160,
 * 268-282 (the factor for few degrees of freedom).
 *
 * @example
 * ```ts
 * import { profileDeviations } from "sagbook/statistics/profile_intervals.ts";
 * import { interceptColumn } from "sagbook/statistics/design_columns.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [zeroing] = profileDeviations({
 *   response: [1, 2, 5, 6, 3, 4],
 *   fixed: [interceptColumn(6)],
 *   random: [{ name: "zeroing", labels: ["a", "a", "b", "b", "c", "c"] }],
 * });
 * equal(zeroing.interval.low < zeroing.estimate, true);
 * equal(zeroing.interval.high > zeroing.estimate, true);
 * ```
 */
export function profileDeviations(
  model: MixedModel,
  confidence: number = 0.95,
  likelihood: LikelihoodKind = "restricted",
  threshold: ProfileThreshold = "chi-square",
): ProfileInterval[] {
  requireProbability(confidence, "profile a likelihood", "confidence");
  const whole = reduceModel(model);
  if (
    whole.observations <= whole.fixed.basis.length ||
    whole.residualSquares === 0
  ) return [];
  const { kept, guess } = identify(whole);
  const random = kept.map((k) => model.random[k]);
  const system = new MixedLikelihood(
    random.length === model.random.length
      ? whole
      : reduceModel({ ...model, random }),
    likelihood === "restricted",
  );
  const best = findHighest(system, guess);
  if (best.unbounded) return [];
  const top = system.value(best.ratios);
  if (!top) return [];
  const m = system.weightOfSquares;
  const residual = top.squares / m;
  const lowest = m * (Math.log(residual) + 1) + top.logDeterminant;
  const quantile = chiSquareQuantile(confidence, 1);
  const { observations, factors } = system.design;
  return [...random.map(({ name }) => name), "residual"].map((name, held) => {
    const isResidual = held === random.length;
    const dof = Math.max(1, isResidual ? m : factors[held].labels.length - 1);
    const stretch = threshold === "small sample" ? 1 + 1 / (3 * dof) : 1;
    const allowed = Math.sqrt(quantile * stretch);
    const estimate = Math.sqrt(
      isResidual ? residual : best.ratios[held] * residual,
    );
    let from = { ratios: best.ratios, residual };
    /** Root of twice the loss of log-likelihood, and its slope. */
    const loss = (deviation: number) => {
      const point = profileAt(
        system,
        held,
        deviation,
        from.ratios,
        from.residual,
      );
      from = point;
      const root = Math.sqrt(Math.max(0, point.value - lowest));
      return { excess: root - allowed, slope: point.slope / (2 * root) };
    };
    const scale = isResidual ? estimate * Math.sqrt(2 / m) : Math.sqrt(
      residual * factors[held].labels.length / observations / 2 +
        estimate ** 2 / (2 * Math.max(1, factors[held].labels.length - 1)),
    );
    const high = crossing(loss, estimate, estimate + 2 * scale);
    from = { ratios: best.ratios, residual };
    const atZero = isResidual || estimate === 0
      ? 0
      : lossWithout(system, held, best.ratios, lowest) - allowed;
    const low = estimate === 0 || (!isResidual && atZero <= 0)
      ? 0
      : crossing(loss, estimate, estimate / (1 + 2 * scale / estimate));
    return { name, estimate, interval: { low, high } };
  });
}

/** Root of twice the loss of log-likelihood when a factor is left out. */
function lossWithout(
  system: MixedLikelihood,
  held: number,
  ratios: readonly number[],
  lowest: number,
): number {
  const { design } = system;
  const start = ratios.map((ratio, k) =>
    k === held ? 0 : Math.max(
      ratio,
      0.1 * design.factors[k].labels.length / design.observations,
    )
  );
  const found = findHighest(system, start, held);
  const value = system.value(found.ratios);
  if (!value) return Infinity;
  const m = system.weightOfSquares;
  return Math.sqrt(
    Math.max(
      0,
      m * (Math.log(value.squares / m) + 1) + value.logDeterminant - lowest,
    ),
  );
}

/**
 * Where a loss that starts at 0 in `inside` first reaches what is allowed, on
 * the side of `guess`, by Newton's steps kept within a bracket.
 */
function crossing(
  loss: (deviation: number) => { excess: number; slope: number },
  inside: number,
  guess: number,
): number {
  const up = guess > inside;
  let [near, far] = [inside, up ? Infinity : 0];
  let x = guess;
  for (let step = 0; step < 60; step++) {
    const { excess, slope } = loss(x);
    if (excess < 0) near = x;
    else far = x;
    let next = x - excess / slope;
    const [low, high] = up ? [near, far] : [far, near];
    if (!(next > low && next < high)) {
      next = far === Infinity ? 2 * x - inside + 1e-300 : (near + far) / 2;
    }
    if (far === Infinity && next > 4 * x) next = 4 * x;
    if (Math.abs(next - x) <= 1e-8 * Math.abs(x)) return next;
    x = next;
  }
  return x;
}
