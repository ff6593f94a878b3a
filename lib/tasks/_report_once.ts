/**
 * The report of one folder, in plain words.
 *
 * @module
 */
import type { RunProgress } from "../notebook/run_result.ts";
import { readPieceSettings } from "../records/read_piece_settings.ts";
import { unreadableFiles } from "../records/unreadable_files.ts";
import { RecordError } from "../records/record_error.ts";
import { limitsFromFlags } from "./_notebook_limits.ts";
import type { PieceOutcome } from "./_report_index.ts";
import { type ReportKind, reportOn } from "./_report_run.ts";
import type { TaskProgress } from "./_task_progress.ts";
import { displayPath, EXIT, plainWords } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

/** How a report ended, and what an index says of it. */
export interface Ended {
  readonly code: number;
  readonly outcome: PieceOutcome;
  /** Says what became of it. */
  readonly tell: () => void;
}

/** What every report of a call is made with. */
export interface ReportCall {
  readonly kind: ReportKind;
  readonly flags: Readonly<Record<string, string | true>>;
  readonly signal: AbortSignal;
  readonly progress: TaskProgress;
}

/** The end of a piece that has no report. */
export function without(
  folder: string,
  code: number,
  fault: string,
  tell: () => void,
): Ended {
  return { code, outcome: { folder, answer: [], faults: [fault] }, tell };
}

/** The end of a report that was stopped. */
function stopped(folder: string): Ended {
  const why =
    "stopped; nothing was written, and an older report stays as it was.";
  return without(
    folder,
    EXIT.stopped,
    "stopped",
    () => complain(`${displayPath(folder)}: ${why}`),
  );
}

function cellWords({ cell, of, words, state }: RunProgress): string {
  const place = `cell ${cell} of ${of}`;
  return state === "running" && words !== undefined
    ? `${place}: ${words}`
    : place;
}

/** Reports on one folder; what is to be said of it waits until it is asked for. */
export async function reportOnce(
  folder: string,
  { kind, flags, signal, progress }: ReportCall,
  hint?: string,
): Promise<Ended> {
  const name = displayPath(folder);
  try {
    // All that is wrong with the files is said here, before anything runs.
    await readPieceSettings(folder);
    // Readings that are there and cannot be read are not readings that are not
    // there: a report without them would take the place of a better one.
    const shut = await unreadableFiles(folder);
    if (shut.length > 0) throw new RecordError(`Cannot use ${folder}`, shut);
  } catch (error) {
    return without(folder, EXIT.failed, plainWords(error), () => {
      complain(`${name}: no report, since the folder cannot be read.\n`);
      complain(plainWords(error));
      if (hint !== undefined) complain(`\n${hint}`);
    });
  }
  const unchecked: string[] = [];
  let made;
  try {
    made = await reportOn(folder, {
      kind,
      signal,
      onProgress: (told) => progress.tell(cellWords(told)),
      ...(typeof flags.kernel === "string" ? { kernel: flags.kernel } : {}),
      check: flags["no-check"] !== true,
      limits: limitsFromFlags(flags) ?? "unlimited",
      onUnchecked: (why) => unchecked.push(why),
      ...(typeof flags.notebook === "string"
        ? { notebook: flags.notebook }
        : {}),
    });
  } catch (error) {
    // A signal reaches the kernel too: what fails then was stopped.
    if (signal.aborted) return stopped(folder);
    throw error;
  }
  const { page, answer, about, run, written } = made;
  if (!written) return stopped(folder);
  const isWhole = run.exitCode === 0;
  return {
    code: run.exitCode,
    outcome: {
      folder,
      ...(made.name === undefined ? {} : { name: made.name }),
      about,
      answer,
      page,
      faults: isWhole ? [] : run.problems.map(({ message }) => message),
    },
    tell: () => {
      for (const why of unchecked) complain(why);
      for (const problem of run.problems) complain(problem.message);
      say(name);
      if (answer.length > 0) say(answer.join(" "));
      say(`${isWhole ? "Page" : "Incomplete page"}: ${page}\n`);
    },
  };
}
