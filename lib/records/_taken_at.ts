/**
 * Dates and times that can be read one way only.
 *
 * @module
 */

const ISO =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*(Z|[+-]\d{2}:?\d{2})?)?$/;

/** Reads an ISO date, with or without a time; `undefined` for anything else. */
export function parseTakenAt(typed: string): string | undefined {
  const match = ISO.exec(typed);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second] = match;
  const date = new Date(Date.UTC(+year, +month - 1, +day));
  const real = date.getUTCMonth() === +month - 1 && date.getUTCDate() === +day;
  if (
    !real || +(hour ?? 0) > 23 || +(minute ?? 0) > 59 || +(second ?? 0) > 60
  ) {
    return undefined;
  }
  return typed.replace(/^(\S{10}) /, "$1T").replace(/ /g, "");
}
