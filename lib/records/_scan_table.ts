/**
 * A tidy file or a bench sheet, row by row.
 *
 * @module
 */
import { type TidyColumn, tidyColumn } from "./_column_names.ts";
import { decimalMarkOf } from "./_decimal_mark.ts";
import type { TableLayout } from "./_find_layout.ts";
import type { FileAccount } from "./folder.ts";
import { LineReader } from "./_line_reader.ts";
import type { ReadingCell } from "./_line_source.ts";
import { mendQuotes } from "./_mend_quotes.ts";
import { unitOfWord } from "./_read_cell.ts";
import { type CsvParser, rowsOfText } from "./_rows_of_text.ts";
import type { ScanSource } from "./_scan_text.ts";

type Row = readonly string[];

/** What a `# name: value` line of a bench sheet may set. */
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

function isBlank(row: Row): boolean {
  for (const cell of row) if (cell !== "" && cell.trim() !== "") return false;
  return true;
}

/** Indices of the columns that hold readings. */
function readingColumns(layout: TableLayout): readonly number[] {
  const reading = layout.columns.get("reading");
  return layout.sheet || reading === undefined
    ? layout.zones.map((zone) => zone.index)
    : [reading];
}

/** The units of a row that holds nothing else under the readings. */
function unitsRow(
  row: Row,
  layout: TableLayout,
): Map<number, string> | undefined {
  const units = new Map<number, string>();
  for (const index of readingColumns(layout)) {
    const word = (row[index] ?? "").trim().replace(/^[([]|[)\]]$/g, "");
    if (word === "") continue;
    if (unitOfWord(word) === undefined) return undefined;
    units.set(index, word);
  }
  return units.size > 0 ? units : undefined;
}

/** Walks one table; a class, for its rows share a dozen things. */
class TableScan {
  readonly count = { read: 0, used: 0, reported: 0 };
  readonly #source: ScanSource;
  readonly #layout: TableLayout;
  readonly #reader: LineReader;
  readonly #mended: ReadonlySet<number>;
  readonly #probe: number;
  readonly #assumed = { count: 0, line: 0 };
  #cells: readonly ReadingCell[];
  #awaitsUnits = true;
  #sets = 0;
  #order: number;

  constructor(
    source: ScanSource,
    layout: TableLayout,
    reader: LineReader,
    mended: readonly number[],
  ) {
    this.#source = source;
    this.#layout = layout;
    this.#reader = reader;
    this.#mended = new Set(mended);
    this.#order = source.firstOrder;
    this.#cells = this.#withUnits(layout.units);
    this.#probe = this.#cells[0].index;
    if (layout.sheet) reader.defaults.session = source.sheetSession;
  }

