import { Random } from "sagbook/numerics/random.ts";
import {
  type ClassCount,
  classExercises,
  offBy,
  SURFACES,
} from "./_class_exercises.ts";
import type { Study, StudyRow } from "./_study.ts";

const EXERCISES = 100;

/** Rows of one surface, or of all of them. */
function rowsOf(name: string, count: ClassCount): readonly StudyRow[] {
  const { exercises, found, stated, wrong } = count;
  return [
    { case: name, measure: "stated power", value: stated / exercises },
    {
      case: name,
      measure: "right verdict",
      value: found / exercises,
      runs: exercises,
    },
    {
      case: name,
      measure: "their difference over what is allowed",
      value: offBy(count),
      as: "number",
      atLeast: -1,
      atMost: 1,
    },
    {
      case: name,
      measure: "wrong verdict",
      value: wrong / exercises,
      runs: exercises,
      atMost: 0.05,
    },
  ];
}

/** The words that must stand beside a verdict. */
function wordRows(name: string, count: ClassCount): readonly StudyRow[] {
  const { exercises, worded, within, warned } = count;
  return [
    {
      case: name,
      measure: "of those within, told “as far as three feet can tell”",
      value: within === 0 ? 1 : worded / within,
      atLeast: 1,
    },
    {
      case: name,
      measure: "warned that three feet cannot see astigmatism",
      value: warned / exercises,
      atLeast: 1,
    },
  ];
}

/** Exercises for a class: the stated power holds. */
export const study: Study = {
  title:
    "Class exercises: what is hidden is found as often as the key says beforehand",
  about: `
${EXERCISES} exercises for each of ${SURFACES.length} surfaces and seed, each with a disc, a gauge, a
drift and a plan of its own. The power is stated from the sags of exact contact
and 400 simulated sessions for each exercise, judged in memory; the readings are
simulated anew, written as files and read again, and get their verdict from the
analysis of the report. (The three-foot mean in place of exact contact would
state 3 points too much for a turned edge of 1.25 tolerances.) Right is "outside" for what shows more than the
tolerance, else "within". Allowed are 2 points and three simulation errors, the
error of the sum of ${EXERCISES} chances: the difference divided by that must lie between
-1 and 1. Sizes and tolerances were chosen by their stated powers (another
seed), before any exercise was analysed.
`,
  async run(seed) {
    const random = new Random(seed).fork("class exercises");
    const rows: StudyRow[] = [];
    const counts: ClassCount[] = [];
    for (const surface of SURFACES) {
      const count = await classExercises(surface, EXERCISES, random);
      counts.push(count);
      rows.push(...rowsOf(surface.name, count));
      if (surface.kind === "astigmatism") {
        rows.push(...wordRows(surface.name, count));
      }
    }
    const sum = (key: keyof ClassCount): number =>
      counts.reduce((total, count) => total + count[key], 0);
    const all: ClassCount = {
      exercises: sum("exercises"),
      found: sum("found"),
      stated: sum("stated"),
      variance: sum("variance"),
      wrong: sum("wrong"),
      worded: sum("worded"),
      within: sum("within"),
      warned: sum("warned"),
      doubted: sum("doubted"),
    };
    const name = `all ${SURFACES.length} surfaces`;
    rows.push(...rowsOf(name, all), ...wordRows(name, all), {
      case: name,
      measure: "read with a doubt about a sound reading",
      value: all.doubted / all.exercises,
      runs: all.exercises,
      atMost: 0.01,
    });
    return rows;
  },
};
