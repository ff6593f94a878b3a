/**
 * Writing lengths with no more figures than are known.
 *
 * @module
 */
import type { Millimetres } from "./length.ts";
import { amountIn, type LengthUnitName } from "./length_unit.ts";
import { decimalsFor, roundDecimal } from "./round_decimal.ts";

/** Narrow no-break space, between groups of three figures. */
const GROUP = "\u202f";

/** No-break space, between a number and its unit. */
const JOIN = "\u00a0";

/** A value and its uncertainty, rounded to the same place. */
export interface RoundedPair {
  /** The value's figures, grouped, with a true minus. */
  readonly value: string;
  /** The uncertainty's figures; empty when there is none. */
  readonly uncertainty: string;
  /** The place both were rounded to: 1 is tenths, −2 is hundreds. */
  readonly decimals: number;
}

/**
 * Groups figures and writes a true minus.
 *
 * Five figures or more before the point are set in groups of three with a
 * narrow no-break space, never with a comma or a point. Figures after it stand
 * together, as a gauge shows them.
 *
 * @param figures A number in plain figures, such as `-12345.678901`.
 * @returns The same number for people to read.
 *
 * @see ISO 80000-1:2009, 7.3 (groups of three set off by a small space; the
 * clause from memory).
 *
 * @example
 * ```ts
 * import { groupFigures } from "sagbook/units/format_length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(groupFigures("-12345.6"), "−12\u202f345.6");
 * equal(groupFigures("2519.7"), "2519.7");
 * ```
 */
export function groupFigures(figures: string): string {
  const [whole, decimals] = figures.replace("-", "").split(".");
  const left = whole.length < 5
    ? whole
    : whole.replaceAll(/\B(?=(?:\d{3})+$)/g, GROUP);
  const right = decimals === undefined ? "" : `.${decimals}`;
  return `${figures.startsWith("-") ? "−" : ""}${left}${right}`;
}

/**
 * Rounds a value to what its uncertainty supports.
 *
 * The uncertainty keeps two figures and the value stops at the same place;
 * both by {@link roundDecimal}. An uncertainty of 0 supports every figure: the
 * value keeps twelve significant ones at most, and no uncertainty is written.
 *
 * @param value Any finite number.
 * @param uncertainty Its uncertainty in the same unit, at least 0.
 * @returns Both as text.
 * @throws {RangeError} If either is not finite, or the uncertainty negative.
 *
 * @see JCGM 100:2008, 7.2.6.
 *
 * @example
 * ```ts
 * import { roundToUncertainty } from "sagbook/units/format_length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(roundToUncertainty(2519.7368, 1.3742), {
 *   value: "2519.7",
 *   uncertainty: "1.4",
 *   decimals: 1,
 * });
 * ```
 */
export function roundToUncertainty(
  value: number,
  uncertainty: number,
): RoundedPair {
  if (uncertainty === 0) {
    const figures = Number(value.toPrecision(12)).toExponential();
    const [mantissa, exponent] = figures.split("e");
    const after = (mantissa.split(".")[1] ?? "").length - Number(exponent);
    const decimals = Math.max(0, after);
    return {
      value: groupFigures(roundDecimal(value, decimals)),
      uncertainty: "",
      decimals,
    };
  }
  const decimals = decimalsFor(uncertainty);
  return {
    value: groupFigures(roundDecimal(value, decimals)),
    uncertainty: groupFigures(roundDecimal(uncertainty, decimals)),
    decimals,
  };
}

/**
 * Writes a length with its uncertainty in one unit.
 *
 * @param value The length in mm.
 * @param uncertainty Its expanded (or standard) uncertainty in mm, at least 0;
 * say in words beside it which of the two, with k.
 * @param unit The unit to write; mm unless stated.
 * @param decimals Decimals of both, for a column; those that the uncertainty
 * supports unless stated.
 * @returns Such as `2519.7 ± 1.4 mm`; no-break spaces hold it together.
 * @throws {RangeError} If either is not finite, or the uncertainty negative.
 *
 * @example
 * ```ts
 * import { formatWithUncertainty } from "sagbook/units/format_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const plain = (text: string) => text.replaceAll("\u00a0", " ");
 * equal(plain(formatWithUncertainty(mm(2519.7368), mm(1.3742))), "2519.7 ± 1.4 mm");
 * equal(plain(formatWithUncertainty(mm(254), mm(2.54), "in")), "10.00 ± 0.10 in");
 * ```
 */
export function formatWithUncertainty(
  value: Millimetres,
  uncertainty: Millimetres,
  unit: LengthUnitName = "mm",
  decimals?: number,
): string {
  if (decimals !== undefined) {
    const [figures, half] = [value, uncertainty].map((length) =>
      groupFigures(roundDecimal(amountIn(length, unit), decimals))
    );
    return `${figures}${JOIN}±${JOIN}${half}${JOIN}${unit}`;
  }
  const rounded = roundToUncertainty(
    amountIn(value, unit),
    amountIn(uncertainty, unit),
  );
  const spread = rounded.uncertainty === ""
    ? ""
    : `${JOIN}±${JOIN}${rounded.uncertainty}`;
  return `${rounded.value}${spread}${JOIN}${unit}`;
}

/**
 * Writes a length with a given number of decimals.
 *
 * @param value The length in mm.
 * @param unit The unit to write.
 * @param decimals Decimals in that unit; negative rounds to tens, hundreds.
 * @returns Such as `0.715 mm` or `−12.3 µm`.
 *
 * @example
 * ```ts
 * import { formatLength } from "sagbook/units/format_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(formatLength(mm(-0.0123), "µm", 1), "−12.3\u00a0µm");
 * ```
 */
export function formatLength(
  value: Millimetres,
  unit: LengthUnitName,
  decimals: number,
): string {
  const figures = roundDecimal(amountIn(value, unit), decimals);
  return `${groupFigures(figures)}${JOIN}${unit}`;
}

/**
 * Chooses a unit in which a length is easy to read.
 *
 * Small sags and differences are read in micrometres or thousandths.
 *
 * @param value The length in mm.
 * @param family `mm` for someone who works metric, `in` for inches.
 * @returns In mm: `nm` below 1 µm, `µm` below 0.1 mm, else `mm`. In inches:
 * `µin` below 0.1 thou, `thou` below 0.01 in, else `in`. 0 stays in mm or in.
 *
 * @example
 * ```ts
 * import { readableUnit } from "sagbook/units/format_length.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(readableUnit(mm(0.0123), "mm"), "µm");
 * equal(readableUnit(mm(0.0123), "in"), "thou");
 * ```
 */
export function readableUnit(
  value: Millimetres,
  family: "mm" | "in",
): LengthUnitName {
  const size = Math.abs(value);
  if (size === 0) return family;
  if (family === "mm") return size < 1e-3 ? "nm" : size < 0.1 ? "µm" : "mm";
  return size < 0.00254 ? "µin" : size < 0.254 ? "thou" : "in";
}
