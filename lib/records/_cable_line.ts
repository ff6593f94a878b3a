/**
 * Lines that a gauge's data cable writes.
 *
 * @module
 */
import { unitOfWord } from "./_read_cell.ts";

/** What one line of a cable says. */
export interface CableValue {
  /** Date and time before the value, as typed; blank for none. */
  readonly stamp: string;
  /** The sign as written; blank for none. */
  readonly sign: string;
  /** The digits with their mark. */
  readonly digits: string;
  /** The unit as written. */
  readonly unit: string;
}

const VALUE =
  /^\s*(?:(\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?)[\s,;]+)?([+\-\u2212])?\s*((?:\d+[.,]?\d*)|[.,]\d+)\s*[,;]?\s*([a-z\u00b5\u03bc"]+\.?)\s*$/i;
const SIGNED = /^\s*[+\-\u2212]\s*\d+[.,]\d*\s*,\s*(?:MM|IN|INCH)\b/i;
const ERROR = /^\s*ERR(?:OR)?\b/i;

/** The value that a line holds; `undefined` for any other line. */
export function cableValue(line: string): CableValue | undefined {
  const match = line.length > 80 ? null : VALUE.exec(line);
  if (match === null) return undefined;
  const [, stamp = "", sign = "", digits, unit] = match;
  return { stamp, sign, digits, unit };
}

/** True where the gauge reported an error. */
export function isCableError(line: string): boolean {
  return ERROR.test(line);
}

/** True for a sign, a value and its unit, or an error report. */
export function isCableLine(line: string): boolean {
  if (ERROR.test(line) || SIGNED.test(line)) return true;
  const unit = cableValue(line)?.unit;
  return unit !== undefined && unitOfWord(unit) !== undefined;
}
