/**
 * How a file of readings is laid out: delimiter, header, units, kind.
 *
 * @module
 */
import { isCableLine } from "./_cable_line.ts";
import { closestName } from "./closest_name.ts";
import { plainName, REQUIRED_COLUMNS } from "./_column_names.ts";
import { markOfNames } from "./_mark_of_names.ts";
import { withHeadingsAbove } from "./_merged_headings.ts";
import type { Problem } from "./problem.ts";
import {
  DELIMITERS,
  namesBelowEachOther,
  NUMBER_FIRST,
  zonesBelowEachOther,
} from "./_sideways.ts";
import {
  isBare,
  isComplete,
  type TableLayout,
  tableOf,
} from "./_table_layout.ts";
import { readingColumns } from "./_table_rows.ts";
import { TIDY_COLUMNS } from "./tidy_columns.ts";
import { scaledHeadings } from "./_unit_words.ts";

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

/** A header of a bench sheet, for whoever has other names. */
const SHEET_NAMES = "zeroing,diameter_deg,centre,50%,edge";
const LINES_SEARCHED = 60;
/** A longer line is no header. */
const LONGEST_LINE = 100_000;
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
  const isForeign = problems.length === REQUIRED_COLUMNS.length &&
    problems.every(({ mend }) => mend?.startsWith("add"));
  return !isForeign ? problems : [{
    severity: "refused",
    code: "missing-column",
    file,
    line: layout.headerLine,
    message: "the names of the columns are not those known here",
    value: typed,
    expected: `${
      REQUIRED_COLUMNS.join(",")
    } or, on a bench sheet, ${SHEET_NAMES}`,
    mend: `write the names in English, such as ${SHEET_NAMES}`,
  }];
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

interface Header {
  readonly layout: TableLayout;
  readonly score: number;
  readonly typed: string;
}

/** True when a line of text is a line of readings under a header. */
function isUnder(
  typed: string,
  { layout }: Header,
  split: LineSplitter,
): boolean {
  const row = split(typed, layout.delimiter);
  return readingColumns(layout).some((index) => {
    const cell = row[index] ?? "";
    return NUMBER_FIRST.test(cell) && !/%\s*$/.test(cell);
  });
}

function noHeader(
  text: string,
  file: string,
  first: { readonly line: number; readonly text: string } | undefined,
): Layout {
  const mark = markOfNames(text);
  return {
    kind: "none",
    headings: 0,
    problems: [{
      severity: "refused",
      code: "no-header",
      file,
      ...(first === undefined ? {} : { line: first.line }),
      message: "no line holds the names of the columns",
      ...(first === undefined ? {} : { value: first.text }),
      expected: `a header such as ${
        TIDY_COLUMNS.slice(0, 5).join(",")
      },… or, on a bench sheet, diameter,centre,50%,edge`,
      mend: mark === undefined
        ? "write the header above the readings"
        : `${mark} between the cells: put commas, semicolons or tabs there`,
    }],
  };
}

/**
 * The header of a file: the line that holds the most known names, unless an
 * earlier one that can stand alone has readings below it.
 */
function headerAmong(
  headers: readonly Header[],
  lines: readonly { readonly line: number; readonly typed: string }[],
  split: LineSplitter,
): Header | undefined {
  const best = headers.reduce<Header | undefined>(
    (most, one) => one.score > (most?.score ?? 0) ? one : most,
    undefined,
  );
  if (best === undefined) return undefined;
  const earlier = headers.find((one) =>
    one.layout.headerLine < best.layout.headerLine && isComplete(one.layout) &&
    lines.some(({ line, typed }) =>
      line > one.layout.headerLine && line < best.layout.headerLine &&
      isUnder(typed, one, split)
    )
  );
  return earlier ?? best;
}

function hasZoneTwice({ zones }: TableLayout): boolean {
  return new Set(zones.map(({ zone }) => plainName(zone))).size < zones.length;
}

/**
 * Finds delimiter and header by the names in it, never by counting marks.
 *
 * The line of the first sixty that holds the most known names under any
 * delimiter is the header; lines above it are titles, unless one of them is a
 * header with readings of its own. A table with a column of readings is tidy;
 * one whose columns are zones is a bench sheet.
 */
export function findLayout(
  text: string,
  file: string,
  split: LineSplitter,
): Layout {
  const headers: Header[] = [];
  const lines: { line: number; typed: string }[] = [];
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
    if (typed.length > LONGEST_LINE) continue;
    lines.push({ line, typed });
    let best: Header | undefined;
    for (const delimiter of DELIMITERS) {
      if (delimiter !== "," && !typed.includes(delimiter)) continue;
      const found = tableOf(split(typed, delimiter), delimiter, line);
      if (found.score > (best?.score ?? 0)) best = { ...found, typed: bare };
    }
    if (best !== undefined) headers.push(best);
  }
  const best = headerAmong(headers, lines, split);
  const below = namesBelowEachOther(lines, split);
  const stands = best !== undefined && isComplete(best.layout);
  const isTidy = stands && !best.layout.sheet;
  // Lines such as “Session,S7” above a sheet say what holds for all of it.
  const isSheet = stands && best.layout.sheet &&
    lines.some(({ line, typed }) =>
      line > best.layout.headerLine && isUnder(typed, best, split)
    );
  const headsSheet = isSheet && below !== undefined &&
    below.last <= best.layout.headerLine;
  // A heading that is a bare number may be a diameter as well as a zone.
  const hasZones = isSheet && !best.layout.zones.every(isBare);
  const zones = hasZones ? undefined : zonesBelowEachOther(lines, split);
  const sideways = headsSheet ? zones : below ?? zones;
  if (sideways !== undefined && !isTidy) {
    const what = sideways === zones ? "zones" : "columns";
    return {
      kind: "none",
      headings: 0,
      problems: [{
        severity: "refused",
        code: "sideways",
        file,
        line: sideways.line,
        message: `the names of the ${what} stand below each other (${
          sideways.names.join(", ")
        }): the table lies on its side`,
        expected: "the names in one line, and a line for each reading",
        mend:
          "turn the table in the spreadsheet (copy it, paste it transposed)",
      }],
    };
  }
  if (best === undefined) {
    return cable > 0 && cable >= filled / 2
      ? { kind: "cable" }
      : noHeader(text, file, firstLine);
  }
  const { layout } = best;
  const isPair = layout.sheet && hasZoneTwice(layout);
  const twice = layout.repeated.map((name): Problem => ({
    severity: "refused",
    code: "repeated-column",
    file,
    line: layout.headerLine,
    column: name,
    message: `the header has two columns ${name}${
      isPair ? ": two tables stand side by side" : ""
    }`,
    mend: isPair
      ? "put one table below the other, each with its header"
      : "rename or take out the one that is not meant",
  }));
  const wrong = twice.length > 0 ? twice : scaledHeadings(layout, file);
  if (wrong.length > 0) return { kind: "none", headings: 1, problems: wrong };
  if (!layout.sheet) {
    const problems = missingColumns(layout, file, best.typed);
    if (problems.length > 0) return { kind: "none", headings: 1, problems };
  }
  const above = lines.findLast(({ line }) => line < layout.headerLine);
  return !layout.sheet || above?.line !== layout.headerLine - 1
    ? layout
    : withHeadingsAbove(layout, split(above.typed, layout.delimiter));
}
