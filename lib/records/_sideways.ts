/**
 * Tables that lie on their side.
 *
 * @module
 */
import { tidyColumn } from "./_column_names.ts";
import { isBare } from "./_table_layout.ts";
import { parseZoneName } from "./_zone_name.ts";

/** The marks that may part the cells of a line. */
export const DELIMITERS = [",", ";", "\t", "|"] as const;

/** How a cell begins that holds a number. */
export const NUMBER_FIRST = /^[\s"'+\-\u2010-\u2015\u2212.,]*\d/;

/** A line of a file. */
interface Line {
  /** Its number, from 1. */
  readonly line: number;
  readonly typed: string;
}

type Split = (line: string, delimiter: string) => string[];

/**
 * Names of columns that stand in the first cell of one line after another, or
 * of zones where no header does.
 */
export function namesBelowEachOther(
  lines: readonly Line[],
  split: Split,
): { line: number; last: number; names: readonly string[] } | undefined {
  const names = new Set<string>();
  let first: number | undefined;
  let last = 0;
  for (const { line, typed } of lines.slice(0, 20)) {
    const mark = DELIMITERS.find((one) => typed.includes(one)) ?? ",";
    const [cell, ...rest] = split(typed, mark);
    const name = tidyColumn(cell.trim());
    const alone = rest.every((one) => tidyColumn(one.trim()) === undefined);
    if (name === undefined || !alone || rest.length === 0) continue;
    first ??= line;
    last = line;
    names.add(cell.trim());
  }
  return first !== undefined && names.size >= 3
    ? { line: first, last, names: [...names] }
    : undefined;
}

/** Zones that stand in the first cell of one line of numbers after another. */
export function zonesBelowEachOther(
  lines: readonly Line[],
  split: Split,
): { line: number; names: readonly string[] } | undefined {
  const found = lines.slice(0, 20).flatMap(({ line, typed }) => {
    const mark = DELIMITERS.find((one) => typed.includes(one)) ?? ",";
    const [cell, ...rest] = split(typed, mark).map((one) => one.trim());
    const isNamed = !isBare({ name: parseZoneName(cell) });
    const filled = rest.filter((one) => one !== "");
    return isNamed && filled.length > 0 &&
        filled.every((one) => NUMBER_FIRST.test(one))
      ? [{ line, name: cell }]
      : [];
  });
  const names = [...new Set(found.map(({ name }) => name))];
  return names.length > 1 ? { line: found[0].line, names } : undefined;
}
