/**
 * A benchmark as a program: what it has measured is its last line, as JSON.
 *
 * Called with `--ours N RUNS` or `--peer N RUNS` it does that work alone, in a
 * process of its own, so that its peak memory is its own too.
 *
 * @module
 */
import type { BenchReport } from "sagbook/tasks/_benchmark.ts";

/** `tiny` serves the tests: every part runs, nothing is worth reading. */
export type BenchSize = "full" | "tiny";

/** Work that is timed: it returns numbers that the peer must find too. */
export type Work = () => readonly number[] | Promise<readonly number[]>;

/** What a process that did the work says of it. */
export interface Worked {
  /** Milliseconds of each run. */
  readonly times: readonly number[];
  /** Peak resident memory of the process, in MB; 0 where it is not known. */
  readonly peak: number;
  /** What was found. */
  readonly answer: readonly number[];
  /** Version of what was used. */
  readonly version?: string;
}

/** The parts of a benchmark program. */
export interface BenchProgram {
  /** Measures everything. */
  readonly run: (size: BenchSize) => Promise<BenchReport>;
  /** Prepares our work of one size. */
  readonly ours?: (n: number) => Work | Promise<Work>;
  /** Prepares the peer's, where it is a library of the same language. */
  readonly peer?: (n: number) => Work | Promise<Work>;
}

/** Peak resident memory of this process in MB; 0 where `/proc` is not. */
export async function peakMemory(): Promise<number> {
  try {
    const status = await Deno.readTextFile("/proc/self/status");
    return Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** Times work after one run that does not count. */
async function timed(work: Work, runs: number): Promise<Worked> {
  let answer = await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    answer = await work();
    times.push(performance.now() - start);
  }
  return { times, peak: await peakMemory(), answer };
}

/** Runs a benchmark program by its arguments and prints one line of JSON. */
export async function benchProgram(program: BenchProgram): Promise<void> {
  const [first, n, runs] = Deno.args;
  if (first === undefined || first === "--tiny") {
    const size = first === undefined ? "full" : "tiny";
    console.log(JSON.stringify(await program.run(size)));
    return;
  }
  const prepare = first === "--ours"
    ? program.ours
    : first === "--peer"
    ? program.peer
    : undefined;
  if (prepare === undefined || !(Number(n) > 0) || !(Number(runs) > 0)) {
    console.error(`There is no such work: ${Deno.args.join(" ")}.`);
    Deno.exit(2);
  }
  const work = await prepare(Number(n));
  console.log(JSON.stringify(await timed(work, Number(runs))));
}
