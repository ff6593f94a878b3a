/**
 * A tidy file or a bench sheet, row by row.
 *
 * @module
 */
import { decimalMarkOf } from "./_decimal_mark.ts";
import type { TableLayout } from "./_find_layout.ts";
import type { FileAccount } from "./folder.ts";
import { LineReader } from "./_line_reader.ts";
import type { ReadingCell } from "./_line_source.ts";
import { mendQuotes } from "./_mend_quotes.ts";
import { type CsvParser, rowsOfText } from "./_rows_of_text.ts";
import type { ScanSource } from "./_scan_text.ts";
import {
  faultOfRow,
  isBlankRow,
  readingColumns,
  settingOfRow,
  unitsOfRow,
  unknownColumns,
} from "./_table_rows.ts";

type Row = readonly string[];

/** Walks one table; a class, for its rows share a dozen things. */
class TableScan {
  readonly count = { read: 0, used: 0, reported: 0 };
  readonly #source: ScanSource;
  readonly #layout: TableLayout;
  readonly #reader: LineReader;
  readonly #mended: ReadonlySet<number>;
  readonly #probe: number;
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
      ? this.#layout.zones.map(({ index, zone }) => ({
        index,
        unit: unit(index),
        zone,
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
      if (sheet) this.#setting(row);
      const filled = (row[this.#probe] ?? "").trim() !== "";
      if (line > headerLine && row.length >= headings.length && filled) {
        this.#reader.faults.start(line);
        this.#reader.faults.remark("note", headings[0].trim(), first, {
          code: "comment-line",
          message: "a line that begins with # is a comment and was passed over",
        });
      }
      return;
    }
    if (line <= headerLine) return;
    if (
      row.length === 1 ? first.trim() === "" : first === "" && isBlankRow(row)
    ) {
      return;
    }
    if (this.#awaitsUnits) {
      this.#awaitsUnits = false;
      const found = unitsOfRow(row, this.#layout);
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

  #setting(row: Row): void {
    const found = settingOfRow(row, this.#layout.delimiter);
    if (found !== undefined) this.#reader.defaults[found.name] = found.value;
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
    const fault = faultOfRow(row, this.#layout, this.#probe, last);
    if (fault === undefined) return true;
    this.#refuse(line, fault.code, row, fault.message, fault.mend);
    return false;
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
    if (filled > 0) return;
    this.#reader.faults.start(line);
    this.#reader.faults.remark("note", this.#cells[0].zone ?? "", "", {
      code: "no-reading-yet",
      message: "no zone of this row holds a reading yet",
    });
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
    this.#source.visit(reading);
  }

  /** Says what holds for the whole file. */
  finish(): void {
    this.#reader.faults.finish();
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
  const { delimiter, headings, columns, unknown } = layout;
  const { text, mended } = mendQuotes(typed, delimiter, headings.length);
  const decimal = decimalMarkOf(text, delimiter, bench.decimalMark);
  problems.addAll(unknownColumns(file, layout));
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
