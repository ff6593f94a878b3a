/**
 * Numbers and words of a JSON text, and what people write in their place.
 *
 * @module
 */

/** A fault at a place of the text. */
export class Fault extends Error {
  /** Offset in the text. */
  readonly at: number;
  /** The likely mend. */
  readonly mend: string;

  /** Says where, what and the mend. */
  constructor(at: number, message: string, mend: string) {
    super(message);
    this.at = at;
    this.mend = mend;
  }
}

const WORD = /(?:true|false|null)\b/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const UNIT = /[ \t]*(mm|cm|in|inch|um|µm|m|")(?=[\s,}\]]|$)/y;
const OTHER_NUMBER = /[+.]\d|-\.\d|0\d/y;

function match(pattern: RegExp, text: string, at: number) {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/**
 * Length of the number or word that stands at an offset.
 *
 * @throws {Fault} If none stands there, or a unit follows a number.
 */
export function scalarLength(text: string, at: number): number {
  const word = match(WORD, text, at);
  if (word !== null) return word[0].length;
  if (match(OTHER_NUMBER, text, at) !== null) {
    throw new Fault(
      at,
      "JSON does not know this way to write a number",
      "write a digit before the point, and no plus sign or leading nought",
    );
  }
  const number = match(NUMBER, text, at);
  if (number !== null) {
    const after = at + number[0].length;
    const unit = match(UNIT, text, after);
    if (unit === null) return number[0].length;
    throw new Fault(
      after,
      "a unit follows the number",
      `put number and unit between quotes: "${number[0]} ${
        unit[1] === '"' ? "in" : unit[1]
      }"`,
    );
  }
  const letter = text[at];
  if (letter === undefined) {
    throw new Fault(at, "the file ends too early", "close every bracket");
  }
  if (letter === "}" || letter === "]") {
    throw new Fault(
      at,
      "a value is missing, or a comma too many stands before this",
      "take the comma before it out",
    );
  }
  if (/['‘’“”„]/.test(letter)) {
    throw new Fault(at, "this is not a plain double quote", 'use " for quotes');
  }
  throw new Fault(at, "this is no JSON value", 'put text between quotes: "…"');
}
