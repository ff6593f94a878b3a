/**
 * Radius against sag, for the wall above the bench.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import type { Ring } from "../records/bench.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import { groupFigures } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";

/** What a table is made for, lengths in mm. */
export interface BenchTableOrder {
  /** Smallest sag in mm, above 0. */
  readonly from: number;
  /** Largest sag in mm. */
  readonly to: number;
  /** Step of the sag in mm, above 0. */
  readonly step: number;
  /** The unit whose step it is. */
  readonly unit: LengthUnit;
}

/** Rows that a table may have. */
export const MOST_ROWS = 2000;

/** Smallest change of R that a wall table shows, in each unit. */
const R_DECIMALS: Record<LengthUnit, number> = { mm: 1, in: 2 };

/**
 * Makes a table of R against the sag the gauge shows, in mm and inches.
 *
 * Every row is one display step further. R is written to a tenth of a
 * millimetre and a hundredth of an inch: what the reading supports is less,
 * and the ring's own uncertainty is in none of the rows.
 *
 * @param order From, to and step.
 * @param ring The ring.
 * @param form Which way the surface curves.
 * @returns Headings and cells as text.
 * @throws {RangeError} If the sags are not above 0, exceed the foot circle's
 * radius, or make more than {@link MOST_ROWS} rows.
 *
 * @example
 * ```ts
 * import { benchTable } from "sagbook/narrative/bench_table.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) },
 * } as const;
 * const order = { from: 0.715, to: 0.716, step: 0.001, unit: "mm" } as const;
 * deepEqual(benchTable(order, ring, "concave"), {
 *   headings: ["sag mm", "sag in", "R mm", "R in"],
 *   rows: [["0.715", "0.028150", "2520.8", "99.25"], ["0.716", "0.028189", "2517.3", "99.11"]],
 * });
 * ```
 */
export function benchTable(
  order: BenchTableOrder,
  ring: Ring,
  form: Piece["form"],
): {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
} {
  const { step, unit } = order;
  const [from, to] = [
    Math.min(order.from, order.to),
    Math.max(order.from, order.to),
  ];
  if (!(from > 0)) {
    throw new RangeError(
      `Cannot make a table as its sags must be above 0 mm: current value is ${from} mm`,
    );
  }
  const [first, last] = [
    Math.round(from / step),
    Math.round(to / step),
  ];
  const count = last - first + 1;
  if (!(count <= MOST_ROWS)) {
    throw new RangeError(
      `Cannot make a table as it must have no more than ${MOST_ROWS} rows: current value is ${count} rows of one display step`,
    );
  }
  const feet = effectiveFeet(ring.shape, form);
  const decimals = stepDecimals(millimetres(step), unit);
  // The other unit shows a step of this one without merging two rows.
  const other = unit === "mm" ? decimals + 3 : Math.max(0, decimals - 1);
  const [inMm, inInches] = unit === "mm"
    ? [decimals, other]
    : [other, decimals];
  const write = (length: number, to: LengthUnit, places: number): string =>
    groupFigures(roundDecimal(amountIn(millimetres(length), to), places))
      .replaceAll("\u202f", "");
  const rows = Array.from({ length: count }, (_, k) => {
    const sag = (first + k) * step;
    const radius = radiusFromSag(millimetres(sag), feet, form);
    return [
      write(sag, "mm", inMm),
      write(sag, "in", inInches),
      write(radius, "mm", R_DECIMALS.mm),
      write(radius, "in", R_DECIMALS.in),
    ];
  });
  return { headings: ["sag mm", "sag in", "R mm", "R in"], rows };
}

/**
 * Lays a table out in columns of plain text.
 *
 * @param table Headings and cells.
 * @returns Lines, the numbers ranged right.
 *
 * @example
 * ```ts
 * import { tableLines } from "sagbook/narrative/bench_table.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const rows = [["0.715", "2520.8"]];
 * deepEqual(tableLines({ headings: ["sag", "R"], rows }), ["  sag       R", "0.715  2520.8"]);
 * ```
 */
export function tableLines(
  { headings, rows }: {
    readonly headings: readonly string[];
    readonly rows: readonly (readonly string[])[];
  },
): readonly string[] {
  const all = [headings, ...rows];
  const widths = headings.map((_, column) =>
    Math.max(...all.map((row) => row[column].length))
  );
  return all.map((row) =>
    row.map((cell, column) => cell.padStart(widths[column])).join("  ")
  );
}
