/**
 * Reports on one folder after another, with progress and plain words.
 *
 * @module
 */
import { join } from "node:path";
import { terminalProgress } from "../notebook/terminal_progress.ts";
import { onInterruptSignal, onStopSignal } from "../protocol/system.ts";
import { readPieceSettings } from "../records/read_piece_settings.ts";
import { unreadableFiles } from "../records/unreadable_files.ts";
import { RecordError } from "../records/record_error.ts";
import { findPieces } from "./_find_pieces.ts";
import { type PieceOutcome, writeReportIndex } from "./_report_index.ts";
import { LIMIT_FLAGS, limitsFromFlags } from "./_notebook_limits.ts";
import { type ReportKind, reportOn, ROOT } from "./_report_run.ts";
import { displayPath, EXIT, plainWords, readFlags } from "./_task_words.ts";
import { complain, progress, say, terminalColumns } from "./_terminal.ts";

/** One task that reports on folders. */
export interface ReportTask {
  /** Text of `--help`. */
  readonly usage: string;
  /** Flags with a value of its own, beside those of every report. */
  readonly values?: readonly string[];
  /** Folders when none is given, from the project's root. */
  readonly defaults: readonly string[];
  /** True if a folder of pieces gets a page that lists them. */
  readonly hasIndex?: boolean;
  /** Makes the report's kind from flags and folders; a text is a wrong call. */
  readonly kind: (
    flags: Readonly<Record<string, string | true>>,
    folders: readonly string[],
  ) => ReportKind | string;
}

/** What is said of a report that was stopped. */
function stopped(name: string): number {
  complain(
    `${name}: stopped; nothing was written, and an older report stays as it was.`,
  );
  return EXIT.stopped;
}

/** How a report ended, and what an index says of it. */
interface Ended {
  readonly code: number;
  readonly outcome: PieceOutcome;
}

/** The end of a piece that has no report. */
function without(folder: string, code: number, fault: string): Ended {
  return { code, outcome: { folder, answer: [], faults: [fault] } };
}

async function reportOnce(
  folder: string,
  kind: ReportKind,
  flags: Readonly<Record<string, string | true>>,
  signal: AbortSignal,
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
    complain(`${name}: no report, since the folder cannot be read.\n`);
    complain(plainWords(error));
    if (hint !== undefined) complain(`\n${hint}`);
    return without(folder, EXIT.failed, plainWords(error));
  }
  const terminal = Deno.stderr.isTerminal();
  const listen = terminalProgress(progress, terminal, terminalColumns);
  let made;
  try {
    made = await reportOn(folder, {
      kind,
      signal,
      ...(terminal ? { onProgress: listen } : {}),
      ...(typeof flags.kernel === "string" ? { kernel: flags.kernel } : {}),
      check: flags["no-check"] !== true,
      limits: limitsFromFlags(flags) ?? "unlimited",
      onUnchecked: (why) => complain(why),
      ...(typeof flags.notebook === "string"
        ? { notebook: flags.notebook }
        : {}),
    });
  } catch (error) {
    // A signal reaches the kernel too: what fails then was stopped.
    if (signal.aborted) return without(folder, stopped(name), "stopped");
    throw error;
  }
  const { page, answer, about, run, written } = made;
  if (!written) return without(folder, stopped(name), "stopped");
  for (const problem of run.problems) complain(problem.message);
  say(`${name}`);
  if (answer.length > 0) say(answer.join(" "));
  say(`${run.exitCode === 0 ? "Page" : "Incomplete page"}: ${page}\n`);
  return {
    code: run.exitCode,
    outcome: {
      folder,
      ...(made.name === undefined ? {} : { name: made.name }),
      about,
      answer,
      page,
      faults: run.exitCode === 0
        ? []
        : run.problems.map(({ message }) => message),
    },
  };
}

/**
 * Runs a task that reports on folders and ends the program with its code.
 *
 * @param task What the task does.
 * @param args Arguments of the command line.
 */
export async function runReportTask(
  task: ReportTask,
  args: readonly string[],
): Promise<never> {
  try {
    Deno.exit(await reportAll(task, args));
  } catch (error) {
    complain(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}

async function reportAll(
  task: ReportTask,
  args: readonly string[],
): Promise<number> {
  const own = (task.values ?? []).map((name) => [name, "value"] as const);
  const { flags, rest, problem } = readFlags(args, {
    ...Object.fromEntries(own),
    kernel: "value",
    notebook: "value",
    "no-check": "switch",
    ...LIMIT_FLAGS,
    help: "switch",
  });
  const kind = task.kind(flags, rest);
  const wrong = problem ??
    (rest.includes("") ? "A folder's name is empty." : undefined) ??
    (typeof kind === "string" ? kind : undefined);
  if (wrong !== undefined || typeof kind === "string") {
    complain(`${wrong}\n\n${task.usage}`);
    return EXIT.usage;
  }
  if (flags.help) {
    say(task.usage);
    return EXIT.ok;
  }
  const given = rest.length > 0
    ? rest
    : task.defaults.map((path) => join(ROOT, path));
  const groups = await Promise.all(given.map(findPieces));
  const stop = new AbortController();
  const onInterrupt = (): void => stop.abort();
  const offs = [onInterruptSignal(onInterrupt), onStopSignal(onInterrupt)];
  let worst: number = EXIT.ok;
  try {
    for (const { folder, pieces, isGroup, hint } of groups) {
      const outcomes: PieceOutcome[] = [];
      let said: string | undefined;
      for (const piece of pieces) {
        if (stop.signal.aborted) return EXIT.stopped;
        const ended = await reportOnce(piece, kind, flags, stop.signal, hint)
          .catch((error) => {
            // One piece that fails stops no other; what fails for two, all.
            const why = plainWords(error);
            if (!isGroup || why === said) throw error;
            complain(said = why);
            return without(piece, EXIT.failed, why);
          });
        worst = Math.max(worst, ended.code);
        outcomes.push(ended.outcome);
      }
      // What was told to stop after its last page is whole, and was not stopped.
      if (stop.signal.aborted && worst === EXIT.stopped) return EXIT.stopped;
      if (isGroup && task.hasIndex) {
        const page = await writeReportIndex(folder, outcomes);
        say(`All of them: ${displayPath(page)}`);
      }
    }
  } finally {
    for (const off of offs) off();
  }
  return worst;
}
