/**
 * A stated radius in figures.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { Interval } from "../statistics/interval.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { RadiusStatement } from "./radius_statement.ts";

/** What of a stated radius is written. */
export type WrittenRadius = Pick<
  RadiusStatement,
  "radius" | "expanded" | "interval"
>;

/**
 * Writes the uncertainty of a stated radius alone.
 *
 * @param statement The radius.
 * @param unit The user's unit.
 * @returns Such as `±6.8 mm` or `2158 mm to 2245 mm`; undefined where nothing
 * is known of it.
 *
 * @example
 * ```ts
 * import { writeDoubt } from "sagbook/narrative/write_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = writeDoubt({ expanded: mm(6.84) }, "mm");
 * equal(text?.replace("\u00a0", " "), "±6.8 mm");
 * ```
 */
export function writeDoubt(
  { expanded, interval }: Pick<RadiusStatement, "expanded" | "interval">,
  unit: LengthUnit,
): string | undefined {
  if (expanded !== undefined) {
    const decimals = Math.max(0, decimalsFor(amountIn(expanded, unit)));
    return `±${formatLength(expanded, unit, decimals)}`;
  }
  if (interval === undefined) return undefined;
  const { low, high } = interval;
  return high === undefined
    ? `at least ${
      formatLength(floored(low, unit), unit, unit === "mm" ? 0 : 1)
    }`
    : writeRange({ low, high }, unit);
}

/** Decimals that half an interval in mm supports in a unit. */
function decimalsOfHalf(half: number, unit: LengthUnit): number {
  const amount = amountIn(millimetres(half), unit);
  return amount === 0 ? 3 : decimalsFor(amount);
}

/** The lower end of an interval without an upper, down to three figures. */
function floored(low: number, unit: LengthUnit): Millimetres {
  const amount = amountIn(millimetres(low), unit);
  const place = 10 ** (Math.floor(Math.log10(Math.max(amount, 1))) - 2);
  const down = Math.floor(amount / place) * place;
  return millimetres(amount === 0 ? 0 : low * down / amount);
}

/** Writes an interval, with the figures its width supports unless told. */
function writeRange(
  { low, high }: Interval,
  unit: LengthUnit,
  decimals: number = decimalsOfHalf((high - low) / 2, unit),
): string {
  return `${formatLength(millimetres(low), unit, decimals)} to ${
    formatLength(millimetres(high), unit, decimals)
  }`;
}

/**
 * Writes a stated length, or half of it, with its uncertainty.
 *
 * @param statement The radius.
 * @param unit The user's unit.
 * @param part 1 for the radius, 1/2 for the focal length of a sphere.
 * @returns Such as `2519.7 ± 1.4 mm`, or `2870 mm (2650 mm to 3140 mm)` where
 * the interval is uneven, or `at least 9000 mm`.
 *
 * @example
 * ```ts
 * import { writeRadius } from "sagbook/narrative/write_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const statement = { radius: mm(2519.667), expanded: mm(2.4) };
 * equal(writeRadius(statement, "mm").replaceAll("\u00a0", " "), "2519.7 ± 2.4 mm");
 * ```
 */
export function writeRadius(
  statement: WrittenRadius,
  unit: LengthUnit,
  part: number = 1,
): string {
  const { expanded, interval } = statement;
  const value = millimetres(statement.radius * part);
  if (expanded !== undefined) {
    return formatWithUncertainty(value, millimetres(expanded * part), unit);
  }
  const rough = unit === "mm" ? 0 : 1;
  if (interval === undefined) {
    return `about ${formatLength(value, unit, rough)}`;
  }
  const low = interval.low * part;
  if (interval.high === undefined) {
    return `at least ${formatLength(floored(low, unit), unit, rough)}`;
  }
  const high = interval.high * part;
  const decimals = decimalsOfHalf((high - low) / 2, unit);
  return `${formatLength(value, unit, decimals)} (${
    writeRange({ low, high }, unit, decimals)
  })`;
}

/**
 * Writes the radii of a column or a sentence with equal decimals: those that
 * the best known one supports, so that none loses a figure.
 *
 * @param statements The radii; undefined where there is none.
 * @param unit The user's unit.
 * @returns One text for each, `none` where there is none.
 *
 * @example
 * ```ts
 * import { writeRadii } from "sagbook/narrative/write_radius.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const column = writeRadii([
 *   { radius: mm(2174.13), expanded: mm(6.54) },
 *   { radius: mm(2201.02), expanded: mm(11.2) },
 *   undefined,
 * ], "mm");
 * deepEqual(
 *   column.map((text) => text.replaceAll("\u00a0", " ")),
 *   ["2174.1 ± 6.5 mm", "2201.0 ± 11.2 mm", "none"],
 * );
 * ```
 */
export function writeRadii(
  statements: readonly (WrittenRadius | undefined)[],
  unit: LengthUnit,
): readonly string[] {
  const finest = Math.max(
    ...statements.flatMap((one) =>
      one?.expanded === undefined || one.expanded === 0
        ? []
        : [decimalsOfHalf(one.expanded, unit)]
    ),
  );
  return statements.map((one) => {
    if (one === undefined) return "none";
    const { radius, expanded } = one;
    if (expanded === undefined || expanded === 0) return writeRadius(one, unit);
    return formatWithUncertainty(radius, expanded, unit, finest);
  });
}
