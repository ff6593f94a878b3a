/**
 * Exercises for a whole class.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import { drawExercise } from "./draw_exercise.ts";
import type { Exercise } from "./exercise.ts";
import { HIDDEN_KINDS } from "./hidden_surface.ts";

/** One student's exercise with the stream its readings come from. */
export interface ClassExercise {
  /** The exercise. */
  readonly exercise: Exercise;
  /** Where its chance comes from, by a branch for each use. */
  readonly random: Random;
}

/** Students of one class at most. */
export const MOST_STUDENTS = 200;

/**
 * Draws an exercise for each student of a class.
 *
 * Each five students in turn have all five kinds of surface, in an order drawn
 * for them, so that a class meets every kind. A student's exercise depends on
 * the seed and the student's number alone: a larger class begins with the
 * exercises of a smaller one.
 *
 * @param seed A whole number from 0 to 2⁵³ − 1.
 * @param students How many, from 1 to 200.
 * @returns The exercises, named `student-01` and so on.
 * @throws {RangeError} If the seed or the number of students is out of range.
 *
 * @example
 * ```ts
 * import { drawClass } from "sagbook/exercises/draw_class.ts";
 * import { equal } from "node:assert/strict";
 *
 * const kinds = drawClass(7, 5).map(({ exercise }) => exercise.hidden.kind);
 * equal(new Set(kinds).size, 5);
 * ```
 */
export function drawClass(
  seed: number,
  students: number,
): readonly ClassExercise[] {
  if (
    !(Number.isInteger(students) && students >= 1 && students <= MOST_STUDENTS)
  ) {
    throw new RangeError(
      `Cannot draw exercises as the students must be a whole number from 1 to ${MOST_STUDENTS}: current value is ${students}`,
    );
  }
  const root = new Random(seed);
  return Array.from({ length: students }, (_, k): ClassExercise => {
    const five = Math.floor(k / HIDDEN_KINDS.length);
    const kinds = root.fork(`kinds ${five}`).shuffled(HIDDEN_KINDS);
    const random = root.fork(`student ${k + 1}`);
    const name = `student-${String(k + 1).padStart(2, "0")}`;
    const kind = kinds[k % HIDDEN_KINDS.length];
    return { exercise: drawExercise(random, name, { kind }), random };
  });
}
