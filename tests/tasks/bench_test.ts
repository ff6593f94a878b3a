import { deepEqual, equal, match, ok, throws } from "node:assert/strict";
import {
  type BenchReport,
  type BenchRow,
  keepsLimit,
  ratioOf,
  readBenchReport,
} from "sagbook/tasks/_benchmark.ts";
import {
  benchEnd,
  type BenchRecord,
  benchResults,
} from "sagbook/tasks/_benchmark_results.ts";
import {
  amountText,
  factorText,
  growthText,
  lastExponent,
  memoryText,
  sizeText,
} from "sagbook/tasks/_benchmark_words.ts";
import { processorsBusy, spentOf } from "sagbook/tasks/_processors_busy.ts";
import { ROOT, runTask } from "./_run_task.ts";

const ROW: BenchRow = {
  what: "10⁵ readings",
  ours: 250,
  peer: { name: "other", version: "1.2", value: 1000 },
  grows: "readings",
  growth: [
    { n: 1000, ours: 2, peer: 10, ourMemory: 60, peerMemory: 90 },
    { n: 10_000, ours: 25, peer: 100, ourMemory: 70, peerMemory: 95 },
    { n: 100_000, ours: 250, peer: 1000, ourMemory: 80, peerMemory: 99 },
  ],
  memory: { ours: 80, peer: 99 },
  limit: { of: "ratio", atMost: 0.5 },
};
const REPORT: BenchReport = { title: "Fake", about: "Made up.", rows: [ROW] };
const record = (changes: Partial<BenchRecord> = {}): BenchRecord => ({
  name: "fake",
  run: {
    date: "2031-05-17 10:20",
    machine: "2 processors",
    busy: 0.1,
    seconds: 12.4,
  },
  report: REPORT,
  ...changes,
});
const told = (report: unknown): string => `noise\n${JSON.stringify(report)}\n`;

Deno.test("benchResults() makes one line of a row, then its growth, size by size", () => {
  const text = benchResults([record()]);
  const lines = text.split("\n");
  ok(
    lines.includes(
      "| 10⁵ readings | 250 ms | other 1.2 | 1.00 s | 0.25 (at most 0.50) | ×13, ×10 (n^1.00) | 80 / 99 |",
    ),
    text,
  );
  ok(lines.includes("## Fake"));
  ok(
    lines.includes(
      "`deno task bench fake`, 2031-05-17 10:20 UTC, 12 s, on 2 processors (0.1 of them busy with other work at its start).",
    ),
  );
  deepEqual(lines.filter((line) => /^\| 10[³⁴⁵] \|/.test(line)), [
    "| 10³ | 2.00 ms | 10.0 ms | 60 | 90 |",
    "| 10⁴ | 25.0 ms | 100 ms | 70 | 95 |",
    "| 10⁵ | 250 ms | 1.00 s | 80 | 99 |",
  ]);
});

Deno.test("benchResults() says what is missing, what a peer cannot do and what failed", () => {
  const text = benchResults([
    record({
      report: {
        ...REPORT,
        rows: [
          { what: "a", ours: 1, peer: { name: "lme4", missing: "Rscript" } },
          { what: "b | c", ours: 0.5, peer: { name: "k", fails: "never" } },
        ],
      },
    }),
    record({ name: "broken", report: undefined, failed: "no room" }),
  ]);
  match(text, /^\| a \| 1\.00 ms \| lme4 \| not here: needs Rscript \| {2}\|/m);
  match(text, /^\| b \\\| c \| 500 µs \| k \| never \|/m);
  match(text, /^\| broken \| \*\*failed\*\* \|/m);
  match(text, /^Failed: no room$/m);
});

Deno.test("benchResults() marks a row over its limit, and benchEnd() tells of it", () => {
  const slow: BenchRow = { ...ROW, ours: 600 };
  const late: BenchRow = {
    what: "late",
    ours: 151,
    limit: { of: "ours", atMost: 150 },
  };
  const bad = record({ report: { ...REPORT, rows: [slow, late] } });
  match(benchResults([bad]), /0\.60 \*\*\(over its limit of 0\.50\)\*\*/);
  match(benchResults([bad]), /151 ms \*\*\(over its limit of 150 ms\)\*\*/);
  deepEqual(benchEnd([bad]), {
    failed: [],
    missed: ["10⁵ readings", "late"],
    alone: [],
  });
  const alone = record({
    report: {
      ...REPORT,
      rows: [{ ...ROW, peer: { name: "x", missing: "python3" } }],
    },
  });
  deepEqual(benchEnd([record(), alone, record({ failed: "x" })]), {
    failed: ["fake"],
    missed: [],
    alone: ["10⁵ readings"],
  });
});

Deno.test("benchResults() says which parts a busy machine measured, and nothing on a quiet one", () => {
  ok(!benchResults([record()]).includes("Provisional"));
  const busy = record({ name: "late", run: { ...record().run, busy: 1.9 } });
  match(
    benchResults([record(), busy]),
    /^\*\*Provisional:\*\* .* their ratios uncertain: late\.$/m,
  );
});

