/**
 * The rows of a CSV text, parsed slice by slice.
 *
 * @module
 */
// @ts-types="@types/papaparse"
import type { ParseResult } from "papaparse";

/** Parses a text with a given delimiter; Papa Parse, once it is loaded. */
export type CsvParser = (
  text: string,
  delimiter: string,
) => ParseResult<string[]>;

/** Small enough that the rows of a slice die young in the collector. */
const SLICE = 1 << 16;
const BLANK: readonly string[][] = [[""]];

/** Loads Papa Parse. */
export async function loadCsvParser(): Promise<CsvParser> {
  // @ts-types="@types/papaparse"
  const { default: Papa } = await import("papaparse");
  return (text, delimiter) =>
    Papa.parse<string[]>(text, { delimiter, newline: "\n", header: false });
}

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

/** Which part of a file a text is; all of it unless told. */
export interface PartOfText {
  /** The line it starts at, from 1. */
  readonly firstLine?: number;
  /** False if more follows after another line end. */
  readonly isEnd?: boolean;
}

/**
 * Visits every row with the line it starts at, from 1.
 *
 * The text has LF line ends and its quotes are in order. `last` is true for
 * the row that ends with the text and not with a line end. Of a part of a text
 * it gives back the line that the next part starts at.
 */
export function rowsOfText(
  text: string,
  delimiter: string,
  parse: CsvParser,
  visit: (row: readonly string[], line: number, last: boolean) => void,
  { firstLine = 1, isEnd = true }: PartOfText = {},
): number {
  const hasQuotes = text.includes('"');
  const endsCleanly = text.endsWith("\n") || !isEnd;
  let line = firstLine;
  // A part that ends with a line end has one more line, a blank one.
  const stop = isEnd ? text.length : text.length + 1;
  for (let from = 0; from < stop;) {
    const end = endOfSlice(text, from, hasQuotes);
    const slice = text.slice(from, end);
    const rows = slice === "" ? BLANK : parse(slice, delimiter).data;
    const lastRow = !endsCleanly && end >= text.length ? rows.length - 1 : -1;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i];
      visit(row, line, i === lastRow);
      line++;
      if (!hasQuotes) continue;
      for (const cell of row) {
        for (let at = cell.indexOf("\n"); at >= 0;) {
          line++;
          at = cell.indexOf("\n", at + 1);
        }
      }
    }
    from = end + 1;
  }
  return line;
}
