/**
 * What a figure refuses at its border.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";

/**
 * Refuses a value that is not a finite number.
 *
 * @param action What is being drawn: `the zones`.
 * @param what Which value: `the difference of edge`.
 * @throws {TypeError} If it is no number.
 * @throws {RangeError} If it is not finite.
 */
export function finite(
  value: number,
  action: string,
  what: string,
  unit = "mm",
): number {
  if (typeof value !== "number") {
    throw new TypeError(
      `Cannot draw ${action} as ${what} must be a number: current value is ${
        JSON.stringify(value)
      }`,
    );
  }
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot draw ${action} as ${what} must be a finite number: current value is ${value} ${unit}`
        .trimEnd(),
    );
  }
  return value;
}

/** Refuses a value that is not above zero. */
export function positive(
  value: number,
  action: string,
  what: string,
  unit = "mm",
): number {
  finite(value, action, what, unit);
  if (value <= 0) {
    throw new RangeError(
      `Cannot draw ${action} as ${what} must be above 0: current value is ${value} ${unit}`
        .trimEnd(),
    );
  }
  return value;
}

/** Refuses an interval that is not finite or runs backward. */
export function interval(
  ends: Interval,
  action: string,
  what: string,
  unit = "mm",
): Interval {
  finite(ends.low, action, `the lower end of ${what}`, unit);
  finite(ends.high, action, `the upper end of ${what}`, unit);
  if (ends.low > ends.high) {
    throw new RangeError(
      `Cannot draw ${action} as ${what} must not end below its start: current value is ${ends.low} to ${ends.high} ${unit}`
        .trimEnd(),
    );
  }
  return ends;
}

/** Refuses an empty list. */
export function some<T>(
  list: readonly T[],
  action: string,
  what: string,
): readonly T[] {
  if (list.length === 0) {
    throw new RangeError(
      `Cannot draw ${action} as there must be at least one ${what}: current value is 0 of them`,
    );
  }
  return list;
}
