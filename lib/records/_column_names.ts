/**
 * The names a column may bear, and what people type for them.
 *
 * @module
 */
import { TIDY_COLUMNS, type TidyColumn } from "./tidy_columns.ts";

/** Columns of a tidy file that no line can do without. */
export const REQUIRED_COLUMNS: readonly TidyColumn[] = [
  "session",
  "zeroing",
  "zone",
  "reading",
];

const OTHER_NAMES: Readonly<Record<string, TidyColumn>> = {
  abrasive: "grade",
  air: "temperature_air",
  air_temperature: "temperature_air",
  angle: "diameter_deg",
  bench_temperature: "temperature_bench",
  comment: "note",
  comments: "note",
  date: "taken_at",
  datetime: "taken_at",
  dia: "diameter_deg",
  diam: "diameter_deg",
  diameter: "diameter_deg",
  diameter_degrees: "diameter_deg",
  foot: "foot_deg",
  foot_1: "foot_deg",
  foot_degrees: "foot_deg",
  grit: "grade",
  notes: "note",
  observer: "operator",
  readings: "reading",
  remark: "note",
  remarks: "note",
  struck_out: "withdrawn",
  taken_back: "withdrawn",
  sag: "reading",
  sessions: "session",
  taken: "taken_at",
  temp_air: "temperature_air",
  temp_bench: "temperature_bench",
  temp_work: "temperature_work",
  units: "unit",
  work_temperature: "temperature_work",
  zero: "zeroing",
  zero_before_press: "zero_before",
  zones: "zone",
};

const KNOWN = new Map<string, TidyColumn>([
  ...TIDY_COLUMNS.map((name) => [name, name] as const),
  ...Object.entries(OTHER_NAMES),
]);

/** A column's name without case, spaces, marks and any unit in brackets. */
export function plainName(typed: string): string {
  return typed.normalize("NFKC").toLowerCase()
    .replace(/[([{].*?[)\]}]/g, " ")
    .replace(/[°"'’]/g, " ")
    .replace(/[^\p{L}\p{N}]+/gu, "_")
    .replace(/^_+|_+$/g, "");
}

/** The text in brackets of a heading such as `reading (mm)`. */
export function bracketed(typed: string): string | undefined {
  return /[([{]\s*(.*?)\s*[)\]}]/.exec(typed)?.[1];
}

/** True for a heading that is a column's own name, not another word for it. */
export function isOwnName(typed: string): boolean {
  return (TIDY_COLUMNS as readonly string[]).includes(plainName(typed));
}

/** The tidy column that a heading means, if any. */
export function tidyColumn(typed: string): TidyColumn | undefined {
  return KNOWN.get(plainName(typed));
}
