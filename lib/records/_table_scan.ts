/**
 * The walk over the rows of a table.
 *
 * @module
 */
import { headerOfRow, isHeaderAgain } from "./_header_again.ts";
import type { Fault } from "./_line_faults.ts";
import { LineReader } from "./_line_reader.ts";
import type { ReadingCell } from "./_line_source.ts";
import { sayMeanInNote } from "./_mean_note.ts";
import { MeanRow } from "./_mean_row.ts";
import type { FileDecimal } from "./_read_cell.ts";
import {
  aboveHeader,
  COMMENT_LINE,
  headerBelow,
  LIKE_A_MEAN,
  NO_READING_YET,
  QUOTES_MENDED,
  summaryLine,
  takenForAll,
} from "./_row_words.ts";
import type { ScanSource } from "./_scan_text.ts";
import { settingOfForm, settingOfRow } from "./_sheet_settings.ts";
import { SummaryRows } from "./_summary_rows.ts";
import { TableCount } from "./_table_count.ts";
import type { TableLayout } from "./_table_layout.ts";
import {
  faultOfRow,
  isBlankRow,
  isRowOfNumbers,
  isRuleRow,
  readingCells,
  unitsOfRow,
  unknownColumns,
} from "./_table_rows.ts";
import { scaledHeadings, titleUnit, UNDER_A_SCALE } from "./_unit_words.ts";
import { UnnamedCells } from "./_unnamed_cells.ts";

type Row = readonly string[];

/** Walks one table; headers may change on the way. */
export class TableScan {
  readonly count: TableCount;
  readonly #source: ScanSource;
  readonly #decimal: FileDecimal;
  readonly #mended: ReadonlySet<number>;
  readonly #firstHeader: number;
  #layout!: TableLayout;
  #reader!: LineReader;
  #summaries!: SummaryRows;
  #unnamed!: UnnamedCells;
  #means = new MeanRow();
  /** Whether a number stands in every zeroing of the sheet so far. */
  #numbered = true;
  #probe = 0;
  #cells: readonly ReadingCell[] = [];
  #awaitsUnits = true;
  /** Whether the header in use counts something else than a unit. */
  #isBarred = false;
  #afterGap = false;
  #sets = 0;
  #order: number;

  constructor(
    source: ScanSource,
    layout: TableLayout,
    decimal: FileDecimal,
    mended: readonly number[],
  ) {
    this.#source = source;
    this.count = new TableCount(source.file, source.problems);
    this.#decimal = decimal;
    this.#mended = new Set(mended);
    this.#order = source.firstOrder;
    this.#firstHeader = layout.headerLine;
    this.#use(layout);
  }

