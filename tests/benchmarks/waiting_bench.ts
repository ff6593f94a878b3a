/**
 * How long one waits at the bench: from a command to its first words, from a
 * typed reading to its answer with the disk included, and for the library to
 * load.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { BenchReport, BenchRow } from "sagbook/tasks/_benchmark.ts";
import { Recording } from "../tasks/_record_folder.ts";
import { copyPiece } from "../tasks/_run_task.ts";
import { benchProgram, type BenchSize } from "./_program.ts";
import { median } from "./_side_by_side.ts";
import { wholeProgram, type WholeRun } from "./_whole_program.ts";

const file = (path: string): string =>
  fileURLToPath(new URL(`../../${path}`, import.meta.url));
const program = (path: string, ...args: string[]): Promise<WholeRun> =>
  wholeProgram([Deno.execPath(), "run", "-A", file(path), ...args]);

/** Extra milliseconds that the library may take to load, warm. */
const IMPORT_LIMIT = 150;
const PLACES = ["--zones", "centre", "--session", "bench"];

async function timed(act: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await act();
  return performance.now() - start;
}

async function firstPrompt(folder: string): Promise<number> {
  const recording = new Recording(folder, PLACES);
  const ms = await timed(() => recording.until(/: ?\n$/));
  recording.kill();
  await recording.end();
  return ms;
}

/** Readings typed, and readings taken back. */
async function echoes(folder: string, runs: number) {
  const recording = new Recording(folder, PLACES);
  await recording.until(/: ?\n$/);
  const answer = (typed: string, said: string) =>
    timed(async () => {
      const from = recording.out.length;
      await recording.type(typed);
      await recording.when((out) => out.indexOf(said, from) > 0, "an answer");
    });
  const [readings, back]: number[][] = [[], []];
  for (let k = 0; k < runs; k++) readings.push(await answer("0.417", " mm: R"));
  for (let k = 0; k < runs; k++) back.push(await answer("-", "Taken back"));
  recording.kill();
  await recording.end();
  return { reading: median(readings), back: median(back) };
}

async function run(size: BenchSize): Promise<BenchReport> {
  const isTiny = size === "tiny";
  const runs = isTiny ? 1 : 20;
  const folder = await copyPiece("metric-250");
  const own = await copyPiece("metric-250");
  const [nothing, library, radius]: WholeRun[][] = [[], [], []];
  const prompts: number[] = [];
  try {
    // The first of each warms the caches and does not count.
    for (let k = 0; k <= runs; k++) {
      nothing.push(await program("tests/benchmarks/_nothing.ts"));
      library.push(await program("lib/mod.ts"));
      radius.push(
        await program("lib/tasks/radius.ts", "0.417", "--folder", folder),
      );
      prompts.push(await firstPrompt(folder));
    }
    console.error("waiting: programs started");
    const { reading, back } = await echoes(own, isTiny ? 1 : 40);
    const middle = (all: WholeRun[]) =>
      median(all.slice(1).map(({ ms }) => ms));
    const most = (all: WholeRun[]) => Math.max(...all.map(({ peak }) => peak));
    const empty = {
      name: "an empty program",
      version: `Deno ${Deno.version.deno}`,
      value: middle(nothing),
    };
    const started = (what: string, all: WholeRun[]): BenchRow => ({
      what,
      ours: middle(all),
      peer: empty,
    });
    return {
      title: "Waiting at the bench",
      about:
        `Whole programs, ${runs} runs by turns after one that does not count, packages and compiled code in the cache. Loading the library is what \`lib/mod.ts\` adds to an empty program.`,
      rows: [
        {
          what: "Library loaded, beyond an empty program",
          ours: Math.max(0, middle(library) - middle(nothing)),
          limit: { of: "ours", atMost: IMPORT_LIMIT },
          memory: { ours: most(library) },
        },
        started("task radius, command to answer", radius),
        {
          what: "task record, command to first prompt",
          ours: median(prompts.slice(1)),
          peer: empty,
        },
        { what: "task record, a typed reading to its answer", ours: reading },
        { what: "task record, a reading taken back", ours: back },
      ],
    };
  } finally {
    await Deno.remove(folder, { recursive: true });
    await Deno.remove(own, { recursive: true });
  }
}

if (import.meta.main) await benchProgram({ run });
