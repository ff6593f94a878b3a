/**
 * Dates and times that can be read one way only.
 *
 * @module
 */

/** What a typed date turned out to be. */
export type TakenAt =
  | { readonly kind: "date"; readonly value: string }
  | { readonly kind: "ambiguous"; readonly readings: readonly string[] }
  | { readonly kind: "refused" };

const TIME =
  "(?:(?:[T ]|, ?)(\\d{1,2}):(\\d{2})(?::(\\d{2}(?:\\.\\d+)?))?\\s*(Z|[+-]\\d{2}:?\\d{2})?)?$";
const YEAR_FIRST = new RegExp(`^(\\d{4})([-/.])(\\d{1,2})\\2(\\d{1,2})${TIME}`);
const RUN_TOGETHER = new RegExp(`^([12]\\d{3})(\\d{2})(\\d{2})${TIME}`);
const YEAR_LAST = new RegExp(`^(\\d{1,2})([-/.])(\\d{1,2})\\2(\\d{4})${TIME}`);
const DAY_AND_NAME = new RegExp(
  `^(\\d{1,2})(?:st|nd|rd|th|\\.)?[ -]([a-z]{3,9})\\.?,?[ -](\\d{4})${TIME}`,
  "i",
);
const NAME_AND_DAY = new RegExp(
  `^([a-z]{3,9})\\.? (\\d{1,2})(?:st|nd|rd|th)?,? (\\d{4})${TIME}`,
  "i",
);
const MONTHS = [
  ...["january", "february", "march", "april", "may", "june", "july"],
  ...["august", "september", "october", "november", "december"],
];

function monthNamed(word: string): string {
  const name = word.toLowerCase();
  const at = MONTHS.findIndex((one) =>
    one === name || one.slice(0, 3) === name || name === "sept" &&
      one === "september"
  );
  return String(at + 1);
}

/** A date as ISO writes it; `undefined` for a day or time that never was. */
function iso(
  year: string,
  month: string,
  day: string,
  [hour, minute, second, zone]: readonly (string | undefined)[],
): string | undefined {
  const date = new Date(Date.UTC(+year, +month - 1, +day));
  const real = date.getUTCMonth() === +month - 1 && date.getUTCDate() === +day;
  const timely = +(hour ?? 0) <= 23 && +(minute ?? 0) <= 59 &&
    +(second ?? 0) <= 60;
  if (!real || !timely) return undefined;
  const two = (part: string) => part.padStart(2, "0");
  const on = `${year}-${two(month)}-${two(day)}`;
  if (hour === undefined) return on;
  const seconds = second === undefined ? "" : `:${second}`;
  return `${on}T${two(hour)}:${minute}${seconds}${zone ?? ""}`;
}

/** Every date that a text could be. */
function readings(typed: string): (string | undefined)[] {
  let part = YEAR_FIRST.exec(typed);
  if (part !== null) return [iso(part[1], part[3], part[4], part.slice(5))];
  part = RUN_TOGETHER.exec(typed);
  if (part !== null) return [iso(part[1], part[2], part[3], part.slice(4))];
  part = DAY_AND_NAME.exec(typed);
  if (part !== null) {
    return [iso(part[3], monthNamed(part[2]), part[1], part.slice(4))];
  }
  part = NAME_AND_DAY.exec(typed);
  if (part !== null) {
    return [iso(part[3], monthNamed(part[1]), part[2], part.slice(4))];
  }
  part = YEAR_LAST.exec(typed);
  if (part === null) return [];
  const [, first, , second, year, ...time] = part;
  return [iso(year, second, first, time), iso(year, first, second, time)];
}

/**
 * Reads a date, with or without a time.
 *
 * Year first, day and month in figures where only one order makes a date
 * (`17.5.2031`, `5/17/2031`), or the month by its English name. Where both
 * orders do, both come back.
 */
export function readTakenAt(typed: string): TakenAt {
  const found = [
    ...new Set(readings(typed.trim().replace(/[\s\u202f]+/g, " "))),
  ].filter((one) => one !== undefined);
  return found.length === 0
    ? { kind: "refused" }
    : found.length === 1
    ? { kind: "date", value: found[0] }
    : { kind: "ambiguous", readings: found };
}

/** Reads a date, with or without a time; `undefined` for anything else. */
export function parseTakenAt(typed: string): string | undefined {
  const read = readTakenAt(typed);
  return read.kind === "date" ? read.value : undefined;
}

/** What is wrong with a date that cannot be used. */
export function dateFault(
  typed: string,
): { readonly code: string; readonly message: string } {
  const read = readTakenAt(typed);
  return read.kind === "ambiguous"
    ? {
      code: "ambiguous-date",
      message: `this can be read two ways: ${read.readings.join(" or ")}`,
    }
    : {
      code: "not-a-date",
      message: "this is not a date that can be read one way only",
    };
}
