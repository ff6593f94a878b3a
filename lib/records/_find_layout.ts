/**
 * How a file of readings is laid out: delimiter, header, units, kind.
 *
 * @module
 */
import { isCableLine } from "./_cable_line.ts";
import { closestName } from "./_closest_name.ts";
import { unitOfWord } from "./_read_cell.ts";
import {
  bracketed,
  isOwnName,
  plainName,
  REQUIRED_COLUMNS,
  tidyColumn,
} from "./_column_names.ts";
import { TIDY_COLUMNS, type TidyColumn } from "./tidy_columns.ts";
import { parseZoneName, type ZoneName } from "./_zone_name.ts";
import type { Problem } from "./problem.ts";

/** One column of a bench sheet that holds readings. */
export interface ZoneColumn {
  /** Its index in a row. */
  readonly index: number;
  /** The zone it names, without any unit. */
  readonly zone: string;
  /** What that name says. */
  readonly name: ZoneName;
}

/** A table of readings whose header was found. */
export interface TableLayout {
  readonly kind: "table";
  /** True for a bench sheet, whose columns are zones. */
  readonly sheet: boolean;
  readonly delimiter: string;
  /** Line of the header, from 1. */
  readonly headerLine: number;
  /** Headings as typed, trimmed. */
  readonly headings: readonly string[];
  /** Index of each known column. */
  readonly columns: ReadonlyMap<TidyColumn, number>;
  /** Columns of readings in a bench sheet; empty for a tidy file. */
  readonly zones: readonly ZoneColumn[];
  /** Unit in the heading of a column, by its index. */
  readonly units: ReadonlyMap<number, string>;
  /** Columns whose own name stands twice. */
  readonly repeated: readonly TidyColumn[];
  /** Indices of columns nobody knows. */
  readonly unknown: readonly number[];
}

/** A table, a cable's log, or nothing that can be read. */
export type Layout =
  | TableLayout
  | { readonly kind: "cable" }
  | {
    readonly kind: "none";
    readonly problems: readonly Problem[];
    /** Lines that are no readings: 1 where the header was found. */
    readonly headings: 0 | 1;
  };

/** Splits one line at a delimiter. */
export type LineSplitter = (line: string, delimiter: string) => string[];

const DELIMITERS = [",", ";", "\t", "|"] as const;
const LINES_SEARCHED = 60;
function tableOf(
  headings: readonly string[],
  delimiter: string,
  headerLine: number,
): { layout: TableLayout; score: number } {
  const columns = new Map<TidyColumn, number>();
  const zones: ZoneColumn[] = [];
  const units = new Map<number, string>();
  const unknown: number[] = [];
  const repeated: TidyColumn[] = [];
  const own = new Set(
    headings.map((one) => one.trim()).filter(isOwnName).map(tidyColumn),
  );
  let firm = 0;
  headings.forEach((heading, index) => {
    const typed = heading.trim();
    if (typed === "") {
      unknown.push(index);
      return;
    }
    const known = tidyColumn(typed);
    const unit = bracketed(typed);
    if (unit !== undefined && unitOfWord(unit) !== undefined) {
      units.set(index, unit);
    }
    const isOwn = isOwnName(typed);
    if (isOwn && known !== undefined && columns.has(known)) {
      repeated.push(known);
    }
    const yields = !isOwn && own.has(known);
    if (known !== undefined && !yields && !columns.has(known)) {
      columns.set(known, index);
      firm++;
      return;
    }
    const bare = typed.replace(/[([{].*?[)\]}]/g, " ").trim();
    const zone = parseZoneName(typed) === undefined ? bare : typed;
    const name = parseZoneName(zone);
    if (name !== undefined && known === undefined) {
      zones.push({ index, zone, name });
      if (!(name.kind === "fraction" && name.bare)) firm++;
      return;
    }
    unknown.push(index);
  });
  const tidy = columns.has("reading") || zones.length === 0;
  return {
    layout: {
      kind: "table",
      sheet: !tidy,
      // A lone column has no delimiter: a comma in it is a decimal comma.
      delimiter: headings.length === 1 ? "\t" : delimiter,
      headerLine,
      headings,
      columns,
      zones: tidy ? [] : zones,
      units,
      repeated,
      unknown: tidy ? [...unknown, ...zones.map((z) => z.index)] : unknown,
    },
    // Bare fractions among zones and no known column: a row of readings whose
    // header is missing, not a header.
    score: firm === 0 || (columns.size === 0 && zones.some(isBare))
      ? 0
      : firm + 0.01 * zones.length,
  };
}

