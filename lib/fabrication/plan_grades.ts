/**
 * How deep each grade should leave the surface, to land in the last one.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { combineEstimates } from "../statistics/estimate_arithmetic.ts";
import { progressLimits } from "./predict_progress.ts";

/** A grade that is still to come. */
export interface GradeAhead {
  /** Its name. */
  readonly grade: string;
  /** Work usual with it, in wets or minutes, at least 0. */
  readonly work: number;
  /** Change of sag for one of them, in mm, toward a deeper surface above 0. */
  readonly rate: Estimate;
}

/** What one grade should do. */
export interface GradePlan {
  /** The grade. */
  readonly grade: string;
  /** Sag to enter it with, in mm. */
  readonly enter: Estimate;
  /** Sag to leave it with, in mm. */
  readonly leave: Estimate;
  /** Its work. */
  readonly work: number;
}

/** A plan to the end of grinding. */
export interface GradesPlan {
  /** Sag at which the grade now in use should be left, in mm. */
  readonly leaveNow: Estimate;
  /** Change of sag still to make with the grade now in use, in mm. */
  readonly toGo: Estimate;
  /**
   * `go on`: this grade still has work toward the target. `stop`: as far as can
   * be told the grades to come do the rest. `too far`: they will pass the target
   * if all goes as usual, so some of their work must go the other way.
   */
  readonly advice: "go on" | "stop" | "too far";
  /** The grades to come, in order. */
  readonly grades: readonly GradePlan[];
}

/**
 * Plans the grades to come backward from the target.
 *
 * Fine grades go on deepening a little. What they usually do, rate times work,
 * is taken off the target from the last one backward, and the grade now in use
 * is to be left at what remains. Rates are the shop's own, with their
 * uncertainty; shared errors stay by id.
 *
 * @param now Sag now, in mm.
 * @param target Sag wanted at the end of the last grade, in mm.
 * @param ahead The grades to come, coarse to fine; none is allowed.
 * @returns The plan; the target itself where no grade is to come.
 * @throws {RangeError} If a grade's work is negative or not finite.
 *
 * @example Two fine grades of 10 and 5 µm
 * ```ts
 * import { planGrades } from "sagbook/fabrication/plan_grades.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sure = (value: number) => ({ value, own: 0, dof: Infinity, common: {} });
 * const plan = planGrades(sure(3.7), sure(3.75), [
 *   { grade: "F320", work: 10, rate: sure(0.001) },
 *   { grade: "F500", work: 10, rate: sure(0.0005) },
 * ]);
 * equal(plan.leaveNow.value.toFixed(4), "3.7350");
 * equal(plan.advice, "go on");
 * ```
 */
export function planGrades(
  now: Estimate,
  target: Estimate,
  ahead: readonly GradeAhead[],
): GradesPlan {
  for (const { grade, work } of ahead) {
    if (!(work >= 0 && work < Infinity)) {
      throw new RangeError(
        `Cannot plan the grades as the work of ${grade} must be 0 or more and finite: current value is ${work}`,
      );
    }
  }
  const grades: GradePlan[] = [];
  let leave = target;
  for (const { grade, work, rate } of [...ahead].reverse()) {
    const enter = combineEstimates([[1, leave], [-work, rate]]);
    grades.unshift({ grade, enter, leave, work });
    leave = enter;
  }
  const toGo = combineEstimates([[1, leave], [-1, now]]);
  const { low, high } = progressLimits(toGo);
  const clear = low > 0 || high < 0;
  return {
    leaveNow: leave,
    toGo,
    advice: !clear
      ? "stop"
      : toGo.value * (target.value - now.value) > 0
      ? "go on"
      : "too far",
    grades,
  };
}
