/**
 * How many sets would decide an open verdict.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { chanceToDecide, type SetModel } from "./chance_to_decide.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";

/** What would decide a verdict that is open now. */
export type SetsNeeded =
  | {
    /** A number of sets that decides with the stated chance. */
    readonly kind: "sets";
    /** Sets in all, those already read included. */
    readonly sets: number;
    /** Chance that this many decide, if the surface is as estimated. */
    readonly chance: number;
    /** The same for the kind end of the intervals of departure and scatter. */
    readonly atBest: number;
    /** For the unkind end; undefined when no practical number would do. */
    readonly atWorst?: number;
    /**
     * How many diameters the sets lie on, where some share one: for any
     * diameter those count once, and only sets on other diameters help.
     */
    readonly diameters?: number;
  }
  /** The departure lies too close to the tolerance, for how much it scatters. */
  | {
    readonly kind: "no practical number";
    /** So many sets are not enough. */
    readonly moreThan: number;
    /** Chance that they decide, if the surface is as estimated. */
    readonly chance: number;
  }
  /** More sets would not help: the display step hides the difference. */
  | { readonly kind: "display cannot decide" }
  /** The zones would do; the two ends of diameters were read too rarely. */
  | { readonly kind: "more ends" }
  /** Too little was read to say. */
  | { readonly kind: "unknown" };

/** More sets than this fill more than an evening. */
const MOST_SETS = 30;

/** Simulated sessions for each number of sets. */
const SESSIONS = 4000;

/** The same for the ends of the intervals, where a rough number will do. */
const ROUGH_SESSIONS = 500;

/**
 * The smallest number of sets that decides with the wanted chance; without one
 * the chance that the largest number has.
 */
function smallest(
  model: SetModel,
  wanted: number,
  seed: number,
  sessions: number,
): { sets?: number; chance: number } {
  const chance = (sets: number): number =>
    chanceToDecide(model, sets, new Random(seed + sets), sessions).decided;
  let [below, above] = [1, 2];
  let reached = chance(above);
  while (reached < wanted) {
    if (above >= MOST_SETS) return { chance: reached };
    below = above;
    above = Math.min(MOST_SETS, above < 6 ? above + 1 : Math.ceil(above * 1.6));
    reached = chance(above);
  }
  while (above - below > 1) {
    const middle = (above + below) >> 1;
    const found = chance(middle);
    if (found >= wanted) [above, reached] = [middle, found];
    else below = middle;
  }
  return { sets: above, chance: reached };
}

/** Less of the rounding than this left is no hindrance. */
const NEGLIGIBLE = 0.1;

/** True when the display leaves the verdict open even of endless sets. */
function hiddenByStep(model: SetModel): boolean {
  const { means, covariance, step, tolerance } = model;
  if (step === 0) return false;
  // Of a known scatter, on endless degrees of freedom.
  const shareOf = (variance: number): number =>
    survivingRounding(variance / (step * step) + 1 / 6, 1, 1);
  const left = covariance.map((row, place) => shareOf(2 * row[place]));
  const comparisons = means.length * (means.length - 1) / 2;
  let [open, beyond] = [false, false];
  for (let i = 0; i < means.length; i++) {
    for (let j = i + 1; j < means.length; j++) {
      const variance = covariance[i][i] + covariance[j][j] -
        2 * covariance[i][j];
      const share = Math.max(
        shareOf(variance),
        Math.hypot(left[i], left[j]) / Math.SQRT2,
      );
      const hidden = share < NEGLIGIBLE ? 0 : share * step;
      const size = Math.abs(means[i] - means[j]);
      if (hidden > 0 && size + roundingHalfWidth(0.1) * hidden > tolerance) {
        open = true;
      }
      if (size - roundingHalfWidth(0.05 / comparisons) * hidden > tolerance) {
        beyond = true;
      }
    }
  }
  return open && !beyond;
}

/**
 * Finds how many sets would decide with a wanted chance, if departure and
 * scatter are as estimated, and what that number is at the ends of their 95 %
 * intervals.
 *
 * @param model Estimates, taken as the truth.
 * @param uncertainty Half width of the 95 % interval of the largest
 * difference, in mm, and the degrees of freedom of the scatter.
 * @param seed Seed of the simulation; the same seed gives the same answer.
 * @param wanted Wanted chance, between 0 and 1.
 * @returns A number of sets, or why none would do.
 *
 * @see The stated number is tried on fresh sessions in
 * `tests/studies/RESULTS.md`.
 *
 * @example The departure sits on the limit: no number decides
 * ```ts
 * import { setsNeeded } from "sagbook/zones/sets_needed.ts";
 * import { equal } from "node:assert/strict";
 *
 * const covariance = [[1e-6, 0], [0, 1e-6]];
 * const model = { means: [0.003, 0], covariance, step: 0.0001, tolerance: 0.003 };
 * const { kind } = setsNeeded(model, { halfWidth: 0.001, dof: 4 }, 1);
 * equal(kind, "no practical number");
 * ```
 */
export function setsNeeded(
  model: SetModel,
  uncertainty: { readonly halfWidth: number; readonly dof: number },
  seed: number,
  wanted: number = 0.8,
): SetsNeeded {
  if (hiddenByStep(model)) return { kind: "display cannot decide" };
  const found = smallest(model, wanted, seed, SESSIONS);
  const { sets, chance } = found;
  if (sets === undefined) {
    return { kind: "no practical number", moreThan: MOST_SETS, chance };
  }
  const { means } = model;
  const largest = Math.max(...means) - Math.min(...means);
  const { halfWidth, dof } = uncertainty;
  const sizes = [Math.max(0, largest - halfWidth), largest + halfWidth];
  const corners = sizes.flatMap((size) =>
    [0.975, 0.025].map((tail) => {
      const times = dof / chiSquareQuantile(tail, dof, "lower");
      const corner = {
        ...model,
        means: stretched(means, largest, size),
        covariance: model.covariance.map((row) =>
          row.map((value) => value * times)
        ),
      };
      return smallest(corner, wanted, seed, ROUGH_SESSIONS).sets;
    })
  );
  const finite = corners.filter((one) => one !== undefined);
  // Somewhere between the ends the departure lies on the limit itself.
  const crosses = sizes[0] < model.tolerance && sizes[1] > model.tolerance;
  const worst = crosses || finite.length < corners.length
    ? undefined
    : Math.max(sets, ...finite);
  return {
    kind: "sets",
    sets,
    chance,
    atBest: Math.min(sets, ...finite),
    ...(worst === undefined ? {} : { atWorst: worst }),
  };
}

/** The same shape with another largest difference. */
function stretched(
  means: readonly number[],
  largest: number,
  size: number,
): readonly number[] {
  const least = Math.min(...means);
  return largest > 0
    ? means.map((mean) => least + (mean - least) * size / largest)
    : means.map((mean, place) => place === 0 ? mean + size : mean);
}
