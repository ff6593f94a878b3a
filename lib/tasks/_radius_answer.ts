/**
 * Readings answered as they are typed, or as a cable sends them.
 *
 * @module
 */
import { familyOf } from "../units/unit_family.ts";
import { parseLength } from "../units/parse_length.ts";
import type { RadiusSetup } from "./_radius_setup.ts";
import { plainText } from "./_record_words.ts";
import { EXIT } from "./_task_words.ts";
import { say as tell } from "./_terminal.ts";

/** Name of a session nobody keeps; the words about it are turned round. */
const SESSION = "now";

/** Says a line as a terminal shows it. */
export const say = (line: string): void => tell(plainText(line));

/** The display step that a number's figures show, as a gauge would have it. */
function withStep(setup: RadiusSetup, typed: string): RadiusSetup {
  const { gauge } = setup.bench;
  const unit = gauge.unit ?? setup.piece.unit;
  if (gauge.shows.kind !== "sag" || Object.keys(gauge.steps).length > 0) {
    return setup;
  }
  const read = parseLength(typed, { decimal: ".", defaultUnit: unit });
  if (read.kind !== "length") return setup;
  return {
    ...setup,
    bench: {
      ...setup.bench,
      gauge: { ...gauge, steps: { [familyOf(read.unit)]: read.step } },
    },
  };
}

/** Answers one reading; `false` when it could not. */
export async function answerLine(
  typed: string,
  setup: RadiusSetup,
  index: number | undefined,
): Promise<boolean> {
  const { typedLine } = await import("./_record_typed_line.ts");
  const { readLine, problemLine } = await import("./_record_reading.ts");
  const line = typedLine(typed);
  if (line.kind === "blank") return true;
  if (line.kind === "unreadable" || line.kind === "text") {
    const [words, shown] = line.kind === "text"
      ? ["this is not a reading", line.text]
      : [line.words, line.shown];
    say(`no answer: ${words}: “${shown}”.`);
    return false;
  }
  const { piece, bench, ring } = withStep(
    setup,
    `${line.reading} ${line.unit}`,
  );
  const { reading, problems } = await readLine(
    {
      session: SESSION,
      zeroing: "1",
      ring: ring!.id,
      zone: "centre",
      reading: line.reading,
      unit: line.unit,
    },
    piece,
    bench,
  );
  const shown = problems.filter(({ severity }) => severity !== "note");
  for (const problem of shown) {
    say(
      `${problem.severity === "refused" ? "no answer" : "warning"}: ${
        problemLine(problem, SESSION)
      }.`,
    );
  }
  if (reading === undefined) {
    // Never an end without a word, whatever the reader took the line for.
    if (shown.length === 0) {
      say(`no answer: this was not read as a reading: “${typed.trim()}”.`);
    }
    return false;
  }
  const { benchAnswer } = await import("../narrative/bench_answer.ts");
  const { benchAnswerLines } = await import(
    "../narrative/bench_answer_lines.ts"
  );
  const { zeroing } = setup.scatter;
  const answer = reading.sag > 0
    ? benchAnswer(reading, piece, bench, {
      ...(zeroing === undefined ? {} : { scatter: zeroing }),
      ...(index === undefined ? {} : { index }),
    })
    : undefined;
  if (answer === undefined) {
    if (reading.sag === 0) {
      say("no answer: a sag of 0 is a flat; it has no radius.");
    } else if (reading.sag > 0) {
      say("no answer: no sphere under this ring has such a sag.");
    } else say(`no answer: a negative sag has no radius as ${piece.form}.`);
    return false;
  }
  benchAnswerLines(answer, piece, { sizeKnown: setup.sizeKnown }).forEach(say);
  return true;
}

/** Answers the lines of standard input until it ends. */
export async function answerInput(
  setup: RadiusSetup,
  index: number | undefined,
): Promise<number> {
  const { inputLines } = await import("./_record_input.ts");
  const terminal = Deno.stdin.isTerminal();
  if (terminal) say("Type a reading and Enter; Enter alone ends.");
  let all: number = EXIT.ok;
  for await (const line of inputLines(Deno.stdin.readable)) {
    if (terminal && line.trim() === "") break;
    if (!await answerLine(line, setup, index)) all = EXIT.failed;
  }
  return all;
}
