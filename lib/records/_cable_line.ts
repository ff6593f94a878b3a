/**
 * Lines that a gauge's data cable writes.
 *
 * @module
 */

const CABLE_LINE =
  /^\s*[+\-\u2212]\s*\d+[.,]\d*\s*,\s*(?:MM|IN|INCH)\b|^\s*ERR\b/i;

/** True for a sign, spaces, a value and its unit, or an error report. */
export function isCableLine(line: string): boolean {
  return CABLE_LINE.test(line);
}
