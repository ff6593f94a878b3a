/**
 * The tidy format of readings, written.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";

/** Columns in the order in which they are written. */
const COLUMNS = [
  "session",
  "taken_at",
  "grade",
  "ring",
  "zeroing",
  "zero_before",
  "diameter_deg",
  "foot_deg",
  "zone",
  "offset",
  "reading",
  "unit",
  "operator",
  "note",
] as const;

/** One line; what is left out is left blank. */
export type TidyLine = Partial<Record<typeof COLUMNS[number], string>>;

/** Writes a cell so that readers of CSV give the same text back. */
function cell(text: string): string {
  return /[",\r\n]|^\s|\s$/.test(text)
    ? `"${text.replaceAll('"', '""')}"`
    : text;
}

/** Writes lines under a header, with LF at every end. */
export function tidyCsv(lines: readonly TidyLine[]): string {
  const rows = lines.map((line) =>
    COLUMNS.map((column) => cell(line[column] ?? "")).join(",")
  );
  return [COLUMNS.join(","), ...rows, ""].join("\n");
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
