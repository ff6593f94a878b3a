/**
 * Times 10⁶ draws of the radius equation with the shortest interval, ours and
 * NumPy's in turns, and checks that both find the same.
 *
 *     deno run -A tests/benchmarks/monte_carlo_against_numpy.ts
 *
 * Needs Debian's python3-numpy.
 */
import { Random } from "sagbook/numerics/random.ts";
import { monteCarlo } from "sagbook/uncertainty/monte_carlo.ts";
import { radiusModel } from "sagbook/uncertainty/radius_model.ts";
import { RADIUS_CASE } from "./_radius_case.ts";

const RUNS = 20;
const DRAWS = 1_000_000;

const { inputs, curvature } = radiusModel(RADIUS_CASE);
const python = new Deno.Command("python3", {
  args: [
    new URL("./_numpy_radius.py", import.meta.url).pathname,
    JSON.stringify(inputs),
    "1",
  ],
  env: { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" },
  stdin: "piped",
  stdout: "piped",
}).spawn();
const writer = python.stdin.getWriter();
const lines = python.stdout.pipeThrough(new TextDecoderStream()).getReader();

async function numpyRun(): Promise<number[]> {
  await writer.write(new TextEncoder().encode("go\n"));
  let text = "";
  while (!text.endsWith("\n")) {
    const { value, done } = await lines.read();
    if (done) throw new Error("python3 with numpy gave no answer");
    text += value;
  }
  return JSON.parse(text);
}

function ourRun(seed: number): number[] {
  const start = performance.now();
  const drawn = monteCarlo((x) => 1 / curvature(x), inputs, {
    random: new Random(seed),
    draws: DRAWS,
  });
  const { mean, standardUncertainty, shortest } = drawn;
  const time = performance.now() - start;
  return [time, mean, standardUncertainty, shortest.lower, shortest.upper];
}

const ours: number[][] = [];
const theirs: number[][] = [];
ourRun(0);
await numpyRun();
for (let run = 1; run <= RUNS; run++) {
  ours.push(ourRun(run));
  theirs.push(await numpyRun());
}
await writer.close();
await python.status;

const sorted = (runs: number[][]) =>
  runs.map(([time]) => time).toSorted((a, b) => a - b);
const at = (runs: number[][], share: number) =>
  sorted(runs)[Math.floor(share * (RUNS - 1))].toFixed(0);
const mean = (runs: number[][], k: number) =>
  runs.reduce((sum, run) => sum + run[k], 0) / RUNS;
for (const [name, runs] of [["ours", ours], ["numpy", theirs]] as const) {
  console.log(
    `${name.padEnd(6)} median ${at(runs, 0.5)} ms, 95 % ${
      at(runs, 0.95)
    } ms; ` +
      `mean ${mean(runs, 1).toFixed(2)}, u ${mean(runs, 2).toFixed(3)}, ` +
      `shortest ${mean(runs, 3).toFixed(2)} to ${mean(runs, 4).toFixed(2)}`,
  );
}
const ratio = Number(at(ours, 0.5)) / Number(at(theirs, 0.5));
const peak = /VmHWM:\s+(\d+)/.exec(
  await Deno.readTextFile("/proc/self/status").catch(() => ""),
)?.[1];
console.log(
  `ratio ${ratio.toFixed(2)}; peak memory of this process ${
    peak === undefined ? "unknown" : `${Math.round(Number(peak) / 1024)} MB`
  }`,
);
