/**
 * `deno task radius READING`: a reading in, an answer out.
 *
 * @module
 */
import { parseLength } from "../units/parse_length.ts";
import { answerInput, answerLine, say } from "./_radius_answer.ts";
import { CallError, type Flags, radiusSetup } from "./_radius_setup.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say as tell } from "./_terminal.ts";

const USAGE = `deno task radius READING ... [--folder DIR] [--ring NAME]
deno task radius READING --ring LENGTH --ball LENGTH --form concave|convex
deno task radius --radius LENGTH ...      what the gauge should show
deno task radius --table FROM TO ...      R against sag, for the wall

Answers a reading at once: R with its uncertainty, focal length, focal ratio,
sag of the whole surface, depth to the target, surface power of a lens.
Without READING it answers every line that is typed, or that a gauge's cable
sends.

  --folder DIR          a piece's folder: its form, size, target, gauge, rings
  --ring NAME           with a folder: which of its rings
  --ring LENGTH         without: radius of the circle through the ball centres
  --ring-uncertainty LENGTH   standard uncertainty of that radius
  --ball LENGTH         radius of the balls, or
  --ball-diameter LENGTH      their diameter, or
  --sharp               a ring with a sharp edge; --ring is the touching edge
  --form concave|convex which way the surface curves
  --diameter LENGTH     diameter of the work
  --target LENGTH       the wanted radius; needs --diameter
  --step LENGTH         what the display steps by (else read off the figures)
  --index NUMBER        index for the surface power, such as 1.53 for tools of
                        lenses; without it that of a lens's piece.json alone
  --unit mm|in          unit of bare numbers and of the answer
  --help                this text

Exit codes: 0 answered, 1 no answer, 2 wrong call.`;

const FLAGS = {
  folder: "value",
  ring: "value",
  "ring-uncertainty": "value",
  ball: "value",
  "ball-diameter": "value",
  sharp: "switch",
  form: "value",
  diameter: "value",
  target: "value",
  step: "value",
  index: "value",
  unit: "value",
  radius: "value",
  table: "switch",
  help: "switch",
  h: "switch",
} as const;

/** A length that was typed as an argument, above 0, in mm. */
function lengthOf(typed: string, what: string, unit: "mm" | "in"): number {
  const read = parseLength(typed, { decimal: ".", defaultUnit: unit });
  if (read.kind === "length" && read.value > 0) return read.value;
  const why = read.kind === "refused"
    ? read.reason
    : read.kind === "ambiguous"
    ? `it can be read as ${read.amounts.join(" or ")} ${read.unit}`
    : "it must be above 0";
  throw new CallError(
    `${what} “${typed.slice(0, 60)}” cannot be used: ${why}.`,
  );
}

/** Flags that hold lengths, beside `--radius`, which the line goes on from. */
const LENGTHS = [
  ...["ring", "ring-uncertainty", "ball", "ball-diameter", "diameter"],
  ...["target", "step"],
];
const BARE = /^[\s\d.,/+\-\u2212]*\d[\s\d.,/]*$/;

/** What to say where a number without a unit was taken in millimetres. */
function unitSaid(flags: Flags, rest: readonly string[]): string | undefined {
  // A folder knows its gauge's unit, and a table names its own.
  if (flags.unit ?? flags.folder ?? flags.table) return undefined;
  const { radius = "" } = flags;
  const typed = [
    `${radius === true ? "" : radius} ${rest.join(" ")}`,
    ...LENGTHS.map((name) => flags[name]),
  ];
  return typed.some((one) => typeof one === "string" && BARE.test(one))
    ? "Numbers without a unit were taken as mm; --unit in takes them as inches."
    : undefined;
}

/** Two lengths from arguments that may have been split at their units. */
function twoLengths(rest: readonly string[]): [string, string] {
  const joined = rest.join(" ");
  const match = /^(\S+(?:\s+[^\d\s]\S*)?)\s+(\S+(?:\s+[^\d\s]\S*)?)$/.exec(
    joined,
  );
  if (match === null) {
    throw new CallError("--table needs two sags: from and to.");
  }
  return [match[1], match[2]];
}

function indexOf(flags: Flags): number | undefined {
  if (typeof flags.index !== "string") return undefined;
  const index = Number(flags.index);
  if (Number.isFinite(index) && index > 1) return index;
  throw new CallError(
    `--index is a number above 1: current value is ${flags.index}.`,
  );
}

/** Arguments with a minus of a number that is not taken for a flag. */
function withoutSigns(args: readonly string[]): string[] {
  return args.map((arg) => arg.replace(/^-(?=[.,]?\d)/, "\u2212"));
}

/**
 * Answers readings, shows what the gauge should show, or makes a table.
 *
 * @param args The command line.
 * @returns The exit code.
 */
export async function radius(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(withoutSigns(args), FLAGS);
  if (flags.help || flags.h) {
    tell(USAGE);
    return EXIT.ok;
  }
  try {
    if (problem !== undefined) throw new CallError(problem);
    if (typeof flags.target === "string" && flags.diameter === undefined) {
      throw new CallError(
        "--target needs --diameter: how deep it is to the target depends on it.",
      );
    }
    const index = indexOf(flags);
    const setup = await radiusSetup(flags, flags.radius !== undefined);
    const { piece, bench, ring } = setup;
    const taken = unitSaid(flags, rest);
    const said = taken === undefined ? setup.said : [taken, ...setup.said];
    const unit = bench.gauge.unit ?? piece.unit;
    if (typeof flags.radius === "string") {
      const { benchShownLines } = await import(
        "../narrative/bench_shown_lines.ts"
      );
      const typed = [flags.radius, ...rest].join(" ");
      const wanted = lengthOf(typed, "--radius", piece.unit);
      const { millimetres } = await import("../units/length.ts");
      if (taken !== undefined) say(taken);
      benchShownLines(millimetres(wanted), piece, bench).forEach(say);
      return EXIT.ok;
    }
    if (flags.table) {
      const { benchTable, tableLines } = await import(
        "../narrative/bench_table.ts"
      );
      const [from, to] = twoLengths(rest);
      const step = bench.gauge.steps[unit];
      if (step === undefined) {
        throw new CallError(
          "A table needs the display step: --step, or display_step in bench.json.",
        );
      }
      const order = {
        from: lengthOf(from, "the first sag", unit),
        to: lengthOf(to, "the last sag", unit),
        step,
        unit,
      };
      said.forEach(say);
      const table = benchTable(order, ring!, piece.form);
      tableLines(table).forEach((line) => tell(line));
      return EXIT.ok;
    }
    said.forEach(say);
    if (rest.length === 0) return await answerInput(setup, index);
    return await answerLine(rest.join(" "), setup, index)
      ? EXIT.ok
      : EXIT.failed;
  } catch (error) {
    if (error instanceof CallError) {
      complain(wrongCall(error.message, USAGE));
      return EXIT.usage;
    }
    complain(plainWords(error));
    return EXIT.failed;
  }
}

if (import.meta.main) Deno.exit(await radius(Deno.args));
