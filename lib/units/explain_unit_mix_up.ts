/**
 * Putting the compiler's complaint about mixed units into words.
 *
 * @module
 */

/** What the compiler said about one place. */
export interface UnitDiagnostic {
  /** The compiler's number for the kind of complaint, such as 2345. */
  readonly code: number;
  /** The compiler's text, with all its lines. */
  readonly message: string;
}

/** Argument, assignment, missing property, wrong overload, operator. */
const MIX_UP_CODES = new Set([2322, 2345, 2365, 2379, 2769]);

const NAMES: Record<string, string> = {
  Millimetres: "millimetres",
  Inches: "inches",
  number: "a bare number",
};

const MEND: Record<string, string> = {
  "Inches to Millimetres": "inchesToMillimetres(…) converts it",
  "Millimetres to Inches": "millimetresToInches(…) converts it",
  "number to Millimetres":
    "millimetres(…) marks a number of millimetres, and inchesToMillimetres(inches(…)) takes inches",
  "number to Inches":
    "inches(…) marks a number of inches, and millimetresToInches(millimetres(…)) takes millimetres",
};

/**
 * Explains a compiler message that comes from mixing units of length or the
 * indices of powers.
 *
 * @param diagnostic What the compiler said.
 * @returns One sentence with the mend, or undefined when it is about something
 * else.
 *
 * @example
 * ```ts
 * import { explainUnitMixUp } from "sagbook/units/explain_unit_mix_up.ts";
 * import { equal } from "node:assert/strict";
 *
 * const message =
 *   "Argument of type 'Inches' is not assignable to parameter of type 'Millimetres'.";
 * equal(
 *   explainUnitMixUp({ code: 2345, message }),
 *   "This place asks for millimetres but was given inches: inchesToMillimetres(…) converts it.",
 * );
 * ```
 */
export function explainUnitMixUp(
  diagnostic: UnitDiagnostic,
): string | undefined {
  const { code, message } = diagnostic;
  if (!MIX_UP_CODES.has(code)) return undefined;
  const pairs = message.matchAll(
    /[Tt]ype '([^']+)' is not assignable to (?:parameter of )?type '([^']+)'/g,
  );
  let sentence: string | undefined;
  for (const [, given, wanted] of pairs) {
    sentence = lengthSentence(given, wanted) ?? indexSentence(given, wanted) ??
      sentence;
  }
  return sentence;
}

function lengthSentence(given: string, wanted: string): string | undefined {
  const from = /^-?[\d.]+$/.test(given) ? "number" : brandOf(given);
  const to = brandOf(wanted);
  const mend = MEND[`${from} to ${to}`];
  return mend === undefined
    ? undefined
    : `This place asks for ${NAMES[to]} but was given ${NAMES[from]}: ${mend}.`;
}

/** Names a brand that the compiler may have written out in full. */
function brandOf(type: string): string {
  const unit = /lengthUnit\]:\s*"(mm|in)"/.exec(type)?.[1];
  return unit === undefined ? type : unit === "mm" ? "Millimetres" : "Inches";
}

function indexSentence(given: string, wanted: string): string | undefined {
  const index = /^Dioptres<([\d.]+)>$/;
  const from = index.exec(given)?.[1];
  const to = index.exec(wanted)?.[1];
  return from === undefined || to === undefined
    ? undefined
    : `This place asks for a power meant for index ${to} but was given one meant for ${from}: powerAtIndex(…, ${to}) gives the same curve's power.`;
}
