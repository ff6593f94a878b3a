/**
 * Propagation of distributions by a Monte Carlo method.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import type { Budget, Model } from "./budget.ts";
import {
  type CoverageInterval,
  type CoverageIntervals,
  coverageIntervals,
} from "./coverage_interval.ts";
import type { UncertainInput } from "./distribution.ts";
import { toleranceOf } from "./numerical_tolerance.ts";
import { sampler } from "./_sampler.ts";

/** Choices for a Monte Carlo run. */
export interface MonteCarloOptions {
  /** Where chance comes from. */
  readonly random: Random;
  /** Share the intervals hold, 0.95 unless stated. */
  readonly confidence?: number;
  /** Figures of the standard uncertainty that must settle, 2 unless stated. */
  readonly figures?: 1 | 2;
  /** A fixed number of draws instead of stopping when settled. */
  readonly draws?: number;
  /** Most draws before giving up, 4 000 000 unless stated. */
  readonly maximumDraws?: number;
  /** Correlation between inputs (normal ones only), a full square matrix. */
  readonly correlation?: readonly (readonly number[])[];
}

/** What the draws say. */
export interface MonteCarloResult extends CoverageIntervals {
  /** How many draws were made. */
  readonly draws: number;
  /** Mean of the results. */
  readonly mean: number;
  /** Standard deviation of the results. */
  readonly standardUncertainty: number;
  /** Share the intervals hold. */
  readonly confidence: number;
  /** True when mean, deviation and both ends have settled to the tolerance. */
  readonly settled: boolean;
  /** ½ of a unit in the last figure asked for. */
  readonly tolerance: number;
  /** Every result, in the order drawn. */
  readonly values: Float64Array;
}

/** Draws in one sequence of the adaptive procedure. */
const SEQUENCE = 10_000;

/**
 * Draws a model's inputs at random and looks at the results.
 *
 * Draws are made in sequences of 10 000 (or 100/(1 − p) if that is more) until
 * twice the standard deviation of the average of each of four results (mean,
 * standard deviation, both ends of the shortest interval) is below the
 * tolerance that belongs to the figures asked for. `settled` says whether that
 * came about; a result without a mean never settles. A model with no uncertain
 * input gives its value and intervals of no width.
 *
 * @param model The value of the result for given values of the inputs.
 * @param inputs The inputs in the model's order.
 * @param options Random numbers, share, figures, limits.
 * @returns Mean, standard uncertainty, intervals, all results.
 * @throws {RangeError} If a result is not a number, or draws are too few for
 * the share.
 *
 * @see JCGM 101:2008, 7.9.4 (adaptive procedure), 7.5 to 7.7.
 *
 * @example The sum of two rectangular errors
 * ```ts
 * import { monteCarlo } from "sagbook/uncertainty/monte_carlo.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { ok } from "node:assert/strict";
 *
 * const distribution = { kind: "rectangular", halfWidth: 0.5 } as const;
 * const step = { source: "step", unit: "", value: 0, distribution };
 * const { shortest, settled } = monteCarlo(([a, b]) => a + b, [step, step], {
 *   random: new Random(1),
 * });
 * ok(settled && Math.abs(shortest.upper - (1 - Math.sqrt(0.05))) < 0.01);
 * ```
 */
export function monteCarlo(
  model: Model,
  inputs: readonly UncertainInput[],
  options: MonteCarloOptions,
): MonteCarloResult {
  const { random, confidence = 0.95, figures = 2, correlation } = options;
  const fill = sampler(model, inputs, random, correlation);
  const { draws: fixed, maximumDraws = 4_000_000 } = options;
  const sequence = Math.max(SEQUENCE, Math.ceil(100 / (1 - confidence)));
  const limit = fixed ?? Math.max(maximumDraws, 2 * sequence);
  let values = new Float64Array(fixed ?? Math.min(limit, 32 * sequence));
  const four = new Settling();
  let [draws, settled, tolerance] = [0, false, 0];
  while (draws < limit && !(settled && fixed === undefined)) {
    const next = Math.min(sequence, limit - draws);
    if (draws + next > values.length) {
      const larger = new Float64Array(Math.min(limit, 2 * values.length));
      larger.set(values.subarray(0, draws));
      values = larger;
    }
    const block = values.subarray(draws, draws + next);
    fill(block);
    draws += next;
    if (fixed !== undefined) continue;
    const { mean, deviation } = moments(block);
    const { shortest } = coverageIntervals(block, confidence);
    four.add(mean, deviation, shortest.lower, shortest.upper);
    if (four.count < 2) continue;
    tolerance = four.deviation === 0 ? 0 : toleranceOf(four.deviation, figures);
    settled = four.worst() <= tolerance;
  }
  values = values.subarray(0, draws);
  const { mean, deviation } = moments(values);
  return {
    draws,
    mean,
    standardUncertainty: deviation,
    confidence,
    settled: fixed === undefined ? settled : true,
    tolerance: deviation === 0 ? 0 : toleranceOf(deviation, figures),
    ...coverageIntervals(values, confidence),
    values,
  };
}