  #withUnits(units: ReadonlyMap<number, string>): readonly ReadingCell[] {
    const unit = (index: number) => units.get(index) ?? "";
    return this.#layout.sheet
      ? this.#layout.zones.map(({ index, heading }) => ({
        index,
        unit: unit(index),
        zone: heading,
      }))
      : readingColumns(this.#layout).map((index) => ({
        index,
        unit: unit(index),
      }));
  }

  /** Looks at one row of the file. */
  row(row: Row, line: number, last: boolean): void {
    const { headerLine, headings, sheet } = this.#layout;
    const first = row[0];
    if (first.includes("#") && first.trimStart().startsWith("#")) {
      if (sheet) this.#setting(row.join(this.#layout.delimiter));
      return;
    }
    if (line <= headerLine) return;
    if (row.length === 1 ? first.trim() === "" : first === "" && isBlank(row)) {
      return;
    }
    if (this.#awaitsUnits) {
      this.#awaitsUnits = false;
      const found = unitsRow(row, this.#layout);
      if (found !== undefined) {
        this.#cells = this.#withUnits(
          new Map([...this.#layout.units, ...found]),
        );
        return;
      }
    }
    if (row[this.#probe] === headings[this.#probe] && this.#isHeader(row)) {
      this.#source.problems.add({
        severity: "note",
        code: "header-again",
        file: this.#source.file,
        line,
        message: "the header stands here again and was passed over",
      });
      this.#awaitsUnits = true;
      return;
    }
    if (this.#isWhole(row, line, last)) this.#read(row, line);
  }

  #isHeader(row: Row): boolean {
    return row.every((cell, i) => cell === this.#layout.headings[i]);
  }

  #setting(typed: string): void {
    const match = /^\s*#\s*([^:=]{1,40})[:=]\s*(.*?)[\s,;]*$/.exec(typed);
    const name = match === null ? undefined : tidyColumn(match[1]);
    if (match !== null && name !== undefined && SETTINGS.has(name)) {
      this.#reader.defaults[name] = match[2];
    }
  }

  /** Refuses a row as a whole. */
  #refuse(
    line: number,
    code: string,
    row: Row,
    message: string,
    mend: string,
  ): void {
    this.count.read++;
    this.count.reported++;
    this.#source.problems.add({
      severity: "refused",
      code,
      file: this.#source.file,
      line,
      value: row.join(this.#layout.delimiter),
      message,
      mend,
    });
  }

  /** True when a row has the cells it should have; else it is refused. */
  #isWhole(row: Row, line: number, last: boolean): boolean {
    const { headings, sheet, delimiter } = this.#layout;
    if (this.#mended.size > 0 && this.#mended.has(line)) {
      this.#source.problems.add({
        severity: "note",
        code: "quotes-mended",
        file: this.#source.file,
        line,
        message:
          "the quote marks of this line were out of order and were taken as typed",
        mend: "check that the cells are as you meant them",
      });
    }
    if (row.some((cell) => cell.includes("\u0000"))) {
      this.#refuse(
        line,
        "cut-off",
        row,
        "the line holds NUL bytes: it was cut off or damaged",
        "type the line again",
      );
      return false;
    }
    if (
      row.length > headings.length && !isBlank(row.slice(headings.length))
    ) {
      this.#refuse(
        line,
        "too-many-cells",
        row,
        `the line has ${row.length} cells, the header ${headings.length}`,
        delimiter === ","
          ? "a decimal comma splits a number in a comma file: write a point, put the number in quotes, or put semicolons between the cells"
          : "put the cell that holds the mark between quotes",
      );
      return false;
    }
    if (
      last && !sheet &&
      row.length <= Math.min(this.#probe + 1, headings.length - 1)
    ) {
      this.#refuse(
        line,
        "cut-off",
        row,
        "the file ends in the middle of this line",
        "type the line again",
      );
      return false;
    }
    return true;
  }

  #read(row: Row, line: number): void {
    const { sheet, columns } = this.#layout;
    if (!sheet) return this.#readCell(row, line, this.#cells[0]);
    if (!columns.has("zeroing")) {
      this.#reader.defaults.zeroing = `row ${++this.#sets}`;
    }
    let filled = 0;
    for (const cell of this.#cells) {
      if ((row[cell.index] ?? "").trim() === "") continue;
      filled++;
      this.#readCell(row, line, cell);
    }
    if (filled === 0) {
      this.#refuse(
        line,
        "no-reading",
        row,
        "no zone of this line holds a reading",
        "type the readings, or take the line out",
      );
    }
  }

  #readCell(row: Row, line: number, cell: ReadingCell): void {
    this.count.read++;
    const reading = this.#reader.read(row, line, this.#order, cell);
    if (reading === undefined) {
      this.count.reported++;
      return;
    }
    this.count.used++;
    this.#order++;
    if (this.#reader.lastUnitAssumed && this.#assumed.count++ === 0) {
      this.#assumed.line = line;
    }
    this.#source.visit(reading);
  }

  /** Says what holds for the whole file. */
  finish(): void {
    const { file, bench, problems } = this.#source;
    this.#reader.faults.finish();
    const { count, line } = this.#assumed;
    if (count === 0) return;
    problems.add({
      severity: "note",
      code: "unit-assumed",
      file,
      line,
      message: `${count} ${
        count === 1 ? "reading names" : "readings name"
      } no unit and took ${bench.gauge.unit} from bench.json`,
      count,
    });
  }
}

/** Walks a table; every line of readings in it is used or reported. */
export function scanTable(
  typed: string,
  layout: TableLayout,
  source: ScanSource,
  parse: CsvParser,
): FileAccount {
  const { file, problems, bench, piece } = source;
  const { delimiter, headings, columns, unknown, headerLine } = layout;
  const { text, mended } = mendQuotes(typed, delimiter, headings.length);
  const decimal = decimalMarkOf(text, delimiter, bench.decimalMark);
  if (unknown.length > 0) {
    const names = unknown.slice(0, 12).map((i) => headings[i].trim());
    problems.add({
      severity: "note",
      code: "unknown-column",
      file,
      line: headerLine,
      message: `columns kept but not used: ${
        names.map((name) => name.slice(0, 40)).join(", ")
      }`,
    });
  }
  const reader = new LineReader({
    file,
    piece,
    bench,
    decimal,
    columns,
    headings,
    unknown,
    problems,
  });
  const scan = new TableScan(source, layout, reader, mended);
  rowsOfText(
    text,
    delimiter,
    parse,
    (row, line, last) => scan.row(row, line, last),
  );
  scan.finish();
  return { file, ...scan.count, layout: layout.sheet ? "sheet" : "tidy" };
}
