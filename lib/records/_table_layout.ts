/**
 * What the headings of a table say: its columns, zones and units.
 *
 * @module
 */
import {
  bracketed,
  isOwnName,
  plainName,
  REQUIRED_COLUMNS,
  tidyColumn,
} from "./_column_names.ts";
import { unitOfWord } from "./_read_cell.ts";
import type { TidyColumn } from "./tidy_columns.ts";
import { isUnclearPlace, parseZoneName, type ZoneName } from "./_zone_name.ts";

/** One column of a bench sheet that holds readings. */
export interface ZoneColumn {
  /** Its index in a row. */
  readonly index: number;
  /** The zone it names, without any unit. */
  readonly zone: string;
  /** What that name says; `undefined` where it names no place for certain. */
  readonly name: ZoneName | undefined;
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

/** Unit words after a name: `sag mm`, `edge/µm`, `reading in inches`. */
const UNIT_AFTER =
  /^(.*?[\p{L}\p{N}%])(?:\s*[/,_]\s*|\s+in\s+|\s+)(mm|um|µm|μm|micrometres?|millimetres?|thou|mil|inch(?:es)?)\.?$/iu;

/** A heading's name, and the unit in brackets or behind it. */
function headingParts(typed: string): { name: string; unit?: string } {
  const inBrackets = bracketed(typed);
  if (inBrackets !== undefined) return { name: typed, unit: inBrackets };
  if (tidyColumn(typed) !== undefined || parseZoneName(typed) !== undefined) {
    return { name: typed };
  }
  const [, name, unit] = UNIT_AFTER.exec(typed) ?? [];
  const isKnown = name !== undefined &&
    (tidyColumn(name) !== undefined || parseZoneName(name) !== undefined);
  return isKnown ? { name, unit } : { name: typed };
}

/** A heading without what stands in brackets. */
function withoutBrackets(typed: string): string {
  return typed.replace(/[([{].*?[)\]}]/g, " ").trim();
}

/** True for a cell that names a column or a zone, with or without its unit. */
export function isKnownHeading(cell: string): boolean {
  const { name } = headingParts(cell.trim());
  return tidyColumn(name) !== undefined || parseZoneName(name) !== undefined ||
    parseZoneName(withoutBrackets(name)) !== undefined;
}

/** What headings say, and how many of them are known for certain. */
export function tableOf(
  headings: readonly string[],
  delimiter: string,
  headerLine: number,
): { layout: TableLayout; score: number } {
  const columns = new Map<TidyColumn, number>();
  const zones: ZoneColumn[] = [];
  const units = new Map<number, string>();
  const unknown: number[] = [];
  const repeated: TidyColumn[] = [];
  const unclear: ZoneColumn[] = [];
  const own = new Set(
    headings.map((one) => one.trim()).filter(isOwnName).map(tidyColumn),
  );
  let firm = 0;
  headings.forEach((heading, index) => {
    const { name: typed, unit } = headingParts(heading.trim());
    if (typed === "") {
      unknown.push(index);
      return;
    }
    const known = tidyColumn(typed);
    if (unit !== undefined && unitOfWord(unit) !== undefined) {
      units.set(index, unit);
    }
    const isOwn = isOwnName(typed);
    const first = known === undefined ? undefined : columns.get(known);
    if (known !== undefined && first !== undefined) {
      const isSame = plainName(headings[first]) === plainName(typed);
      if (isOwn || isSame) repeated.push(known);
    }
    const yields = !isOwn && own.has(known);
    if (known !== undefined && !yields && !columns.has(known)) {
      columns.set(known, index);
      firm++;
      return;
    }
    const bare = withoutBrackets(typed);
    const zone = parseZoneName(typed) === undefined ? bare : typed;
    const name = parseZoneName(zone);
    if (name !== undefined && known === undefined) {
      zones.push({ index, zone, name });
      if (!(name.kind === "fraction" && name.bare)) firm++;
      return;
    }
    if (known === undefined && isUnclearPlace(zone)) {
      unclear.push({ index, zone, name });
    } else unknown.push(index);
  });
  const scored = zones.length;
  // Beside other zones it was meant as one; its readings are then told of.
  if (zones.length > 0) zones.push(...unclear);
  else unknown.push(...unclear.map((one) => one.index));
  zones.sort((a, b) => a.index - b.index);
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
    // Bare fractions or lengths among zones and no known column: a row of
    // readings whose header is missing, not a header.
    score: firm === 0 || (columns.size === 0 && zones.some(isBare))
      ? 0
      : firm + 0.01 * scored,
  };
}

/** True for a zone that a cell of readings might be as well. */
export function isBare({ name }: Pick<ZoneColumn, "name">): boolean {
  return name === undefined || name.kind === "length" ||
    name.kind === "fraction" && name.bare;
}

/** True when headings can stand alone: all that a line of readings needs. */
export function isComplete(layout: TableLayout): boolean {
  const { columns, zones, sheet, repeated } = layout;
  if (repeated.length > 0) return false;
  if (sheet) return zones.length > 1 || columns.size > 0;
  return REQUIRED_COLUMNS.every((name) =>
    columns.has(name) || name === "zone" && columns.has("offset")
  );
}
