/**
 * What the analysis can be expected to make of an exercise.
 *
 * @module
 */
import { contactSag } from "../geometry/contact_sag.ts";
import type { PlannedPlace } from "../geometry/simulate_session.ts";
import type { Random } from "../numerics/random.ts";
import {
  chanceOfVerdict,
  trueDepartures,
  type VerdictChances,
  type VerdictPlan,
} from "../zones/chance_of_verdict.ts";
import { type Exercise, sessionPlanOf } from "./exercise.ts";
import type { HiddenSurface } from "./hidden_surface.ts";

/** What is true of an exercise, and how often it is found. */
export interface StatedChances {
  /** Largest true difference of sag between two zones, in mm. */
  readonly zones: number;
  /** Largest true difference of sag between two ends, in mm. */
  readonly ends: number;
  /** The verdict that is right for what three feet can see. */
  readonly right: "within" | "outside";
  /** The chance of it: the stated power. */
  readonly power: number;
  /** The chance of every verdict. */
  readonly chances: VerdictChances;
}

/**
 * Lays out what the ring of an exercise truly sees of a hidden surface.
 *
 * The sags are those of exact contact, without scatter and before any display.
 * The three-foot mean, the theory that the class is taught, agrees to about 1 %
 * of the fault and shows a little more of a turned edge than is there, for it
 * lays the feet out in the plane: enough to state a power 3 points too high
 * where the power is steepest.
 *
 * @param exercise The exercise.
 * @param hidden The surface to lay under its ring; its own unless stated.
 * @returns The plan whose chances can be found.
 *
 * @example Astigmatism leaves no trace
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { verdictPlanOf } from "sagbook/exercises/stated_chances.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { ok } from "node:assert/strict";
 *
 * // A tenth of a millimetre at the rim; what is left is a thousandth of it.
 * const hidden = { kind: "astigmatism", rise: 0.1, degrees: 20 } as const;
 * const { sags } = verdictPlanOf(drawExercise(new Random(1), "A"), hidden);
 * ok(sags.every(([centre, ...others]) =>
 *   others.slice(0, 4).every((sag) => Math.abs(sag - centre) < 1e-4)
 * ));
 * ```
 */
export function verdictPlanOf(
  exercise: Exercise,
  hidden: HiddenSurface = exercise.hidden,
): VerdictPlan {
  const { disc } = exercise;
  const { surface, form, gauge, diameters, places, scatter, step } =
    sessionPlanOf({ ...exercise, hidden });
  const seen = (along: number, { zone, offset }: PlannedPlace): number => {
    if (zone === "flat") return 0;
    const angle = along * Math.PI / 180;
    return contactSag(surface, form, gauge, {
      x: offset * Math.cos(angle),
      y: offset * Math.sin(angle),
      footDegrees: along + (offset < 0 ? 180 : 0),
    });
  };
  return {
    diameters,
    places,
    foot: "foot out",
    sags: diameters.map((along) => places.map((place) => seen(along, place))),
    scatter,
    step,
    tolerance: disc.sagTolerance,
  };
}

/**
 * States the power of an exercise: how often the analysis is expected to give
 * the verdict that is right for it.
 *
 * Right is "outside" when the zones or the two ends of a diameter truly differ
 * by more than the tolerance, else "within": a fault smaller than the
 * tolerance is good work, and astigmatism leaves no difference to find.
 *
 * @param exercise The exercise.
 * @param random Where the chance of the simulation comes from.
 * @param sessions How many sessions are simulated.
 * @returns Truth and chances.
 *
 * @see tests/studies/RESULTS.md, where 2,000 fresh exercises for each seed are
 * held against what was stated for them.
 *
 * @example A sphere is never stated to be anything else
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { statedChances } from "sagbook/exercises/stated_chances.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(1), "A", { kind: "sphere" });
 * equal(statedChances(exercise, new Random(2), 20).right, "within");
 * ```
 */
export function statedChances(
  exercise: Exercise,
  random: Random,
  sessions?: number,
): StatedChances {
  const plan = verdictPlanOf(exercise);
  const { zones, ends } = trueDepartures(plan);
  const right = Math.max(zones, ends) > plan.tolerance ? "outside" : "within";
  const chances = chanceOfVerdict(plan, random, sessions);
  return { zones, ends, right, power: chances[right], chances };
}
