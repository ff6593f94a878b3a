/**
 * What the analysis can be expected to make of an exercise.
 *
 * @module
 */
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { conicSurface } from "../geometry/contact_surface.ts";
import { threeFootMean } from "../geometry/three_foot_mean.ts";
import type { Random } from "../numerics/random.ts";
import { millimetres } from "../units/length.ts";
import {
  chanceOfVerdict,
  trueDepartures,
  type VerdictChances,
  type VerdictPlan,
} from "../zones/chance_of_verdict.ts";
import {
  diametersOf,
  type Exercise,
  halfDiameterOf,
  placesOfExercise,
  statedRing,
} from "./exercise.ts";
import { hiddenShape, type HiddenSurface } from "./hidden_surface.ts";

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
 * Lays out what three feet see of a hidden surface, to first order.
 *
 * The three-foot mean of the departure from the vertex sphere at each place,
 * not exact contact: the stated chances rest on the theory that the class is
 * taught, and the readings of the exercise on exact contact.
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
 * const hidden = { kind: "astigmatism", rise: 0.1, degrees: 20 } as const;
 * const { sags } = verdictPlanOf(drawExercise(new Random(1), "A"), hidden);
 * ok(sags.flat().every((sag) => Math.abs(sag) < 1e-12));
 * ```
 */
export function verdictPlanOf(
  exercise: Exercise,
  hidden: HiddenSurface = exercise.hidden,
): VerdictPlan {
  const { gauge, disc, trueRadius } = exercise;
  const surface = hiddenShape(hidden, trueRadius, halfDiameterOf(exercise));
  const sphere = conicSurface(trueRadius, 0);
  const departure = (x: number, y: number): number =>
    surface(x, y).height - sphere(x, y).height;
  const circleRadius = contactCircleRadius(
    statedRing(exercise),
    "concave",
    millimetres(trueRadius),
  );
  const places = placesOfExercise(exercise);
  const diameters = diametersOf(exercise);
  return {
    diameters,
    places,
    foot: "foot out",
    sags: diameters.map((diameterDegrees) =>
      places.map(({ zone, offset }) =>
        zone === "flat" ? 0 : threeFootMean(departure, {
          circleRadius,
          offset,
          diameterDegrees,
          footDegrees: diameterDegrees + (offset < 0 ? 180 : 0),
        })
      )
    ),
    scatter: gauge.scatter,
    step: gauge.step,
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
