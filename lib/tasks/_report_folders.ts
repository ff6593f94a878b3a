/**
 * Reports on one folder after another, with progress and plain words.
 *
 * @module
 */
import { join, relative } from "node:path";
import { terminalProgress } from "../notebook/terminal_progress.ts";
import { onInterruptSignal, onStopSignal } from "../protocol/system.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { LIMIT_FLAGS, limitsFromFlags } from "./_notebook_limits.ts";
import { type ReportKind, reportOn, ROOT } from "./_report_run.ts";
import { EXIT, plainWords, readFlags } from "./_task_words.ts";

/** One task that reports on folders. */
export interface ReportTask {
  /** Text of `--help`. */
  readonly usage: string;
  /** Flags with a value of its own, beside those of every report. */
  readonly values?: readonly string[];
  /** Folders when none is given, from the project's root. */
  readonly defaults: readonly string[];
  /** Makes the report's kind from flags and folders; a text is a wrong call. */
  readonly kind: (
    flags: Readonly<Record<string, string | true>>,
    folders: readonly string[],
  ) => ReportKind | string;
}

const say = (text: string): void => console.log(text);

async function isPiece(folder: string): Promise<boolean> {
  try {
    return (await Deno.stat(join(folder, "piece.json"))).isFile;
  } catch {
    return false;
  }
}

/** What is said of a report that was stopped. */
function stopped(name: string): number {
  console.error(
    `${name}: stopped; nothing was written, and an older report stays as it was.`,
  );
  return 130;
}

/** The pieces below a folder: itself, or the folders in it that are one. */
async function piecesIn(folder: string): Promise<string[]> {
  if (await isPiece(folder)) return [folder];
  const found: string[] = [];
  try {
    for await (const entry of Deno.readDir(folder)) {
      const inside = join(folder, entry.name);
      if (entry.isDirectory && await isPiece(inside)) found.push(inside);
    }
  } catch {
    return [folder];
  }
  return found.length > 0 ? found.sort() : [folder];
}

async function reportOnce(
  folder: string,
  kind: ReportKind,
  flags: Readonly<Record<string, string | true>>,
  signal: AbortSignal,
): Promise<number> {
  const name = relative(Deno.cwd(), folder) || ".";
  try {
    // All that is wrong with the files is said here, before anything runs.
    await readPieceFolder(folder);
  } catch (error) {
    console.error(`${name}: no report, since the folder cannot be read.\n`);
    console.error(plainWords(error));
    return EXIT.failed;
  }
  const terminal = Deno.stderr.isTerminal();
  const encoder = new TextEncoder();
  const listen = terminalProgress(
    (text) => Deno.stderr.writeSync(encoder.encode(text)),
    terminal,
  );
  let made;
  try {
    made = await reportOn(folder, {
      kind,
      signal,
      ...(terminal ? { onProgress: listen } : {}),
      ...(typeof flags.kernel === "string" ? { kernel: flags.kernel } : {}),
      check: flags["no-check"] !== true,
      limits: limitsFromFlags(flags) ?? "unlimited",
      onUnchecked: (why) => console.error(why),
      ...(typeof flags.notebook === "string"
        ? { notebook: flags.notebook }
        : {}),
    });
  } catch (error) {
    // A signal reaches the kernel too: what fails then was stopped.
    if (signal.aborted) return stopped(name);
    throw error;
  }
  const { page, answer, run, written } = made;
  if (!written) return stopped(name);
  for (const problem of run.problems) console.error(problem.message);
  say(`${name}`);
  if (answer.length > 0) say(answer.join(" "));
  say(`${run.exitCode === 0 ? "Page" : "Incomplete page"}: ${page}\n`);
  return run.exitCode;
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
    console.error(plainWords(error));
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
  const wrong = problem ?? (typeof kind === "string" ? kind : undefined);
  if (wrong !== undefined || typeof kind === "string") {
    console.error(`${wrong}\n\n${task.usage}`);
    return EXIT.usage;
  }
  if (flags.help) {
    say(task.usage);
    return EXIT.ok;
  }
  const given = rest.length > 0
    ? rest
    : task.defaults.map((path) => join(ROOT, path));
  const folders = (await Promise.all(given.map(piecesIn))).flat();
  const stop = new AbortController();
  const onInterrupt = (): void => stop.abort();
  const offs = [onInterruptSignal(onInterrupt), onStopSignal(onInterrupt)];
  let worst: number = EXIT.ok;
  try {
    for (const folder of folders) {
      if (stop.signal.aborted) return 130;
      const code = await reportOnce(folder, kind, flags, stop.signal);
      worst = Math.max(worst, code);
    }
  } finally {
    for (const off of offs) off();
  }
  return worst;
}
