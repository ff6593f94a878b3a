/**
 * A file of readings, walked once from top to bottom.
 *
 * @module
 */
import type { ParseResult } from "papaparse";
import { type TidyColumn, tidyColumn } from "./_column_names.ts";
import type { Bench } from "./bench.ts";
import { decodeText } from "./_decode_text.ts";
import { findLayout, type TableLayout } from "./_find_layout.ts";
import { LineReader } from "./_line_reader.ts";
import { mendQuotes } from "./_mend_quotes.ts";
import type { Piece } from "./piece.ts";
import type { ProblemCollector } from "./_problem_collector.ts";
import { type FileDecimal, unitOfWord } from "./_read_cell.ts";
import type { Reading } from "./reading.ts";
import { scanCableLog } from "./_scan_cable_log.ts";
import type { FileAccount } from "./folder.ts";

/** What a scan needs to know. */
export interface ScanSource {
  readonly file: string;
  readonly piece: Piece;
  readonly bench: Bench;
  readonly firstOrder: number;
  readonly sheetSession: string;
  readonly problems: ProblemCollector;
  readonly visit: (reading: Reading) => void;
}

const SLICE = 1 << 20;

/** Settings that a `# name: value` line above a bench sheet may give. */
const SETTINGS: ReadonlySet<TidyColumn> = new Set<TidyColumn>([
  "session",
  "taken_at",
  "grade",
  "ring",
  "foot_deg",
  "unit",
  "operator",
  "temperature_air",
  "temperature_bench",
  "temperature_work",
]);

/** End of the slice that starts at `from`: a line end outside any quote. */
function endOfSlice(text: string, from: number, hasQuotes: boolean): number {
  if (text.length - from <= SLICE) return text.length;
  let end = text.indexOf("\n", from + SLICE);
  if (!hasQuotes) return end < 0 ? text.length : end;
  let odd = false;
  let at = from;
  while (end >= 0) {
    for (let q = text.indexOf('"', at); q >= 0 && q < end;) {
      odd = !odd;
      q = text.indexOf('"', q + 1);
    }
    if (!odd) return end;
    at = end;
    end = text.indexOf("\n", end + 1);
  }
  return text.length;
}

/** The decimal mark, as far as the cells that can be read one way show it. */
export function decimalMarkOf(
  text: string,
  delimiter: string,
  stated: "point" | "comma" | undefined,
): FileDecimal {
  if (stated !== undefined) {
    return { mark: stated === "point" ? "." : ",", stated: true };
  }
  if (delimiter === "," && !text.includes('"')) {
    return { mark: ".", stated: false };
  }
  const edge = delimiter === "|" ? "\\|" : delimiter;
  const unit = '\\s*(?:[mucµμ]?m|in|thou|mil)?"?';
  const certain = (mark: string) =>
    new RegExp(
      `(?:^|[${edge}"])[ +\\-\u2212\u2013]*(?:\\d*${mark}\\d{1,2}|\\d*${mark}\\d{4,}|0${mark}\\d+)${unit}(?=$|[${edge}"])`,
      "m",
    );
  const comma = certain(",").test(text);
  const point = delimiter === "," || certain("\\.").test(text);
  return {
    mark: comma === point ? "unknown" : point ? "." : ",",
    stated: false,
  };
}

function isBlank(row: readonly string[]): boolean {
  for (const cell of row) if (cell !== "" && cell.trim() !== "") return false;
  return true;
}

function unitsRow(
  row: readonly string[],
  layout: TableLayout,
): Map<number, string> | undefined {
  const reading = layout.columns.get("reading");
  const indices = reading === undefined
    ? layout.zones.map((zone) => zone.index)
    : [reading];
  const units = new Map<number, string>();
  for (const index of indices) {
    const word = (row[index] ?? "").trim().replace(/^[([]|[)\]]$/g, "");
    if (word === "") continue;
    if (unitOfWord(word) === undefined) return undefined;
    units.set(index, word);
  }
  return units.size > 0 ? units : undefined;
}

/** Lines of a text that are neither blank nor comments. */
function filledLines(text: string): number {
  let count = 0;
  for (const line of text.split("\n")) {
    const bare = line.trim();
    if (bare !== "" && !bare.startsWith("#")) count++;
  }
  return count;
}

