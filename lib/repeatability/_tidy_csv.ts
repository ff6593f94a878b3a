/**
 * The tidy format of readings, written.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";
import { csvText } from "../records/csv_text.ts";
import { TIDY_COLUMNS, type TidyColumn } from "../records/tidy_columns.ts";

/** What a bench sheet holds: not the temperatures, and nothing withdrawn. */
type SheetColumn = Exclude<
  TidyColumn,
  `temperature_${string}` | "withdrawn"
>;

const COLUMNS = TIDY_COLUMNS.filter((name): name is SheetColumn =>
  !name.startsWith("temperature_") && name !== "withdrawn"
);

/** One line; what is left out is left blank. */
export type TidyLine = Partial<Record<SheetColumn, string>>;

/** Writes lines under a header, with LF at every end. */
export function tidyCsv(lines: readonly TidyLine[]): string {
  return csvText([
    COLUMNS,
    ...lines.map((line) => COLUMNS.map((column) => line[column] ?? "")),
  ]);
}

/** A direction of the feet as the file format spells it. */
export function footCell(foot: FootDirection): string {
  switch (foot.kind) {
    case "angle":
      return `${foot.degrees}`;
    case "unknown":
      return "";
    default:
      return foot.kind;
  }
}
