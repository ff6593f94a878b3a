/**
 * Exercises for a class: hidden surfaces read by an invented gauge, with the
 * chance that the analysis finds them.
 *
 * @example An exercise, and how often it is solved
 * ```ts
 * import { drawExercise, statedChances } from "sagbook/exercises/mod.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal, ok } from "node:assert/strict";
 *
 * const choice = { kind: "turned edge", strength: 4 } as const;
 * const exercise = drawExercise(new Random(5), "student 1", choice);
 * const { right, power } = statedChances(exercise, new Random(5), 100);
 * equal(right, "outside");
 * ok(power > 0.5);
 * ```
 *
 * @module
 */
export { type ClassExercise, drawClass, MOST_STUDENTS } from "./draw_class.ts";
export {
  drawExercise,
  type ExerciseChoice,
  STRENGTHS,
} from "./draw_exercise.ts";
export {
  centreRadiusOf,
  diametersOf,
  type Exercise,
  type ExerciseDisc,
  type ExerciseGauge,
  halfDiameterOf,
  placesOfExercise,
  sessionPlanOf,
  statedRing,
} from "./exercise.ts";
export { EXERCISE_NOTE, exerciseFiles } from "./exercise_files.ts";
export {
  HIDDEN_KINDS,
  type HiddenKind,
  hiddenShape,
  type HiddenSurface,
} from "./hidden_surface.ts";
export { smallestFound } from "./smallest_found.ts";
export {
  type StatedChances,
  statedChances,
  verdictPlanOf,
} from "./stated_chances.ts";
