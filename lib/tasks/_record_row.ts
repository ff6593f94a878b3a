/**
 * Rows of a comma file as text, so that one cell can change and no other.
 *
 * @module
 */

/** Where each cell of a row stands, or nothing when a quote is left open. */
function cellSpans(row: string): [number, number][] | undefined {
  const spans: [number, number][] = [];
  let start = 0;
  let quoted = false;
  for (let i = 0; i <= row.length; i++) {
    if (row[i] === '"') quoted = !quoted;
    if (i < row.length && (quoted || row[i] !== ",")) continue;
    spans.push([start, i]);
    start = i + 1;
  }
  return quoted ? undefined : spans;
}

/**
 * Puts a mark into one cell of a row and leaves the rest as it was typed.
 *
 * @param row The row without its line end.
 * @param column Index of the cell; a short row is made long enough.
 * @param mark A text without commas and quotes.
 * @returns The row; `undefined` when it cannot be told where its cells end.
 */
export function markedRow(
  row: string,
  column: number,
  mark: string,
): string | undefined {
  const spans = cellSpans(row);
  if (spans === undefined) return undefined;
  const span = spans[column];
  if (span === undefined) {
    return `${row}${",".repeat(column - spans.length + 1)}${mark}`;
  }
  return `${row.slice(0, span[0])}${mark}${row.slice(span[1])}`;
}

/**
 * The headings of a file that rows may be appended to, as typed.
 *
 * @param text The file.
 * @returns The headings; `undefined` where the first line is no plain header
 * of a comma file with a line for each reading.
 */
export function plainHeadings(text: string): readonly string[] | undefined {
  const [line] = text.replace(/^\uFEFF/, "").split(/\r\n?|\n/, 1);
  if (/["';\t|#]/.test(line)) return undefined;
  const headings = line.split(",").map((cell) => cell.trim().toLowerCase());
  const whole = ["session", "zeroing", "zone", "reading"]
    .every((name) => headings.includes(name));
  const once = new Set(headings).size === headings.length;
  return whole && once ? headings : undefined;
}

/** Adds headings to the end of a text's first line; its line end is kept. */
export function withHeadings(text: string, more: readonly string[]): string {
  const end = text.search(/\r|\n/);
  const at = end < 0 ? text.length : end;
  return `${text.slice(0, at)},${more.join(",")}${text.slice(at)}`;
}

/** Splits a text into lines with their line ends. */
export function linesOf(text: string): string[] {
  return text.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];
}

/** True for a file without a single sign. */
export function isBlank(text: string): boolean {
  return text.replace(/^\uFEFF/, "").trim() === "";
}

/** True for a table in which rows of readings would not fit. */
export function isForeign(text: string | undefined): boolean {
  if (text === undefined || isBlank(text)) return false;
  // Quoted decimal commas would make the points of new lines doubtful.
  return plainHeadings(text) === undefined || /"\s*[-+]?\d*,\d/.test(text);
}

/** A number as a file keeps it: the figures as typed, with a point. */
export function plainNumber(typed: string, amount: number): string {
  const bare = typed.trim().replace(/^[\u2212\u2013]/, "-").replace(",", ".")
    .replace(/\s*[^\d.]*$/, "").replace(/^\+/, "");
  return /^-?\d*\.?\d+$/.test(bare) && Number(bare) === amount
    ? bare
    : String(amount);
}
