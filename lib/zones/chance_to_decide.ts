/**
 * The chance that a number of sets decides, by simulating whole sessions.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import { chiSquareUpper5 } from "./_critical.ts";
import { survivingRounding } from "../statistics/rounding_floor.ts";
import { judge } from "./sphericity.ts";
import { intervalsOf, type ZoneDifference } from "./zone_difference.ts";

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

/** Sessions simulated unless stated. */
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
 * Finds the chance that a number of sets decides.
 *
 * Whole sessions are simulated. Every reading is rounded to the display step, and the rule that
 * decides is the one of the report ({@link judge}), so that neither rounding
 * nor the error of the estimated scatter is idealised. The standard error of
 * the answer is at most 0.8 points at the 4,000 sessions of the default.
 *
 * Each set stands for a diameter and a zeroing of its own; looks at the flat
 * and what they leave open are not simulated.
 *
 * @param model The surface and the gauge, taken as the truth.
 * @param sets Number of sets, at least 2.
 * @param random Where chance comes from.
 * @param sessions How many sessions to simulate.
 * @returns Chances between 0 and 1.
 * @throws {RangeError} If there are fewer than 2 sets.
 *
 * @example A gauge that sees a tenfold departure at once
 * ```ts
 * import { chanceToDecide } from "sagbook/zones/chance_to_decide.ts";
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
  if (!(sets >= 2)) {
    throw new RangeError(
      `Cannot find the chance to decide as there must be 2 sets or more: current value is ${sets}`,
    );
  }
  const factor = covarianceFactor(model.covariance);
  const places = means.length;
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
      pairsOf(table, sets, step),
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

/** What {@link compareZones} makes of a full table, place by set. */
function pairsOf(
  table: readonly Float64Array[],
  sets: number,
  step: number,
): ZoneDifference[] {
  const dof = sets - 1;
  const comparisons = table.length * (table.length - 1) / 2;
  const left = table.map((values) =>
    step === 0 ? 0 : survivingRounding(
      2 * varianceOf(values).variance / (step * step),
      dof,
      chiSquareUpper5(dof),
    )
  );
  const differences = new Float64Array(sets);
  const pairs: ZoneDifference[] = [];
  for (let first = 0; first < table.length; first++) {
    for (let second = first + 1; second < table.length; second++) {
      const [a, b] = [table[first], table[second]];
      for (let k = 0; k < sets; k++) differences[k] = a[k] - b[k];
      const { mean, variance } = varianceOf(differences);
      const standardError = Math.sqrt(variance / sets);
      const replicated = {
        mean,
        standardError,
        dof,
        variance,
        replicates: sets,
      };
      const rounding = Math.hypot(left[first], left[second]) / Math.SQRT2;
      const contrast = { length: Math.SQRT2, rounding, progress: 0 };
      pairs.push({
        first,
        second,
        sets,
        mean,
        dof,
        ...intervalsOf(replicated, step, comparisons, contrast),
      });
    }
  }
  return pairs;
}

function varianceOf(
  values: Float64Array,
): { mean: number; variance: number } {
  let mean = 0;
  for (const value of values) mean += value;
  mean /= values.length;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return { mean, variance: squares / (values.length - 1) };
}
