/**
 * The notebook kernel beside the kernel that comes with the runtime, by turns.
 *
 * @module
 */
import { command } from "../kernel/_session.ts";
import { RUNTIME_KERNEL } from "../jupyter/_runtime_kernel.ts";
import type { RunningKernel } from "sagbook/protocol/running_kernel.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";
import type {
  BenchReport,
  BenchRow,
  GrowthPoint,
} from "sagbook/tasks/_benchmark.ts";
import { benchProgram, type BenchSize } from "./_program.ts";
import { Times } from "./_kernel_times.ts";
import { marked, memoryOf } from "./_whole_program.ts";

const KERNELS = {
  checked: command(true),
  unchecked: command(false),
  peer: RUNTIME_KERNEL,
} as const;
type Name = keyof typeof KERNELS;
const NAMES = Object.keys(KERNELS) as Name[];

/** How often each thing is done, and with how much. */
interface Plan {
  readonly starts: number;
  readonly cells: number;
  readonly repeats: number;
  /** Lines printed, rising. */
  readonly lines: readonly number[];
  /** How long a kernel may take to stop a cell, in ms. */
  readonly patience: number;
}

const PLANS: Readonly<Record<BenchSize, Plan>> = {
  full: {
    starts: 11,
    cells: 20,
    repeats: 5,
    lines: [200, 2_000, 20_000],
    patience: 3_000,
  },
  tiny: { starts: 1, cells: 1, repeats: 1, lines: [20], patience: 300 },
};

async function timed(act: () => Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await act();
  return performance.now() - begun;
}

function start(name: Name, cwd: string, mark: string): Promise<RunningKernel> {
  const env = { ...marked(mark), NO_COLOR: "1" };
  return startKernel(KERNELS[name], { cwd, env });
}

/** Fresh processes: to the answer who it is, and to the first value. */
async function cold(times: Times, cwd: string, runs: number): Promise<void> {
  for (let run = 0; run < runs; run++) {
    for (const name of NAMES) {
      const begun = performance.now();
      const kernel = await start(name, cwd, "cold");
      times.add("answer", name, performance.now() - begun);
      await kernel.execute("1 + 1");
      times.add("first", name, performance.now() - begun);
      await kernel.shutdown();
    }
  }
}

/** Prints lines: how long, and how many were there at the cell's end. */
async function print(
  kernel: RunningKernel,
  lines: number,
): Promise<[number, number]> {
  let text = "";
  const took = await timed(() =>
    kernel.execute(
      `for (let i = 0; i < ${lines}; i++) console.log("line " + i)`,
      {
        onOutput: (output, { late }) => {
          if (output.output_type === "stream" && !late) text += output.text;
        },
      },
    )
  );
  await new Promise((done) => setTimeout(done, 300));
  return [text.split("\n").length - 1, took];
}

/** Time from the interrupt to the cell's end; undefined if it goes on. */
async function stop(
  kernel: RunningKernel,
  patience: number,
  code = "while (true) {}",
): Promise<number | undefined> {
  const running = kernel.execute(code).then(() => true, () => false);
  await new Promise((done) => setTimeout(done, 150));
  const begun = performance.now();
  const stopped = Promise.all([kernel.interrupt().catch(() => {}), running]);
  const waiting = Promise.withResolvers<undefined>();
  const timer = setTimeout(() => waiting.resolve(undefined), patience);
  const first = await Promise.race([stopped, waiting.promise]);
  clearTimeout(timer);
  return first?.[1] ? performance.now() - begun : undefined;
}

/** A loop that runs after the cell has awaited something, in fresh kernels. */
async function stopLate(
  times: Times,
  cwd: string,
  patience: number,
): Promise<void> {
  for (const name of ["unchecked", "peer"] as const) {
    const kernel = await start(name, cwd, "late");
    await kernel.execute("1 + 1");
    const took = await stop(kernel, patience, "await 0; while (true) {}");
    if (took !== undefined) times.add("stop late", name, took);
    await kernel.kill();
  }
}

