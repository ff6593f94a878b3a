/**
 * What the rows of a table may be besides readings.
 *
 * @module
 */
import { closestName } from "./closest_name.ts";
import { plainName } from "./_column_names.ts";
import { TIDY_COLUMNS } from "./tidy_columns.ts";
import { cellOfCsv } from "./csv_text.ts";
import type { TableLayout } from "./_table_layout.ts";
import type { Fault } from "./_line_faults.ts";
import type { ReadingCell } from "./_line_source.ts";
import { isPieceColumn } from "./_piece_column.ts";
import type { Problem } from "./problem.ts";
import { unitOfWord } from "./_read_cell.ts";

type Row = readonly string[];

const NUMBER =
  /^\s*[-+\u2212\u2013]?\s*\d*[.,]?\d+\s*(?:[mu\u00b5\u03bc]m|in|")?\s*$/;

/** So many unknown columns are named. */
const MOST_NAMED = 12;

/** True for a row without a filled cell. */
export function isBlankRow(row: Row): boolean {
  for (const cell of row) if (cell !== "" && cell.trim() !== "") return false;
  return true;
}

const RULE = /^[\s:]*[-=_\u2013\u2014\u2015\u2500\u2501\u2550~*+]{2,}[\s:]*$/;

/** True for a row that is a line drawn across the table, as `|---|---|` is. */
export function isRuleRow(row: Row): boolean {
  const first = row[0] === "" && row.length > 1 ? row[1] : row[0];
  const start = first.trimStart().charCodeAt(0);
  if (start > 47 && start < 58) return false;
  let rules = 0;
  for (const cell of row) {
    if (cell.trim() === "") continue;
    if (!RULE.test(cell)) return false;
    rules++;
  }
  return rules > 0;
}

/** True for a row with a number in at least half of a table's columns. */
export function isRowOfNumbers(row: Row, { headings }: TableLayout): boolean {
  const numbers = row.filter((cell) => NUMBER.test(cell)).length;
  return numbers >= Math.max(2, headings.length / 2);
}

/** Indices of the columns that hold readings. */
export function readingColumns(layout: TableLayout): readonly number[] {
  const reading = layout.columns.get("reading");
  return layout.sheet || reading === undefined
    ? layout.zones.map((zone) => zone.index)
    : [reading];
}

/** The cells that hold readings, each with the unit of its column. */
export function readingCells(
  layout: TableLayout,
  units: ReadonlyMap<number, string>,
): readonly ReadingCell[] {
  const unit = (index: number) => units.get(index) ?? "";
  return layout.sheet
    ? layout.zones.map(({ index, zone }) => ({
      index,
      unit: unit(index),
      zone,
    }))
    : readingColumns(layout).map((index) => ({ index, unit: unit(index) }));
}

/** The units of a row that holds nothing else under the readings. */
export function unitsOfRow(
  row: Row,
  layout: TableLayout,
): Map<number, string> | undefined {
  const units = new Map<number, string>();
  for (const index of readingColumns(layout)) {
    const word = (row[index] ?? "").trim().replace(/^[([]|[)\]]$/g, "");
    if (word === "") continue;
    if (unitOfWord(word) === undefined) return undefined;
    units.set(index, word);
  }
  return units.size > 0 ? units : undefined;
}

const MARK_NAMES: Readonly<Record<string, string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "strokes",
};

/** The mark between the cells of a row that has another one than its header. */
function otherMark(
  row: Row,
  { headings, delimiter }: TableLayout,
): string | undefined {
  if (headings.length < 3 || row.length > headings.length) return undefined;
  const typed = row.join(delimiter);
  if (typed.length > 2000) return undefined;
  const isFull = row.length === headings.length;
  return [";", "\t", "|", ","].find((mark) =>
    mark !== delimiter && typed.split(mark).length >= headings.length &&
    // A full row is one of decimal commas: it has the mark in every cell.
    (!isFull || row.slice(0, -1).every((cell) => cell.includes(mark)))
  );
}