  /** Reads the rows below by a header. */
  #use(layout: TableLayout): void {
    const { file, piece, bench, problems } = this.#source;
    const { defaults, titleUnit: above } = this.#reader ?? {};
    this.finish();
    problems.addAll(unknownColumns(file, layout));
    const { columns, headings, unknown } = layout;
    this.#reader = new LineReader({
      file,
      piece,
      bench,
      decimal: this.#decimal,
      columns,
      headings,
      unknown,
      problems,
    });
    Object.assign(this.#reader.defaults, defaults);
    this.#reader.titleUnit = above;
    this.#layout = layout;
    this.#summaries = new SummaryRows(layout);
    this.#unnamed = new UnnamedCells(layout);
    this.#means = new MeanRow();
    this.#numbered = true;
    this.#cells = readingCells(layout, layout.units);
    this.#probe = this.#cells[0].index;
    this.#awaitsUnits = true;
    if (layout.sheet) {
      this.#reader.defaults.session ??= this.#source.sheetSession;
    }
  }

  /** Looks at one row of the file. */
  row(row: Row, line: number, last: boolean): void {
    const first = row[0];
    if (first.includes("#") && first.trimStart().startsWith("#")) {
      this.#comment(row, line);
      return;
    }
    if (line <= this.#firstHeader) {
      if (line < this.#firstHeader) this.#aboveHeader(row, line);
      return;
    }
    if (
      row.length === 1 ? first.trim() === "" : first === "" && isBlankRow(row)
    ) {
      this.#afterGap = true;
      return;
    }
    if (isRuleRow(row)) return;
    if (this.#awaitsUnits) {
      if (this.#setting(row, line)) return;
      this.#awaitsUnits = false;
      const found = unitsOfRow(row, this.#layout);
      if (found !== undefined) {
        this.#cells = readingCells(
          this.#layout,
          new Map([...this.#layout.units, ...found]),
        );
        return;
      }
    }
    const header = headerOfRow(row, this.#probe, this.#layout, line);
    if (header !== undefined) return this.#header(header, line);
    if (this.#isSummary(row, line)) return;
    if (this.#isBarred) this.#refuse(line, row, UNDER_A_SCALE);
    else if (this.#isWhole(row, line, last)) this.#read(row, line);
    this.#afterGap = false;
  }

  #comment(row: Row, line: number): void {
    const { headings, sheet, delimiter } = this.#layout;
    const set = sheet ? settingOfRow(row, delimiter) : undefined;
    if (set !== undefined) this.#reader.defaults[set.name] = set.value;
    const filled = (row[this.#probe] ?? "").trim() !== "";
    if (line > this.#firstHeader && row.length >= headings.length && filled) {
      const { faults } = this.#reader;
      faults.start(line);
      faults.remark("note", headings[0].trim(), row[0], COMMENT_LINE);
    }
  }

  /** Takes what a line above the readings of a sheet says of all of them. */
  #setting(row: Row, line: number): boolean {
    const set = this.#layout.sheet ? settingOfForm(row) : undefined;
    if (set === undefined) return false;
    this.#reader.defaults[set.name] = set.value;
    this.count.say("note", line, takenForAll(set.name, set.value));
    return true;
  }

  #aboveHeader(row: Row, line: number): void {
    if (this.#setting(row, line)) return;
    if (!isRowOfNumbers(row, this.#layout)) {
      this.#reader.titleUnit ??= titleUnit(row, line);
      return;
    }
    this.#refuse(line, row, aboveHeader(this.#firstHeader));
  }

  #header(header: TableLayout, line: number): void {
    const wrong = scaledHeadings(header, this.#source.file);
    const isSame = wrong.length === 0 && !this.#isBarred &&
      isHeaderAgain(header, this.#layout);
    this.count.say("note", line, headerBelow(isSame));
    this.#source.problems.addAll(wrong);
    this.#isBarred = wrong.length > 0;
    if (isSame) this.#awaitsUnits = true;
    else this.#use(header);
  }

  #isSummary(row: Row, line: number): boolean {
    const word = this.#summaries.wordIn(row);
    if (word === undefined) return false;
    const filled =
      this.#cells.filter(({ index }) => (row[index] ?? "").trim() !== "")
        .length;
    this.#refuse(line, row, summaryLine(word), Math.max(1, filled));
    return true;
  }

  #refuse(line: number, row: Row, fault: Fault, count?: number): void {
    this.count.refuse(line, row.join(this.#layout.delimiter), fault, count);
  }

  /** True when a row has the cells it should have; else it is refused. */
  #isWhole(row: Row, line: number, last: boolean): boolean {
    if (this.#mended.size > 0 && this.#mended.has(line)) {
      this.count.say("note", line, QUOTES_MENDED);
    }
    const fault = faultOfRow(row, this.#layout, this.#probe, last);
    if (fault === undefined) return true;
    if (fault.severity === "refused") this.#refuse(line, row, fault);
    else {
      this.#reader.faults.start(line);
      this.#reader.faults.remark("note", "", row[0], fault);
    }
    return false;
  }

  #read(row: Row, line: number): void {
    const { sheet, columns } = this.#layout;
    this.#unnamed.see(row, line);
    sayMeanInNote(this.#reader.faults, row, line, columns.get("note"));
    if (!sheet) return this.#readCell(row, line, this.#cells[0]);
    const zeroing = columns.get("zeroing");
    if (zeroing === undefined) {
      this.#reader.defaults.zeroing = `row ${++this.#sets}`;
      const label = columns.get("diameter_deg");
      const isBare = label !== undefined && (row[label] ?? "").trim() === "";
      this.#means.start(line, this.#afterGap || isBare);
    } else {
      // A word below numbers may say "mean" in any language.
      const isWord = !/\d/.test(row[zeroing] ?? "");
      this.#means.start(line, isWord && this.#numbered);
      this.#numbered &&= !isWord;
    }
    let filled = 0;
    for (const cell of this.#cells) {
      if ((row[cell.index] ?? "").trim() === "") continue;
      filled++;
      this.#readCell(row, line, cell);
    }
    if (filled > 0) return;
    this.#reader.faults.start(line);
    this.#reader.faults.remark(
      "note",
      this.#cells[0].zone ?? "",
      "",
      NO_READING_YET,
    );
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
    if (this.#layout.sheet) this.#means.see(cell.index, reading);
    this.#source.visit(reading);
  }

  /** Says what holds for all lines below one header. */
  finish(): void {
    if (this.#reader === undefined) return;
    const { file, problems } = this.#source;
    this.#reader.faults.finish();
    problems.addAll(this.#unnamed.problems(file));
    const line = this.#means.line();
    if (line !== undefined) this.count.say("warning", line, LIKE_A_MEAN);
  }
}
