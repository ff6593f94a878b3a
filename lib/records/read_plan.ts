/**
 * A plan to follow at the bench: readings whose values are still blank.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import { cellOfCsv, csvText } from "./csv_text.ts";
import { decodeText, tableLines } from "./_decode_text.ts";
import { findLayout } from "./_find_layout.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";
import { loadCsvParser, rowsOfText } from "./_rows_of_text.ts";
import { scanReadings } from "./scan_readings.ts";
import { isBlankRow } from "./_table_rows.ts";
import type { TidyColumn } from "./tidy_columns.ts";

/** One reading of a plan. */
export interface PlannedReading {
  /** Line of the plan, from 1. */
  readonly line: number;
  /** What the plan says in each column of a tidy file that it fills. */
  readonly cells: Readonly<Record<string, string>>;
  /** Where the gauge is to stand; its sag is a stand-in. */
  readonly place: Reading;
}

/** A plan, read. */
export interface ReadPlan {
  /** The readings in order; those that cannot be taken are left out. */
  readonly readings: readonly PlannedReading[];
  /** Everything there is to say about it. */
  readonly problems: readonly Problem[];
}

/** A value that the gauge could show, to stand where none is yet. */
function standIn({ gauge }: Bench, unit: string): string {
  const { shows } = gauge;
  if (shows.kind === "power") return "1";
  const value = shows.kind === "radius"
    ? 10 * (shows.circleRadius + shows.ballRadius)
    : 1;
  return unit === "" && gauge.unit === undefined ? `${value} mm` : `${value}`;
}

/**
 * Reads a bench sheet with a line for each reading, values left blank.
 *
 * Places, rings, diameters and feet are checked as in a file of readings, so
 * that a place beyond the reach is found before the gauge is set down. What
 * stands under `reading` already is passed over.
 *
 * @param content Text, or the bytes of a file.
 * @param context The file's name for messages, the piece and the bench.
 * @returns The readings to take, and what is wrong with the others.
 *
 * @example
 * ```ts
 * import { readPlan } from "sagbook/records/read_plan.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/metric-250");
 * const { readings } = await readPlan(
 *   "session,zeroing,zone,reading,unit\nS1,1,centre,,mm\nS1,1,edge,,mm\n",
 *   { file: "plan.csv", piece, bench },
 * );
 * equal(readings[1].place.zone.label, "edge");
 * ```
 */
export async function readPlan(
  content: string | Uint8Array,
  context: {
    readonly file: string;
    readonly piece: Piece;
    readonly bench: Bench;
  },
): Promise<ReadPlan> {
  const { file, bench } = context;
  const decoded = decodeText(content, file);
  const problems: Problem[] = [...decoded.problems];
  if (problems.some(({ severity }) => severity === "refused")) {
    return { readings: [], problems };
  }
  const text = tableLines(decoded.text);
  const parse = await loadCsvParser();
  const layout = findLayout(
    text,
    file,
    (line, delimiter) => parse(line, delimiter).data[0] ?? [],
  );
  if (layout.kind !== "table" || layout.sheet) {
    const found = layout.kind === "none" ? layout.problems : [
      {
        severity: "refused",
        code: "no-plan",
        file,
        message: "this is not a plan with a line for each reading",
        expected: "a header such as session,zeroing,zone,reading",
        mend: "write the plan with a line for each reading, values left blank",
      } as const,
    ];
    return { readings: [], problems: [...problems, ...found] };
  }
  const { columns, delimiter, headerLine } = layout;
  const cellsOf = new Map<number, Record<string, string>>();
  rowsOfText(text, delimiter, parse, (row, line) => {
    if (line <= headerLine || isBlankRow(row)) return;
    if (row[0].trimStart().startsWith("#")) return;
    const cells: Record<string, string> = {};
    for (const [name, index] of columns) {
      const cell = cellOfCsv((row[index] ?? "").trim());
      if (cell !== "" && !VALUES.has(name)) cells[name] = cell;
    }
    cellsOf.set(line, cells);
  });
  const names = [...columns.keys()].filter((name) => !VALUES.has(name));
  const lines = [...cellsOf.keys()];
  const filled = csvText([
    [...names, "reading"],
    ...[...cellsOf.values()].map((cells) => [
      ...names.map((name) => cells[name] ?? ""),
      standIn(bench, cells.unit ?? ""),
    ]),
  ]);
  const readings: PlannedReading[] = [];
  const found = await scanReadings(filled, context, (place) => {
    const line = lines[place.line - 2];
    readings.push({ line, cells: cellsOf.get(line)!, place });
  });
  problems.push(
    ...found.problems.filter(({ severity, code }) =>
      severity === "refused" || code === "foot-unknown"
    ).map((problem) =>
      problem.line === undefined
        ? problem
        : { ...problem, line: lines[problem.line - 2] ?? problem.line }
    ),
  );
  return { readings, problems };
}

/** What a plan leaves to the bench. */
const VALUES: ReadonlySet<TidyColumn> = new Set<TidyColumn>([
  "reading",
  "taken_at",
  "withdrawn",
  "zero_before",
]);
