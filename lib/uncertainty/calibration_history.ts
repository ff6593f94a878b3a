/**
 * A ring's calibrations over the years, and when the next is due.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import {
  type CalibrationComparison,
  compareCalibrations,
} from "./ring_calibration.ts";

/** One calibration with its date. */
export interface DatedCalibration {
  /** ISO date, such as `2031-05-02`. */
  readonly on: string;
  /** Foot circle radius in mm, shared parts by id. */
  readonly circleRadius: Estimate;
}

/** What the calibrations of a ring say together. */
export interface CalibrationHistory {
  /** The calibrations, oldest first. */
  readonly calibrations: readonly DatedCalibration[];
  /** ISO date on which the next is due. */
  readonly dueOn: string;
  /** Whole days from `today` to that date; negative when overdue. */
  readonly daysLeft: number;
  /** The newest against the one before, where there are two. */
  readonly sinceBefore?: CalibrationComparison;
  /** The newest against the oldest, where there are three or more. */
  readonly sinceFirst?: CalibrationComparison;
  /** True when either shows a change beyond its uncertainty (95 %). */
  readonly changed: boolean;
}

/**
 * Puts a ring's calibrations in order and finds when the next is due.
 *
 * @param calibrations At least one.
 * @param everyMonths How long one holds, in months, above 0: the shop's rule.
 * @param today ISO date to count from.
 * @returns Order, due date and changes.
 * @throws {RangeError} If there is none, or the months are not above 0.
 * @throws {SyntaxError} If a date is no ISO date.
 *
 * @example
 * ```ts
 * import { calibrationHistory } from "sagbook/uncertainty/calibration_history.ts";
 * import { equal } from "node:assert/strict";
 *
 * const circleRadius = { value: 60, own: 0.01, dof: Infinity, common: {} };
 * const { dueOn, daysLeft } = calibrationHistory(
 *   [{ on: "2031-05-02", circleRadius }], 12, "2032-05-12",
 * );
 * equal(dueOn, "2032-05-02");
 * equal(daysLeft, -10);
 * ```
 */
export function calibrationHistory(
  calibrations: readonly DatedCalibration[],
  everyMonths: number,
  today: string,
): CalibrationHistory {
  if (calibrations.length === 0) {
    throw new RangeError(
      "Cannot draw up a history as there must be at least one calibration: current value is 0",
    );
  }
  if (!(everyMonths > 0 && Number.isInteger(everyMonths))) {
    throw new RangeError(
      `Cannot draw up a history as the interval must be a whole number of months above 0: current value is ${everyMonths}`,
    );
  }
  const ordered = calibrations.toSorted((a, b) => day(a.on) - day(b.on));
  const newest = ordered[ordered.length - 1];
  const due = dateAfter(newest.on, everyMonths);
  const before = ordered[ordered.length - 2];
  const sinceBefore = before && compareCalibrations(newest, before);
  const sinceFirst = ordered.length > 2
    ? compareCalibrations(newest, ordered[0])
    : undefined;
  return {
    calibrations: ordered,
    dueOn: due,
    daysLeft: day(due) - day(today),
    ...(sinceBefore ? { sinceBefore } : {}),
    ...(sinceFirst ? { sinceFirst } : {}),
    changed: sinceBefore?.agree === false || sinceFirst?.agree === false,
  };
}

/** Days since 1970, in UTC, so that no clock change moves a date. */
function day(date: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(date);
  const time = match === null ? NaN : Date.parse(match[0]);
  if (!Number.isFinite(time)) {
    throw new SyntaxError(
      `Cannot read a date as it must be written YYYY-MM-DD: current value is ${date}`,
    );
  }
  return time / 86_400_000;
}

/** The same day some months on, or the last of a month that is shorter. */
function dateAfter(date: string, months: number): string {
  const start = new Date(day(date) * 86_400_000);
  const month = start.getUTCMonth() + months;
  const year = start.getUTCFullYear();
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const due = Date.UTC(year, month, Math.min(start.getUTCDate(), last));
  return new Date(due).toISOString().slice(0, 10);
}
