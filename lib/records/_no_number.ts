/**
 * What a cell is that holds no reading.
 *
 * @module
 */
import type { Fault } from "./_line_faults.ts";

const MONTH =
  "(?:jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz])[a-zä]*\\.?";
/** A day and a month in words, or three parts of a date in figures. */
const DATE = new RegExp(
  `^(?:\\d{1,4}[-/. ]{1,2}${MONTH}(?:[-/. ]\\d{2,4})?|${MONTH}[-/. ]\\d{1,4}|` +
    "\\d{1,4}([-/.])\\d{1,2}\\1\\d{1,4})$",
  "i",
);
const SPREADSHEET_ERROR = /^#(?:N\/A|REF|DIV\/0|VALUE|NAME|NUM|NULL|NV|WERT)/i;
const DISPLAY_ERROR = /^(?:over|under|o\.?l\.?|err(?:or)?\.?|hi|lo|low bat)$/i;

/** Why a cell is no number, where that can be told better than by its marks. */
export function noNumber(typed: string): Fault | undefined {
  const text = typed.trim();
  const found = (message: string, mend: string): Fault => ({
    code: "not-a-number",
    message,
    expected: "a decimal number such as 0.715, with or without a unit",
    mend,
  });
  if (text.length > 40) return undefined;
  if (DATE.test(text)) {
    return found(
      "this is a date, as a spreadsheet makes it of a number typed with a dash, a stroke or a point",
      "give the column the format text, and type the number as the display showed it",
    );
  }
  if (SPREADSHEET_ERROR.test(text)) {
    return found(
      "this is an error of the spreadsheet, not a reading",
      "type the number as the display showed it, or leave the line out",
    );
  }
  if (DISPLAY_ERROR.test(text)) {
    return found(
      "the display showed no number here: it was out of its range, or in error",
      "read again, or leave the line out",
    );
  }
  if (/^['’`´]\s*[-+\u2212]?[\d.,]/.test(text)) {
    return found(
      "an apostrophe stands before the number, a spreadsheet's mark for text",
      "take the apostrophe away",
    );
  }
  return undefined;
}
