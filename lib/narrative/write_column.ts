/**
 * Lengths with their uncertainties as one column of a table.
 *
 * @module
 */
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn, type LengthUnitName } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";

/** A length in mm, and half its interval where there is one. */
export interface ColumnLength {
  /** The length. */
  readonly value: number;
  /** Half its interval. */
  readonly half?: number;
}

/** Share of an uncertainty that rounding may change it by, to keep a column even. */
const LOST = 0.1;

/**
 * Writes lengths below one another with equal decimals: those that the least
 * known of them supports, or as many more as keep every uncertainty within a
 * tenth of itself.
 *
 * @param lengths The lengths in mm; undefined for an empty cell.
 * @param unit The unit of the column.
 * @param decimals Decimals where no length has an uncertainty, a whole number
 * from 0.
 * @param signed Whether a plus is written.
 * @returns One text for each length.
 *
 * @example
 * ```ts
 * import { writeColumn } from "sagbook/narrative/write_column.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const column = writeColumn(
 *   [{ value: -0.0045, half: 0.0024 }, { value: 0.012, half: 0.0131 }, undefined],
 *   "µm", 1, true,
 * );
 * deepEqual(
 *   column.map((text) => text?.replaceAll("\u00a0", " ")),
 *   ["−4.5 ± 2.4 µm", "+12.0 ± 13.1 µm", undefined],
 * );
 * ```
 */
export function writeColumn(
  lengths: readonly (ColumnLength | undefined)[],
  unit: LengthUnitName,
  decimals: number,
  signed: boolean = false,
): readonly (string | undefined)[] {
  const halves = lengths.flatMap((one) =>
    one?.half === undefined || one.half === 0
      ? []
      : [amountIn(millimetres(one.half), unit)]
  );
  const places = halves.length === 0 ? decimals : Math.max(
    decimalsFor(Math.max(...halves)),
    Math.ceil(-Math.log10(2 * LOST * Math.min(...halves))),
  );
  return lengths.map((one) => {
    if (one === undefined) return undefined;
    const { value, half } = one;
    const sign = signed && value >= 0 ? "+" : "";
    const length = millimetres(value);
    return sign +
      (half === undefined || half === 0
        ? formatLength(length, unit, places)
        : formatWithUncertainty(length, millimetres(half), unit, places));
  });
}
