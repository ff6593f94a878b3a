/**
 * The key of a class's exercises, for the teacher.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import { centreRadiusOf, type Exercise } from "../exercises/exercise.ts";
import type { HiddenSurface } from "../exercises/hidden_surface.ts";
import type { StatedChances } from "../exercises/stated_chances.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { byHandWords } from "./exercise_by_hand.ts";
import {
  gaugeWords,
  hiddenName,
  hiddenWords,
  seenWords,
  verdictName,
  verdictShort,
} from "./exercise_words.ts";
import { writeSmall } from "./sag_words.ts";
import type { SessionReport } from "./session_report.ts";
import { writeWholeChance } from "./write_whole_chance.ts";

/** One student's exercise with its solution. */
export interface KeyEntry {
  /** The exercise. */
  readonly exercise: Exercise;
  /** What is true, and how often it is found. */
  readonly stated: StatedChances;
  /** The amount that would be found with a chance of 80 %, where one would. */
  readonly smallest?: HiddenSurface;
  /** What the report makes of the student's own readings. */
  readonly report: Pick<SessionReport, "session" | "answer">;
}

/** A part of the key's page: Markdown, or a table. */
export type KeyPart = { readonly markdown: string } | {
  readonly table: Displayable;
};

/** The verdict of the report on the student's readings. */
export function reportVerdict(
  { report }: Pick<KeyEntry, "report">,
): "within" | "outside" | "undecided" | "none" {
  return report.session?.sphericity.verdict ?? "none";
}

/** Whether the report's verdict is the right one, in a word. */
function agreement(entry: KeyEntry): string {
  const found = reportVerdict(entry);
  return found === entry.stated.right
    ? "yes"
    : found === "undecided"
    ? "left open"
    : "no";
}

function overview(entries: readonly KeyEntry[]): Displayable {
  return table(
    entries.map((entry) => ({
      folder: entry.exercise.name,
      hidden: hiddenName(entry.exercise.hidden),
      "right verdict": verdictShort(entry.stated.right),
      "chance of it": writeWholeChance(entry.stated.power),
      "the report says": verdictShort(reportVerdict(entry)),
      right: agreement(entry),
    })),
    {
      caption:
        "What is hidden, the right verdict on it within the tolerance, and what the report says of the readings handed out",
    },
  );
}

/** What no amount of care with these readings would show. */
function blindWords({ exercise, smallest, stated }: KeyEntry): string {
  const { hidden, sets } = exercise;
  const plan = `this ring, this gauge and ${sets} sets`;
  if (hidden.kind === "sphere") {
    return "Nothing is hidden. The same readings would come from any astigmatic surface of this mean radius, so “a sphere” always means “as far as three feet can tell”.";
  }
  if (hidden.kind === "astigmatism") {
    return "No amount of it would be found: three feet measure the mean curvature under them, and astigmatism has none. A bar with two feet, turned on the work, or an optical test would show it. The right answer names this limit.";
  }
  const least = smallest === undefined
    ? `No practical amount of it is found with a chance of 80\u00a0% by ${plan}.`
    : `To be found with a chance of 80\u00a0% by ${plan} it would have to be ${
      hiddenWords(smallest, exercise)
    }.`;
  const good = stated.right === "within"
    ? " What is hidden here is smaller than the tolerance, so it is good work: a student who says “within” has not overlooked it."
    : "";
  return least + good;
}

function chancesWords({ stated, exercise }: KeyEntry): string {
  const { chances, right } = stated;
  const others = (["within", "outside", "undecided"] as const)
    .filter((verdict) => verdict !== right)
    .map((verdict) =>
      `${verdictName(verdict)} ${writeWholeChance(chances[verdict])}`
    )
    .join(", ");
  return `The right verdict is “${verdictName(right)}” (tolerance ${
    writeSmall(exercise.disc.sagTolerance, exercise.gauge.unit)
  } of sag). Of sessions like this one the analysis gives it in ${
    writeWholeChance(chances[right])
  }; ${others} (${chances.sessions} simulated sessions).`;
}

