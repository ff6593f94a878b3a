/**
 * How many sets would decide an open verdict.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { roundingHalfWidth, survivingRounding } from "./display_floor.ts";
import { judge } from "./sphericity.ts";
import { intervalsOf, type ZoneDifference } from "./zone_difference.ts";

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
  }
  /** The departure lies too close to the tolerance. */
  | { readonly kind: "no practical number"; readonly moreThan: number }
  /** More sets would not help: the display step hides the difference. */
  | { readonly kind: "display cannot decide" }
  /** The zones would do; the two ends of diameters were read too rarely. */
  | { readonly kind: "more ends" }
  /** Too little was read to say. */
  | { readonly kind: "unknown" };

/** A surface and a gauge as the planner needs them, lengths in mm. */
export interface SetModel {
  /** Mean sag at each place; only their differences matter. */
  readonly means: readonly number[];
  /** Covariance of one set's readings at the places, display step apart. */
  readonly covariance: readonly (readonly number[])[];
  /** Display step, at least 0. */
  readonly step: number;
  /** Largest good difference of sag, above 0. */
  readonly tolerance: number;
}

/** More sets than this fill more than an evening. */
const MOST_SETS = 30;

/** Simulated sessions for each number of sets. */
const SESSIONS = 4000;

/**
 * Square root of a covariance that may be singular, row by row.
 *
 * Cholesky's factor in which a row that depends on those above it gets no
 * direction of its own.
 */
function covarianceFactor(
  covariance: readonly (readonly number[])[],
): number[][] {
  const size = covariance.length;
  const factor = covariance.map(() => new Array<number>(size).fill(0));
  const scale = Math.max(...covariance.map((row, k) => row[k]), 0);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = covariance[i][j];
      for (let k = 0; k < j; k++) rest -= factor[i][k] * factor[j][k];
      if (i === j) factor[i][i] = rest > 1e-12 * scale ? Math.sqrt(rest) : 0;
      else factor[i][j] = factor[j][j] > 0 ? rest / factor[j][j] : 0;
    }
  }
  return factor;
}

/**
 * The chance that a number of sets decides, by simulating whole sessions.
 *
 * Every simulated reading is rounded to the display step, and the rule that
 * decides is the one of the report ({@link judge}), so that neither rounding
 * nor the error of the estimated scatter is idealised. The standard error of
 * the answer is at most 0.8 points at the 4,000 sessions of the default.
 *
 * @param model The surface and the gauge, taken as the truth.
 * @param sets Number of sets, at least 2.
 * @param random Where chance comes from.
 * @param sessions How many sessions to simulate.
 * @returns Chances between 0 and 1.
 *
 * @example A gauge that sees a tenfold departure at once
 * ```ts
 * import { chanceToDecide } from "sagbook/zones/sets_needed.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { ok } from "node:assert/strict";
 *
 * const covariance = [[1e-7, 0], [0, 1e-7]];
 * const model = { means: [0.03, 0], covariance, step: 0.001, tolerance: 0.003 };
 * ok(chanceToDecide(model, 5, new Random(1), 200).outside > 0.95);
 * ```
 */
export function chanceToDecide(
  model: SetModel,
  sets: number,
  random: Random,
  sessions: number = SESSIONS,
): { decided: number; within: number; outside: number } {
  const { means, step, tolerance } = model;
  const factor = covarianceFactor(model.covariance);
  const places = means.length;
  const comparisons = places * (places - 1) / 2;
  const table = Array.from({ length: places }, () => new Float64Array(sets));
  const noise = new Float64Array(places);
  let [within, outside] = [0, 0];
  for (let session = 0; session < sessions; session++) {
    const phase = step * (random.uniform() - 0.5);
    for (let set = 0; set < sets; set++) {
      for (let k = 0; k < places; k++) noise[k] = random.normal();
      for (let place = 0; place < places; place++) {
        let sag = means[place] + phase;
        for (let k = 0; k <= place; k++) sag += factor[place][k] * noise[k];
        table[place][set] = step > 0 ? step * Math.round(sag / step) : sag;
      }
    }
    const { verdict } = judge(
      pairsOf(table, sets, step, comparisons),
      undefined,
      tolerance,
    );
    if (verdict === "within") within++;
    else if (verdict === "outside") outside++;
  }
  return {
    decided: (within + outside) / sessions,
    within: within / sessions,
    outside: outside / sessions,
  };
}

