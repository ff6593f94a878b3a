/**
 * Reading one number as people type it.
 *
 * @module
 */

/** Which mark stands before the decimals in the text a number comes from. */
export type DecimalMark = "." | "," | "either";

/** What a piece of text turned out to be. */
export type NumberReading =
  | {
    readonly kind: "number";
    /** The number, finite; −0 is given as 0. */
    readonly value: number;
    /** Decimals as typed, at least 0: the last digit is worth 10^−decimals. */
    readonly decimals: number;
  }
  | { readonly kind: "blank" }
  | {
    readonly kind: "ambiguous";
    /** With the mark before decimals, and with the mark between thousands. */
    readonly readings: readonly [number, number];
  }
  | {
    readonly kind: "refused";
    /** Why, as a clause that can follow "because". */
    readonly reason: string;
  };

/** Every dash and minus there is, but for the soft hyphen, which is unseen. */
const MINUS =
  /^[-\u2010-\u2015\u2212\u02d7\u207b\u208b\u2796\ufe58\ufe63\uff0d]/;
/** What may stand between thousands: spaces of any width and apostrophes. */
const SPACE = /[\s'\u2018\u2019\u02bc\u00b4`]/;
const BODY =
  /^(?<mantissa>[\d.,\s'\u2018\u2019\u02bc\u00b4`]*\d[.,]?)(?:[eE](?<sign>[-+\u2010-\u2015\u2212]?)(?<power>\d{1,3}))?$/;
/** Marks of direction, joiners and widthless spaces: nothing that is seen. */
const UNSEEN = /[\u061c\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g;
/** Letters as wide as they are high, one for each ASCII letter. */
const FULL_WIDTH = /[\uff01-\uff5e]/g;
const NOT_ASCII = /[\u0080-\uffff]/;

/** The text as it is seen: no unseen marks, no wide letters. */
function seen(text: string): string {
  return NOT_ASCII.test(text)
    ? text.replace(UNSEEN, "").replace(
      FULL_WIDTH,
      (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0),
    )
    : text;
}
const GROUPED_THOUSANDS = /^[1-9]\d{0,2}$/;

/**
 * Reads one number as people type it, or says why it is none.
 *
 * Understood: a point or a comma before the decimals, thousands in groups of
 * three (spaces of any width, apostrophes, points, commas), a true minus or a
 * dash for a minus, a space after the sign, an exponent. Marks that nobody sees
 * (of direction, widthless spaces) are passed over, and full-width digits are
 * digits. A text that has two
 * readings, such as `1,234` where the point is the decimal mark, is never
 * guessed: both come back. `0,715` has only one and is read.
 *
 * Refused: text, `NaN`, `Infinity`, `true`, hexadecimal, a lone sign, two
 * numbers in one cell, digits of other scripts.
 *
 * @param text The text of one cell, with or without space around it.
 * @param context What is known about the text's decimal mark. `either` reads
 * a lone point as decimal and asks about a lone comma before three digits.
 * @returns The number with its decimals, or blank, ambiguous or refused.
 *
 * @example
 * ```ts
 * import { parseNumber } from "sagbook/units/parse_number.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(parseNumber("− 0,715", { decimal: "," }), {
 *   kind: "number",
 *   value: -0.715,
 *   decimals: 3,
 * });
 * deepEqual(parseNumber("1,234", { decimal: "." }), {
 *   kind: "ambiguous",
 *   readings: [1.234, 1234],
 * });
 * ```
 */
export function parseNumber(
  text: string,
  context: { readonly decimal: DecimalMark } = { decimal: "either" },
): NumberReading {
  const trimmed = seen(text).trim();
  if (trimmed === "") return { kind: "blank" };
  const negative = MINUS.test(trimmed);
  const unsigned = (negative || trimmed.startsWith("+"))
    ? trimmed.slice(1).trim()
    : trimmed;
  if (unsigned === "") return refused("it is a sign without a number");
  const body = BODY.exec(unsigned);
  if (body?.groups === undefined) return refused(reasonFor(unsigned));
  const { mantissa, sign, power = "0" } = body.groups;
  const spelled = spell(mantissa, context.decimal);
  if ("kind" in spelled) return spelled;
  const exponent = Number(power) * (sign && sign !== "+" ? -1 : 1);
  const values = spelled.map(([whole, decimals]) =>
    Number(`${negative ? "-" : ""}${whole || "0"}.${decimals}e${exponent}`)
  );
  if (!values.every(Number.isFinite)) {
    return refused("it is too large for a number");
  }
  if (values.some((value) => value === 0) && /[1-9]/.test(mantissa)) {
    return refused("it is too small for a number");
  }
  if (values.length === 2) {
    return { kind: "ambiguous", readings: [values[0], values[1]] };
  }
  return {
    kind: "number",
    value: values[0] + 0,
    decimals: Math.max(0, spelled[0][1].length - exponent),
  };
}

function refused(reason: string): NumberReading {
  return { kind: "refused", reason };
}

function reasonFor(unsigned: string): string {
  if (/^0x/i.test(unsigned)) return "hexadecimal is not read as a number";
  if (/^nan$/i.test(unsigned)) return "NaN stands for no number";
  if (/^(inf|infinity|∞)$/i.test(unsigned)) return "it is not finite";
  if (MINUS.test(unsigned) || unsigned.startsWith("+")) {
    return "it has more than one sign";
  }
  if (/\d\s*[-\u2010-\u2015\u2212]$|^\(.*\d.*\)$/.test(unsigned)) {
    return "its minus stands behind it or is made of brackets: write it before the number";
  }
  if (/\d[\u00b7\u22c5\u066b]\d/.test(unsigned)) {
    return "its decimal mark is neither a point nor a comma";
  }
  if (/\d.*[-\u2010-\u2015\u2212+/:]\s*\d/.test(unsigned)) {
    return "it holds more than one number";
  }
  if (/^[.,\d\s]*\d/.test(unsigned)) return "something follows the number";
  return "it is not a number";
}

/** Whole digits and decimals; two of them when the text reads both ways. */
type Spelling = readonly [whole: string, decimals: string];

function spell(
  mantissa: string,
  decimal: DecimalMark,
): readonly Spelling[] | NumberReading {
  const malformed = refused(
    "its separators do not stand where a number's stand",
  );
  const marks = [...mantissa].filter((mark) => mark === "." || mark === ",");
  const last = marks.at(-1);
  const kinds = new Set(marks).size;
  if (last === undefined) return plain(mantissa, "") ?? malformed;
  const at = mantissa.lastIndexOf(last);
  const whole = mantissa.slice(0, at);
  const rest = mantissa.slice(at + 1);
  if (kinds === 2) {
    const other = last === "." ? "," : ".";
    const repeated = marks.filter((mark) => mark === last).length > 1;
    // A mark with nothing behind it does not say what the other one means.
    if (repeated || rest === "" || SPACE.test(mantissa)) return malformed;
    return plain(whole.replaceAll(other, " "), rest) ?? malformed;
  }
  if (marks.length > 1) { // 1,234,567 can only be groups
    if (SPACE.test(mantissa)) return malformed;
    return plain(mantissa.replaceAll(last, " "), "") ?? malformed;
  }
  const couldGroup = GROUPED_THOUSANDS.test(whole) && /^\d{3}$/.test(rest);
  const expected = decimal === last || (decimal === "either" && last === ".");
  if (couldGroup && !expected) return [[whole, rest], [whole + rest, ""]];
  return plain(whole, rest) ?? malformed;
}

/**
 * Takes the spaces out of groups of three, on both sides of the mark; nobody
 * groups thousands behind a leading 0.
 */
function plain(whole: string, decimals: string): [Spelling] | undefined {
  const groups = whole.split(SPACE);
  const tail = decimals.split(SPACE);
  const wholeIsRight = groups.length === 1 ||
    (GROUPED_THOUSANDS.test(groups[0]) &&
      groups.slice(1).every((group) => group.length === 3));
  const tailIsRight = tail.length === 1 ||
    (tail.slice(0, -1).every((group) => group.length === 3) &&
      /^\d{1,3}$/.test(tail[tail.length - 1]));
  if (!wholeIsRight || !tailIsRight) return undefined;
  return [[groups.join(""), tail.join("")]];
}