Deno.test("spentOf() reads the ticks of all processors, guests once", () => {
  const stat =
    "cpu  10 1 5 80 4 0 1 0 3 0\ncpu0 5 0 2 40 2 0 1 0 1 0\nintr 1\n";
  deepEqual(spentOf(stat), { all: 101, idle: 84 });
  equal(spentOf("intr 1"), undefined);
});

Deno.test("processorsBusy() lies between none and all of them, where the system says", async () => {
  const busy = await processorsBusy();
  if (Deno.build.os !== "linux") return;
  ok(busy !== undefined && busy >= 0 && busy <= navigator.hardwareConcurrency);
});

Deno.test("keepsLimit() holds the limit itself, and a ratio only where there is one", () => {
  const at = (ours: number) =>
    keepsLimit({ what: "", ours, limit: { of: "ours", atMost: 150 } });
  ok(at(150) && !at(150.1));
  ok(keepsLimit({ ...ROW, peer: { name: "x", missing: "python3" } }));
  equal(ratioOf(ROW), 0.25);
  equal(ratioOf({ what: "", ours: 1 }), undefined);
});

Deno.test("readBenchReport() takes the last line and refuses what is not whole", () => {
  deepEqual(readBenchReport(told(REPORT)), REPORT);
  throws(() => readBenchReport("no JSON\n"), {
    name: "SyntaxError",
    message:
      'Cannot read a benchmark as its last line must be JSON: current value is "no JSON"',
  });
  const refused: [unknown, string][] = [
    [{ ...REPORT, rows: [] }, "no rows"],
    [{ rows: [ROW] }, "no title or no words about it"],
    [{ ...REPORT, rows: [{ ...ROW, what: "" }] }, "a row without words"],
    [
      { ...REPORT, rows: [{ ...ROW, ours: NaN }] },
      'an amount of "10⁵ readings" that is no number of 0 or more',
    ],
    [
      { ...REPORT, rows: [{ ...ROW, peer: { name: "x", value: -1 } }] },
      'an amount of "10⁵ readings" that is no number of 0 or more',
    ],
    [
      { ...REPORT, rows: [{ ...ROW, peer: { name: "x" } }] },
      '"10⁵ readings" says neither what its peer takes nor why it does not',
    ],
    [
      { ...REPORT, rows: [{ ...ROW, growth: ROW.growth!.toReversed() }] },
      'the sizes of "10⁵ readings" do not rise',
    ],
  ];
  for (const [report, fault] of refused) {
    throws(() => readBenchReport(told(report)), {
      name: "TypeError",
      message:
        `Cannot read a benchmark as its rows must be whole: current value is ${fault}`,
    });
  }
});

Deno.test("amounts are written with three figures in the unit that fits", () => {
  deepEqual(
    [0.0005, 0.0423, 0.999, 1, 12.345, 999, 1234, 65_432].map((ms) =>
      amountText(ms, "ms")
    ),
    // deno-fmt-ignore
    ["0.500 µs", "42.3 µs", "999 µs", "1.00 ms", "12.3 ms", "999 ms", "1.23 s", "65.4 s"],
  );
  equal(amountText(148.4, "MB"), "148 MB");
  equal(amountText(0, "ms"), "0 µs");
  deepEqual([0.0123, 0.37, 1.25, 23.4].map(factorText), [
    "0.012",
    "0.37",
    "1.3",
    "23",
  ]);
  deepEqual([5, 500, 1000, 1e6, 90_000].map(sizeText), [
    "5",
    "500",
    "10³",
    "10⁶",
    "90,000",
  ]);
});

Deno.test("growth is told by the factors of its steps and the power of the last", () => {
  equal(growthText(ROW), "×13, ×10 (n^1.00)");
  equal(growthText({ what: "", ours: 1 }), "");
  // By hand: from 10 to 1000 it takes 10 times as long, so n^0.5.
  const points = [{ n: 10, ours: 1 }, { n: 1000, ours: 10 }];
  equal(lastExponent(points, ({ ours }) => ours), 0.5);
  equal(lastExponent(points, () => undefined), undefined);
  equal(memoryText({ what: "", ours: 1, memory: { ours: 70.4 } }), "70");
  equal(memoryText({ ...ROW, memory: { ours: 70, peer: 0 } }), "70 / ?");
});

Deno.test("task bench refuses a benchmark that is not there, and tiny numbers as results", async () => {
  const unknown = await runTask("bench", ["karnel"]);
  equal(unknown.code, 2);
  match(
    unknown.err,
    /^There is no benchmark karnel: did you mean kernel\? Known: /,
  );
  const tiny = await runTask("bench", ["--tiny", "contact"]);
  equal(tiny.code, 2);
  match(tiny.err, /^--tiny needs --out/);
});
Deno.test("the kept results are what the task makes of their numbers", async () => {
  const folder = `${ROOT}tests/benchmarks/`;
  const records: BenchRecord[] = JSON.parse(
    await Deno.readTextFile(`${folder}RESULTS.json`),
  );
  equal(
    benchResults(records),
    await Deno.readTextFile(`${folder}RESULTS.md`),
  );
});
