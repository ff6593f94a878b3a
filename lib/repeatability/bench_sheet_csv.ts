/**
 * A bench sheet as a file to fill in, and as a table to print.
 *
 * @module
 */
import type { BenchSheet, BenchSheetRow } from "./bench_sheet.ts";
import { footCell, tidyCsv, type TidyLine } from "./_tidy_csv.ts";

/** Millimetres in one inch, exact by definition (ISO 80000-3). */
const MILLIMETRES_PER_INCH = 25.4;

/**
 * Writes a bench sheet as a CSV file to fill in.
 *
 * One line for each look at the flat and each reading, in order, with the
 * column `reading` left blank, in the format the readings of a piece are kept
 * in: filled in, it is that file. The blank `zero_before` on the first line of
 * a set takes what the flat showed before zero was pressed.
 *
 * @param sheet The sheet.
 * @returns The text, header first.
 *
 * @see RFC 4180 (commas, quotes).
 *
 * @example
 * ```ts
 * import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
 * import { benchSheetCsv } from "sagbook/repeatability/bench_sheet_csv.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sheet = writeBenchSheet({
 *   session: "S1",
 *   zones: [{ label: "centre", offset: 0 }],
 *   size: { zeroings: 1, diameters: 1, repeats: 1 },
 *   foot: { kind: "foot out" },
 *   seed: 1,
 * });
 * equal(
 *   benchSheetCsv(sheet).split("\n")[2],
 *   "S1,,,,1,,0,foot out,centre,0,,mm,,step 3",
 * );
 * ```
 */
export function benchSheetCsv(sheet: BenchSheet): string {
  return tidyCsv(
    sheet.rows.filter(({ act }) => act !== "zero").map((row) =>
      lineOf(sheet, row)
    ),
  );
}

function lineOf(sheet: BenchSheet, row: BenchSheetRow): TidyLine {
  const { session, ring = "", grade = "", unit = "mm", foot } = sheet;
  const onWork = row.act === "read";
  const offset = unit === "in" ? row.offset / MILLIMETRES_PER_INCH : row.offset;
  return {
    session,
    ring,
    grade,
    zeroing: row.zeroing,
    diameter_deg: onWork ? `${row.diameterDegrees ?? ""}` : "",
    foot_deg: onWork ? footCell(foot) : "",
    zone: row.zone,
    offset: onWork ? `${Number(offset.toFixed(unit === "in" ? 4 : 2))}` : "",
    unit,
    operator: row.operator ?? "",
    note: `step ${row.number}`,
  };
}

/** A sheet as a table: what each column holds, and the cells. */
export interface BenchSheetTable {
  /** What the columns hold, in order; headings are made of these elsewhere. */
  readonly columns: readonly (
    | "number"
    | "act"
    | "zeroing"
    | "operator"
    | "diameter"
    | "foot"
    | "zone"
    | "offset"
    | "reading"
  )[];
  /** One row for each step, in order; the reading is left blank. */
  readonly rows: readonly (readonly string[])[];
}

/**
 * Lays a bench sheet out as a table to print and write on.
 *
 * @param sheet The sheet.
 * @returns Columns and cells; the operator's column only where there are any.
 *
 * @see {@link writeBenchSheet} in `bench_sheet.ts` for the order of the steps.
 *
 * @example
 * ```ts
 * import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
 * import { benchSheetTable } from "sagbook/repeatability/bench_sheet_csv.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const sheet = writeBenchSheet({
 *   session: "S1",
 *   zones: [{ label: "edge", offset: 80 }],
 *   size: { zeroings: 1, diameters: 1, repeats: 1 },
 *   foot: { kind: "angle", degrees: 0 },
 *   seed: 1,
 * });
 * deepEqual(benchSheetTable(sheet).rows[2], ["3", "read", "1", "0°", "0°", "edge", "80 mm", ""]);
 * ```
 */
export function benchSheetTable(sheet: BenchSheet): BenchSheetTable {
  const who = sheet.rows.some(({ operator }) => operator !== undefined);
  const { unit = "mm" } = sheet;
  const foot = sheet.foot.kind === "angle"
    ? `${sheet.foot.degrees}°`
    : sheet.foot.kind === "unknown"
    ? "write it here"
    : sheet.foot.kind;
  return {
    columns: [
      "number",
      "act",
      "zeroing",
      ...(who ? ["operator" as const] : []),
      "diameter",
      "foot",
      "zone",
      "offset",
      "reading",
    ],
    rows: sheet.rows.map((row) => {
      const onWork = row.act === "read";
      const offset = lineOf(sheet, row).offset;
      return [
        `${row.number}`,
        row.act,
        row.zeroing,
        ...(who ? [row.operator ?? ""] : []),
        onWork ? `${row.diameterDegrees}°` : "",
        onWork && (row.offset !== 0 || sheet.foot.kind !== "unknown")
          ? foot
          : "",
        row.zone,
        onWork ? `${offset} ${unit}` : "",
        "",
      ];
    }),
  };
}
