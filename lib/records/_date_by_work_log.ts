/**
 * Dates for sessions whose readings have none, from the work log.
 *
 * @module
 */
import { mapItems } from "../numerics/lazy_list.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";
import type { WorkLogEntry } from "./work_log.ts";

const MOST_NAMED = 8;

/**
 * The dates that the log gives to sessions without one: that of the last line
 * that names them. Nothing unless every one of them gets a date, for some dates
 * among sessions that stand as they were found put nothing in order.
 */
export function datesOfLog(
  undated: readonly string[],
  entries: readonly WorkLogEntry[],
): ReadonlyMap<string, string> {
  const dates = new Map<string, string>();
  for (const { session, date } of entries) {
    if (session !== undefined && date !== undefined) dates.set(session, date);
  }
  return undated.length > 0 && undated.every((name) => dates.has(name))
    ? new Map(undated.map((name) => [name, dates.get(name)!]))
    : new Map();
}

/** The readings, those of a session in the list with its date. */
export function withDates(
  readings: readonly Reading[],
  dates: ReadonlyMap<string, string>,
): readonly Reading[] {
  if (dates.size === 0) return readings;
  return mapItems(readings, (reading): Reading => {
    const takenAt = reading.takenAt ?? dates.get(reading.session);
    return takenAt === undefined ? reading : { ...reading, takenAt };
  });
}

/** What there is to say about sessions that were dated by the log. */
export function datedByLog(dates: ReadonlyMap<string, string>): Problem[] {
  if (dates.size === 0) return [];
  const all = [...dates].map(([name, date]) => `${name} ${date}`);
  const named = all.slice(0, MOST_NAMED).join(", ");
  const more = all.length > MOST_NAMED ? ", and so on" : "";
  return [{
    severity: "note",
    code: "dated-by-work-log",
    file: "worklog.csv",
    message:
      `readings without a date were given that of the work before them: ${named}${more}`,
  }];
}
