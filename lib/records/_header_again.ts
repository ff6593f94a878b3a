/**
 * Headers in the middle of a file: the same once more, or another.
 *
 * @module
 */
import { plainName } from "./_column_names.ts";
import { remembered } from "./_memo.ts";
import {
  isComplete,
  isKnownHeading,
  type TableLayout,
  tableOf,
} from "./_table_layout.ts";

type Row = readonly string[];

const LONGEST = 80;

/** True for a cell that names a column or a zone. */
const isHeading = remembered(isKnownHeading);

/** Signs of any kind before a figure, as in “−0.3 mm”. */
const SIGNED = /^[^\p{L}\p{N}]*\p{N}/u;

/** True for a cell that begins as a reading does; looked at in every row. */
function beginsWithNumber(cell: string): boolean {
  const code = cell.charCodeAt(0);
  return code < 58 ? code !== 35 : code > 127 && SIGNED.test(cell);
}

/**
 * The header that a row is; `undefined` for any other row.
 *
 * A row is a header where the cell of the first reading names a column or a
 * zone, and the row holds all that a line of readings needs.
 */
export function headerOfRow(
  row: Row,
  probe: number,
  layout: TableLayout,
  line: number,
): TableLayout | undefined {
  const cell = row[probe] ?? row[row.length - 1];
  if (cell === "" || cell.length > LONGEST) return undefined;
  if (beginsWithNumber(cell) && !cell.trimEnd().endsWith("%")) return undefined;
  if (!isHeading(cell)) return undefined;
  const { layout: found, score } = tableOf(row, layout.delimiter, line);
  return score > 1 && isComplete(found) ? found : undefined;
}

/** True when two headers name the same columns in the same order. */
export function isHeaderAgain(one: TableLayout, other: TableLayout): boolean {
  const names = ({ headings, units }: TableLayout) =>
    headings.map((heading, i) => `${plainName(heading)} ${units.get(i) ?? ""}`)
      .join("|").replace(/[ |]+$/, "");
  return names(one) === names(other);
}
