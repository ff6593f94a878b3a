/** How often the analysis finds what exercises hide, beside what was stated. */
import { join } from "node:path";
import {
  drawExercise,
  type Exercise,
  type ExerciseChoice,
  exerciseFiles,
  HIDDEN_KINDS,
  type HiddenKind,
  statedChances,
  STRENGTHS,
} from "sagbook/exercises/mod.ts";
import { unseenSentences } from "sagbook/narrative/caution_sentences.ts";
import { sphericitySentence } from "sagbook/narrative/sphericity_sentence.ts";
import type { Random } from "sagbook/numerics/random.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { judge } from "sagbook/zones/sphericity.ts";

/** One of the surfaces of the study. */
export interface ClassSurface {
  readonly name: string;
  readonly kind: HiddenKind;
  readonly choice: ExerciseChoice;
}

/** How far the radius of the spheres is from its target. */
const SPHERES = [-0.01, 0, 0.01, 0.03];

/** Twenty surfaces: five kinds, four sizes each. */
export const SURFACES: readonly ClassSurface[] = HIDDEN_KINDS.flatMap((kind) =>
  STRENGTHS.map((strength, k): ClassSurface => {
    if (kind === "sphere") {
      const radiusOff = SPHERES[k];
      const percent = `${radiusOff > 0 ? "+" : ""}${100 * radiusOff} %`;
      return {
        name: `sphere, R off target by ${percent}`,
        kind,
        choice: { kind, radiusOff },
      };
    }
    return {
      name: kind === "astigmatism"
        ? `astigmatism, ${4 * strength} tolerances high at the rim`
        : `${kind}, shows ${strength} tolerances`,
      kind,
      choice: { kind, strength },
    };
  })
);

/** Sessions behind each stated power: 2.5 points at most, 0.25 for a hundred. */
const SESSIONS = 400;

/** What became of the exercises of one surface. */
export interface ClassCount {
  readonly exercises: number;
  /** Exercises that got the right verdict. */
  readonly found: number;
  /** Sum of the stated powers. */
  readonly stated: number;
  /** Sum of p (1 − p) over the stated powers: the variance of `found`. */
  readonly variance: number;
  /** Called "outside" although that is wrong, or "within" although it is not. */
  readonly wrong: number;
  /** Called "within" in the words "as far as three feet can tell". */
  readonly worded: number;
  /** Called "within" at all. */
  readonly within: number;
  /** Warned that three feet cannot see astigmatism. */
  readonly warned: number;
  /** Read with a doubt about some reading, although nothing was wrong. */
  readonly doubted: number;
}

type Verdict = "within" | "outside" | "undecided";

/** Writes an exercise as files, reads them, judges, and says it in words. */
async function throughFiles(
  exercise: Exercise,
  random: Random,
  folder: string,
): Promise<{
  readonly verdict: Verdict;
  readonly worded: boolean;
  readonly warned: boolean;
  readonly doubted: boolean;
}> {
  for (const [name, text] of exerciseFiles(exercise, random)) {
    await Deno.writeTextFile(join(folder, name), text);
  }
  const { piece, bench, readings, problems } = await readPieceFolder(folder);
  // Chance, too, now and then moves a zero or a reading as far as a knock.
  const [refused] = problems.filter(({ severity }) => severity === "refused");
  if (refused !== undefined) {
    throw new RangeError(
      `Cannot study an exercise as none of its lines must be refused: current value is ${refused.message}`,
    );
  }
  const doubted = problems.length > 0;
  const { sphericity: tolerance, ...untold } = piece;
  // The number of sets that would decide is not asked for here.
  const bare = analyseSession(readings, untold, bench)!;
  const { verdict } = judge(bare.differences, bare.ends, tolerance!.amount);
  const warned = unseenSentences(bare.unseen, piece.unit)
    .some((one) => one.startsWith("Three feet cannot see astigmatism"));
  if (verdict !== "within") return { verdict, worded: false, warned, doubted };
  const whole = analyseSession(readings, piece, bench)!;
  const sentence = sphericitySentence(whole, piece.unit);
  const worded = whole.sphericity.verdict === verdict &&
    /^It is a sphere within .*, as far as three feet can tell/.test(sentence);
  return { verdict, worded, warned, doubted };
}

/** Makes, reads and judges exercises of one surface, each with its own gauge. */
export async function classExercises(
  { name, choice }: ClassSurface,
  exercises: number,
  random: Random,
): Promise<ClassCount> {
  const own = random.fork(name);
  const folder = await Deno.makeTempDir({ prefix: "class-study-" });
  let [found, stated, variance, wrong] = [0, 0, 0, 0];
  let [worded, within, warned, doubted] = [0, 0, 0, 0];
  try {
    for (let k = 0; k < exercises; k++) {
      const chance = own.fork(k);
      const exercise = drawExercise(chance, "exercise", choice);
      const { right, power } = statedChances(
        exercise,
        chance.fork("stated"),
        SESSIONS,
      );
      const read = await throughFiles(
        exercise,
        chance.fork("readings"),
        folder,
      );
      stated += power;
      variance += power * (1 - power);
      if (read.verdict === right) found++;
      else if (read.verdict !== "undecided") wrong++;
      if (read.verdict === "within") within++;
      if (read.worded) worded++;
      if (read.warned) warned++;
      if (read.doubted) doubted++;
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
  return {
    exercises,
    found,
    stated,
    variance,
    wrong,
    worded,
    within,
    warned,
    doubted,
  };
}

/**
 * Found less stated, as a part of what is allowed: 2 points and three
 * simulation errors.
 */
export function offBy(
  { exercises, found, stated, variance }: Pick<
    ClassCount,
    "exercises" | "found" | "stated" | "variance"
  >,
): number {
  return (found - stated) / (0.02 * exercises + 3 * Math.sqrt(variance));
}