function studentPart(entry: KeyEntry): KeyPart {
  const { exercise, report } = entry;
  const { unit } = exercise.gauge;
  const places = unit === "mm" ? 1 : 2;
  const radius = (length: number): string =>
    formatLength(millimetres(length), unit, places);
  const byHand = report.session && byHandWords(exercise, report.session);
  const lines = [
    `Hidden: ${hiddenWords(exercise.hidden, exercise)}. ${
      seenWords(entry.stated, exercise)
    }`,
    `Radius of curvature at the vertex ${
      radius(exercise.trueRadius)
    }; a perfect gauge with this ring would read ${
      radius(centreRadiusOf(exercise))
    } at the centre.`,
    gaugeWords(exercise),
    chancesWords(entry),
    blindWords(entry),
    ...(byHand === undefined ? [] : [byHand]),
    ...report.answer.slice(0, 2).map((sentence, k) =>
      `The report on ${k === 0 ? "the radius" : "the shape"}: ${sentence}`
    ),
  ];
  return {
    markdown: [
      `## ${exercise.name}`,
      "",
      ...lines.map((line) => `- ${line}`),
    ].join("\n"),
  };
}

/**
 * Tells a teacher what a class's exercises hide.
 *
 * @param entries One for each student.
 * @param seed Seed of the exercises.
 * @returns The parts of the page in order; the title is the page's own.
 *
 * @example
 * ```ts
 * import { drawExercise, statedChances } from "sagbook/exercises/mod.ts";
 * import { exerciseKey } from "sagbook/narrative/exercise_key.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { match } from "node:assert/strict";
 *
 * const exercise = drawExercise(new Random(1), "student-01", { kind: "astigmatism" });
 * const stated = statedChances(exercise, new Random(1), 20);
 * const parts = exerciseKey([{ exercise, stated, report: { answer: [] } }], 1);
 * match(JSON.stringify(parts), /No amount of it would be found/);
 * ```
 */
export function exerciseKey(
  entries: readonly KeyEntry[],
  seed: number,
): readonly KeyPart[] {
  return [
    {
      markdown:
        `Everything here is invented: a seeded simulation put three balls on the surfaces below. Seed ${seed} with ${entries.length} ${
          entries.length === 1 ? "student" : "students"
        } makes the same files again, so the seed is part of the key. Keep this folder apart from the students' folders.`,
    },
    { table: overview(entries) },
    {
      markdown:
        `“Chance of it” is worked out beforehand from the surface, the gauge and the plan of each exercise; it is not taken from the readings handed out. An exercise that is solved in 60\u00a0% of sessions stays open in most of the others: “not decided” is then a good answer, with the number of sets that would decide. The verdict errs at 5\u00a0% at most either way.

What these readings can show: differences between centre, half way and edge (a conic, a turned edge), and between the two ends of a diameter (lopsided wear). What they cannot: astigmatism, however large; a fault narrower than what the feet reach; a three-cornered surface, since it shows as scatter between diameters at best.`,
    },
    ...entries.map(studentPart),
  ];
}

/**
 * What a student is asked, as a text file beside the readings.
 *
 * @param exercise The exercise; only what a student may know is used.
 * @returns Markdown.
 *
 * @example
 * ```ts
 * import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
 * import { exerciseQuestion } from "sagbook/narrative/exercise_key.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { match } from "node:assert/strict";
 *
 * match(exerciseQuestion(drawExercise(new Random(1), "A")), /Invented/);
 * ```
 */
export function exerciseQuestion({ name, disc, gauge }: Exercise): string {
  const { unit } = gauge;
  const target = formatLength(
    millimetres(disc.targetRadius),
    unit,
    unit === "mm" ? 0 : 2,
  );
  return `# ${name}

Invented for a class: no such piece exists. ${disc.diameter} mm disc, target radius of
curvature ${target.replaceAll("\u00a0", " ")}.

1. What is the radius of curvature, and how sure is it?
2. Is it a sphere within ${
    writeSmall(disc.sagTolerance, unit).replaceAll("\u00a0", " ")
  } of sag? If that is not decided, what would decide it?
3. If it is not, what shape would read like this?
4. What could be wrong with this surface that these readings cannot show?
5. How does the gauge behave: its step, its zero, its drift?

The readings are in readings.csv. \`deno task check FOLDER\` says whether they can
be read, \`deno task report FOLDER\` what they tell; work out the first set by hand
before you look.
`;
}
