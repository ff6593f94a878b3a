/**
 * Rounding as people do it on paper: on the decimal figures.
 *
 * @module
 */

/**
 * Rounds a number to a place and writes it.
 *
 * Works on the shortest decimal that stands for the number, so that 2.675 to
 * two places is a tie, as it is on paper, although the binary number lies a
 * hair below. Ties go to the even figure, so that many roundings do not drift.
 *
 * @param value A finite number.
 * @param decimals Place to round to: 2 is hundredths, −2 is hundreds; from
 * −300 to 300.
 * @returns The figures, with `-` before a negative number that is not 0 after
 * rounding; exactly `decimals` figures after the point where above 0.
 * @throws {RangeError} If the value is not finite or the place not a whole
 * number in range.
 *
 * @see ISO 80000-1:2009, annex B (rounding, rule A for ties; the clause from
 * memory).
 *
 * @example
 * ```ts
 * import { roundDecimal } from "sagbook/units/round_decimal.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(roundDecimal(2.675, 2), "2.68");
 * equal(roundDecimal(2.665, 2), "2.66");
 * equal(roundDecimal(166_712, -2), "166700");
 * ```
 */
export function roundDecimal(value: number, decimals: number): string {
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot round a number as it must be finite: current value is ${value}`,
    );
  }
  if (!(Number.isInteger(decimals) && Math.abs(decimals) <= 300)) {
    throw new RangeError(
      `Cannot round a number as the place must be a whole number from -300 to 300: current value is ${decimals}`,
    );
  }
  const [mantissa, exponent] = Math.abs(value).toExponential().split("e");
  const [head, tail = ""] = mantissa.split(".");
  const shift = Number(exponent) - tail.length + decimals;
  const units = shiftRounded(BigInt(head + tail), shift);
  const sign = value < 0 && units > 0n ? "-" : "";
  if (decimals <= 0) {
    return `${sign}${units}${units > 0n ? "0".repeat(-decimals) : ""}`;
  }
  const figures = units.toString().padStart(decimals + 1, "0");
  return `${sign}${figures.slice(0, -decimals)}.${figures.slice(-decimals)}`;
}

/** `digits × 10^shift` to the nearest whole number, ties to even. */
function shiftRounded(digits: bigint, shift: number): bigint {
  if (shift >= 0) return digits * 10n ** BigInt(shift);
  const unit = 10n ** BigInt(-shift);
  const whole = digits / unit;
  const twice = 2n * (digits % unit);
  const up = twice > unit || (twice === unit && whole % 2n === 1n);
  return up ? whole + 1n : whole;
}

/**
 * Finds the place to which an uncertainty supports figures.
 *
 * @param uncertainty A standard or expanded uncertainty, finite, above 0.
 * @param figures How many figures the uncertainty keeps, 2 unless stated.
 * @returns The decimals for {@link roundDecimal}: after rounding there, the
 * uncertainty has that many figures (0.0996 keeps 0.10, not 0.100).
 * @throws {RangeError} If the uncertainty is not finite and above 0.
 *
 * @see JCGM 100:2008, 7.2.6 (at most two figures in the uncertainty, the
 * value to the same place).
 *
 * @example
 * ```ts
 * import { decimalsFor } from "sagbook/units/round_decimal.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(decimalsFor(1.4), 1);
 * equal(decimalsFor(0.0996), 2);
 * equal(decimalsFor(1240), -2);
 * ```
 */
export function decimalsFor(uncertainty: number, figures = 2): number {
  if (!(uncertainty > 0 && Number.isFinite(uncertainty))) {
    throw new RangeError(
      `Cannot find a place to round to as the uncertainty must be finite and above 0: current value is ${uncertainty}`,
    );
  }
  const place = figures - 1 - exponentOf(uncertainty);
  const rounded = Number(roundDecimal(uncertainty, place));
  return exponentOf(rounded) > exponentOf(uncertainty) ? place - 1 : place;
}

function exponentOf(value: number): number {
  return Number(value.toExponential().split("e")[1]);
}