/** Long-lived kernels: cells, lines, stops, and their memory before and after. */
async function warm(times: Times, cwd: string, plan: Plan) {
  const kernels = new Map<Name, RunningKernel>();
  for (const name of NAMES) {
    const kernel = await start(name, cwd, `warm ${name}`);
    kernels.set(name, kernel);
    for (let i = 0; i < 3; i++) await kernel.execute(`${i} + 1`);
    times.add("memory", name, await memoryOf(`warm ${name}`));
  }
  for (let run = 0; run < plan.cells; run++) {
    for (const [name, kernel] of kernels) {
      times.add("cell", name, await timed(() => kernel.execute(`${run} + 1`)));
    }
  }
  const there = new Map<Name, number>();
  // What prints for the first time is slower, and is not counted.
  for (const kernel of kernels.values()) await print(kernel, plan.lines[0]);
  for (let run = 0; run < plan.repeats; run++) {
    for (const [name, kernel] of kernels) {
      for (const lines of plan.lines) {
        const [count, took] = await print(kernel, lines);
        times.add(`lines ${lines}`, name, took);
        there.set(name, Math.min(there.get(name) ?? Infinity, count));
        if (lines === plan.lines.at(-1)) there.set(name, count);
      }
      const took = await stop(kernel, plan.patience);
      if (took !== undefined) times.add("stop", name, took);
    }
  }
  for (const [name, kernel] of kernels) {
    times.add("memory after", name, await memoryOf(`warm ${name}`));
    await kernel.shutdown();
  }
  return there;
}

async function run(size: BenchSize): Promise<BenchReport> {
  const plan = PLANS[size];
  const cwd = await Deno.makeTempDir({ prefix: "kernels-" });
  const times = new Times();
  let there: Map<Name, number>;
  try {
    await cold(times, cwd, plan.starts);
    console.error("kernels: started");
    there = await warm(times, cwd, plan);
    console.error("kernels: warm");
    await stopLate(times, cwd, plan.patience);
  } finally {
    await Deno.remove(cwd, { recursive: true });
  }
  const peer = { name: "Deno's own kernel", version: Deno.version.deno };
  const row = (
    what: string,
    key: string,
    name: Name,
    unit?: "MB",
  ): BenchRow => ({
    what: `${what}${name === "checked" ? ", types checked" : ""}`,
    ours: times.middle(key, name),
    peer: {
      ...peer,
      ...(times.has(key, "peer")
        ? { value: times.middle(key, "peer") }
        : { fails: `never (waited ${plan.patience / 1000} s)` }),
    },
    ...(unit === undefined ? {} : { unit }),
  });
  const both = (what: string, key: string) => [
    row(what, key, "unchecked"),
    row(what, key, "checked"),
  ];
  const growth = plan.lines.map((n): GrowthPoint => ({
    n,
    ours: times.middle(`lines ${n}`, "unchecked"),
    peer: times.middle(`lines ${n}`, "peer"),
  }));
  const most = plan.lines[plan.lines.length - 1];
  return {
    title: "Kernel",
    about:
      "Both kernels by the same client, by turns. The peer does not check types. On Stop ours gives an await 50 ms to end before it ends the code that runs. The peer answers before all that a cell prints has come; what was there at the cell's end stands below. Memory is that of all its processes, shared pages once for each.",
    rows: [
      row("Kernel start to its first answer", "answer", "unchecked"),
      ...both("Kernel start to the first value", "first"),
      ...both("A trivial cell", "cell"),
      {
        ...row("20,000 printed lines", `lines ${most}`, "unchecked"),
        grows: "lines",
        growth,
        memory: {
          ours: times.middle("memory after", "unchecked"),
          peer: times.middle("memory after", "peer"),
        },
      },
      row("Stop of a busy loop", "stop", "unchecked"),
      row("Stop of a busy loop after an await", "stop late", "unchecked"),
      ...both("Memory after three cells", "memory").map((one) => ({
        ...one,
        unit: "MB" as const,
      })),
    ],
    details: `Of ${
      most.toLocaleString("en")
    } printed lines there were at the cell's end: ${
      there.get("unchecked")
    } with ours, ${there.get("checked")} with types checked, ${
      there.get("peer")
    } with the runtime's own, whose other lines came under the next cell or later.`,
  };
}

if (import.meta.main) await benchProgram({ run });
