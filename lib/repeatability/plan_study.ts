/**
 * The cheapest study that decides a question.
 *
 * @module
 */
import type { ScatterModel } from "./scatter_model.ts";
import type {
  PlanAnswer,
  PlanOptions,
  PlanQuestion,
  StudyPlan,
} from "./study_plan.ts";
import { weighStudy } from "./weigh_study.ts";

/**
 * Finds the cheapest study that decides a question with a wanted probability.
 *
 * The probability of every plan comes from simulated studies, each reading and
 * zero rounded to the display step, judged by the analysis that will judge the
 * real ones. For each number of repeats and diameters the least number of
 * zeroings is searched; the plans found are compared by minutes. The search
 * takes the chance to grow with the number of zeroings, which it does but for
 * the noise of the simulation (`chanceError`).
 *
 * @param question What is to be decided, and what is taken to be true.
 * @param model What makes readings differ.
 * @param options Bounds, seed and times.
 * @returns The cheapest plan with alternatives, or why there is none.
 * @throws {RangeError} If `wanted` is not between 0 and 1, or no zone is read.
 *
 * @see Schuirmann (1987) and Student (1908) for the default analyses; the
 * method is simulation.
 *
 * @example A tolerance of 30 mm with a steady gauge
 * ```ts
 * import { decideRadius, planStudy } from "sagbook/repeatability/mod.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(60), ballRadius: mm(3) };
 * const decide = decideRadius(
 *   { target: 2520.84, tolerance: 30, feet, form: "concave" },
 * );
 * const answer = planStudy(
 *   { zones: [{ label: "centre", offset: 0, sag: 0.715 }], decide, truth: "within" },
 *   { repeat: 0.001, zeroing: 0.001, step: 0.001 },
 *   { studies: 200 },
 * );
 * equal(answer.kind, "plan");
 * ```
 */
export function planStudy(
  question: PlanQuestion,
  model: ScatterModel,
  options: PlanOptions = {},
): PlanAnswer {
  const { wanted = 0.8, mostZeroings = 40, repeats = [1, 2, 3] } = options;
  const { diameters = [1, "each"] } = options;
  if (!(wanted > 0 && wanted < 1)) {
    throw new RangeError(
      `Cannot plan a study as the wanted probability must be above 0 and below 1: current value is ${wanted}`,
    );
  }
  if (question.zones.length === 0) {
    throw new RangeError(
      "Cannot plan a study as it must read a zone: current value is 0 zones",
    );
  }
  const found: StudyPlan[] = [];
  const failed: StudyPlan[] = [];
  for (const times of repeats) {
    for (const rule of diameters) {
      const at = (zeroings: number, studies: number): StudyPlan =>
        weighStudy(question, model, {
          zeroings,
          diameters: rule === "each" ? zeroings : Math.min(rule, zeroings),
          repeats: times,
        }, { ...options, studies });
      const plan = leastZeroings(at, wanted, mostZeroings, options.studies);
      (plan.chance >= wanted ? found : failed).push(plan);
    }
  }
  const byCost = (a: StudyPlan, b: StudyPlan): number =>
    a.minutes - b.minutes || b.chance - a.chance;
  if (found.length > 0) {
    const [best, ...alternatives] = found.sort(byCost);
    const different = alternatives.filter((plan) =>
      plan.zeroings !== best.zeroings || plan.repeats !== best.repeats ||
      plan.diameters !== best.diameters
    );
    return { kind: "plan", best, alternatives: different };
  }
  const nearest = failed.sort((a, b) => b.chance - a.chance)[0];
  const reached = (changed: Partial<ScatterModel>): boolean =>
    weighStudy(question, { ...model, ...changed }, nearest, options).chance >=
      wanted;
  const reason = (model.common ?? 0) > 0 && reached({ common: 0 })
    ? "common"
    : model.step > 0 && reached({ step: 0 })
    ? "display"
    : (model.occasion ?? 0) > 0 && reached({ occasion: 0 })
    ? "occasion"
    : "too many";
  return { kind: "no plan", reason, nearest };
}

/** The least number of zeroings that reaches the wanted chance, or the most. */
function leastZeroings(
  at: (zeroings: number, studies: number) => StudyPlan,
  wanted: number,
  most: number,
  studies = 2000,
): StudyPlan {
  const quick = Math.max(50, Math.round(studies / 5));
  let [below, above] = [1, 2];
  while (at(above, quick).chance < wanted) {
    if (above >= most) return at(most, studies);
    below = above;
    above = Math.min(most, above < 6 ? above + 1 : Math.ceil(above * 1.5));
  }
  while (above - below > 1) {
    const middle = (above + below) >> 1;
    if (at(middle, quick).chance >= wanted) above = middle;
    else below = middle;
  }
  // The quick search may stop one short, or one late.
  let plan = at(above, studies);
  while (plan.chance < wanted && plan.zeroings < most) {
    plan = at(plan.zeroings + 1, studies);
  }
  while (plan.zeroings > 2) {
    const fewer = at(plan.zeroings - 1, studies);
    if (fewer.chance < wanted) break;
    plan = fewer;
  }
  return plan;
}
