/**
 * Does the same work of several sizes by ours and by what one would use
 * instead, by turns, each in a process of its own.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { BenchRow, GrowthPoint } from "sagbook/tasks/_benchmark.ts";
import type { Worked } from "./_program.ts";

/** What one would use instead, as a command that prints {@link Worked}. */
export interface PeerProgram {
  /** Its name. */
  readonly name: string;
  /** What has to be installed, in words. */
  readonly needs: string;
  /** The command for one size and number of runs; ours if left out. */
  readonly command?: (n: number, runs: number) => readonly string[];
  /** Variables of its environment. */
  readonly env?: Readonly<Record<string, string>>;
}

/** Work of several sizes. */
export interface SideBySide {
  /** `import.meta.url` of the program that knows our work. */
  readonly program: string;
  /** What is done at the largest size, for the table. */
  readonly what: string;
  /** What grows. */
  readonly grows: string;
  /** Sizes in rising order. */
  readonly sizes: readonly number[];
  /** Runs in one process, by size. */
  readonly runs: (n: number) => number;
  /** How many processes of each take turns. */
  readonly rounds: number;
  /** The peer, where there is one. */
  readonly peer?: PeerProgram;
  /** How far answers may differ, relative to 1 or the larger of both. */
  readonly agree?: number;
}

/** What came of it. */
export interface Sides {
  /** The line of the table, without a limit. */
  readonly row: BenchRow;
  /** The largest relative difference of the answers, where they were held together. */
  readonly apart?: number;
}

/** The middle of some values. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? sorted[half]
    : (sorted[half - 1] + sorted[half]) / 2;
}

/** Runs a command that works and tells; undefined if it is not installed. */
async function worked(
  command: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<Worked | undefined> {
  const [program, ...args] = command;
  try {
    const { success, stdout, stderr } = await new Deno.Command(program, {
      args,
      env: { NO_COLOR: "1", ...env },
      stdin: "null",
      stdout: "piped",
      stderr: "piped",
    }).output();
    const last = new TextDecoder().decode(stdout).trim().split("\n").at(-1);
    if (success) {
      const told = JSON.parse(last ?? "");
      return told.missing === undefined ? told : undefined;
    }
    throw new Error(
      `${command.slice(0, 3).join(" ")} failed: ${
        new TextDecoder().decode(stderr).trim().slice(-800)
      }`,
    );
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
}

function own(program: string, side: string, n: number, runs: number) {
  const path = fileURLToPath(program);
  return [Deno.execPath(), "run", "-A", path, side, String(n), String(runs)];
}

/** The largest relative difference of two answers. */
export function farthestApart(
  ours: readonly number[],
  theirs: readonly number[],
): number {
  if (ours.length !== theirs.length) return Infinity;
  return ours.reduce((worst, value, k) => {
    const size = Math.max(1, Math.abs(value), Math.abs(theirs[k]));
    return Math.max(worst, Math.abs(value - theirs[k]) / size);
  }, 0);
}

/** Times and memory of the processes of one side. */
class Side {
  readonly times: number[] = [];
  peak = 0;
  last: Worked | undefined;

  take(one: Worked | undefined): void {
    if (one === undefined) return;
    this.times.push(...one.times);
    this.peak = Math.max(this.peak, one.peak);
    this.last = one;
  }
}

/**
 * Measures all sizes; the last is the row's own.
 *
 * @throws {Error} If a side fails, or both answers differ by more than `agree`.
 */
export async function sideBySide(plan: SideBySide): Promise<Sides> {
  const { program, what, grows, sizes, rounds, peer, agree } = plan;
  const growth: GrowthPoint[] = [];
  let apart: number | undefined;
  let version: string | undefined;
  let isMissing = peer === undefined;
  for (const n of sizes) {
    const [ours, theirs] = [new Side(), new Side()];
    const runs = plan.runs(n);
    for (let round = 0; round < rounds; round++) {
      ours.take(await worked(own(program, "--ours", n, runs)));
      if (isMissing) continue;
      const told = await worked(
        peer?.command?.(n, runs) ?? own(program, "--peer", n, runs),
        peer?.env,
      );
      isMissing = told === undefined;
      theirs.take(told);
    }
    console.error(`${what}: ${n} ${grows}`);
    version = theirs.last?.version ?? version;
    if (agree !== undefined && theirs.last !== undefined) {
      const far = farthestApart(ours.last!.answer, theirs.last.answer);
      if (!(far <= agree)) {
        throw new Error(
          `${what}: ${n} ${grows} give other answers than ${peer?.name} by ${far}: ${ours.last?.answer} and ${theirs.last.answer}`,
        );
      }
      apart = Math.max(apart ?? 0, far);
    }
    growth.push({
      n,
      ours: median(ours.times),
      ourMemory: ours.peak,
      ...(theirs.last === undefined
        ? {}
        : { peer: median(theirs.times), peerMemory: theirs.peak }),
    });
  }
  const last = growth[growth.length - 1];
  const row: BenchRow = {
    what,
    ours: last.ours,
    grows,
    growth,
    memory: { ours: last.ourMemory, peer: last.peerMemory },
    ...(peer === undefined ? {} : {
      peer: {
        name: peer.name,
        ...(version === undefined ? {} : { version }),
        ...(last.peer === undefined
          ? { missing: peer.needs }
          : { value: last.peer }),
      },
    }),
  };
  return { row, ...(apart === undefined ? {} : { apart }) };
}
