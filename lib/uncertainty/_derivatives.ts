/**
 * Derivatives of a model, in units of the inputs' standard uncertainties.
 *
 * @module
 */

/** A model of a measurand: the value that goes with the inputs' values. */
export type Model = (values: Float64Array) => number;

const LEVELS = [1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 32];

/**
 * Takes a difference quotient to the limit of a step of 0.
 *
 * The quotient must err by even powers of the step. Neville's scheme (Ridders)
 * keeps the entry that changed the least.
 *
 * @see Ridders, "Accurate computation of F'(x) and F'(x)F''(x)", Advances in
 * Engineering Software 4(2), 1982.
 */
export function extrapolated(quotient: (step: number) => number): number {
  let best = NaN;
  let bestChange = Infinity;
  let above: number[] = [];
  for (const step of LEVELS) {
    const row = [quotient(step)];
    for (let k = 1; k <= above.length; k++) {
      const weight = 4 ** k;
      row.push((weight * row[k - 1] - above[k - 1]) / (weight - 1));
      const change = Math.max(
        Math.abs(row[k] - row[k - 1]),
        Math.abs(row[k] - above[k - 1]),
      );
      if (change < bestChange) [best, bestChange] = [row[k], change];
    }
    above = row;
  }
  return best;
}

/** Value and scaled derivatives of a model about a point. */
export interface ScaledDerivatives {
  /** f. */
  readonly value: number;
  /** ∂f/∂xᵢ · uᵢ. */
  first(i: number): number;
  /** ∂²f/∂xᵢ∂xⱼ · uᵢuⱼ. */
  second(i: number, j: number): number;
  /** ∂³f/∂xᵢ∂xⱼ² · uᵢuⱼ². */
  third(i: number, j: number): number;
}

/** Prepares the derivatives of a model at `values`, scaled by `scales`. */
export function derivativesOf(
  model: Model,
  values: readonly number[],
  scales: readonly number[],
): ScaledDerivatives {
  const point = Float64Array.from(values);
  const at = (i: number, p: number, j = i, q = 0): number => {
    const [keptI, keptJ] = [point[i], point[j]];
    point[i] += p * scales[i];
    point[j] += q * scales[j];
    const result = model(point);
    point[j] = keptJ;
    point[i] = keptI;
    return result;
  };
  const value = model(point);
  return {
    value,
    first: (i) =>
      scales[i] === 0
        ? 0
        : extrapolated((h) => (at(i, h) - at(i, -h)) / (2 * h)),
    second: (i, j) =>
      scales[i] === 0 || scales[j] === 0
        ? 0
        : i === j
        ? extrapolated((h) => (at(i, h) - 2 * value + at(i, -h)) / (h * h))
        : extrapolated((h) =>
          (at(i, h, j, h) - at(i, h, j, -h) - at(i, -h, j, h) +
            at(i, -h, j, -h)) / (4 * h * h)
        ),
    third: (i, j) =>
      scales[i] === 0 || scales[j] === 0
        ? 0
        : i === j
        ? extrapolated((h) =>
          (at(i, 2 * h) - 2 * at(i, h) + 2 * at(i, -h) - at(i, -2 * h)) /
          (2 * h ** 3)
        )
        : extrapolated((h) =>
          (at(i, h, j, h) - 2 * at(i, h) + at(i, h, j, -h) - at(i, -h, j, h) +
            2 * at(i, -h) - at(i, -h, j, -h)) / (2 * h ** 3)
        ),
  };
}
