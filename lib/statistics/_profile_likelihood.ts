/**
 * The likelihood of a mixed model with one standard deviation held fixed.
 *
 * @module
 */
import type { MixedLikelihood } from "./_mixed_likelihood.ts";
import { type LocalShape, minimise } from "./_newton_minimum.ts";

/** Ratios below this many residual variances per level count as 0. */
const NOTHING = 1e-8;

/** The best that the other variances can do. */
export interface ProfilePoint {
  /** m ln σ² + ln|.| + S/σ² at its minimum. */
  readonly value: number;
  /** Its derivative by the standard deviation held fixed. */
  readonly slope: number;
  /** Ratios there. */
  readonly ratios: readonly number[];
  /** Residual variance there. */
  readonly residual: number;
}

/**
 * Minimises over all variances but one.
 *
 * @param likelihood The model's likelihood.
 * @param held Position of the factor held, or the number of factors for the
 * residual.
 * @param deviation Its standard deviation, above 0.
 * @param from Ratios to start from.
 * @param residual Residual variance to start from.
 */
export function profileAt(
  likelihood: MixedLikelihood,
  held: number,
  deviation: number,
  from: readonly number[],
  residual: number,
): ProfilePoint {
  const { design, weightOfSquares: m } = likelihood;
  const count = from.length;
  const perLevel = design.factors.map((factor) =>
    design.observations / factor.labels.length
  );
  const variance = deviation * deviation;
  const others = [...from.keys()].filter((k) => k !== held);
  const holdsResidual = held === count;
  /** Ratios and residual variance from the variables of the minimisation. */
  const settle = (x: readonly number[]) => {
    const sigma = holdsResidual ? variance : Math.exp(x[others.length]);
    const ratios = from.map(() => holdsResidual ? 0 : variance / sigma);
    others.forEach((k, i) =>
      ratios[k] = Math.max(x[i] * x[i], NOTHING) / perLevel[k]
    );
    return { sigma, ratios };
  };
  const shape = (x: readonly number[]): LocalShape | undefined => {
    const { sigma, ratios } = settle(x);
    const pieces = likelihood.pieces(ratios);
    if (!pieces) return undefined;
    const { traces, scores, weights, crossTraces, squares } = pieces;
    const first = traces.map((trace, k) => trace - scores[k] / sigma);
    const second = weights.map((row, k) =>
      row.map((weight, l) => {
        const across = weight / sigma;
        return 2 * across - (crossTraces ? crossTraces[k][l] : across);
      })
    );
    const rate = others.map((k, i) => 2 * x[i] / perLevel[k]);
    const gradient = others.map((k, i) => rate[i] * first[k]);
    const hessian = others.map((k, i) =>
      others.map((l, j) =>
        rate[i] * rate[j] * second[k][l] +
        (i === j ? 2 * first[k] / perLevel[k] : 0)
      )
    );
    const value = m * Math.log(sigma) + pieces.logDeterminant + squares / sigma;
    const exact = crossTraces !== undefined;
    if (holdsResidual) return { value, gradient, hessian, exact };
    // Along z = ln σ² the ratio held falls as exp(-z).
    const ratio = ratios[held];
    const alongResidual = m - squares / sigma;
    gradient.push(alongResidual - ratio * first[held]);
    const mixed = others.map((k, i) =>
      rate[i] * (scores[k] / sigma - ratio * second[held][k])
    );
    hessian.forEach((row, i) => row.push(mixed[i]));
    hessian.push([
      ...mixed,
      squares / sigma + ratio * first[held] +
      ratio * ratio * second[held][held] - 2 * ratio * scores[held] / sigma,
    ]);
    return { value, gradient, hessian, exact };
  };
  const start = others.map((k) =>
    Math.max(Math.sqrt(from[k] * perLevel[k]), 0.1)
  );
  if (!holdsResidual) start.push(Math.log(residual));
  const found = minimise(shape, start, start.map(() => 0.01), 1e-7);
  const { sigma, ratios } = settle(found.at);
  const pieces = likelihood.pieces(ratios);
  const slope = !pieces
    ? NaN
    : holdsResidual
    ? 2 * deviation * (m / sigma - pieces.squares / sigma ** 2)
    : 2 * deviation * (pieces.traces[held] - pieces.scores[held] / sigma) /
      sigma;
  return { value: found.value, slope, ratios, residual: sigma };
}
