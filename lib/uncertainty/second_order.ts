/**
 * What curvature of a model adds to an uncertainty.
 *
 * @module
 */
import { derivativesOf } from "./_derivatives.ts";
import type { Model } from "./budget.ts";
import { standardDeviationOf, type UncertainInput } from "./distribution.ts";

/** What the terms of second order add. */
export interface SecondOrder {
  /** How far the mean of the results lies from the result of the means. */
  readonly bias: number;
  /** Combined standard uncertainty with the terms of second order. */
  readonly standardUncertainty: number;
}

/**
 * Finds the terms of second order of a measurement.
 *
 * Those of the GUM's note to 5.1.2, for symmetric, nearly normal and
 * uncorrelated inputs: `½ f_ij² + f_i f_ijj`, times both variances, over all
 * pairs; and the shift of the mean, `½ f_ii u_i²`.
 *
 * @param model The value of the result for given values of the inputs, smooth
 * within two standard uncertainties of their best values.
 * @param inputs The inputs in the model's order.
 * @returns Bias and standard uncertainty, in the result's unit.
 *
 * @see JCGM 100:2008, 5.1.2, note, and H.1.7.
 *
 * @example The square of a length that may be 0
 * ```ts
 * import { secondOrderOf } from "sagbook/uncertainty/second_order.ts";
 * import { equal } from "node:assert/strict";
 *
 * const distribution = { kind: "normal", standardDeviation: 0.1 } as const;
 * const length = { source: "length", unit: "mm", value: 0, distribution };
 * const { bias } = secondOrderOf(([x]) => x * x, [length]);
 * equal(bias.toFixed(6), "0.010000");
 * ```
 */
export function secondOrderOf(
  model: Model,
  inputs: readonly UncertainInput[],
): SecondOrder {
  const scales = inputs.map((input) => standardDeviationOf(input.distribution));
  const values = inputs.map((input) => input.value);
  const derivatives = derivativesOf(model, values, scales);
  const vary = inputs.map((_, i) => i).filter((i) => scales[i] > 0);
  const first = vary.map((i) => derivatives.first(i));
  let [bias, squared] = [0, 0];
  vary.forEach((i, at) => {
    squared += first[at] ** 2;
    vary.forEach((j, other) => {
      if (at <= other) {
        const mixed = derivatives.second(i, j);
        if (i === j) bias += mixed / 2;
        squared += (i === j ? 0.5 : 1) * mixed * mixed;
      }
      if (first[at] !== 0) squared += first[at] * derivatives.third(i, j);
    });
  });
  return { bias, standardUncertainty: Math.sqrt(Math.max(0, squared)) };
}
