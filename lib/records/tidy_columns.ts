/**
 * The columns of a file of readings, in the order in which they are written.
 *
 * @module
 */

/**
 * Every column of a tidy file, one line of which is one reading.
 *
 * @example The columns that no file can do without come with the rest
 * ```ts
 * import { TIDY_COLUMNS } from "sagbook/records/tidy_columns.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const required = ["session", "zeroing", "zone", "reading"];
 * deepEqual(TIDY_COLUMNS.filter((name) => required.includes(name)), required);
 * ```
 */
export const TIDY_COLUMNS = [
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
  "temperature_air",
  "temperature_bench",
  "temperature_work",
  "note",
  "withdrawn",
] as const;

/** A column of a tidy file. */
export type TidyColumn = (typeof TIDY_COLUMNS)[number];
