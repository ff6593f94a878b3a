/**
 * The uncertainty budget of a measurement, after the GUM.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { derivativesOf, type Model } from "./_derivatives.ts";
import {
  type Distribution,
  dofOf,
  standardDeviationOf,
  type UncertainInput,
} from "./distribution.ts";

export type { Model };

/** One line of a budget. */
export interface BudgetLine {
  /** What the input is called. */
  readonly source: string;
  /** The input's unit, empty for a plain number. */
  readonly unit: string;
  /** The input's best value. */
  readonly value: number;
  /** The shape of the belief about its error. */
  readonly distribution: Distribution["kind"];
  /** Its standard uncertainty, in its own unit. */
  readonly standardUncertainty: number;
  /** Degrees of freedom of that; `Infinity` where taken as known. */
  readonly dof: number;
  /** Change of the result per unit of the input. */
  readonly sensitivity: number;
  /** Sensitivity times standard uncertainty, signed, in the result's unit. */
  readonly contribution: number;
  /** Its part of the result's variance, 0 to 1 (uncorrelated inputs). */
  readonly share: number;
  /** Id under which other results share this very error, if they do. */
  readonly common?: string;
}

/** A result with its uncertainty and where it comes from. */
export interface Budget {
  /** The result at the inputs' best values. */
  readonly value: number;
  /** One line for each input, in the order they were given. */
  readonly lines: readonly BudgetLine[];
  /** Combined standard uncertainty, first order. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; `Infinity` where all is known. */
  readonly dof: number;
  /** Coverage factor from Student's t at those degrees of freedom. */
  readonly factor: number;
  /** Expanded uncertainty: factor times standard uncertainty. */
  readonly expanded: number;
  /** Probability the interval is meant to hold. */
  readonly confidence: number;
  /** Value less expanded uncertainty. */
  readonly lower: number;
  /** Value plus expanded uncertainty. */
  readonly upper: number;
  /** The result for other analyses, shared parts by id. */
  readonly estimate: Estimate;
}

/** Choices for a budget. */
export interface BudgetOptions {
  /** Probability the interval is meant to hold, 0.95 unless stated. */
  readonly confidence?: number;
  /** Correlation between inputs, a full square matrix; none unless stated. */
  readonly correlation?: readonly (readonly number[])[];
}

/**
 * Draws up the uncertainty budget of a result.
 *
 * First order: sensitivities by differences taken to the limit (a relative
 * 1e-9 or better for smooth models), contributions added in quadrature with
 * their correlations, degrees of freedom by Welch and Satterthwaite, not
 * rounded down. Inputs that are correlated break the ground that formula
 * stands on: then the least degrees of freedom among the lines are taken.
 * What the terms of second order add is found by `secondOrderOf`.
 *
 * @param model The value of the result for given values of the inputs, smooth
 * within two standard uncertainties of their best values.
 * @param inputs The inputs in the model's order, at least one.
 * @param options Confidence and correlation.
 * @returns The budget; its lengths in the model's own units.
 * @throws {RangeError} If the model gives no finite value, or the confidence
 * is not between 0 and 1.
 * @throws {TypeError} If the correlation matrix does not fit the inputs.
 *
 * @see JCGM 100:2008, 5.1.2, 5.2.2, G.4.1.
 *
 * @example A length as the sum of two pieces
 * ```ts
 * import { budgetOf } from "sagbook/uncertainty/budget.ts";
 * import { equal } from "node:assert/strict";
 *
 * const piece = (source: string, value: number, standardDeviation: number) => ({
 *   source, unit: "mm", value,
 *   distribution: { kind: "normal", standardDeviation } as const,
 * });
 * const inputs = [piece("block", 10, 0.003), piece("film", 0.5, 0.004)];
 * const budget = budgetOf(([block, film]) => block + film, inputs);
 * equal(budget.standardUncertainty.toFixed(6), "0.005000");
 * equal(budget.lines[1].share.toFixed(2), "0.64");
 * ```
 */