/** What refuses a row as a whole, if anything does. */
export function faultOfRow(
  row: Row,
  layout: TableLayout,
  readingAt: number,
  last: boolean,
):
  | Fault & { readonly mend: string; readonly severity: "refused" | "note" }
  | undefined {
  const { headings, sheet, delimiter } = layout;
  const severity = "refused" as const;
  if (row.some((cell) => cell.includes("\u0000"))) {
    return {
      severity,
      code: "cut-off",
      message: "the line holds NUL bytes: it was cut off or damaged",
      mend: "type the line again",
    };
  }
  const other = otherMark(row, layout);
  if (other !== undefined) {
    return {
      severity,
      code: "other-marks",
      message: `${MARK_NAMES[other]} stand between the cells here, ${
        MARK_NAMES[delimiter] ?? "other marks"
      } in the header (line ${layout.headerLine})`,
      mend:
        "put these lines into a file of their own, or the same mark between all cells",
    };
  }
  if (row.length > headings.length && !isBlankRow(row.slice(headings.length))) {
    return {
      severity,
      code: "too-many-cells",
      message:
        `the line has ${row.length} cells, the header ${headings.length}`,
      mend: delimiter === ","
        ? "a decimal comma splits a number in a comma file: write a point, put the number in quotes, or put semicolons between the cells"
        : "put the cell that holds the mark between quotes",
    };
  }
  const short = row.length < headings.length && row.length <= readingAt + 1;
  const isTorn = last && row[row.length - 1].endsWith("\uFFFD");
  if (isTorn || last && !sheet && short) {
    return {
      severity,
      code: "cut-off",
      message: "the file ends in the middle of this line",
      mend: "type the line again",
    };
  }
  if (row.length > 1 || headings.length === 1) return undefined;
  // A line without a mark between cells: text below a sheet, or other marks.
  return sheet && !/\d/.test(row[0])
    ? {
      severity: "note",
      code: "text-line",
      message: "a line of text was passed over",
      mend: "nothing, if it is a remark",
    }
    : {
      severity,
      code: "too-few-cells",
      message: `the line has 1 cell, the header ${headings.length}`,
      mend: "put the same mark between the cells as in the header",
    };
}

/** The filled cells of columns that nobody knows, by their headings. */
export function otherCells(
  row: Row,
  table: {
    readonly unknown: readonly number[];
    readonly headings: readonly string[];
  },
): Record<string, string> {
  return Object.fromEntries(
    table.unknown.filter((index) => (row[index] ?? "") !== "")
      .map((index) => [
        table.headings[index].trim() || `column ${index + 1}`,
        cellOfCsv(row[index]),
      ]),
  );
}

/** A word about zones that head two columns of a bench sheet. */
function repeatedZones(file: string, layout: TableLayout): Problem[] {
  const seen = new Set<string>();
  return layout.zones.flatMap(({ zone, index }): Problem[] => {
    const name = plainName(zone) || zone;
    const isSided = /^[-+\u2212\u2013]/.test(zone);
    if (isSided || !seen.has(name)) {
      if (!isSided) seen.add(name);
      return [];
    }
    return [{
      severity: "note",
      code: "repeated-zone",
      file,
      line: layout.headerLine,
      column: layout.headings[index].trim(),
      message:
        `two columns are headed ${zone}; both are readings of that one place`,
      mend: `for the two ends of a diameter write ${zone} and -${zone}`,
    }];
  });
}

/** A word about the columns nobody knows, and what one was likely meant to be. */
export function unknownColumns(file: string, layout: TableLayout): Problem[] {
  const names = layout.unknown.map((i) => layout.headings[i].trim())
    .filter((name) => name !== "" && !isPieceColumn(name));
  const absent = TIDY_COLUMNS.filter((name) => !layout.columns.has(name));
  const problems: Problem[] = [];
  const rest: string[] = [];
  for (const name of names.slice(0, MOST_NAMED)) {
    const meant = layout.sheet && /^(?:zone|offset|reading)$/.test(name)
      ? undefined
      : closestName(plainName(name), absent);
    if (meant === undefined) rest.push(name.slice(0, 40));
    else {
      problems.push({
        severity: "warning",
        code: "unknown-column",
        file,
        line: layout.headerLine,
        column: name,
        message: "this column is kept but not used",
        mend: `did you mean ${meant}?`,
      });
    }
  }
  problems.push(...repeatedZones(file, layout));
  if (rest.length > 0) {
    problems.push({
      severity: "note",
      code: "unknown-column",
      file,
      line: layout.headerLine,
      message: `columns kept but not used: ${rest.join(", ")}${
        names.length > MOST_NAMED ? " and more" : ""
      }`,
    });
  }
  return problems;
}
