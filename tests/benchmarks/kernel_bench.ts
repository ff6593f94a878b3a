/**
 * The notebook kernel beside the kernel that comes with the runtime, by turns
 * in one run: `deno run -A tests/benchmarks/kernel_bench.ts`.
 *
 * @module
 */
import { command } from "../kernel/_session.ts";
import { RUNTIME_KERNEL } from "../jupyter/_runtime_kernel.ts";
import type { RunningKernel } from "sagbook/protocol/running_kernel.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";

const RUNS = 20;
const LINES = 20_000;

const KERNELS: Readonly<Record<string, readonly string[]>> = {
  "checked": command(true),
  "unchecked": command(false),
  "runtime's own": RUNTIME_KERNEL,
};

type Table = Map<string, Map<string, string>>;

function note(table: Table, row: string, kernel: string, text: string): void {
  const cells = table.get(row) ?? new Map();
  cells.set(kernel, text);
  table.set(row, cells);
}

const at = (values: readonly number[], part: number): number =>
  values.toSorted((a, b) => a - b)[
    Math.min(values.length - 1, Math.floor(values.length * part))
  ];

/** Median and 95th percentile. */
const spread = (values: readonly number[]): string =>
  `${at(values, 0.5).toFixed(1)} / ${at(values, 0.95).toFixed(1)}`;

async function timed(act: () => Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await act();
  return performance.now() - begun;
}

function start(name: string, cwd: string, mark: string) {
  return startKernel(KERNELS[name], {
    cwd,
    env: { SESSION_MARK: mark, NO_COLOR: "1" },
  });
}

/** Time to the answer who it is, and to the first value, of fresh processes. */
async function cold(table: Table, cwd: string): Promise<void> {
  const info: Record<string, number[]> = {};
  const first: Record<string, number[]> = {};
  for (let run = 0; run < RUNS; run++) {
    for (const name of Object.keys(KERNELS)) {
      const begun = performance.now();
      const kernel = await start(name, cwd, "cold");
      (info[name] ??= []).push(performance.now() - begun);
      await kernel.execute("1 + 1");
      (first[name] ??= []).push(performance.now() - begun);
      await kernel.shutdown();
    }
  }
  for (const name of Object.keys(KERNELS)) {
    note(table, "start to kernel_info_reply, ms", name, spread(info[name]));
    note(table, "start to first value, ms", name, spread(first[name]));
  }
}

/** Lines that came before the cell's end, and how long that took. */
async function printed(kernel: RunningKernel): Promise<[number, number]> {
  let text = "";
  let late = 0;
  const took = await timed(() =>
    kernel.execute(
      `for (let i = 0; i < ${LINES}; i++) console.log("line " + i)`,
      {
        onOutput: (output, origin) => {
          if (output.output_type !== "stream") return;
          if (origin.late) late++;
          else text += output.text;
        },
      },
    )
  );
  await new Promise((done) => setTimeout(done, 300));
  return [text.split("\n").length - 1, took];
}

async function interrupt(kernel: RunningKernel): Promise<number> {
  const running = kernel.execute("while (true) {}");
  await new Promise((done) => setTimeout(done, 150));
  const begun = performance.now();
  await kernel.interrupt();
  await running;
  return performance.now() - begun;
}

/** Resident memory of a kernel with all its processes, in MB. */
async function memory(mark: string): Promise<number> {
  let sum = 0;
  for await (const { name } of Deno.readDir("/proc")) {
    try {
      const environ = await Deno.readTextFile(`/proc/${name}/environ`);
      if (!environ.includes(`SESSION_MARK=${mark}`)) continue;
      const status = await Deno.readTextFile(`/proc/${name}/status`);
      sum += Number(/VmRSS:\s*(\d+)/.exec(status)?.[1] ?? 0);
    } catch {
      // Not a process, or not ours.
    }
  }
  return sum / 1024;
}

async function warm(table: Table, cwd: string): Promise<void> {
  const kernels: Record<string, RunningKernel> = {};
  for (const name of Object.keys(KERNELS)) {
    kernels[name] = await start(name, cwd, `warm-${name}`);
    for (let i = 0; i < 3; i++) await kernels[name].execute(`${i} + 1`);
  }
  const trivial: Record<string, number[]> = {};
  const lines: Record<string, [number, number][]> = {};
  const stops: Record<string, number[]> = {};
  for (let run = 0; run < RUNS; run++) {
    for (const [name, kernel] of Object.entries(kernels)) {
      (trivial[name] ??= []).push(
        await timed(() => kernel.execute(`${run} + 1`)),
      );
    }
  }
  for (let run = 0; run < RUNS / 4; run++) {
    for (const [name, kernel] of Object.entries(kernels)) {
      (lines[name] ??= []).push(await printed(kernel));
      (stops[name] ??= []).push(await interrupt(kernel));
    }
  }
  for (const [name, kernel] of Object.entries(kernels)) {
    note(table, "trivial cell, ms", name, spread(trivial[name]));
    note(
      table,
      `${LINES} printed lines, ms`,
      name,
      spread(lines[name].map(([, took]) => took)),
    );
    note(
      table,
      `of ${LINES} lines, there at the cell's end`,
      name,
      String(Math.min(...lines[name].map(([count]) => count))),
    );
    note(table, "stop of a busy loop, ms", name, spread(stops[name]));
    const mb = await memory(`warm-${name}`);
    note(table, "memory of all processes, MB", name, mb.toFixed(0));
    await kernel.shutdown();
  }
}

/** Measures all and prints a table: median / 95th percentile. */
async function compare(): Promise<void> {
  const cwd = await Deno.makeTempDir();
  const table: Table = new Map();
  await cold(table, cwd);
  await warm(table, cwd);
  const names = Object.keys(KERNELS);
  const width = Math.max(...[...table.keys()].map((row) => row.length));
  console.log(
    `median / 95th percentile of ${RUNS} runs by turns (printing and stopping: ${
      RUNS / 4
    })`,
  );
  console.log(
    ["".padEnd(width), ...names.map((n) => n.padStart(16))].join(" "),
  );
  for (const [row, cells] of table) {
    console.log(
      [
        row.padEnd(width),
        ...names.map((n) => (cells.get(n) ?? "").padStart(16)),
      ].join(" "),
    );
  }
  await Deno.remove(cwd, { recursive: true });
}

if (import.meta.main) await compare();
