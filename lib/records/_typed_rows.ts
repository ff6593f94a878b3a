/**
 * Rows of a typed table that are no records.
 *
 * @module
 */
import { plainName } from "./_column_names.ts";
import type { Fault } from "./_line_faults.ts";
import { headerBelow, summaryLine } from "./_row_words.ts";
import { isSummaryWord } from "./_summary_line.ts";
import { isBlankRow, isRuleRow } from "./_table_rows.ts";

type Row = readonly string[];

/** True for a row to pass over: blank, a comment, a line across the table. */
export function isNoRecord(row: Row): boolean {
  return isBlankRow(row) || row[0].trimStart().startsWith("#") ||
    isRuleRow(row);
}

/** Knows what refuses a row of a typed table as a whole. */
export class TypedRows {
  readonly #headings: readonly string[];
  readonly #delimiter: string;
  #areWhole = true;
  #rows = 0;

  /** Sets the header. */
  constructor(headings: readonly string[], delimiter: string) {
    this.#headings = headings;
    this.#delimiter = delimiter;
  }

  /** What a row that repeats the header is told; `undefined` for others. */
  headerAgain(row: Row): Fault | undefined {
    const same = this.#headings.every((heading, i) =>
      plainName(heading) === plainName(row[i] ?? "")
    );
    return same ? headerBelow(true) : undefined;
  }

  /** Why a row is refused as a whole, if it is. */
  faultOf(row: Row, last: boolean): Fault | undefined {
    const wanted = this.#headings.length;
    const wasWhole = this.#areWhole && this.#rows > 0;
    this.#rows++;
    if (row.length < wanted) this.#areWhole = false;
    if (row.some((cell) => cell.includes("\u0000"))) {
      return {
        code: "cut-off",
        message: "the line holds NUL bytes: it was cut off or damaged",
        mend: "type the line again",
      };
    }
    if (last && (row.length < wanted && wasWhole || this.#isTorn(row))) {
      return {
        code: "cut-off",
        message: "the file ends in the middle of this line",
        mend: "type the line again",
      };
    }
    if (row.length > wanted && !isBlankRow(row.slice(wanted))) {
      return {
        code: "too-many-cells",
        message: `the line has ${row.length} cells, the header ${wanted}`,
        mend: this.#delimiter === ","
          ? "a decimal comma splits a number in a comma file: write a point, or put the cell in quotes"
          : "put a cell that holds the mark between cells in quotes",
      };
    }
    const [first] = row;
    return isSummaryWord(first) ? summaryLine(first.trim()) : undefined;
  }

  #isTorn(row: Row): boolean {
    return row[row.length - 1].endsWith("\uFFFD");
  }
}
