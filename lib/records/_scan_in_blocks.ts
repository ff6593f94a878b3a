/**
 * A long file of readings, read some lines at a time.
 *
 * @module
 */
import {
  markShown,
  type MarksShown,
  marksShown,
  statedMark,
} from "./_decimal_mark.ts";
import { findLayout } from "./_find_layout.ts";
import type { FileAccount } from "./folder.ts";
import { loadCsvParser, rowsOfText } from "./_rows_of_text.ts";
import type { ScanSource } from "./_scan_text.ts";
import type { TableLayout } from "./_table_layout.ts";
import { endTable } from "./_table_account.ts";
import { TableScan } from "./_table_scan.ts";

/** A file of more bytes is read in blocks. */
export const LARGE_FILE: number = 4 * 1024 * 1024;

const BLOCK = 1 << 20;
/** A file with a longer line is no table. */
const LONGEST_LINE = 1 << 22;
/** Quotes may span lines, and the rest are signs of damage: read it whole. */
const ODD = new RegExp(
  '["\u0000\u0085\u2028\u2029\v\f\u001a\u001e\uFFFD]',
);

/** Whole lines of a file, without the line end after the last. */
interface Block {
  readonly text: string;
  /** Bytes read so far. */
  readonly bytes: number;
  readonly isEnd: boolean;
}

function withLineFeeds(text: string): string {
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}

/** Reads a file of UTF-8 as blocks of lines, up to a number of bytes. */
async function* blocksOf(
  path: string,
  size: number,
  block: number,
): AsyncGenerator<Block> {
  using file = await Deno.open(path);
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const buffer = new Uint8Array(block);
  let rest = "";
  for (let bytes = 0; bytes < size;) {
    const room = buffer.subarray(0, Math.min(block, size - bytes));
    const count = await file.read(room);
    if (count === null) break;
    const start = bytes === 0;
    bytes += count;
    let text = rest +
      decoder.decode(room.subarray(0, count), { stream: bytes < size });
    if (start) text = text.replace(/^\uFEFF+/, "");
    const end = text.lastIndexOf("\n");
    if (end < 0 && text.length > LONGEST_LINE) {
      throw new RangeError(
        `Cannot read a table in blocks as its lines must be shorter: current value is ${text.length} characters`,
      );
    }
    rest = text.slice(end + 1);
    if (end >= 0) {
      const lines = text.slice(0, end).replace(/\r$/, "");
      yield { text: withLineFeeds(lines), bytes, isEnd: false };
    }
  }
  yield { text: withLineFeeds(rest), bytes: size, isEnd: true };
}

/** What must be known of a file before its first row is read. */
interface Survey {
  readonly layout: TableLayout;
  readonly marks: MarksShown;
}

/** Looks through a file; `undefined` when it must be read whole. */
async function surveyOf(
  path: string,
  size: number,
  file: string,
  block: number,
): Promise<Survey | undefined> {
  const parse = await loadCsvParser();
  let layout: TableLayout | undefined;
  let marks: MarksShown = { comma: false, point: false };
  for await (const { text } of blocksOf(path, size, block)) {
    if (ODD.test(text)) return undefined;
    if (layout === undefined) {
      const found = findLayout(
        text,
        file,
        (line, delimiter) => parse(line, delimiter).data[0] ?? [],
      );
      if (found.kind !== "table") return undefined;
      layout = found;
    }
    if (marks.comma && marks.point) continue;
    const { comma, point } = marksShown(text, layout.delimiter);
    marks = { comma: marks.comma || comma, point: marks.point || point };
  }
  return layout === undefined ? undefined : { layout, marks };
}

/**
 * Walks a long table block by block, so that no more than a block of its text
 * is in memory. It finds what {@linkcode scanText} finds of the same bytes.
 *
 * @param path Where the file is.
 * @param size Its bytes; what is added meanwhile is not read.
 * @param source As of `scanText`.
 * @param onBytes Told how many bytes have been read.
 * @param block How many bytes are read at a time; a mebibyte unless told.
 * @returns The account; `undefined` when the file must be read whole, since it
 * is no table, holds quotes or is not plain UTF-8. Nothing was visited then.
 */
export async function scanInBlocks(
  path: string,
  size: number,
  source: ScanSource,
  onBytes: (bytes: number) => void,
  block = BLOCK,
): Promise<FileAccount | undefined> {
  const { file, bench: { decimalMark } } = source;
  const survey = await surveyOf(path, size, file, block).catch(() => undefined);
  if (survey === undefined) return undefined;
  const { layout, marks } = survey;
  const decimal = statedMark(decimalMark) ?? markShown(marks);
  const scan = new TableScan(source, layout, decimal, []);
  const parse = await loadCsvParser();
  let firstLine = 1;
  for await (const { text, bytes, isEnd } of blocksOf(path, size, block)) {
    firstLine = rowsOfText(
      text,
      layout.delimiter,
      parse,
      (row, line, last) => scan.row(row, line, last),
      { firstLine, isEnd },
    );
    onBytes(bytes);
  }
  return endTable(scan, file, layout);
}