export function budgetOf(
  model: Model,
  inputs: readonly UncertainInput[],
  options: BudgetOptions = {},
): Budget {
  const { confidence = 0.95, correlation } = options;
  const scales = inputs.map((input) => standardDeviationOf(input.distribution));
  const values = inputs.map((input) => input.value);
  const derivatives = derivativesOf(model, values, scales);
  const { value } = derivatives;
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot draw up a budget as the result must be finite at the inputs' values: current value is ${value}`,
    );
  }
  const contributions = inputs.map((_, i) => derivatives.first(i));
  const squared = variance(contributions, correlation);
  const plain = contributions.reduce((sum, c) => sum + c * c, 0);
  const lines = inputs.map((input, i): BudgetLine => ({
    source: input.source,
    unit: input.unit,
    value: input.value,
    distribution: input.distribution.kind,
    standardUncertainty: scales[i],
    dof: dofOf(input),
    sensitivity: scales[i] === 0 ? 0 : contributions[i] / scales[i],
    contribution: contributions[i],
    share: plain === 0 ? 0 : contributions[i] ** 2 / plain,
    ...(input.common === undefined ? {} : { common: input.common }),
  }));
  const standardUncertainty = Math.sqrt(squared);
  const dof = correlation === undefined
    ? effectiveDofOf(lines)
    : Math.min(...lines.map((line) => line.dof));
  const factor = studentTQuantile((1 - confidence) / 2, dof, "upper");
  const expanded = factor * standardUncertainty;
  return {
    value,
    lines,
    standardUncertainty,
    dof,
    factor,
    expanded,
    confidence,
    lower: value - expanded,
    upper: value + expanded,
    estimate: estimateOf(value, lines),
  };
}

function variance(
  contributions: readonly number[],
  correlation: BudgetOptions["correlation"],
): number {
  const n = contributions.length;
  if (correlation === undefined) {
    return contributions.reduce((sum, c) => sum + c * c, 0);
  }
  if (
    correlation.length !== n || correlation.some((row) => row.length !== n)
  ) {
    throw new TypeError(
      `Cannot draw up a budget as the correlation matrix must be ${n} by ${n}: current value is ${correlation.length} by ${
        correlation[0]?.length ?? 0
      }`,
    );
  }
  let sum = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      sum += contributions[i] * correlation[i][j] * contributions[j];
    }
  }
  return Math.max(0, sum);
}

/**
 * Finds the effective degrees of freedom of a sum of contributions.
 *
 * @param lines Contributions and their degrees of freedom.
 * @returns `u⁴ / Σ (cᵢ⁴/νᵢ)`, not rounded; `Infinity` where all are known.
 *
 * @see JCGM 100:2008, G.4.1, formula (G.2b) (Welch and Satterthwaite).
 *
 * @example Two equal contributions of 4 degrees of freedom each
 * ```ts
 * import { effectiveDofOf } from "sagbook/uncertainty/budget.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(effectiveDofOf([1, 1].map((contribution) => ({ contribution, dof: 4 }))), 8);
 * ```
 */
export function effectiveDofOf(
  lines: readonly Pick<BudgetLine, "contribution" | "dof">[],
): number {
  let [squared, spread] = [0, 0];
  for (const { contribution, dof } of lines) {
    squared += contribution ** 2;
    spread += contribution ** 4 / dof;
  }
  return spread > 0 ? squared * squared / spread : Infinity;
}

function estimateOf(value: number, lines: readonly BudgetLine[]): Estimate {
  const own = lines.filter((line) => line.common === undefined);
  const common: Record<string, number> = {};
  for (const { common: id, contribution } of lines) {
    if (id !== undefined) common[id] = (common[id] ?? 0) + contribution;
  }
  return {
    value,
    own: Math.hypot(...own.map((line) => line.contribution)),
    dof: effectiveDofOf(own),
    common,
  };
}
