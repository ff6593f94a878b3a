/**
 * Taking one value: read, kept, answered, in that order.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import type { Problem } from "../records/problem.ts";
import type { Reading } from "../records/reading.ts";
import { answerReading, otherThanAsked } from "./_record_answer.ts";
import type { Desk } from "./_record_desk.ts";
import { problemLine } from "./_record_reading.ts";
import type { Step } from "./_record_route.ts";
import type { TypedLine } from "./_record_typed_line.ts";

type ValueLine = TypedLine & { readonly kind: "value" };
type Cells = Readonly<Record<string, string>>;

/** The unit of a number that names none: the gauge's, else the last used. */
function unitOf(desk: Desk, step: Step, line: ValueLine): string {
  if (line.unit !== "") return line.unit;
  if (/[^\d.,\s+\-\u2212\u2013]/.test(line.reading)) return "";
  const { bench, cells } = desk.with;
  return step.cells.unit ?? cells.unit ?? bench.gauge.unit ??
    desk.mine.at(-1)?.shown?.unit ?? "";
}

/** The zero's own history stands in the first line of its set. */
function zeroCells(desk: Desk, { cells }: Step): Cells {
  if (desk.zeroBefore === undefined) return {};
  const none = desk.mine.every((one) => zeroingLabel(one) !== cells.zeroing);
  return none ? { zero_before: desk.zeroBefore } : {};
}

async function refuse(
  desk: Desk,
  problems: readonly Problem[],
  line: ValueLine,
  cells: Cells,
): Promise<void> {
  const { keeper, session, warn, say } = desk.with;
  for (const problem of problems) {
    if (problem.severity !== "refused") continue;
    warn(`not kept: ${problemLine(problem, session)}`);
  }
  // A person sees that and types again; nobody may be looking at a cable.
  if (!line.cable) return;
  const why = await keeper.keepUnread(cells);
  say(
    why === undefined
      ? `The line stands in ${keeper.name}, marked as not read.`
      : `The line could not be saved: ${why}.`,
  );
}

/** Says how the sets stand once one is complete. */
async function afterReading(desk: Desk, reading: Reading): Promise<void> {
  const { next } = desk;
  if (next.kind === "step" && next.zeroing === zeroingLabel(reading)) return;
  desk.begun = undefined;
  desk.zeroBefore = undefined;
  await desk.with.stand(desk.mine);
}

/** Reads, keeps and answers one value where a step asked for it. */
export async function takeValue(
  desk: Desk,
  step: Step,
  line: ValueLine,
): Promise<void> {
  const { keeper, warn, say, asks, route } = desk.with;
  const first = desk.rowOf({
    ...step.cells,
    ...zeroCells(desk, step),
    reading: line.reading,
    unit: unitOf(desk, step, line),
  });
  let read = await keeper.read(first);
  if (read.reading === undefined) {
    return await refuse(desk, read.problems, line, first);
  }
  const before = desk.mine;
  const away = otherThanAsked(read.reading, before, desk.nominal);
  if (away === "flat") {
    const { offset: _, ...cells } = read.cells;
    read = await keeper.read({ ...cells, zone: "flat", note: "" });
  } else if (away === "work" && asks) {
    return warn(
      "that looks like a reading of the work, and the flat was asked for; nothing was kept. Point, Enter, 4, Enter passes the flat over",
    );
  } else if (away === "work") {
    // The cable has gone on to the next set.
    route.skip(step);
    desk.begun = undefined;
    const { next } = desk;
    if (next.kind === "zero") return await beginWith(desk, line);
  }
  const { reading } = read;
  if (reading === undefined) return;
  const why = await keeper.keep(read.cells, reading);
  if (desk.question.kind === "extra") desk.question = { kind: "next" };
  if (why !== undefined) {
    const { reading: value, unit, zone } = read.cells;
    return warn(
      `NOT SAVED: ${why}. ${value} ${unit} at ${zone} is held here; mend that, then Enter saves it`,
    );
  }
  await answerReading(desk, reading, read.problems, before, read.cells.reading);
  if (away === "flat") say("So near to 0 it was taken for a look at the flat.");
  await afterReading(desk, reading);
}

/** Begins the next set with a value, where nobody is asked about the zero. */
export async function beginWith(desk: Desk, line: ValueLine): Promise<void> {
  const { next } = desk;
  if (next.kind !== "zero") return;
  desk.begin(next, next.diameter);
  const first = desk.next;
  if (first.kind === "step") return await takeValue(desk, first.step, line);
  desk.with.warn("nothing is left to read; nothing was kept");
}
