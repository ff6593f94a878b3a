/**
 * `deno task exercise --seed N --students M`: exercises for a class, and their
 * key apart.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { drawClass, MOST_STUDENTS } from "../exercises/draw_class.ts";
import { exerciseFiles } from "../exercises/exercise_files.ts";
import { smallestFound } from "../exercises/smallest_found.ts";
import { statedChances } from "../exercises/stated_chances.ts";
import { makeFolder } from "../files/make_folder.ts";
import { exerciseQuestion, type KeyEntry } from "../narrative/exercise_key.ts";
import { openPiece } from "../narrative/open_piece.ts";
import { KEY_FOLDER, keyFiles } from "./_exercise_key_files.ts";
import { fileTrouble } from "./_new_files.ts";
import { stoppable } from "./_stoppable.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

const USAGE = `deno task exercise --seed N --students M [--out FOLDER]

Makes exercises for a class. Each student gets a folder with a piece, a bench
and readings of a surface that hides something: a sphere, a conic, a turned
edge, lopsided wear or astigmatism, under a gauge with its own step, scatter of
the zero and drift. Everything is invented, drawn by the seed, and read by exact
contact of three balls. deno task check and deno task report take each folder.

The key (what is hidden, how likely the analysis is to find it, what the report
says) lies in FOLDER/${KEY_FOLDER}. Hand out the other folders without it.

  --seed N         a whole number; the same one gives the same files
  --students M     how many, from 1 to ${MOST_STUDENTS}
  --out FOLDER     a folder that does not exist yet; class-exercise unless told
  --help           this text

Exit codes: 0 made, 1 could not be written, 2 wrong call, 130 stopped.`;

/** A whole number from a flag. */
function wholeNumber(
  typed: string | true | undefined,
  low: number,
  high: number,
): number | undefined {
  if (typeof typed !== "string" || !/^\d+$/.test(typed)) return undefined;
  const value = Number(typed);
  return value >= low && value <= high ? value : undefined;
}

async function write(path: string, text: string): Promise<void> {
  await Deno.mkdir(dirname(path), { recursive: true });
  await Deno.writeTextFile(path, text, { createNew: true });
}

/** Makes everything in a folder of its own. */
async function fill(
  folder: string,
  seed: number,
  students: number,
  signal: AbortSignal,
): Promise<readonly KeyEntry[]> {
  const entries: KeyEntry[] = [];
  for (const { exercise, random } of drawClass(seed, students)) {
    await heard(signal);
    const own = join(folder, exercise.name);
    for (
      const [name, text] of exerciseFiles(exercise, random.fork("readings"))
    ) {
      await write(join(own, name), text);
    }
    await write(join(own, "question.md"), exerciseQuestion(exercise));
    const smallest = smallestFound(exercise, 1);
    entries.push({
      exercise,
      stated: statedChances(exercise, random.fork("stated")),
      ...(smallest === undefined ? {} : { smallest }),
      report: await openPiece(own),
    });
  }
  for (const [name, text] of await keyFiles(entries, seed)) {
    await write(join(folder, KEY_FOLDER, name), text);
  }
  return entries;
}

/** Lets a signal that came during a long calculation be heard. */
async function heard(signal: AbortSignal): Promise<void> {
  await new Promise((done) => setTimeout(done, 0));
  signal.throwIfAborted();
}

/**
 * Makes a class's exercises and their key, all or nothing.
 *
 * @param args The command line.
 * @returns The exit code.
 */
export async function exercise(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    seed: "value",
    students: "value",
    out: "value",
    help: "switch",
    h: "switch",
  });
  if (flags.help || flags.h) {
    say(USAGE);
    return EXIT.ok;
  }
  const seed = wholeNumber(flags.seed, 0, Number.MAX_SAFE_INTEGER);
  const students = wholeNumber(flags.students, 1, MOST_STUDENTS);
  const out = typeof flags.out === "string" ? flags.out : "class-exercise";
  const wrong = problem ??
    (rest.length > 0
      ? `There is nothing to do with “${
        rest[0]
      }”; the folder is named by --out.`
      : seed === undefined
      ? `--seed needs a whole number from 0: current value is ${
        flags.seed ?? "none"
      }.`
      : students === undefined
      ? `--students needs a whole number from 1 to ${MOST_STUDENTS}: current value is ${
        flags.students ?? "none"
      }.`
      : out === ""
      ? "--out needs the name of a folder."
      : undefined);
  if (wrong !== undefined) {
    complain(wrongCall(wrong, USAGE));
    return EXIT.usage;
  }
  try {
    return await stoppable("exercise", async (signal) => {
      const entries = await makeFolder(
        out,
        (making) => fill(making, seed!, students!, signal),
        signal,
      );
      say(
        `Made ${out}: ${entries.length} ${
          entries.length === 1 ? "exercise" : "exercises"
        }, student-01 to ${entries.at(-1)!.exercise.name}.`,
      );
      say(
        `The key is ${
          join(out, KEY_FOLDER, "key.html")
        }: keep that folder, hand out the others.`,
      );
      return EXIT.ok;
    });
  } catch (error) {
    complain(fileTrouble(error, out));
    return EXIT.failed;
  }
}

if (import.meta.main) Deno.exit(await exercise(Deno.args));