function pairsOf(
  table: readonly Float64Array[],
  sets: number,
  step: number,
  comparisons: number,
): ZoneDifference[] {
  const pairs: ZoneDifference[] = [];
  for (let first = 0; first < table.length; first++) {
    for (let second = first + 1; second < table.length; second++) {
      const [a, b] = [table[first], table[second]];
      let mean = 0;
      for (let k = 0; k < sets; k++) mean += a[k] - b[k];
      mean /= sets;
      let squares = 0;
      for (let k = 0; k < sets; k++) squares += (a[k] - b[k] - mean) ** 2;
      const dof = sets - 1;
      const variance = squares / dof;
      const standardError = Math.sqrt(variance / sets);
      const replicated = {
        mean,
        standardError,
        dof,
        variance,
        replicates: sets,
      };
      pairs.push({
        first,
        second,
        sets,
        mean,
        dof,
        ...intervalsOf(replicated, step, comparisons),
      });
    }
  }
  return pairs;
}

/** The smallest number of sets that decides with the wanted chance. */
function smallest(
  model: SetModel,
  wanted: number,
  seed: number,
  sessions: number,
): { sets: number; chance: number } | undefined {
  const chance = (sets: number): number =>
    chanceToDecide(model, sets, new Random(seed + sets), sessions).decided;
  let [below, above] = [1, 2];
  let reached = chance(above);
  while (reached < wanted) {
    if (above >= MOST_SETS) return undefined;
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

/** True when even endless sets leave the verdict open. */
function hiddenByStep(model: SetModel): boolean {
  const { means, covariance, step, tolerance } = model;
  if (step === 0) return false;
  let [open, beyond] = [false, false];
  const comparisons = means.length * (means.length - 1) / 2;
  for (let i = 0; i < means.length; i++) {
    for (let j = i + 1; j < means.length; j++) {
      const variance = covariance[i][i] + covariance[j][j] -
        2 * covariance[i][j];
      const left = step *
        survivingRounding(variance / (step * step) + 1 / 6, 1, 1);
      const size = Math.abs(means[i] - means[j]);
      if (size + roundingHalfWidth(0.1) * left > tolerance) open = true;
      if (size - roundingHalfWidth(0.05 / comparisons) * left > tolerance) {
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
  if (!found) return { kind: "no practical number", moreThan: MOST_SETS };
  const { means } = model;
  const average = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const largest = Math.max(...means) - Math.min(...means);
  const { halfWidth, dof } = uncertainty;
  const stretch = largest === 0
    ? [1]
    : [Math.max(0, largest - halfWidth) / largest, 1 + halfWidth / largest];
  const spread = [0.975, 0.025].map((tail) =>
    dof / chiSquareQuantile(tail, dof, "lower")
  );
  const corners = stretch.flatMap((by) =>
    spread.map((times) =>
      smallest(
        {
          ...model,
          means: means.map((mean) => average + by * (mean - average)),
          covariance: model.covariance.map((row) =>
            row.map((value) => value * times)
          ),
        },
        wanted,
        seed,
        SESSIONS / 8,
      )?.sets
    )
  );
  const finite = corners.filter((sets) => sets !== undefined);
  const crosses = stretch.length === 2 &&
    stretch[0] * largest < model.tolerance &&
    stretch[1] * largest > model.tolerance;
  const worst = crosses || finite.length < corners.length
    ? undefined
    : Math.max(found.sets, ...finite);
  return {
    kind: "sets",
    sets: found.sets,
    chance: found.chance,
    atBest: Math.min(found.sets, ...finite),
    ...(worst === undefined ? {} : { atWorst: worst }),
  };
}
