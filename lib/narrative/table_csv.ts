/**
 * A table as it shows to a CSV file that a spreadsheet opens right.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { htmlTables, type TextTable } from "../display/html_tables.ts";
import { csvText } from "../records/csv_text.ts";
import { type FileColumn, fileColumns } from "./_number_columns.ts";

/** How a table is written. */
export interface TableCsvOptions {
  /**
   * True: decimal commas and semicolons, for spreadsheets of countries that
   * write so. Default false.
   */
  readonly decimalComma?: boolean;
}

/** What says to a spreadsheet that the file is UTF-8. */
const MARK = "\uFEFF";
const NUMBER = /^-?\d+(?:\.\d+)?(?:e-?\d+)?$/;

function columnsOf(table: TextTable): readonly FileColumn[] {
  const width = table.columns.length || (table.rows[0]?.length ?? 0);
  return Array.from({ length: width }, (_, place) => {
    const name = oneSpace(table.columns[place] ?? "");
    const cells = table.rows.map((row) => oneSpace(row[place]));
    // The first column names its rows; a zone called "50 %" is a name.
    return place === 0 || table.columns.length === 0
      ? [{ name, cells }]
      : fileColumns(name, cells);
  }).flat();
}

function oneSpace(text: string): string {
  return text.replace(/[\u00a0\u2007\u2009\u202f]/g, " ");
}

/**
 * Writes a table as CSV: UTF-8 with its mark, CRLF, a unit in the name of its
 * column, nothing but numbers below it.
 *
 * The numbers are those that show, digit for digit. `0.6012 ± 0.0011 mm`
 * becomes two columns, `mean sag (mm)` and `mean sag ± (mm)`; a range becomes
 * two, low and high. A dash is left blank. Text that a spreadsheet would take
 * for a formula is made harmless (see `csvText`). The caption is not in the
 * file: a spreadsheet would take it for a row.
 *
 * @param table A table of a notebook's cell, as `zonesTable` and `table` make
 * it, or one read by `htmlTables`.
 * @param options Whether numbers have a decimal comma.
 * @returns The file's text.
 * @throws {TypeError} If the value shows no table.
 *
 * @example
 * ```ts
 * import { tableCsv } from "sagbook/narrative/table_csv.ts";
 * import { table } from "sagbook/display/table.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = table([
 *   { zone: "centre", sag: "0.6012 ± 0.0011 mm", against: "—" },
 *   { zone: "edge", sag: "0.5990 ± 0.0016 mm", against: "−2.2 µm" },
 * ]);
 * equal(
 *   await tableCsv(zones),
 *   "\ufeffzone,sag (mm),sag ± (mm),against (µm)\r\n" +
 *     "centre,0.6012,0.0011,\r\nedge,0.5990,0.0016,-2.2\r\n",
 * );
 * ```
 */
export async function tableCsv(
  table: TextTable | Displayable,
  options: TableCsvOptions = {},
): Promise<string> {
  const found = "rows" in table ? table : await shownTable(table);
  const columns = columnsOf(found);
  const { decimalComma = false } = options;
  const rows = found.rows.map((_, row) =>
    columns.map(({ cells }) =>
      decimalComma && NUMBER.test(cells[row])
        ? cells[row].replace(".", ",")
        : cells[row]
    )
  );
  const head = columns.map(({ name }) => name);
  const lines = found.columns.length > 0 ? [head, ...rows] : rows;
  return MARK + lines
    .map((line) => csvText([line], { decimalComma }).slice(0, -1) + "\r\n")
    .join("");
}

/** The first table that a value shows. */
async function shownTable(value: Displayable): Promise<TextTable> {
  const html = (await value[jupyterDisplay]())["text/html"];
  const [found] = typeof html === "string" ? htmlTables(html) : [];
  if (found === undefined) {
    throw new TypeError(
      "Cannot write CSV as the value must show a table: it shows none",
    );
  }
  return found;
}
