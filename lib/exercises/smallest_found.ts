/**
 * The smallest fault of a kind that an exercise's readings would show.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import { chanceOfVerdict } from "../zones/chance_of_verdict.ts";
import { scaledTo } from "./_scaled_to.ts";
import type { Exercise } from "./exercise.ts";
import type { HiddenSurface } from "./hidden_surface.ts";
import { verdictPlanOf } from "./stated_chances.ts";

/** Larger than this, in tolerances, is not looked for. */
const MOST = 16;

/** Halvings of the interval: a hundredth of a tolerance is left. */
const HALVINGS = 10;

/**
 * Finds the smallest amount of the hidden shape that this gauge, ring and plan
 * would call "outside" with the wanted chance.
 *
 * Every amount is tried on the same simulated scatter, so that the chance
 * grows with the amount; its standard error at 80 % is 1.3 points.
 *
 * @param exercise The exercise; the size of its own shape does not matter.
 * @param seed Seed of the simulation.
 * @param wanted Wanted chance, between 0 and 1.
 * @param sessions Sessions simulated for each amount, a whole number from 1.
 * @returns The shape at that amount; undefined for a sphere and for
 * astigmatism, which no amount shows, and when no practical amount would do.
 *
 * @example More is needed than the tolerance itself
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { smallestFound } from "sagbook/exercises/smallest_found.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(3), "A", { kind: "coma" });
 * equal(smallestFound(exercise, 1, 0.8, 100)?.kind, "coma");
 * ```
 */
export function smallestFound(
  exercise: Exercise,
  seed: number,
  wanted: number = 0.8,
  sessions: number = 1000,
): HiddenSurface | undefined {
  const { kind } = exercise.hidden;
  if (kind === "sphere" || kind === "astigmatism") return undefined;
  const chance = (strength: number): number => {
    const plan = verdictPlanOf(exercise, scaledTo(exercise, strength));
    return chanceOfVerdict(plan, new Random(seed), sessions).outside;
  };
  let [below, above] = [1, 2];
  while (chance(above) < wanted) {
    if (above >= MOST) return undefined;
    [below, above] = [above, 2 * above];
  }
  for (let k = 0; k < HALVINGS && above - below > 0.01; k++) {
    const middle = (below + above) / 2;
    if (chance(middle) >= wanted) above = middle;
    else below = middle;
  }
  return scaledTo(exercise, above);
}
