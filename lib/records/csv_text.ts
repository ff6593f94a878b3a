/**
 * Rows of text to a CSV file that starts no formula.
 *
 * @module
 */

import { parseUnit } from "../units/length_unit.ts";

/** A cell that a spreadsheet takes for a formula, or a reader for a comment. */
const FORMULA = /^[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20|#]/;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
/** A signed number and what stands behind it. */
const SIGNED_AMOUNT = /^[+-](?:\d[\d.,]*|[.,]\d+)\s*(\D{1,16})$/;
const COMMA_NUMBER = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/;

/** How a file is to be written. */
export interface CsvOptions {
  /**
   * True: semicolons between cells, and a cell such as `-0,715` is a number,
   * as spreadsheets of countries with a decimal comma write and read. Default
   * false.
   */
  readonly decimalComma?: boolean;
}

/** True for a length such as `-0.715 mm`, which no spreadsheet works out. */
function isLength(cell: string): boolean {
  const unit = SIGNED_AMOUNT.exec(cell)?.[1];
  return unit !== undefined && parseUnit(unit).kind === "unit";
}

function cellText(cell: string, number: RegExp): string {
  const safe = FORMULA.test(cell) && !number.test(cell) && !isLength(cell) ||
      cell.startsWith("\t") || cell.startsWith("\r") || cell.startsWith("'")
    ? `'${cell}`
    : cell;
  return !number.test(safe) && /[",;\t\r\n]|^\s|\s$/.test(safe)
    ? `"${safe.replaceAll('"', '""')}"`
    : safe;
}

/**
 * Writes rows as CSV: commas or semicolons, LF, quotes where needed.
 *
 * A text that begins with `=`, `+`, `-`, `@`, `#` or the like, and is neither a
 * plain number nor a length such as `-0.715 mm`, gets an apostrophe before it: spreadsheets then show it as text and
 * start nothing. A text that begins with an apostrophe gets a second one, so
 * that {@link cellOfCsv} can take it off again without loss.
 *
 * @param rows Cells as text, row by row; numbers as they are to stand there.
 * @param options Whether numbers have a decimal comma.
 * @returns The file's text; each row ends in LF.
 *
 * @example
 * ```ts
 * import { csvText } from "sagbook/records/csv_text.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   csvText([["note", "reading"], ["=1+1", "-0.715"]]),
 *   "note,reading\n'=1+1,-0.715\n",
 * );
 * ```
 */
export function csvText(
  rows: readonly (readonly string[])[],
  options: CsvOptions = {},
): string {
  const [separator, number] = options.decimalComma
    ? [";", COMMA_NUMBER]
    : [",", NUMBER];
  return rows.map((row) =>
    `${row.map((cell) => cellText(cell, number)).join(separator)}\n`
  ).join("");
}

/**
 * Takes off the apostrophe that {@link csvText} put before a cell.
 *
 * @param cell A cell as it stands in the file.
 * @returns The text that was written.
 *
 * @example
 * ```ts
 * import { cellOfCsv } from "sagbook/records/csv_text.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(cellOfCsv("'=1+1"), "=1+1");
 * equal(cellOfCsv("'twas dry"), "'twas dry");
 * ```
 */
export function cellOfCsv(cell: string): string {
  if (!cell.startsWith("'")) return cell;
  const rest = cell.slice(1);
  return FORMULA.test(rest) || /^[\t\r']/.test(rest) ? rest : cell;
}