/** Walks a file; every line it finds is used or reported. */
export async function scanText(
  content: string | Uint8Array,
  source: ScanSource,
): Promise<FileAccount> {
  const { file, problems } = source;
  const bytes = typeof content === "string"
    ? undefined
    : decodeText(content, file);
  let text = bytes?.text ?? (content as string);
  if (bytes === undefined) {
    text = text.replace(/^\uFEFF+/, "");
    if (text.includes("\r")) text = text.replace(/\r\n?/g, "\n");
  } else {
    problems.addAll(bytes.problems);
    if (bytes.problems.some((problem) => problem.severity === "refused")) {
      return { file, read: 1, used: 0, reported: 1, layout: "none" };
    }
  }
  if (text.trim() === "") {
    problems.add({
      severity: "warning",
      code: "empty-file",
      file,
      message: "the file is empty",
      mend: "write a header and the readings, or take the file away",
    });
    return { file, read: 0, used: 0, reported: 0, layout: "none" };
  }
  const { default: Papa } = await import("papaparse");
  const parse = (slice: string, delimiter: string): ParseResult<string[]> =>
    Papa.parse<string[]>(slice, { delimiter, newline: "\n", header: false });
  const layout = findLayout(
    text,
    file,
    (line, delimiter) => parse(line, delimiter).data[0] ?? [],
  );
  if (layout.kind === "cable") return scanCableLog(text, source);
  if (layout.kind === "none") {
    const lines = filledLines(text);
    const count = Math.max(1, lines - (layout.problems.length > 0 ? 1 : 0));
    problems.addAll(
      layout.problems.map((problem, i) =>
        i === 0 && count > 1 ? { ...problem, count } : problem
      ),
    );
    return { file, read: count, used: 0, reported: count, layout: "none" };
  }
  return scanTable(text, layout, source, parse);
}