/** Mean and standard deviation; refuses what has none. */
function moments(values: Float64Array): { mean: number; deviation: number } {
  // About the first value, so that squares do not cancel.
  const origin = values[0];
  let [sum, squares] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const distance = values[i] - origin;
    sum += distance;
    squares += distance * distance;
  }
  const n = values.length;
  const variance = Math.max(0, squares - sum * sum / n) / Math.max(1, n - 1);
  const mean = origin + sum / n;
  if (!Number.isFinite(mean)) {
    throw new RangeError(
      `Cannot draw from a model as its result must be a finite number for every draw: current value of a mean is ${mean}`,
    );
  }
  return { mean, deviation: Math.sqrt(variance) };
}

/** Keeps four results of each sequence, and how well their averages are known. */
class Settling {
  count = 0;
  readonly #origin = new Float64Array(4);
  readonly #sum = new Float64Array(4);
  readonly #squares = new Float64Array(4);

  add(...results: [number, number, number, number]): void {
    if (this.count === 0) this.#origin.set(results);
    results.forEach((result, k) => {
      const distance = result - this.#origin[k];
      this.#sum[k] += distance;
      this.#squares[k] += distance * distance;
    });
    this.count++;
  }

  get deviation(): number {
    return this.#origin[1] + this.#sum[1] / this.count;
  }

  /** Twice the standard deviation of the worst of the four averages. */
  worst(): number {
    const n = this.count;
    const spread = this.#squares.map((squares, k) =>
      Math.max(0, squares - this.#sum[k] ** 2 / n) / (n - 1) / n
    );
    return 2 * Math.sqrt(Math.max(...spread));
  }
}

/** Whether a budget's interval may stand for the Monte Carlo one. */
export interface BudgetCheck {
  /** Distance of the lower ends. */
  readonly lowerDifference: number;
  /** Distance of the upper ends. */
  readonly upperDifference: number;
  /** What was allowed: ½ of a unit in the last figure of the uncertainty. */
  readonly tolerance: number;
  /** True when both distances are within it. */
  readonly valid: boolean;
}

/**
 * Compares a budget's interval with that of a Monte Carlo run.
 *
 * @param budget An interval y ± U of first (or second) order, its standard
 * uncertainty and its value.
 * @param interval The Monte Carlo interval of the same share.
 * @param figures Figures of the uncertainty that matter, 1 or 2.
 * @returns The distances, and whether the budget holds to that accuracy.
 *
 * @see JCGM 101:2008, 8.1.
 *
 * @example
 * ```ts
 * import { checkBudget } from "sagbook/uncertainty/monte_carlo.ts";
 * import { equal } from "node:assert/strict";
 *
 * const budget = { lower: 1.1285, upper: 1.3395, standardUncertainty: 0.0539 };
 * equal(checkBudget(budget, { lower: 1.0834, upper: 1.3825 }, 1).valid, false);
 * ```
 */
export function checkBudget(
  budget: Pick<Budget, "lower" | "upper" | "standardUncertainty">,
  interval: CoverageInterval,
  figures: 1 | 2 = 2,
): BudgetCheck {
  const tolerance = budget.standardUncertainty === 0
    ? 0
    : toleranceOf(budget.standardUncertainty, figures);
  const lowerDifference = Math.abs(budget.lower - interval.lower);
  const upperDifference = Math.abs(budget.upper - interval.upper);
  return {
    lowerDifference,
    upperDifference,
    tolerance,
    valid: Math.max(lowerDifference, upperDifference) <= tolerance,
  };
}
