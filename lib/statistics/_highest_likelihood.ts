/**
 * The variances at which a mixed model's likelihood is highest.
 *
 * @module
 */
import type { MixedLikelihood } from "./_mixed_likelihood.ts";
import { type LocalShape, minimise } from "./_newton_minimum.ts";
import { inRatios, profiledShape } from "./_profiled_shape.ts";

/** Below this many residual variances per level a factor's share is nothing. */
const NOTHING = 1e-8;

/** Above this many, the residual variance itself is nothing. */
const UNBOUNDED = 1e11;

/** Above this many, it is asked whether readings show a residual at all. */
const DOUBTFUL = 1e5;

/** Relative length of the last step in each standard deviation. */
const PRECISION = 1e-8;

/** The highest likelihood. */
export interface HighestLikelihood {
  /** Ratios to the residual variance, exactly 0 on the boundary. */
  readonly ratios: readonly number[];
  /** Whether the likelihood rises for as long as the residual vanishes. */
  readonly unbounded: boolean;
}

/** With at most this many degrees of freedom further peaks are looked for. */
const FEW_READINGS = 60;

/**
 * Where they are looked for: shares of each factor, in residual variances per
 * level, by the number of factors; with more factors nowhere.
 */
const PLACES: readonly (readonly number[])[] = [
  [],
  [0, 0.2, 2, 20, 1000],
  [0, 0.2, 2, 20, 1000],
  [0, 1, 10, 300],
  [0, 2, 50],
];

/** A place at most this much lower than a peak, in twice the logarithm, counts. */
const NEARLY_AS_HIGH = 3;

/**
 * Maximises over the ratios γ >= 0, the residual variance profiled out.
 *
 * Few readings can make several peaks, some of them with variances at 0; so the
 * likelihood is looked at from afar as well, and climbed again from the highest
 * place found there unless that lies at the foot of the same peak.
 *
 * @param absent Position of a factor to hold at 0.
 */
export function findHighest(
  likelihood: MixedLikelihood,
  guess: readonly number[],
  absent?: number,
): HighestLikelihood {
  const none = guess.map((_, k) => k === absent);
  if (isUnbounded(likelihood, none)) return { ratios: guess, unbounded: true };
  const first = climb(likelihood, guess, none, absent);
  const places = PLACES[guess.length] ?? [];
  if (
    first.unbounded || places.length === 0 ||
    likelihood.weightOfSquares > FEW_READINGS
  ) return withDoubt(likelihood, first);
  const { factors, observations } = likelihood.design;
  const unit = factors.map(({ labels }) => labels.length / observations);
  const seen = first.ratios.map((ratio, k) => nearest(places, ratio / unit[k]));
  let afar: number[] | undefined;
  const lowest = heightOf(likelihood, first.ratios);
  let height = lowest + NEARLY_AS_HIGH;
  for (let choice = 0; choice < places.length ** guess.length; choice++) {
    const at = guess.map((_, k) =>
      Math.floor(choice / places.length ** k) % places.length
    );
    if (at.some((place, k) => none[k] && place > 0)) continue;
    if (at.every((place, k) => place === seen[k])) continue;
    const ratios = at.map((place, k) => places[place] * unit[k]);
    const there = heightOf(likelihood, ratios);
    if (there < height) [afar, height] = [ratios, there];
  }
  if (!afar) return withDoubt(likelihood, first);
  const start = afar.map((ratio, k) => none[k] || ratio === 0);
  const other = climb(likelihood, afar, start, absent);
  return withDoubt(
    likelihood,
    other.unbounded || heightOf(likelihood, other.ratios) < lowest - 1e-7
      ? other
      : first,
  );
}

/** Position of the place nearest to a share, by order of magnitude. */
function nearest(places: readonly number[], share: number): number {
  const size = (x: number) => Math.log(x + 0.05);
  let best = 0;
  places.forEach((place, i) => {
    const distance = Math.abs(size(place) - size(share));
    if (distance < Math.abs(size(places[best]) - size(share))) best = i;
  });
  return best;
}

/**
 * Marks a peak that lies at infinity: where what is left of the readings falls
 * in step as the ratios rise, they show no residual.
 */
function withDoubt(
  likelihood: MixedLikelihood,
  found: HighestLikelihood,
): HighestLikelihood {
  const { factors, observations } = likelihood.design;
  const { ratios } = found;
  const largest = Math.max(
    0,
    ...ratios.map((ratio, k) =>
      ratio * observations / factors[k].labels.length
    ),
  );
  if (found.unbounded || largest < DOUBTFUL) return found;
  const here = likelihood.value(ratios);
  const beyond = likelihood.value(ratios.map((ratio) => 100 * ratio));
  const vanishes = here && beyond && beyond.squares < 0.02 * here.squares;
  return vanishes ? { ratios, unbounded: true } : found;
}

/**
 * Whether shifts alone can meet every reading with readings to spare: then the
 * likelihood rises for ever as the residual vanishes.
 */
function isUnbounded(
  likelihood: MixedLikelihood,
  absent: readonly boolean[],
): boolean {
  const { factors, observations, residualSquares } = likelihood.design;
  const at = (size: number) => {
    const ratios = factors.map(({ labels }, k) =>
      absent[k] ? 0 : size * labels.length / observations
    );
    const value = likelihood.value(ratios);
    return value && value.squares < 1e3 / size * residualSquares
      ? likelihood.weightOfSquares * Math.log(value.squares) +
        value.logDeterminant
      : Infinity;
  };
  const far = at(1e9);
  return far < at(1e6) - 1;
}

/** m ln S + ln|.|, which is lowest where the likelihood is highest. */
function heightOf(
  likelihood: MixedLikelihood,
  ratios: readonly number[],
): number {
  const value = likelihood.value(ratios);
  return value
    ? likelihood.weightOfSquares * Math.log(value.squares) +
      value.logDeterminant
    : Infinity;
}

/**
 * Climbs to a peak over the ratios γ >= 0, the residual variance profiled out.
 *
 * Steps are taken in the relative standard deviations λ = √γ, in which the
 * likelihood is even and the boundary is no edge: where the optimum is 0,
 * Newton's steps run into it at cubic speed. Such a factor is then set to
 * exactly 0, and comes back if the slope in γ there says so.
 */
function climb(
  likelihood: MixedLikelihood,
  guess: readonly number[],
  startsAtZero: readonly boolean[],
  absent: number | undefined,
): HighestLikelihood {
  const { design } = likelihood;
  const perLevel = design.factors.map((factor) =>
    design.observations / factor.labels.length
  );
  let zero = [...startsAtZero];
  let ratios = guess.map((ratio, k) => zero[k] ? 0 : ratio);
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
      (x) => {
        const all = toRatios(x);
        if (all.some((ratio, k) => ratio * perLevel[k] > UNBOUNDED)) {
          state.unbounded = true;
        }
        return state.unbounded
          ? endShape(x)
          : profiledShape(likelihood, all, x, free, perLevel);
      },
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

/** A shape at which a minimisation ends. */
function endShape(x: readonly number[]): LocalShape {
  return {
    value: -Infinity,
    gradient: x.map(() => 0),
    hessian: x.map((_, i) => x.map((__, j) => i === j ? 1 : 0)),
    exact: true,
  };
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