function scanTable(
  original: string,
  layout: TableLayout,
  source: ScanSource,
  parse: (slice: string, delimiter: string) => ParseResult<string[]>,
): FileAccount {
  const { file, problems, bench, piece, visit } = source;
  const { delimiter, headings } = layout;
  const { text, mended } = mendQuotes(original, delimiter, headings.length);
  const mendedLines = new Set(mended);
  const hasQuotes = text.includes('"');
  const hasNul = text.includes("\u0000");
  const reader = new LineReader({
    file,
    piece,
    bench,
    decimal: decimalMarkOf(text, delimiter, bench.decimalMark),
    columns: layout.columns,
    headings,
    unknown: layout.unknown,
    problems,
  });
  const sheet = layout.kind === "sheet";
  if (sheet) reader.defaults.session = source.sheetSession;
  const readingAt = layout.columns.get("reading") ?? -1;
  const numbersRows = sheet && !layout.columns.has("zeroing");
  let units: ReadonlyMap<number, string> = layout.units;
  const count = { read: 0, used: 0, reported: 0 };
  const assumed = { count: 0, line: 0 };
  let sets = 0;
  let order = source.firstOrder;
  if (layout.unknown.length > 0) {
    problems.add({
      severity: "note",
      code: "unknown-column",
      file,
      line: layout.headerLine,
      message: `columns kept but not used: ${
        layout.unknown.slice(0, 12).map((i) => headings[i].trim().slice(0, 40))
          .join(", ")
      }`,
    });
  }

  const refuseRow = (
    line: number,
    code: string,
    value: string,
    message: string,
    mend: string,
    expected?: string,
  ) => {
    count.read++;
    count.reported++;
    problems.add({
      severity: "refused",
      code,
      file,
      line,
      value,
      message,
      mend,
      ...(expected === undefined ? {} : { expected }),
    });
  };

  const readOne = (
    row: readonly string[],
    line: number,
    index: number,
    zone: string | undefined,
  ) => {
    count.read++;
    const unit = units.get(index) ?? "";
    const reading = reader.read(row, line, order, index, unit, zone);
    if (reading === undefined) {
      count.reported++;
      return;
    }
    count.used++;
    order++;
    if (reader.lastUnitAssumed) {
      if (assumed.count++ === 0) assumed.line = line;
    }
    visit(reading);
  };

  const readRow = (row: readonly string[], line: number, last: boolean) => {
    if (mendedLines.has(line)) {
      problems.add({
        severity: "note",
        code: "quotes-mended",
        file,
        line,
        message:
          "the quote marks of this line were out of order and were taken as typed",
        mend: "check that the cells are as you meant them",
      });
    }
    if (hasNul && row.some((cell) => cell.includes("\u0000"))) {
      return refuseRow(
        line,
        "cut-off",
        row.join(delimiter),
        "the line holds NUL bytes: it was cut off or damaged",
        "type the line again",
      );
    }
    if (
      row.length > headings.length &&
      row.slice(headings.length).some((cell) => cell.trim() !== "")
    ) {
      return refuseRow(
        line,
        "too-many-cells",
        row.join(delimiter),
        `the line has ${row.length} cells, the header ${headings.length}`,
        delimiter === ","
          ? "a decimal comma splits a number in a comma file: write a point, put the number in quotes, or put semicolons between the cells"
          : "put the cell that holds the mark between quotes",
      );
    }
    const needed = sheet ? -1 : readingAt;
    if (last && row.length < headings.length && row.length <= needed + 1) {
      return refuseRow(
        line,
        "cut-off",
        row.join(delimiter),
        "the file ends in the middle of this line",
        "type the line again",
      );
    }
    if (!sheet) return readOne(row, line, readingAt, undefined);
    if (numbersRows) reader.defaults.zeroing = `row ${++sets}`;
    let filled = 0;
    for (const zone of layout.zones) {
      if ((row[zone.index] ?? "").trim() === "") continue;
      filled++;
      readOne(row, line, zone.index, zone.heading);
    }
    if (filled === 0) {
      refuseRow(
        line,
        "no-reading",
        row.join(delimiter),
        "no zone of this line holds a reading",
        "type the readings, or take the line out",
      );
    }
  };

  let line = 1;
  let awaitsUnits = true;
  const endsCleanly = text.endsWith("\n");
  for (let from = 0; from < text.length;) {
    const end = endOfSlice(text, from, hasQuotes);
    const slice = text.slice(from, end);
    const rows = slice === "" ? [[""]] : parse(slice, delimiter).data;
    const final = end >= text.length - 1;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      const here = line;
      line++;
      if (hasQuotes) {
        for (const cell of row) {
          if (cell.includes("\n")) line += cell.split("\n").length - 1;
        }
      }
      const first = row[0].trimStart();
      if (first.startsWith("#")) {
        if (sheet) setting(row.join(delimiter), reader);
        continue;
      }
      if (here <= layout.headerLine) continue;
      if (row.length === 1 ? first === "" : isBlank(row)) continue;
      if (awaitsUnits) {
        awaitsUnits = false;
        const found = unitsRow(row, layout);
        if (found !== undefined) {
          units = new Map([...units, ...found]);
          continue;
        }
      }
      if (isHeaderAgain(row, layout)) {
        problems.add({
          severity: "note",
          code: "header-again",
          file,
          line: here,
          message: "the header stands here again and was passed over",
        });
        awaitsUnits = true;
        continue;
      }
      readRow(row, here, final && !endsCleanly && i === rows.length - 1);
    }
    from = end + 1;
  }
  if (assumed.count > 0) {
    problems.add({
      severity: "note",
      code: "unit-assumed",
      file,
      line: assumed.line,
      message: `${assumed.count} ${
        assumed.count === 1 ? "reading names" : "readings name"
      } no unit and took ${bench.gauge.unit} from bench.json`,
      count: assumed.count,
    });
  }
  return { file, ...count, layout: layout.kind };
}

function isHeaderAgain(row: readonly string[], layout: TableLayout): boolean {
  const probe = layout.columns.get("reading") ?? layout.zones[0].index;
  return row[probe] === layout.headings[probe] &&
    row.length === layout.headings.length &&
    row.every((cell, i) => cell === layout.headings[i]);
}

function setting(line: string, reader: LineReader): void {
  const match = /^\s*#\s*([^:=]{1,40})[:=]\s*(.*?)[\s,;]*$/.exec(line);
  if (match === null) return;
  const name = tidyColumn(match[1]);
  if (name !== undefined && SETTINGS.has(name)) {
    reader.defaults[name] = match[2];
  }
}
