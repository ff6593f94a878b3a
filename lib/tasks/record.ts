/**
 * `deno task record FOLDER`: readings kept as they are taken.
 *
 * @module
 */
import { inputLines } from "./_record_input.ts";
import { mayColour, plainText, warningLine } from "./_record_words.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, shellWord, wrongCall } from "./_task_words.ts";
import { complain, say as tell } from "./_terminal.ts";

const USAGE =
  `deno task record FOLDER [--session NAME | --new] [--ring NAME] ...

Keeps readings in FOLDER/readings.csv as they are typed, or as a gauge's cable
sends them line by line. Each one is on the disk before it is answered with R
and its difference from the centre of this set. Follows FOLDER/plan.csv if there
is one. Stopped in any way, the same command goes on where it stopped.

  a number, Enter    a reading (or a cable's line: sign, value, unit)
  -, Enter           takes the last reading back: marked, never erased
  ., Enter           what else can be done
  Enter              goes on with what is suggested

  --session NAME   begin or go on with this session
  --new            begin a new session, named after the day; no plan
  --no-plan        do not follow plan.csv
  --ring NAME      which ring, where the bench has several
  --zones LIST     places of a set, such as "centre,50% reach,edge"
  --foot TEXT      how foot 1 stands: "foot out", "feet out", degrees
  --sets N         sets planned, for the rule that may stop early (else 8)
  --operator NAME  who reads
  --grade TEXT     the abrasive the surface was left by
  --unit mm|in     unit of numbers that name none
  --cable          ask nothing, as when the input is no terminal
  --help           this text

Exit codes: 0 ended, 1 could not record, 2 wrong call, 130 stopped.`;

const FLAGS = {
  session: "value",
  new: "switch",
  "no-plan": "switch",
  ring: "value",
  zones: "value",
  foot: "value",
  sets: "value",
  operator: "value",
  grade: "value",
  unit: "value",
  cable: "switch",
  help: "switch",
  h: "switch",
} as const;

/** Ctrl-C, a program that ends others, a terminal that is closed. */
const STOPS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

const encoder = new TextEncoder();

/** Nobody reads what is said any more. */
class DeafError extends Error {}

/** Writes all of a text. */
function write(text: string): void {
  let bytes = encoder.encode(text);
  try {
    while (bytes.length > 0) {
      bytes = bytes.subarray(Deno.stdout.writeSync(bytes));
    }
  } catch {
    throw new DeafError(
      "what is said here can be read by nobody any more, so recording has ended",
    );
  }
}

/** How long, in ms, a signal waits for the line that is being saved. */
const SAVE_LIMIT = 3_000;

/**
 * Keeps readings until the input ends.
 *
 * @param args The command line.
 * @returns The exit code.
 */
export async function record(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, FLAGS);
  if (flags.help || flags.h) {
    tell(USAGE);
    return EXIT.ok;
  }
  const wrong = problem ??
    (rest.length === 1 ? undefined : "Name one folder to record to.") ??
    (flags.unit === undefined || flags.unit === "mm" || flags.unit === "in"
      ? undefined
      : `--unit is mm or in: current value is ${flags.unit}.`);
  if (wrong !== undefined) {
    complain(wrongCall(wrong, USAGE));
    return EXIT.usage;
  }
  const asks = Deno.stdin.isTerminal() && !flags.cable;
  const colour = mayColour();
  const say = (line: string): void => write(`${plainText(line)}\n`);
  const lines = inputLines(Deno.stdin.readable);
  const asked = async (question: string): Promise<string> => {
    write(asks ? question : `${question.trimEnd()}\n`);
    const { value, done } = await lines.next();
    return done ? "" : value.trim();
  };
  const { SaveError } = await import("./_record_disk.ts");
  const { StartError } = await import("./_record_questions.ts");
  const { startOf } = await import("./_record_start.ts");
  const { readPieceFolder } = await import("../records/read_piece_folder.ts");
  /** Says what was kept; what was not, even where nobody hears the rest. */
  let end = (code: number): number => code;
  try {
    const folder = await readPieceFolder(rest[0]);
    const start = await startOf(
      folder,
      flags.new ? { ...flags, "no-plan": true } : flags,
      asks ? asked : undefined,
      new Date(),
    );
    const { Session } = await import("./_record_session.ts");
    const { piece, bench, keeper, looks, session } = start;
    start.said.forEach(say);
    say(
      `${piece.name}, session ${session}, kept in ${keeper.name}.${
        asks ? " Minus takes back, a point shows more." : ""
      }`,
    );
    const recorder = new Session({
      ...start,
      asks,
      say,
      warn: (text) => write(`${warningLine(text, colour)}\n`),
      stand: async (readings) => {
        const { benchSetLines, benchSets } = await import(
          "../narrative/bench_set_lines.ts"
        );
        const ring = readings.at(-1)?.ring;
        const same = readings.filter((one) => one.ring === ring);
        const sets = benchSets(same, piece, bench, looks);
        if (sets !== undefined) {
          benchSetLines(sets, piece, bench).forEach(say);
        }
      },
      now: () => new Date(),
    });
    end = (code) => {
      const { held } = keeper;
      if (held.length > 0) {
        complain(
          "NOT SAVED; write these down:\n" +
            held.map(({ cells }) => Object.values(cells).join(",")).join("\n"),
        );
        return EXIT.failed;
      }
      const kept = keeper.readings.filter((one) => one.session === session);
      say(
        `${kept.length} ${
          kept.length === 1 ? "reading" : "readings"
        } of session ${session} in ${keeper.name}. Next: deno task report ${
          shellWord(rest[0])
        }`,
      );
      return code;
    };
    let busy: Promise<unknown> = Promise.resolve();
    for (const signal of STOPS) {
      try {
        Deno.addSignalListener(signal, async () => {
          const late = new Promise((done) => setTimeout(done, SAVE_LIMIT));
          await Promise.race([busy, late]).catch(() => {});
          try {
            write("\n");
            Deno.exit(end(EXIT.stopped));
          } catch {
            Deno.exit(EXIT.stopped);
          }
        });
      } catch {
        // This system does not know the signal.
      }
    }
    let warm: Promise<void> | undefined;
    while (!recorder.ended) {
      write(asks ? recorder.prompt : `${recorder.prompt.trimEnd()}\n`);
      // What answers is loaded while the first reading is being taken.
      warm ??= recorder.warmUp();
      const { value, done } = await lines.next();
      await warm;
      if (done) {
        if (asks) write("\n");
        break;
      }
      await (busy = recorder.take(value));
    }
    return end(EXIT.ok);
  } catch (error) {
    if (error instanceof StartError || error instanceof SaveError) {
      complain(error.message);
      return EXIT.failed;
    }
    complain(plainWords(error));
    try {
      return end(EXIT.failed); // what waits for room is not lost in silence
    } catch {
      return EXIT.failed;
    }
  }
}

if (import.meta.main) Deno.exit(await record(Deno.args));
