/**
 * Refusals shared by the statistics: what is not a number stops at the border.
 *
 * @module
 */

/** Refuses NaN and both infinities. */
export function requireFinite(
  value: number,
  action: string,
  name: string,
): void {
  if (!Number.isFinite(value)) {
    throw new RangeError(
      `Cannot ${action} as ${name} must be a finite number: current value is ${value}`,
    );
  }
}

/** Refuses a list with a value that is not finite, naming the first one. */
export function requireAllFinite(
  values: ArrayLike<number>,
  action: string,
  name: string,
): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) {
      throw new RangeError(
        `Cannot ${action} as every ${name} must be a finite number: current value is ${
          values[i]
        } at position ${i}`,
      );
    }
  }
}

/** Refuses degrees of freedom that are not above 0; infinity is allowed. */
export function requireDegreesOfFreedom(
  dof: number,
  action: string,
  name = "degrees of freedom",
): void {
  if (!(dof > 0)) {
    throw new RangeError(
      `Cannot ${action} as ${name} must be above 0: current value is ${dof}`,
    );
  }
}

/** Refuses a probability that is not strictly between 0 and 1. */
export function requireProbability(
  probability: number,
  action: string,
  name = "probability",
): void {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(
      `Cannot ${action} as ${name} must be above 0 and below 1: current value is ${probability}`,
    );
  }
}

/** Refuses a list shorter than a statistic needs. */
export function requireLength(
  length: number,
  least: number,
  action: string,
  name: string,
): void {
  if (length < least) {
    throw new RangeError(
      `Cannot ${action} as the number of ${name} must be at least ${least}: current value is ${length}`,
    );
  }
}

/** Refuses lists that differ in length or hold what is no number. */
export function requirePoints(
  x: readonly number[],
  y: readonly number[],
  action: string,
): void {
  if (x.length !== y.length) {
    throw new RangeError(
      `Cannot ${action} as there must be as many values as places: current values are ${y.length} and ${x.length}`,
    );
  }
  requireAllFinite(x, action, "place");
  requireAllFinite(y, action, "value");
}
