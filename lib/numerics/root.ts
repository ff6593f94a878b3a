/**
 * Where a continuous function passes through zero.
 *
 * @module
 */

/** How a search for a root ends. */
export interface RootOptions {
  /** Half width at which the bracket is narrow enough; 0 unless stated. */
  readonly tolerance?: number;
  /** Most evaluations, 200 unless stated. */
  readonly maximumEvaluations?: number;
}

/**
 * Finds a root between two points where a function has opposite signs.
 *
 * Brent's method: inverse quadratic interpolation and secants, with bisection
 * whenever they do not shrink the bracket fast enough, so it always arrives.
 *
 * The result is within `tolerance`, two roundings and 1e-18 of the bracket's
 * width of a sign change.
 *
 * @param f A continuous function; must be finite in the bracket.
 * @param low One end of the bracket.
 * @param high The other end, in either order.
 * @param options Tolerance and limit.
 * @returns The place of the sign change.
 * @throws {RangeError} If an end is not finite, or the values at the ends have
 * the same sign, or a value is not a number, or the limit is reached.
 *
 * @see Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4.
 *
 * @example
 * ```ts
 * import { findRoot } from "sagbook/numerics/root.ts";
 * import { ok } from "node:assert/strict";
 *
 * const root = findRoot((x) => x * x - 2, 0, 2);
 * ok(Math.abs(root - Math.SQRT2) < 1e-15);
 * ```
 */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions = {},
): number {
  const { tolerance = 0, maximumEvaluations = 200 } = options;
  const floor = tolerance / 2 + 1e-18 * Math.abs(high - low);
  const value = (x: number): number => {
    const y = f(x);
    if (Number.isNaN(y)) {
      throw new RangeError(
        `Cannot find a root as the function must give a number everywhere in the bracket: current value at ${x} is NaN`,
      );
    }
    return y;
  };
  if (!(Number.isFinite(low) && Number.isFinite(high))) {
    throw new RangeError(
      `Cannot find a root as both ends of the bracket must be finite: current value is ${low} to ${high}`,
    );
  }
  let [a, b] = [low, high];
  let [fa, fb] = [value(a), value(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) {
    throw new RangeError(
      `Cannot find a root as the function must change sign between ${low} and ${high}: current value is ${fa} and ${fb}`,
    );
  }
  let [c, fc] = [a, fa];
  let step = b - a;
  let before = step;
  for (let count = 2; count < maximumEvaluations; count++) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      step = before = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const near = 2 * Number.EPSILON * Math.abs(b) + floor;
    const middle = (c - b) / 2;
    if (Math.abs(middle) <= near || fb === 0) return b;
    const guess = interpolate(a, b, c, fa, fb, fc);
    const useful = Math.abs(before) >= near && Math.abs(fa) > Math.abs(fb) &&
      guess / middle > 0 &&
      Math.abs(guess) < Math.min(
          1.5 * Math.abs(middle) - near / 2,
          Math.abs(before) / 2,
        );
    [before, step] = useful ? [step, guess] : [middle, middle];
    [a, fa] = [b, fb];
    b += Math.abs(step) > near ? step : Math.sign(middle) * near;
    fb = value(b);
  }
  throw new RangeError(
    `Cannot find a root as the search must end within ${maximumEvaluations} evaluations: current value is ${b}`,
  );
}

/** The step from b to where a parabola (or line) through the points is 0. */
function interpolate(
  a: number,
  b: number,
  c: number,
  fa: number,
  fb: number,
  fc: number,
): number {
  const s = fb / fa;
  if (a === c) return (c - b) * s / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}
