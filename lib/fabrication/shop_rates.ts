/**
 * What a shop's grades do, learned from one piece for the next.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { subtractEstimates } from "../statistics/estimate_arithmetic.ts";
import {
  effectiveDof,
  standardUncertainty,
} from "../statistics/estimate_uncertainty.ts";
import { studentTProbability } from "../statistics/student_t_distribution.ts";
import type { ProgressFit } from "./fit_progress.ts";
import type { Setting } from "./work_timeline.ts";

/** A rate that was learned. */
export interface LearnedRate extends Setting {
  /** Change of sag over the half diameter for one unit of work, in mm. */
  readonly rate: Estimate;
  /** What work was counted in. */
  readonly unit: "wets" | "minutes";
  /** Half the diameter of the work, in mm. */
  readonly halfDiameter: number;
  /** Sessions it rests on. */
  readonly sessions: number;
  /** Pieces it rests on. */
  readonly pieces: number;
  /** Work spent with the setting, for one piece. */
  readonly work: number;
}

/** One piece's fit of one setting. */
export interface FittedStage extends Setting {
  /** The line. */
  readonly fit: ProgressFit;
  /** What work was counted in. */
  readonly unit: "wets" | "minutes";
  /** Half the diameter, in mm. */
  readonly halfDiameter: number;
  /** Work with the setting. */
  readonly work: number;
}

/**
 * Gathers the rates of a shop by grade and position.
 *
 * A surface that wears evenly in its own shape changes its sag in proportion to
 * the square of the half diameter for the same change of curvature; rates are
 * kept for the diameter they were found on and never carried to another.
 * Several pieces give their mean with the scatter between them; one gives its
 * own rate. Errors that all sessions of a piece share stay with one piece, and
 * count as its own where several are averaged.
 *
 * @param stages Stages of earlier pieces.
 * @returns One entry for each setting, unit and diameter, in order of first use.
 *
 * @example
 * ```ts
 * import { fitProgress, learnRates } from "sagbook/fabrication/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sag = (value: number) => ({ value, own: 0.001, dof: Infinity, common: {} });
 * const fit = fitProgress([[
 *   { session: "S1", work: 0, sag: sag(3.60) },
 *   { session: "S2", work: 10, sag: sag(3.64) },
 * ]]);
 * const [learned] = learnRates([
 *   { grade: "80", fit, unit: "wets", halfDiameter: 150, work: 10 },
 * ]);
 * equal(learned.rate.value.toFixed(4), "0.0040");
 * ```
 */
export function learnRates(
  stages: readonly FittedStage[],
): readonly LearnedRate[] {
  const groups = new Map<string, FittedStage[]>();
  for (const stage of stages) {
    const { grade, position, unit, halfDiameter } = stage;
    const key = JSON.stringify([grade, position, unit, halfDiameter]);
    groups.set(key, [...groups.get(key) ?? [], stage]);
  }
  return [...groups.values()].map((group) => {
    const [{ grade, position, unit, halfDiameter }] = group;
    const mean = (pick: (stage: FittedStage) => number) =>
      group.reduce((sum, stage) => sum + pick(stage), 0) / group.length;
    return {
      ...(grade === undefined ? {} : { grade }),
      ...(position === undefined ? {} : { position }),
      unit,
      halfDiameter,
      rate: group.length === 1 ? group[0].fit.rate : meanRate(group),
      sessions: group.reduce((sum, { fit }) => sum + fit.sessions, 0),
      pieces: group.length,
      work: mean(({ work }) => work),
    };
  });
}

/** The mean of several pieces, with what scatters between them. */
function meanRate(group: readonly FittedStage[]): Estimate {
  const values = group.map(({ fit }) => fit.rate.value);
  const count = values.length;
  const value = values.reduce((sum, one) => sum + one, 0) / count;
  const between = values.reduce((sum, one) => sum + (one - value) ** 2, 0) /
    (count - 1) / count;
  const inside = group.reduce(
    (sum, { fit }) => sum + standardUncertainty(fit.rate) ** 2,
    0,
  ) / count ** 2;
  return {
    value,
    own: Math.sqrt(Math.max(between, inside)),
    dof: count - 1,
    common: {},
  };
}

/** How a rate compares with what was expected. */
export interface RateComparison {
  /** The rate over the expected one. */
  readonly ratio: number;
  /** Chance of so large a difference if the expectation held. */
  readonly p: number;
  /** The verdict at 5 %. */
  readonly verdict: "as expected" | "faster" | "slower" | "other way";
}

/**
 * Compares a rate with what the shop expects.
 *
 * @param found The rate found.
 * @param expected The rate expected, of the same unit, setting and diameter.
 * @returns Ratio, chance, verdict.
 *
 * @example
 * ```ts
 * import { compareRate } from "sagbook/fabrication/shop_rates.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rate = (value: number) => ({ value, own: 0.0002, dof: 8, common: {} });
 * equal(compareRate(rate(0.002), rate(0.004)).verdict, "slower");
 * ```
 */
export function compareRate(
  found: Estimate,
  expected: Estimate,
): RateComparison {
  const difference = subtractEstimates(found, expected);
  const u = standardUncertainty(difference);
  const t = u === 0
    ? (difference.value === 0 ? 0 : Infinity)
    : Math.abs(difference.value) / u;
  const p = t === Infinity
    ? 0
    : 2 * studentTProbability(t, effectiveDof(difference), "upper");
  const ratio = found.value / expected.value;
  return {
    ratio,
    p,
    verdict: p > 0.05
      ? "as expected"
      : ratio < 0
      ? "other way"
      : ratio > 1
      ? "faster"
      : "slower",
  };
}
