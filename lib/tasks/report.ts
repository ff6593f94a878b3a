/**
 * `deno task report [FOLDER …]`: readings in, one page out, the answer first.
 *
 * @module
 */
import { join, relative } from "node:path";
import { terminalProgress } from "../notebook/terminal_progress.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { reportOn, ROOT } from "./_report_run.ts";
import { EXIT, plainWords, readFlags } from "./_task_words.ts";

const USAGE = `deno task report [FOLDER ...] [--kernel NAME] [--notebook FILE]

Reads each FOLDER (piece.json, bench.json, readings), runs the session notebook
on it and writes FOLDER/report/: session.html (the page), session.ipynb (the
notebook as run) and results.json. A folder of such folders is done one by one.
Without a folder it reports on the invented pieces in data/.

  --kernel NAME    the Jupyter kernel to run on
  --notebook FILE  a notebook of your own in place of the session notebook; it
                   needs a cell tagged "parameters" that declares "folder"
  --help           this text

Exit codes: 0 all reports made, 1 a folder or a cell failed, 2 wrong call,
3 the kernel ended, 4 a cell took too long, 130 stopped.`;

const say = (text: string): void => console.log(text);

async function isPiece(folder: string): Promise<boolean> {
  try {
    return (await Deno.stat(join(folder, "piece.json"))).isFile;
  } catch {
    return false;
  }
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
  const { page, answer, run } = await reportOn(folder, {
    signal,
    ...(terminal ? { onProgress: listen } : {}),
    ...(typeof flags.kernel === "string" ? { kernel: flags.kernel } : {}),
    ...(typeof flags.notebook === "string" ? { notebook: flags.notebook } : {}),
  });
  for (const problem of run.problems) console.error(problem.message);
  say(`${name}`);
  if (answer.length > 0) say(answer.join(" "));
  say(`${run.exitCode === 0 ? "Page" : "Incomplete page"}: ${page}\n`);
  return run.exitCode;
}

async function main(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    kernel: "value",
    notebook: "value",
    help: "switch",
  });
  if (problem !== undefined) {
    console.error(`${problem}\n\n${USAGE}`);
    return EXIT.usage;
  }
  if (flags.help) {
    say(USAGE);
    return EXIT.ok;
  }
  const given = rest.length > 0 ? rest : [join(ROOT, "data")];
  const folders = (await Promise.all(given.map(piecesIn))).flat();
  const stop = new AbortController();
  const onInterrupt = (): void => stop.abort();
  Deno.addSignalListener("SIGINT", onInterrupt);
  let worst: number = EXIT.ok;
  try {
    for (const folder of folders) {
      if (stop.signal.aborted) return 130;
      const code = await reportOnce(folder, flags, stop.signal);
      worst = Math.max(worst, code);
    }
  } finally {
    Deno.removeSignalListener("SIGINT", onInterrupt);
  }
  return worst;
}

if (import.meta.main) {
  try {
    Deno.exit(await main(Deno.args));
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
