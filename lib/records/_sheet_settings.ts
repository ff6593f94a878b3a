/**
 * Lines of a bench sheet that say what holds for all its readings.
 *
 * @module
 */
import { tidyColumn } from "./_column_names.ts";
import type { TidyColumn } from "./tidy_columns.ts";

type Row = readonly string[];

/** What a `# name: value` line of a bench sheet may set. */
const SETTINGS: ReadonlySet<TidyColumn> = new Set<TidyColumn>([
  "session",
  "taken_at",
  "grade",
  "ring",
  "foot_deg",
  "unit",
  "operator",
  "temperature_air",
  "temperature_bench",
  "temperature_work",
]);

/** The setting that a `# name: value` line makes, if it makes one. */
export function settingOfRow(
  row: Row,
  delimiter: string,
): { name: TidyColumn; value: string } | undefined {
  const match = /^\s*#\s*([^:=]{1,40})[:=]\s*(.*?)[\s,;]*$/.exec(
    row.join(delimiter),
  );
  if (match === null) return undefined;
  const name = tidyColumn(match[1]);
  return name === undefined || !SETTINGS.has(name)
    ? undefined
    : { name, value: match[2] };
}

/**
 * The setting that a line without a mark makes above a sheet, as a printed form
 * has it: `Session,S7` or `Session: S7`, and nothing beside.
 */
export function settingOfForm(
  row: Row,
): { name: TidyColumn; value: string } | undefined {
  const cells = row.map((cell) => cell.trim()).filter((cell) => cell !== "");
  const [typed, value, ...rest] = cells.length === 1
    ? /^([^:=]{1,40})[:=]\s*(\S.*)$/.exec(cells[0])?.slice(1) ?? []
    : cells;
  if (value === undefined || rest.length > 0) return undefined;
  const name = tidyColumn(typed);
  const isName = name !== undefined && SETTINGS.has(name);
  return isName && tidyColumn(value) === undefined
    ? { name, value }
    : undefined;
}
