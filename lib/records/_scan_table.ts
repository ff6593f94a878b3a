/**
 * A tidy file or a bench sheet, row by row.
 *
 * @module
 */
import { decimalMarkOf } from "./_decimal_mark.ts";
import type { FileAccount } from "./folder.ts";
import { mendQuotes } from "./_mend_quotes.ts";
import { type CsvParser, rowsOfText } from "./_rows_of_text.ts";
import type { ScanSource } from "./_scan_text.ts";
import type { TableLayout } from "./_table_layout.ts";
import { endTable } from "./_table_account.ts";
import { TableScan } from "./_table_scan.ts";

/** Walks a table; every line of readings in it is used or reported. */
export function scanTable(
  typed: string,
  layout: TableLayout,
  source: ScanSource,
  parse: CsvParser,
): FileAccount {
  const { file, bench } = source;
  const { delimiter, headings } = layout;
  const { text, mended } = mendQuotes(typed, delimiter, headings.length);
  const decimal = decimalMarkOf(text, delimiter, bench.decimalMark);
  const scan = new TableScan(source, layout, decimal, mended);
  rowsOfText(
    text,
    delimiter,
    parse,
    (row, line, last) => scan.row(row, line, last),
  );
  return endTable(scan, file, layout);
}
