/**
 * The variances at which a mixed model's likelihood is highest.
 *
 * @module
 */
import type { LikelihoodPieces, MixedLikelihood } from "./_mixed_likelihood.ts";
import { type LocalShape, minimise } from "./_newton_minimum.ts";

/** Below this many residual variances per level a factor's share is nothing. */
const NOTHING = 1e-8;

/** Above this many, the residual variance itself is nothing. */
const UNBOUNDED = 1e9;

/** Relative length of the last step in each standard deviation. */
const PRECISION = 1e-8;

/** The highest likelihood. */
export interface HighestLikelihood {
  /** Ratios to the residual variance, exactly 0 on the boundary. */
  readonly ratios: readonly number[];
  /** Whether the likelihood rises for ever as the residual vanishes. */
  readonly unbounded: boolean;
}

/**
 * Maximises over the ratios γ >= 0, the residual variance profiled out.
 *
 * Steps are taken in the relative standard deviations λ = √γ, in which the
 * likelihood is even and the boundary is no edge: where the optimum is 0,
 * Newton's steps run into it at cubic speed. Such a factor is then set to
 * exactly 0, and comes back if the slope in γ there says so.
 *
 * @param absent Position of a factor to hold at 0.
 */
export function findHighest(
  likelihood: MixedLikelihood,
  guess: readonly number[],
  absent?: number,
): HighestLikelihood {
  const { design } = likelihood;
  const perLevel = design.factors.map((factor) =>
    design.observations / factor.labels.length
  );
  let ratios = [...guess];
  let zero = ratios.map((_, k) => k === absent);
  const state = { unbounded: false };
  for (let round = 0; round < 2 * ratios.length + 2; round++) {
    const free = [...ratios.keys()].filter((k) => !zero[k]);
    const toRatios = (x: readonly number[]) => {
      const all = ratios.map(() => 0);
      free.forEach((k, i) => {
        all[k] = Math.max(x[i] * x[i], NOTHING) / perLevel[k];
      });
      return all;
    };
    const found = minimise(
      (x) => profiledShape(likelihood, toRatios(x), x, free, perLevel, state),
      free.map((k) => Math.sqrt(ratios[k] * perLevel[k])),
      free.map(() => 0.01),
      PRECISION,
    );
    ratios = toRatios(found.at);
    if (state.unbounded) break;
    const vanishing = free.filter((k) =>
      ratios[k] * perLevel[k] < 100 * NOTHING
    );
    zero = zero.map((was, k) => was || vanishing.includes(k));
    ratios = ratios.map((ratio, k) => zero[k] ? 0 : ratio);
    const back = comingBack(likelihood, ratios, zero, perLevel, absent);
    if (!back) break;
    zero[back.factor] = false;
    ratios[back.factor] = back.ratio;
  }
  return { ratios, unbounded: state.unbounded };
}

/** The factor at 0, if any, whose variance the likelihood wants above 0. */
function comingBack(
  likelihood: MixedLikelihood,
  ratios: readonly number[],
  zero: readonly boolean[],
  perLevel: readonly number[],
  absent: number | undefined,
): { factor: number; ratio: number } | undefined {
  if (!zero.includes(true)) return undefined;
  const probe = ratios.map((ratio, k) =>
    zero[k] ? NOTHING / perLevel[k] : ratio
  );
  const pieces = likelihood.pieces(probe);
  if (!pieces) return undefined;
  const { slopes, curvature } = inRatios(pieces, likelihood.weightOfSquares);
  let best: { factor: number; ratio: number } | undefined;
  let gain = 1e-9;
  zero.forEach((isZero, k) => {
    if (!isZero || k === absent || slopes[k] >= 0) return;
    const bend = Math.max(curvature[k][k], slopes[k] ** 2 / 100);
    const wins = slopes[k] ** 2 / bend;
    if (wins > gain) {
      gain = wins;
      best = { factor: k, ratio: -slopes[k] / bend };
    }
  });
  return best;
}

/**
 * Slope and curvature, in the ratios, of m ln S + ln|.|, whose minimum is the
 * highest likelihood.
 */
export function inRatios(
  { squares, traces, scores, weights, crossTraces }: LikelihoodPieces,
  m: number,
): { slopes: number[]; curvature: number[][] } {
  const slopes = traces.map((trace, k) => trace - m * scores[k] / squares);
  const curvature = weights.map((row, k) =>
    row.map((weight, l) => {
      const across = m * weight / squares;
      const cross = crossTraces ? crossTraces[k][l] : across;
      return 2 * across - cross - m * scores[k] * scores[l] / squares ** 2;
    })
  );
  return { slopes, curvature };
}

/** The same in the scaled relative standard deviations of the free factors. */
function profiledShape(
  likelihood: MixedLikelihood,
  ratios: readonly number[],
  x: readonly number[],
  free: readonly number[],
  perLevel: readonly number[],
  state: { unbounded: boolean },
): LocalShape | undefined {
  const pieces = likelihood.pieces(ratios);
  if (!pieces) return undefined;
  const m = likelihood.weightOfSquares;
  const { slopes, curvature } = inRatios(pieces, m);
  if (ratios.some((ratio, k) => ratio * perLevel[k] > UNBOUNDED)) {
    state.unbounded = true;
    return {
      value: -Infinity,
      gradient: free.map(() => 0),
      hessian: free.map((_, i) => free.map((_, j) => i === j ? 1 : 0)),
      exact: true,
    };
  }
  const gradient = free.map((k, i) => 2 * x[i] * slopes[k] / perLevel[k]);
  const hessian = free.map((k, i) =>
    free.map((l, j) =>
      4 * x[i] * x[j] * curvature[k][l] / (perLevel[k] * perLevel[l]) +
      (i === j ? 2 * slopes[k] / perLevel[k] : 0)
    )
  );
  return {
    value: m * Math.log(pieces.squares) + pieces.logDeterminant,
    gradient,
    hessian,
    exact: pieces.crossTraces !== undefined,
  };
}
