/**
 * Makes one table of what all benchmarks have measured.
 *
 * @module
 */
import {
  type BenchReport,
  type BenchRow,
  keepsLimit,
  ratioOf,
} from "./_benchmark.ts";
import {
  amountText,
  factorText,
  growthText,
  lastExponent,
  memoryText,
  sizeText,
} from "./_benchmark_words.ts";

/** When and where a program measured. */
export interface BenchRun {
  /** Day, hour and minute, UTC. */
  readonly date: string;
  /** Processors, memory, system. */
  readonly machine: string;
  /** How many processors other programs kept busy when it began. */
  readonly busy?: number;
  /** Seconds the program took. */
  readonly seconds: number;
}

/** What one program has said. */
export interface BenchRecord {
  /** Name of the program, without `_bench.ts`. */
  readonly name: string;
  /** When and where. */
  readonly run: BenchRun;
  /** What it has measured, */
  readonly report?: BenchReport;
  /** or why it has not. */
  readonly failed?: string;
}

/** How the results end a run. */
export interface BenchEnd {
  /** Programs that failed. */
  readonly failed: readonly string[];
  /** Rows that miss their stated limit. */
  readonly missed: readonly string[];
  /** Rows whose peer is not installed. */
  readonly alone: readonly string[];
}

/** Where more of a processor than this is busy, times are provisional. */
const BUSY = 0.2;

const rowsOf = (records: readonly BenchRecord[]): BenchRow[] =>
  records.flatMap(({ report }) => report?.rows ?? []);

/** What went wrong in some results. */
export function benchEnd(records: readonly BenchRecord[]): BenchEnd {
  const rows = rowsOf(records);
  return {
    failed: records.filter(({ failed }) => failed !== undefined)
      .map(({ name }) => name),
    missed: rows.filter((row) => !keepsLimit(row)).map(({ what }) => what),
    alone: rows.filter(({ peer }) => peer?.missing !== undefined)
      .map(({ what }) => what),
  };
}

const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
const cell = (text: string): string => text.replaceAll("|", "\\|");

function limitText(row: BenchRow): string {
  const { limit, unit } = row;
  if (limit === undefined) return "";
  const words = limit.of === "ours"
    ? amountText(limit.atMost, unit)
    : factorText(limit.atMost);
  return keepsLimit(row)
    ? ` (at most ${words})`
    : ` **(over its limit of ${words})**`;
}

function summaryLine(row: BenchRow): string {
  const { what, ours, unit, peer, limit } = row;
  const ratio = ratioOf(row);
  const marks = { ours: "", ratio: "", [limit?.of ?? ""]: limitText(row) };
  return line([
    cell(what),
    amountText(ours, unit) + marks.ours,
    peer === undefined ? "" : cell(`${peer.name} ${peer.version ?? ""}`.trim()),
    peer === undefined
      ? ""
      : peer.value !== undefined
      ? amountText(peer.value, unit)
      : cell(peer.fails ?? `not here: needs ${peer.missing}`),
    ratio === undefined ? "" : factorText(ratio) + marks.ratio,
    growthText(row),
    memoryText(row),
  ]);
}

function growthTable(row: BenchRow): string[] {
  const { what, growth = [], grows = "n", unit, peer } = row;
  if (growth.length === 0) return [];
  const has = (key: "peer" | "ourMemory" | "peerMemory") =>
    growth.some((point) => point[key] !== undefined && point[key] !== 0);
  const name = peer?.name ?? "instead";
  const columns: [string, (k: number) => string][] = [
    [grows, (k) => sizeText(growth[k].n)],
    ["ours", (k) => amountText(growth[k].ours, unit)],
  ];
  const optional = (value: number | undefined, text: (x: number) => string) =>
    value === undefined ? "" : text(value);
  if (has("peer")) {
    columns.push(
      [name, (k) => optional(growth[k].peer, (x) => amountText(x, unit))],
    );
  }
  if (has("ourMemory")) {
    columns.push([
      "memory of ours, MB",
      (k) => optional(growth[k].ourMemory, (x) => x.toFixed(0)),
    ]);
  }
  if (has("peerMemory")) {
    columns.push([
      `memory of ${name}, MB`,
      (k) => optional(growth[k].peerMemory, (x) => x.toFixed(0)),
    ]);
  }
  const exponents = [
    ["ours", lastExponent(growth, ({ ours }) => ours)],
    [name, lastExponent(growth, ({ peer }) => peer)],
  ].flatMap(([who, power]) =>
    typeof power === "number" ? [`${who} n^${power.toFixed(2)}`] : []
  );
  return [
    "",
    `${what}, as ${grows} grow (the last step: ${exponents.join(", ")}):`,
    "",
    line(columns.map(([heading]) => heading)),
    line(columns.map(() => "---:")),
    ...growth.map((_, k) => line(columns.map(([, text]) => text(k)))),
  ];
}

/** Says of a machine that had other work that its times are too long. */
function busyWords(records: readonly BenchRecord[]): string[] {
  const busy = records.filter(({ run }) => (run.busy ?? 0) > BUSY);
  if (busy.length === 0) return [];
  const names = busy.map(({ name }) => name).join(", ");
  return [
    "",
    `**Provisional:** the machine had other work to do (the details say how much) while these were measured, so their times are too long and their ratios uncertain: ${names}.`,
  ];
}

function section({ name, run, report, failed }: BenchRecord): string[] {
  const busy = run.busy === undefined
    ? ""
    : ` (${run.busy} of them busy with other work at its start)`;
  const words = `\`deno task bench ${name}\`, ${run.date} UTC, ${
    run.seconds.toFixed(0)
  } s, on ${run.machine}${busy}.`;
  if (report === undefined) {
    return ["", `## ${name}`, "", words, "", `Failed: ${failed}`];
  }
  return [
    "",
    `## ${report.title}`,
    "",
    words,
    "",
    report.about.trim(),
    ...report.rows.flatMap(growthTable),
    ...(report.details === undefined ? [] : ["", report.details.trim()]),
  ];
}

/**
 * Makes the text of the results: a table of all rows, then the details.
 *
 * @param records What the programs have said, in the order to be shown.
 * @returns Markdown.
 */
export function benchResults(records: readonly BenchRecord[]): string {
  const failures = records.filter(({ report }) => report === undefined);
  return [
    "# Speed",
    "",
    "Made by `deno task bench`; do not edit. Repeat all of it with that, or one part",
    "with `deno task bench NAME`, the names standing in the details. Times are medians",
    "on the machine that the details name. Ours and what one would use instead were",
    "measured by turns in the same run. Ratio: our time in parts of the other's, below",
    "1 ours is faster. Growth: what each step to a larger n does to our time, and the",
    "power of n that the last step follows. Memory: the peak of what was resident, of",
    "all processes together, ours / the other's.",
    ...busyWords(records),
    "",
    line([
      "what",
      "ours",
      "instead (version)",
      "takes",
      "ratio",
      "growth",
      "memory, MB",
    ]),
    line(["---", "---:", "---", "---:", "---:", "---", "---:"]),
    ...rowsOf(records).map(summaryLine),
    ...failures.map(({ name }) =>
      line([name, "**failed**", "", "", "", "", ""])
    ),
    ...records.flatMap(section),
    "",
  ].join("\n");
}
