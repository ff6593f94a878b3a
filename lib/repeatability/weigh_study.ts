/**
 * What a study costs, and its chance to decide.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import type { ScatterModel, StudySize } from "./scatter_model.ts";
import { simulateSets } from "./simulate_sets.ts";
import {
  type PlanOptions,
  type PlanQuestion,
  STUDY_TIMES,
  type StudyPlan,
} from "./study_plan.ts";

/**
 * Finds the cost of a study and, by simulation, its chance to decide.
 *
 * @param question What is to be decided, and what is taken to be true.
 * @param model What makes readings differ.
 * @param size The size of the study.
 * @param options Seed, times and number of simulated studies.
 * @returns The plan.
 *
 * @see JCGM 101:2008, 7 (propagation by simulation).
 *
 * @example A rule that is always sure
 * ```ts
 * import { weighStudy } from "sagbook/repeatability/weigh_study.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const plan = weighStudy(
 *   {
 *     zones: [{ label: "centre", offset: 0, sag: 0.7 }],
 *     decide: () => "within",
 *     truth: "within",
 *   },
 *   { repeat: 0.001, zeroing: 0.001, step: 0.001 },
 *   { zeroings: 4, diameters: 2, repeats: 2 },
 *   { studies: 50 },
 * );
 * deepEqual([plan.readings, plan.looks, plan.minutes, plan.chance], [8, 8, 14, 1]);
 * ```
 */
export function weighStudy(
  question: PlanQuestion,
  model: ScatterModel,
  size: StudySize,
  options: PlanOptions = {},
): StudyPlan {
  const { zones, decide, truth, changes = [0] } = question;
  const { seed = 1, times = STUDY_TIMES, studies = 2000 } = options;
  const { zeroings, diameters, repeats } = size;
  const random = new Random(seed)
    .fork(`${zeroings} zeroings ${diameters} diameters ${repeats} repeats`);
  let [right, wrong] = [0, 0];
  for (let study = 0; study < studies; study++) {
    const sets = simulateSets(zones, size, model, random, changes);
    const verdict = decide(sets, model);
    if (verdict === truth) right++;
    else if (verdict !== "undecided") wrong++;
  }
  const chance = right / studies;
  const occasions = changes.length;
  const readings = occasions * zeroings * repeats * zones.length;
  const looks = 2 * occasions * zeroings;
  // Sets follow in an order of chance, so most of them turn to a new diameter.
  const turns = occasions * (diameters > 1 ? zeroings : 1);
  return {
    zeroings,
    diameters,
    repeats,
    occasions,
    readings,
    looks,
    minutes: occasions * zeroings * times.zeroing + looks * times.look +
      readings * times.reading + turns * times.diameter,
    chance,
    wrong: wrong / studies,
    chanceError: Math.sqrt(chance * (1 - chance) / studies),
  };
}

/**
 * Finds the chance to decide for several numbers of zeroings, for a figure.
 *
 * @param question What is to be decided, and what is taken to be true.
 * @param model What makes readings differ.
 * @param zeroings Numbers of zeroings on each occasion.
 * @param shape Readings of each zone in a set, and diameters.
 * @param options Seed, times and number of simulated studies.
 * @returns One plan for each number.
 *
 * @see JCGM 101:2008, 7 (propagation by simulation).
 *
 * @example
 * ```ts
 * import { powerByZeroings } from "sagbook/repeatability/weigh_study.ts";
 * import { equal } from "node:assert/strict";
 *
 * const plans = powerByZeroings(
 *   {
 *     zones: [{ label: "centre", offset: 0, sag: 0.7 }],
 *     decide: (sets) => sets.length > 3 ? "within" : "undecided",
 *     truth: "within",
 *   },
 *   { repeat: 0, zeroing: 0, step: 0 },
 *   [3, 4],
 *   { repeats: 1, diameters: "each" },
 *   { studies: 10 },
 * );
 * equal(plans[0].chance, 0);
 * equal(plans[1].chance, 1);
 * ```
 */
export function powerByZeroings(
  question: PlanQuestion,
  model: ScatterModel,
  zeroings: readonly number[],
  shape: { readonly repeats: number; readonly diameters: number | "each" },
  options: PlanOptions = {},
): StudyPlan[] {
  return zeroings.map((count) =>
    weighStudy(question, model, {
      zeroings: count,
      diameters: shape.diameters === "each"
        ? count
        : Math.min(shape.diameters, count),
      repeats: shape.repeats,
    }, options)
  );
}
