/**
 * `deno task bench [NAME …]`: speed and memory beside what one would use
 * instead, kept in tests/benchmarks/RESULTS.md.
 *
 * @module
 */
import { isAbsolute, join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { readBenchReport } from "./_benchmark.ts";
import {
  benchEnd,
  type BenchRecord,
  benchResults,
} from "./_benchmark_results.ts";
import { processorsBusy } from "./_processors_busy.ts";
import { ROOT } from "./_root.ts";
import { EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";
import { runTool, type ToolCall } from "./_tool.ts";

const FOLDER = join(ROOT, "tests", "benchmarks");
/** Needs the network, and minutes: run when it is named. */
const ONLY_IF_NAMED = ["cold_start"];
/** What one asks for first; the others follow by name. */
const FIRST = [
  "notebook_to_html",
  "kernel",
  "mixed_model",
  "monte_carlo",
  "readings",
  "profile",
  "contact",
  "waiting",
  "cold_start",
];
/** How a run ends whose peers are not all installed. */
const ALONE = 3;

const USAGE = `deno task bench [NAME ...] [--out FOLDER] [--tiny]

Measures speed and memory beside what one would use instead, by turns in one
run, and writes RESULTS.md, one table with its details, and RESULTS.json, from
which it is made. All parts take about ten minutes of a quiet machine; a NAME,
or a piece of one, repeats that part alone and keeps the others as they were.
Not run unless named: ${ONLY_IF_NAMED.join(", ")} (it fetches packages anew).

  --out FOLDER  where to write; tests/benchmarks unless told
  --tiny        the smallest sizes, to try the programs; needs --out
  --help        this text

Beside ours it runs, where they are installed: jupyter nbconvert, Rscript with
lme4, python3 with NumPy and SciPy, Chromium.

Exit codes: 0 all measured, 1 a part failed or a stated limit was missed,
2 wrong call, 3 all measured, but something to compare with is not installed
(its row says so).`;

/** Names of the programs, in the order of the table. */
function programNames(): string[] {
  const place = (name: string): number =>
    FIRST.includes(name) ? FIRST.indexOf(name) : FIRST.length;
  return [...Deno.readDirSync(FOLDER)]
    .map(({ name }) => /^([^_].*)_bench\.ts$/.exec(name)?.[1])
    .filter((name) => name !== undefined)
    .sort()
    .sort((a, b) => place(a) - place(b));
}

function machine(): string {
  const memory = Math.round(Deno.systemMemoryInfo().total / 2 ** 30);
  const { os, arch } = Deno.build;
  return `${os} ${arch}, Deno ${Deno.version.deno}, ${memory} GiB, ${navigator.hardwareConcurrency} processors`;
}

async function measure(name: string, isTiny: boolean): Promise<BenchRecord> {
  const busy = await processorsBusy();
  const date = new Date().toISOString().slice(0, 16).replace("T", " ");
  const start = performance.now();
  const { success, stdout } = await new Deno.Command(Deno.execPath(), {
    args: [
      "run",
      "-A",
      join(FOLDER, `${name}_bench.ts`),
      ...(isTiny ? ["--tiny"] : []),
    ],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "inherit",
  }).output();
  const seconds = (performance.now() - start) / 1000;
  const about = {
    name,
    run: {
      date,
      machine: machine(),
      seconds,
      ...(busy === undefined ? {} : { busy: Math.round(busy * 10) / 10 }),
    },
  };
  try {
    const report = readBenchReport(new TextDecoder().decode(stdout));
    return { ...about, report };
  } catch (error) {
    const why = success ? plainWords(error) : "the program ended in an error";
    return { ...about, failed: why };
  }
}

async function keptRecords(path: string): Promise<BenchRecord[]> {
  try {
    return JSON.parse(await Deno.readTextFile(path));
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return [];
    throw error;
  }
}

async function bench({ flags, chosen, isPart }: ToolCall): Promise<number> {
  if (flags.tiny && flags.out === undefined) {
    complain(
      wrongCall("--tiny needs --out, since its numbers mean nothing.", USAGE),
    );
    return EXIT.usage;
  }
  const out = typeof flags.out !== "string"
    ? FOLDER
    : isAbsolute(flags.out)
    ? flags.out
    : join(Deno.cwd(), flags.out);
  await Deno.mkdir(out, { recursive: true });
  const data = join(out, "RESULTS.json");
  const known = programNames();
  const records = new Map(
    (await keptRecords(data)).map((record) => [record.name, record]),
  );
  const programs = chosen.filter((name) =>
    isPart || !ONLY_IF_NAMED.includes(name)
  );
  for (const name of programs) {
    const record = await measure(name, flags.tiny === true);
    const seconds = record.run.seconds.toFixed(0);
    say(`${name}: ${record.failed ?? "measured"} (${seconds} s)`);
    records.set(name, record);
    const kept = known.flatMap((one) => records.get(one) ?? []);
    // After each: what was measured is not lost if a later part is stopped.
    await writeAtomically(data, JSON.stringify(kept, undefined, 2) + "\n");
    await writeAtomically(join(out, "RESULTS.md"), benchResults(kept));
  }
  const { failed, missed, alone } = benchEnd(
    programs.map((name) => records.get(name)!),
  );
  for (const name of failed) complain(`${name} failed.`);
  const over = flags.tiny ? [] : missed;
  for (const what of over) complain(`Over its stated limit: ${what}.`);
  for (const what of alone) complain(`Nothing to compare with: ${what}.`);
  say(`Results: ${join(out, "RESULTS.md")}`);
  if (failed.length + over.length > 0) return EXIT.failed;
  return alone.length > 0 ? ALONE : EXIT.ok;
}

if (import.meta.main) {
  const code = await runTool({
    usage: USAGE,
    flags: { out: "value", tiny: "switch" },
    names: { what: "benchmark", known: programNames, part: true },
    run: bench,
  }, Deno.args);
  Deno.exit(code);
}
