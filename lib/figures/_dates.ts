/**
 * Dates along an axis, in the calendar of the file, not of the machine.
 *
 * @module
 */
import type { Axis } from "./_panel.ts";

const DAY = 86_400_000;
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/**
 * Reads an ISO date or date and time as milliseconds, as if written in UTC; a
 * zone in the text counts.
 *
 * @throws {SyntaxError} If it is no ISO date.
 */
export function instant(text: string, action: string): number {
  const [, date, time = "T00:00", zone = "Z"] =
    /^(\d{4}-\d\d-\d\d)([T ]\d\d:\d\d(?::\d\d(?:\.\d+)?)?)?(Z|[+-]\d\d:?\d\d)?$/
      .exec(text.trim()) ?? [];
  const value = date === undefined
    ? NaN
    : Date.parse(date + time.replace(" ", "T") + zone);
  if (!Number.isFinite(value)) {
    throw new SyntaxError(
      `Cannot draw ${action} as a date must look like 2025-03-09 or 2025-03-09T14:30: current value is ${
        JSON.stringify(text)
      }`,
    );
  }
  return value;
}

function dayText(at: number): string {
  const date = new Date(at);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

/** A date in words: `9 Mar 2025`. */
export function dateText(at: number): string {
  return `${dayText(at)} ${new Date(at).getUTCFullYear()}`;
}

function monthsBetween(low: number, high: number, step: number): number[] {
  const first = new Date(low);
  const found: number[] = [];
  for (let month = 0;; month += step) {
    const at = Date.UTC(
      first.getUTCFullYear(),
      Math.ceil(first.getUTCMonth() / step) * step + month,
    );
    if (at > high) return found;
    if (at >= low) found.push(at);
  }
}

/** An axis of dates with days, weeks, months or years as its ticks. */
export function dateAxis(low: number, high: number): Axis {
  const room = Math.max((high - low) * 0.03, DAY / 2);
  const domain = [low - room, high + room] as const;
  const days = (domain[1] - domain[0]) / DAY;
  const step = [1, 2, 7, 14].find((step) => days / step <= 8);
  const start = Math.ceil(domain[0] / DAY) * DAY;
  const months = [1, 2, 3, 6, 12].find((step) => days / 30 / step <= 8) ??
    12 * Math.ceil(days / 365 / 8);
  const ticks = step === undefined
    ? monthsBetween(...domain, months)
    : Array.from(
      { length: Math.floor((domain[1] - start) / (step * DAY)) + 1 },
      (_, i) => start + i * step * DAY,
    );
  return {
    domain,
    ticks,
    label: (at) => {
      const date = new Date(at);
      const year = date.getUTCFullYear();
      if (step !== undefined) {
        return at === ticks[0] ? `${dayText(at)}\n${year}` : dayText(at);
      }
      return months >= 12
        ? `${year}`
        : `${MONTHS[date.getUTCMonth()]}\n${year}`;
    },
  };
}
