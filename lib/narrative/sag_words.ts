/**
 * Small differences of sag in words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { Interval } from "../statistics/interval.ts";

/** The unit in which a user reads differences of sag: µm, or thou. */
export function smallUnit(unit: LengthUnit): "µm" | "thou" {
  return unit === "mm" ? "µm" : "thou";
}

/**
 * Writes a difference of sag with half its interval.
 *
 * @param mean The difference in mm; its size is written, without a sign.
 * @param interval Its interval in mm, where there is one.
 * @param unit The user's unit.
 * @returns Such as `27.7 ± 1.6 µm`.
 *
 * @example
 * ```ts
 * import { writeDifference } from "sagbook/narrative/sag_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = writeDifference(-0.0277, { low: -0.0293, high: -0.0261 }, "mm");
 * equal(text.replaceAll("\u00a0", " "), "27.7 ± 1.6 µm");
 * ```
 */
export function writeDifference(
  mean: number,
  interval: Interval | undefined,
  unit: LengthUnit,
): string {
  const small = smallUnit(unit);
  const size = millimetres(Math.abs(mean));
  if (interval === undefined) {
    return `about ${formatLength(size, small, unit === "mm" ? 0 : 2)}`;
  }
  const half = millimetres((interval.high - interval.low) / 2);
  return formatWithUncertainty(size, half, small);
}

/**
 * Writes a small length, such as a tolerance or a display step, without
 * figures that were not given.
 *
 * @param length In mm.
 * @param unit The user's unit.
 * @param figures Significant figures; 2 unless stated.
 * @returns Such as `3.0 µm`.
 *
 * @example
 * ```ts
 * import { writeSmall } from "sagbook/narrative/sag_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(writeSmall(0.003, "mm").replaceAll("\u00a0", " "), "3.0 µm");
 * ```
 */
export function writeSmall(
  length: number,
  unit: LengthUnit,
  figures: number = 2,
): string {
  const size = millimetres(Math.abs(length));
  const small = size < 0.1 ? smallUnit(unit) : unit;
  const amount = amountIn(size, small);
  const decimals = amount === 0 ? 0 : decimalsFor(amount, figures);
  return formatLength(size, small, Math.max(0, decimals));
}
