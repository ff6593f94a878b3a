/**
 * Reports on one folder after another, with progress and plain words.
 *
 * @module
 */
import { join } from "node:path";
import { onInterruptSignal, onStopSignal } from "../protocol/system.ts";
import { findPieces } from "./_find_pieces.ts";
import { LIMIT_FLAGS } from "./_notebook_limits.ts";
import { reportOnPieces, wrongCount } from "./_report_pieces.ts";
import type { ReportKind } from "./_report_run.ts";
import { ROOT } from "./_root.ts";
import { startProgress } from "./_task_progress.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

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
    "at-once": "value",
    "continue": "switch",
    ...LIMIT_FLAGS,
    help: "switch",
  });
  const kind = task.kind(flags, rest);
  const refuse = (wrong: string): number => {
    complain(wrongCall(wrong, task.usage));
    return EXIT.usage;
  };
  const early = problem ??
    (rest.includes("") ? "A folder's name is empty." : undefined);
  if (typeof kind === "string") return refuse(early ?? kind);
  const wrong = early ?? wrongCount(flags["at-once"]);
  if (wrong !== undefined) return refuse(wrong);
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
  const progress = startProgress();
  const call = { kind, flags, signal: stop.signal, progress };
  try {
    for (const group of groups) {
      const code = await reportOnPieces(group, call, task.hasIndex === true);
      worst = Math.max(worst, code);
      if (stop.signal.aborted && worst === EXIT.stopped) return worst;
    }
  } finally {
    progress.end();
    for (const off of offs) off();
  }
  return worst;
}