function isBare({ name }: ZoneColumn): boolean {
  return name.kind === "fraction" && name.bare;
}

function missingColumns(
  layout: TableLayout,
  file: string,
  typed: string,
): Problem[] {
  const problems: Problem[] = [];
  for (const name of REQUIRED_COLUMNS) {
    if (layout.columns.has(name)) continue;
    if (name === "zone" && layout.columns.has("offset")) continue;
    const near = layout.unknown.map((i) => layout.headings[i])
      .find((heading) => closestName(plainName(heading), [name]) === name);
    problems.push({
      severity: "refused",
      code: "missing-column",
      file,
      line: layout.headerLine,
      column: name,
      message: `the header has no column ${name}`,
      value: typed,
      expected: `a header such as ${REQUIRED_COLUMNS.join(",")}`,
      mend: near === undefined
        ? `add a column ${name}`
        : `rename the column “${near}” to ${name}`,
    });
  }
  return problems;
}

/** A line with those that follow it inside an open quote, five at most. */
function withItsBreaks(text: string, from: number, end: number): string {
  const line = text.slice(from, end);
  if (!line.includes('"')) return line;
  let whole = line;
  for (let more = 0; more < 5; more++) {
    if (whole.split('"').length % 2 === 1) return whole;
    const next = text.indexOf("\n", from + whole.length + 1);
    const stop = next < 0 ? text.length : next;
    if (stop <= from + whole.length) break;
    whole = text.slice(from, stop);
  }
  return line;
}

/**
 * Finds delimiter and header by the names in it, never by counting marks.
 *
 * The line of the first sixty that holds the most known names under any
 * delimiter is the header; lines above it are titles. A table with a column
 * of readings is tidy; one whose columns are zones is a bench sheet.
 */
export function findLayout(
  text: string,
  file: string,
  split: LineSplitter,
): Layout {
  let best: { layout: TableLayout; score: number; typed: string } | undefined;
  let firstLine: { line: number; text: string } | undefined;
  let at = 0;
  let cable = 0;
  let filled = 0;
  for (let line = 1; line <= LINES_SEARCHED && at <= text.length; line++) {
    const end = text.indexOf("\n", at);
    const typed = withItsBreaks(text, at, end < 0 ? text.length : end);
    at = end < 0 ? text.length + 1 : end + 1;
    const bare = typed.trim();
    if (bare === "" || bare.startsWith("#")) continue;
    filled++;
    firstLine ??= { line, text: bare };
    if (isCableLine(typed)) {
      cable++;
      continue;
    }
    if (typed.length > 4_000) continue;
    for (const delimiter of DELIMITERS) {
      if (delimiter !== "," && !typed.includes(delimiter)) continue;
      const found = tableOf(split(typed, delimiter), delimiter, line);
      if (found.score > (best?.score ?? 0)) best = { ...found, typed: bare };
    }
  }
  if (best === undefined && cable > 0 && cable >= filled / 2) {
    return { kind: "cable" };
  }
  if (best === undefined) {
    return {
      kind: "none",
      headings: 0,
      problems: [{
        severity: "refused",
        code: "no-header",
        file,
        ...(firstLine === undefined ? {} : { line: firstLine.line }),
        message: "no line holds the names of the columns",
        ...(firstLine === undefined ? {} : { value: firstLine.text }),
        expected: `a header such as ${
          TIDY_COLUMNS.slice(0, 5).join(",")
        },… or, on a bench sheet, diameter,centre,50%,edge`,
        mend: "write the header above the readings",
      }],
    };
  }
  const twice = best.layout.repeated.map((name): Problem => ({
    severity: "refused",
    code: "repeated-column",
    file,
    line: best.layout.headerLine,
    column: name,
    message: `the header has two columns ${name}`,
    mend: "rename or take out the one that is not meant",
  }));
  if (twice.length > 0) return { kind: "none", headings: 1, problems: twice };
  if (!best.layout.sheet) {
    const problems = missingColumns(best.layout, file, best.typed);
    if (problems.length > 0) return { kind: "none", headings: 1, problems };
  }
  return best.layout;
}
