/**
 * Numbers and lengths in a cell, read under what is known of its file.
 *
 * @module
 */
import {
  KNOWN_UNITS,
  lengthFrom,
  type LengthUnitName,
  parseUnit,
} from "../units/length_unit.ts";
import type { Millimetres } from "../units/length.ts";
import { type LengthReading, parseLength } from "../units/parse_length.ts";
import { type NumberReading, parseNumber } from "../units/parse_number.ts";

/** What is known of the decimal mark of a file. */
export interface FileDecimal {
  readonly mark: "." | "," | "unknown";
  /** True when the user stated it, false when other cells show it. */
  readonly stated: boolean;
}

/** Nothing is known of the mark. */
export const MARK_UNKNOWN: FileDecimal = { mark: "unknown", stated: false };

/** No measurement is larger, in any unit: a thousand million. */
const LARGEST = 1e9;

/** No number or unit that a person types is longer. */
const LONGEST = 80;

/** Marks of direction around a number, which nobody sees. */
const UNSEEN = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** What follows a number and names no unit: a sign, a bracket, a mark. */
const NO_UNIT = /^[-\u2010-\u2015\u2212)*?!~]+$/;

/** The units a message offers. */
export const UNIT_LIST: string = KNOWN_UNITS;

function sized(read: NumberReading): NumberReading {
  return read.kind === "number" && Math.abs(read.value) > LARGEST
    ? { kind: "refused", reason: "it is too large for a measurement" }
    : read;
}

/**
 * Reads a number; a lone group of three after a mark is never guessed.
 *
 * Where the mark of the file is unknown, a cell must read one way under both.
 * Where the user stated it, the other mark can only stand between thousands.
 */
export function readNumber(typed: string, decimal: FileDecimal): NumberReading {
  if (typed.length > LONGEST) {
    return { kind: "refused", reason: "it is too long for a number" };
  }
  if (decimal.mark === "unknown") {
    const asComma = parseNumber(typed, { decimal: "," });
    return sized(
      asComma.kind === "ambiguous"
        ? asComma
        : parseNumber(typed, { decimal: "." }),
    );
  }
  const read = sized(parseNumber(typed, { decimal: decimal.mark }));
  return read.kind === "ambiguous" && decimal.stated
    ? { kind: "number", value: read.readings[1], decimals: 0 }
    : read;
}

/**
 * Reads a length; where the mark of the file is unknown it must read one way
 * under both.
 */
export function readLength(
  typed: string,
  decimal: FileDecimal,
  defaultUnit: LengthUnitName | undefined,
): LengthReading {
  const unit = defaultUnit === undefined ? {} : { defaultUnit };
  const tooLarge = {
    kind: "refused",
    part: "number",
    reason: "it is too large for a measurement",
  } as const;
  if (typed.length > LONGEST) return tooLarge;
  try {
    const read = decimal.mark === "unknown"
      ? readUnderBoth(typed, unit)
      : parseLength(typed, { decimal: decimal.mark, ...unit });
    return read.kind === "length" && Math.abs(read.value) > LARGEST
      ? tooLarge
      : read;
  } catch (error) {
    // A number near the largest there is overflows when it becomes mm.
    if (error instanceof RangeError) return tooLarge;
    throw error;
  }
}

function readUnderBoth(
  typed: string,
  unit: { readonly defaultUnit?: LengthUnitName },
): LengthReading {
  const asComma = parseLength(typed, { decimal: ",", ...unit });
  return asComma.kind === "ambiguous"
    ? asComma
    : parseLength(typed, { decimal: ".", ...unit });
}

/** The unit a word means, if it means one. */
export function unitOfWord(typed: string): LengthUnitName | undefined {
  if (typed.length > LONGEST) return undefined;
  const read = parseUnit(typed);
  return read.kind === "unit" ? read.unit : undefined;
}

/** An amount of a unit in mm. */
export function inMillimetres(
  amount: number,
  unit: LengthUnitName,
): Millimetres {
  return lengthFrom(amount, unit);
}

/** A number and the unit word glued to it, each as typed. */
export function splitUnit(typed: string): { number: string; unit?: string } {
  const text = typed.replace(UNSEEN, "").trim();
  if (text.length > LONGEST) return { number: text };
  const match = /^(.*[\d.,])\s*([^\d.,\s][^\d]*)$/s.exec(text);
  if (match === null || NO_UNIT.test(match[2])) return { number: text };
  return { number: match[1].trim(), unit: match[2].trim() };
}
