/**
 * Reading one length as people type it.
 *
 * @module
 */
import type { Millimetres } from "./length.ts";
import { lengthFrom, type LengthUnitName, parseUnit } from "./length_unit.ts";
import { type DecimalMark, parseNumber } from "./parse_number.ts";

/** What is known about a text before it is read. */
export interface LengthContext {
  /** Which mark stands before decimals; `either` unless stated. */
  readonly decimal?: DecimalMark;
  /** The unit of a text that names none; without it such a text is refused. */
  readonly defaultUnit?: LengthUnitName;
}

/** What a piece of text turned out to be. */
export type LengthReading =
  | {
    readonly kind: "length";
    /** The length in mm. */
    readonly value: Millimetres;
    /** The number as typed, in `unit`. */
    readonly amount: number;
    /** The unit it was typed in, or the default. */
    readonly unit: LengthUnitName;
    /** True when the text named no unit and the default was taken. */
    readonly unitAssumed: boolean;
    /** Decimals as typed; absent for a fraction. */
    readonly decimals?: number;
    /** What one in the last place is worth, in mm: the step of a display. */
    readonly step: Millimetres;
  }
  | { readonly kind: "blank" }
  | {
    readonly kind: "ambiguous";
    /** The two lengths it could be, in mm. */
    readonly readings: readonly [Millimetres, Millimetres];
    /** The two numbers it could be, in `unit`. */
    readonly amounts: readonly [number, number];
    /** The unit it was typed in, or the default. */
    readonly unit: LengthUnitName;
    /** True when the text named no unit and the default was taken. */
    readonly unitAssumed: boolean;
  }
  | {
    readonly kind: "refused";
    /** What is at fault. */
    readonly part: "number" | "unit" | "missing unit";
    /** Why, as a clause that can follow "because". */
    readonly reason: string;
  };

const VULGAR: Record<string, string> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
const NUMBER_THEN_UNIT =
  /^(?<number>.*?[\d.,](?:\s*[eE][-+\u2212]?\d+)?)\s*(?<unit>(?:[^\d\s.,][^\d]*)?)$/su;
const FRACTION =
  /^(?<sign>[-+\u2012-\u2015\u2212]?)\s*(?:(?<whole>\d+)(?:\s+|\s*-\s*))?(?<over>\d+)\s*\/\s*(?<under>\d+)$/;

/**
 * Reads one length as people type it, with its unit, or says why it is none.
 *
 * Reads what {@link parseNumber} reads, fractions (`11 13/16 in`, `½ in`), and
 * a unit with or without a space before it (`0.715mm`, `0.0237"`, `12,5 mm`,
 * `28 thou`). A unit is never guessed: without one in the text or in the
 * context the text is refused.
 *
 * @param text The text of one cell or of one setting.
 * @param context The decimal mark and the unit to take where none is typed.
 * @returns The length in mm with what was typed, or blank, ambiguous or
 * refused.
 *
 * @example
 * ```ts
 * import { parseLength } from "sagbook/units/parse_length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const read = parseLength("11 13/16 in");
 * equal(read.kind === "length" && read.value, 300.0375);
 * const sag = parseLength("12,5 mm");
 * equal(sag.kind === "length" && sag.value, 12.5);
 * equal(parseLength("300").kind, "refused");
 * ```
 */
export function parseLength(
  text: string,
  context: LengthContext = {},
): LengthReading {
  const { decimal = "either", defaultUnit } = context;
  const typed = text.trim().replaceAll(
    /\s*[¼½¾⅛⅜⅝⅞]/g,
    (sign) => ` ${VULGAR[sign.trim()]}`,
  ).replaceAll(/[\u2044\u2215]/g, "/").trim();
  if (typed === "") return { kind: "blank" };
  const parts = NUMBER_THEN_UNIT.exec(typed)?.groups;
  const number = parts?.number ?? typed;
  const unitRead = parseUnit(parts?.unit ?? "");
  const fraction = parseFraction(number);
  const read = fraction ?? parseNumber(number, { decimal });
  if (read.kind === "blank") return read;
  if (read.kind === "refused") return { ...read, part: "number" };
  if (unitRead.kind === "refused") return { ...unitRead, part: "unit" };
  const unitAssumed = unitRead.kind === "blank";
  const unit = unitRead.kind === "unit" ? unitRead.unit : defaultUnit;
  if (unit === undefined) {
    return {
      kind: "refused",
      part: "missing unit",
      reason: "it names no unit and none is set for it",
    };
  }
  if (read.kind === "ambiguous") {
    const [first, second] = read.readings;
    return {
      kind: "ambiguous",
      readings: [lengthFrom(first, unit), lengthFrom(second, unit)],
      amounts: read.readings,
      unit,
      unitAssumed,
    };
  }
  const value = lengthFrom(read.value, unit);
  if ("step" in read) {
    const step = lengthFrom(read.step, unit);
    return {
      kind: "length",
      value,
      amount: read.value,
      unit,
      unitAssumed,
      step,
    };
  }
  const { value: amount, decimals } = read;
  const step = lengthFrom(Number(`1e-${decimals}`), unit);
  return { kind: "length", value, amount, unit, unitAssumed, decimals, step };
}

function parseFraction(
  text: string,
):
  | { kind: "fraction"; value: number; step: number }
  | { kind: "refused"; reason: string }
  | undefined {
  const match = FRACTION.exec(text.trim())?.groups;
  if (match === undefined) return undefined;
  const { sign, whole } = match;
  const [over, under] = [Number(match.over), Number(match.under)];
  if (under === 0) return { kind: "refused", reason: "it divides by 0" };
  if (whole !== undefined && over >= under) {
    return {
      kind: "refused",
      reason: "the fraction after a whole number must be below 1",
    };
  }
  const size = Number(whole ?? 0) + over / under;
  const value = sign === "" || sign === "+" ? size : -size;
  return { kind: "fraction", value: value + 0, step: 1 / under };
}
