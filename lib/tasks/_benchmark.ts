/**
 * What a program of `tests/benchmarks` tells, and whether it is well formed.
 *
 * @module
 */

/** What one would use instead. */
export interface BenchPeer {
  /** Its name. */
  readonly name: string;
  /** Its version, as it says itself. */
  readonly version?: string;
  /** What it takes, in the row's unit. */
  readonly value?: number;
  /** What is not installed here, where there is no value. */
  readonly missing?: string;
  /** Why there is no value although it is installed: "not within 3 s". */
  readonly fails?: string;
}

/** One size of a growing task; memory is peak resident memory in MB. */
export interface GrowthPoint {
  /** The size. */
  readonly n: number;
  /** What ours takes, in the row's unit. */
  readonly ours: number;
  /** What the peer takes. */
  readonly peer?: number;
  /** Memory of ours. */
  readonly ourMemory?: number;
  /** Memory of the peer. */
  readonly peerMemory?: number;
}

/** One line of the table. */
export interface BenchRow {
  /** What is done, with its size. */
  readonly what: string;
  /** What ours takes: the median. */
  readonly ours: number;
  /** Milliseconds unless stated. */
  readonly unit?: "ms" | "MB";
  /** What one would use instead; undefined where there is no such thing. */
  readonly peer?: BenchPeer;
  /** What grows, in words, such as "readings". */
  readonly grows?: string;
  /** Sizes in rising order, the row's own among them. */
  readonly growth?: readonly GrowthPoint[];
  /** Peak resident memory in MB at the row's size. */
  readonly memory?: { readonly ours?: number; readonly peer?: number };
  /** A stated limit of what ours takes, or of its ratio to the peer. */
  readonly limit?: { readonly of: "ours" | "ratio"; readonly atMost: number };
}

/** What one program has measured. */
export interface BenchReport {
  /** Its heading. */
  readonly title: string;
  /** What is measured and how, in Markdown. */
  readonly about: string;
  /** Lines of the table. */
  readonly rows: readonly BenchRow[];
  /** Further tables, in Markdown. */
  readonly details?: string;
}

/** Ours in parts of the peer's; undefined without one. */
export function ratioOf({ ours, peer }: BenchRow): number | undefined {
  return peer?.value === undefined || peer.value === 0
    ? undefined
    : ours / peer.value;
}

/** Whether a row keeps its stated limit; one without a limit does. */
export function keepsLimit(row: BenchRow): boolean {
  if (row.limit === undefined) return true;
  const value = row.limit.of === "ours" ? row.ours : ratioOf(row);
  return value === undefined || value <= row.limit.atMost;
}

function isAmount(value: unknown): boolean {
  return typeof value === "number" && Number.isFinite(value) && value >= 0;
}

function faultOf(row: BenchRow): string | undefined {
  const { what, ours, peer, growth = [], memory = {} } = row;
  if (typeof what !== "string" || what === "") return "a row without words";
  const amounts = [
    ours,
    peer?.value,
    memory.ours,
    memory.peer,
    ...growth.flatMap((at) => [at.ours, at.peer, at.ourMemory, at.peerMemory]),
  ];
  if (!isAmount(ours) || amounts.some((x) => x !== undefined && !isAmount(x))) {
    return `an amount of "${what}" that is no number of 0 or more`;
  }
  if (
    peer !== undefined && peer.value === undefined &&
    peer.missing === undefined && peer.fails === undefined
  ) return `"${what}" says neither what its peer takes nor why it does not`;
  if (growth.some(({ n }, k) => k > 0 && !(n > growth[k - 1].n))) {
    return `the sizes of "${what}" do not rise`;
  }
  return undefined;
}

/**
 * Reads the last line that a benchmark program has written.
 *
 * @param text All that it wrote on its standard output.
 * @returns What it has measured.
 * @throws {SyntaxError} If that is no JSON.
 * @throws {TypeError} If a row lacks something or an amount is no number.
 */
export function readBenchReport(text: string): BenchReport {
  const line = text.trim().split("\n").at(-1) ?? "";
  let report: BenchReport;
  try {
    report = JSON.parse(line);
  } catch {
    throw new SyntaxError(
      `Cannot read a benchmark as its last line must be JSON: current value is ${
        JSON.stringify(line.slice(0, 80))
      }`,
    );
  }
  const { title, about, rows } = report;
  const fault = typeof title !== "string" || typeof about !== "string"
    ? "no title or no words about it"
    : !Array.isArray(rows) || rows.length === 0
    ? "no rows"
    : rows.map(faultOf).find((one) => one !== undefined);
  if (fault !== undefined) {
    throw new TypeError(
      `Cannot read a benchmark as its rows must be whole: current value is ${fault}`,
    );
  }
  return report;
}
