/**
 * A CSV file whose every line is one record of known columns.
 *
 * @module
 */
import type { LengthUnitName } from "../units/length_unit.ts";
import { plainName } from "./_column_names.ts";
import { decimalMarkOf } from "./_decimal_mark.ts";
import { decodeText, tableLines } from "./_decode_text.ts";
import type { LineCount } from "./folder.ts";
import { LineFaults } from "./_line_faults.ts";
import { mendQuotes } from "./_mend_quotes.ts";
import type { Problem } from "./problem.ts";
import { ProblemCollector } from "./_problem_collector.ts";
import { type CsvParser, loadCsvParser, rowsOfText } from "./_rows_of_text.ts";
import { columnProblems } from "./_typed_columns.ts";
import { TableLine } from "./_table_line.ts";
import { isNoRecord, TypedRows } from "./_typed_rows.ts";

/** What a typed table may hold. */
export interface TableSpec {
  /** The columns by their names, each with other names for it. */
  readonly columns: Readonly<Record<string, readonly string[]>>;
  /** Columns that the header must have. */
  readonly required: readonly string[];
  /** Columns of which the header must have one, the usual one first. */
  readonly oneOf?: readonly string[];
}

/** Records of a table, and what became of its lines. */
export interface TypedTable<T> {
  /** The records. */
  readonly records: T[];
  /** The count of lines. */
  readonly lines: LineCount;
  /** Everything there is to say. */
  readonly problems: Problem[];
}

/** A longer line is no header. */
const LONGEST_LINE = 100_000;

interface Header {
  readonly line: number;
  readonly delimiter: string;
  readonly headings: readonly string[];
  readonly at: ReadonlyMap<string, number>;
}

/** The column that each known word means. */
function namesOf({ columns }: TableSpec): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(columns).flatMap(([name, others]) =>
      [name, ...others].map((one) => [one, name] as const)
    ),
  );
}

function findHeader(
  text: string,
  spec: TableSpec,
  parse: CsvParser,
): Header | undefined {
  const names = namesOf(spec);
  let best: Header | undefined;
  text.split("\n", 40).forEach((typed, index) => {
    if (typed.length > LONGEST_LINE || typed.trimStart().startsWith("#")) {
      return;
    }
    for (const delimiter of [",", ";", "\t", "|"]) {
      const headings = parse(typed, delimiter).data[0] ?? [];
      const at = new Map<string, number>();
      headings.forEach((heading, i) => {
        const name = names.get(plainName(heading));
        if (name !== undefined && !at.has(name)) at.set(name, i);
      });
      if (at.size > (best?.at.size ?? 0)) {
        best = { line: index + 1, delimiter, headings, at };
      }
    }
  });
  return best;
}

/** Reads a table; every line becomes a record or is reported. */
export async function readTypedTable<T>(
  content: string | Uint8Array,
  file: string,
  spec: TableSpec,
  unit: LengthUnitName | undefined,
  make: (line: TableLine) => T | undefined,
): Promise<TypedTable<T>> {
  const decoded = decodeText(content, file);
  const typed = tableLines(decoded.text);
  const problems = new ProblemCollector();
  problems.addAll(decoded.problems);
  const count = { read: 0, used: 0, reported: 0 };
  const records: T[] = [];
  const done = () => ({ records, lines: count, problems: problems.list() });
  if (decoded.problems.some(({ severity }) => severity === "refused")) {
    count.read = count.reported = 1;
    return done();
  }
  if (typed.trim() === "") return done();
  const parse = await loadCsvParser();
  const header = findHeader(typed, spec, parse);
  const { oneOf = [] } = spec;
  const missing = [
    ...spec.required.filter((name) => !header?.at.has(name)),
    ...oneOf.some((name) => header?.at.has(name)) ? [] : oneOf.slice(0, 1),
  ];
  if (header === undefined || missing.length > 0) {
    const lines = typed.split("\n").filter((one) => one.trim() !== "");
    count.read = count.reported = lines.length - (header === undefined ? 0 : 1);
    problems.add({
      severity: "refused",
      code: header === undefined ? "no-header" : "missing-column",
      file,
      line: header?.line ?? 1,
      message: header === undefined
        ? "no line holds the names of the columns"
        : `the header has no column ${missing.join(", ")}`,
      expected: Object.keys(spec.columns).join(","),
      mend: "write the header above the lines",
      count: count.reported,
    });
    return done();
  }
  const { delimiter, headings, at } = header;
  const odd = columnProblems(file, header.line, headings, at, namesOf(spec));
  problems.addAll(odd);
  if (odd.some(({ severity }) => severity === "refused")) {
    const lines = typed.split("\n").filter((one) => one.trim() !== "");
    count.read = count.reported = lines.length - 1;
    return done();
  }
  const { text } = mendQuotes(typed, delimiter, headings.length);
  const decimal = decimalMarkOf(text, delimiter, undefined);
  const faults = new LineFaults(file, problems);
  const rows = new TypedRows(headings, delimiter);
  rowsOfText(text, delimiter, parse, (row, line, last) => {
    if (line <= header.line || isNoRecord(row)) return;
    faults.start(line);
    const again = rows.headerAgain(row);
    if (again !== undefined) {
      faults.remark("note", headings[0], row[0], again);
      return;
    }
    count.read++;
    const fault = rows.faultOf(row, last);
    if (fault !== undefined) {
      count.reported++;
      faults.refuse(headings[0], row.join(delimiter), fault);
      return;
    }
    const record = make(
      new TableLine(line, row, at, headings, faults, decimal, unit),
    );
    if (record === undefined || faults.refused) {
      count.reported++;
      return;
    }
    count.used++;
    records.push(record);
  });
  faults.finish();
  return done();
}
