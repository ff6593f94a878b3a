/**
 * Minimum of a smooth function of a few variables by damped Newton steps.
 *
 * @module
 */
import { factorInPlace, solveBackward, solveForward } from "./_dense_factor.ts";

/** A function's value, gradient and curvature at one point. */
export interface LocalShape {
  /** The value. */
  readonly value: number;
  /** The gradient. */
  readonly gradient: readonly number[];
  /** The matrix of second derivatives, or an approximation to it. */
  readonly hessian: readonly (readonly number[])[];
  /** Whether `hessian` is exact. */
  readonly exact: boolean;
}

/** Where the minimum was found. */
export interface Minimum {
  /** The point. */
  readonly at: number[];
  /** The value there. */
  readonly value: number;
  /** Whether the last step was as short as asked for. */
  readonly converged: boolean;
}

/**
 * Finds a minimum from a starting point.
 *
 * The step solves (H + μ I) d = -g with μ raised until the value falls. An
 * approximate H is corrected by what the gradient did over each step (symmetric
 * rank one), which restores fast convergence.
 *
 * @param shape Value, gradient and curvature; undefined outside its domain.
 * @param from Starting point inside the domain.
 * @param typical Size of a change that matters in each variable.
 * @param relative Length of the last step relative to the variables.
 */
export function minimise(
  shape: (at: readonly number[]) => LocalShape | undefined,
  from: readonly number[],
  typical: readonly number[],
  relative: number,
): Minimum {
  const size = from.length;
  let at = [...from];
  const first = shape(at);
  if (!first) return { at, value: Infinity, converged: false };
  let here = first;
  let damping = 0;
  let correction = from.map(() => new Array<number>(size).fill(0));
  for (let iteration = 0; iteration < 200; iteration++) {
    const hessian = here.hessian.map((row, i) =>
      row.map((value, j) => value + correction[i][j])
    );
    const { step, used } = dampedStep(hessian, here.gradient, damping);
    const next = at.map((value, i) => value + step[i]);
    const length = Math.max(
      ...step.map((d, i) => Math.abs(d) / (Math.abs(at[i]) + typical[i])),
      0,
    );
    const there = shape(next);
    const slack = 1e-12 * Math.abs(here.value) + 1e-13;
    if (!there || there.value > here.value + slack) {
      if (length < relative) return { at, value: here.value, converged: true };
      damping = Math.max(4 * used, 1e-3 * largest(hessian));
      correction = correction.map((row) => row.map(() => 0));
      if (iteration > 150) break;
      continue;
    }
    if (!there.exact) update(correction, step, here, there);
    [at, here] = [next, there];
    damping = used > 0 && used < 1e-6 * largest(hessian) ? 0 : used / 10;
    if (length < relative) return { at, value: here.value, converged: true };
  }
  return { at, value: here.value, converged: false };
}

/** The step for a damping at least as large as given and as needed. */
function dampedStep(
  hessian: readonly (readonly number[])[],
  gradient: readonly number[],
  damping: number,
): { step: number[]; used: number } {
  const size = gradient.length;
  if (!gradient.every(Number.isFinite)) {
    return { step: gradient.map(() => 0), used: damping };
  }
  let used = damping;
  for (;;) {
    const a = new Float64Array(size * size);
    hessian.forEach((row, i) => {
      row.forEach((value, j) => a[i * size + j] = value);
      a[i * size + i] += used;
    });
    if (factorInPlace(a, size)) {
      const x = Float64Array.from(gradient, (value) => -value);
      solveForward(a, size, size, x);
      solveBackward(a, size, size, x);
      return { step: [...x], used };
    }
    used = Math.max(4 * used, 1e-3 * largest(hessian), 1e-300);
  }
}

/** Corrects an approximate curvature by what the gradient did over a step. */
function update(
  correction: number[][],
  step: readonly number[],
  before: LocalShape,
  after: LocalShape,
): void {
  const rest = step.map((_, i) => {
    let value = after.gradient[i] - before.gradient[i];
    step.forEach((d, j) => {
      value -= (after.hessian[i][j] + correction[i][j]) * d;
    });
    return value;
  });
  const along = rest.reduce((sum, value, i) => sum + value * step[i], 0);
  const size = Math.hypot(...rest) * Math.hypot(...step);
  if (Math.abs(along) <= 1e-8 * size) return;
  rest.forEach((a, i) =>
    rest.forEach((b, j) => correction[i][j] += a * b / along)
  );
}

function largest(matrix: readonly (readonly number[])[]): number {
  return Math.max(...matrix.map((row, i) => Math.abs(row[i])), 1e-300);
}
