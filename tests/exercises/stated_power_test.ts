import { equal, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import {
  type ClassCount,
  classExercises,
  offBy,
  SURFACES,
} from "../studies/_class_exercises.ts";

const EXERCISES = 10;

Deno.test("statedChances() foretells how often fresh exercises of 20 surfaces are solved, to 2 points and three simulation errors", async () => {
  const random = new Random(1);
  const total = { exercises: 0, found: 0, stated: 0, variance: 0 };
  const counts: ClassCount[] = [];
  for (const surface of SURFACES) {
    const count = await classExercises(surface, EXERCISES, random);
    counts.push(count);
    for (const key of ["exercises", "found", "stated", "variance"] as const) {
      total[key] += count[key];
    }
  }
  ok(Math.abs(offBy(total)) <= 1, JSON.stringify(total));
  // The study would notice a power that is wrong by a tenth.
  const wrong = { ...total, stated: total.stated - 0.1 * total.exercises };
  ok(offBy(wrong) > 1);
  equal(counts.length, 20);
  // Sound readings are all but never doubted.
  ok(counts.reduce((sum, { doubted }) => sum + doubted, 0) <= 4);
});

Deno.test("exerciseFiles() of astigmatic surfaces come out spheres as far as three feet can tell, each with the warning", async () => {
  const astigmatic = SURFACES.filter(({ kind }) => kind === "astigmatism");
  equal(astigmatic.length, 4);
  for (const surface of astigmatic) {
    const count = await classExercises(surface, 2 * EXERCISES, new Random(2));
    equal(count.warned, count.exercises);
    equal(count.worded, count.within);
    equal(count.wrong, 0, surface.name);
    ok(count.within >= count.exercises - 2, `${count.within}`);
  }
});
