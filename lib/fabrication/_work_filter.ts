/**
 * Progress made into independent columns of variance 1, session by session.
 *
 * @module
 */
import type { WorkScatter } from "./progress_session.ts";

/** A session as the filter needs it. */
export interface FilterPoint {
  /** Work since the session before it in its run; 0 for the first. */
  readonly step: number;
  /** True for the first session of a run. */
  readonly first: boolean;
  /** Variance of its own, in mm², above 0. */
  readonly variance: number;
}

/** Columns made independent, and where the work had departed to at the end. */
export interface Filtered {
  /** Each column, for independent rows of variance 1. */
  readonly columns: readonly Float64Array[];
  /** Departure at the last session that each column implies. */
  readonly departure: readonly number[];
  /** Variance of that departure, in mm². */
  readonly departureVariance: number;
}

/**
 * The filter for a value that wanders at random and is read with error: each
 * reading is taken less what those before it foretell, over the standard
 * deviation of that difference. The same steps on every column give
 * generalised least squares in a time that grows with the number of sessions.
 *
 * @see R. E. Kalman (1960), Journal of Basic Engineering 82, 35-45.
 */
export function filterWork(
  points: readonly FilterPoint[],
  columns: readonly (readonly number[])[],
  scatterVariance: number,
  model: WorkScatter,
): Filtered {
  const count = points.length;
  const out = columns.map(() => new Float64Array(count));
  const state = columns.map(() => 0);
  if (model === "by session") {
    points.forEach(({ variance }, i) => {
      const scale = 1 / Math.sqrt(variance + scatterVariance);
      columns.forEach((column, c) => out[c][i] = column[i] * scale);
    });
    return { columns: out, departure: state, departureVariance: 0 };
  }
  let departureVariance = 0;
  for (let i = 0; i < count; i++) {
    const { step, first, variance } = points[i];
    if (first) {
      departureVariance = 0;
      state.fill(0);
    } else departureVariance += scatterVariance * step;
    const total = departureVariance + variance;
    const gain = departureVariance / total;
    const scale = 1 / Math.sqrt(total);
    for (let c = 0; c < columns.length; c++) {
      const news = columns[c][i] - state[c];
      out[c][i] = news * scale;
      state[c] += gain * news;
    }
    departureVariance *= 1 - gain;
  }
  return { columns: out, departure: state, departureVariance };
}

/**
 * Sum of squares of the first column after the others are taken out of it, by
 * modified Gram-Schmidt.
 */
export function squaresLeft(columns: readonly Float64Array[]): number {
  const [left, ...basis] = columns.map((column) => Float64Array.from(column));
  const dot = (a: Float64Array, b: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
    return sum;
  };
  for (let k = 0; k < basis.length; k++) {
    const length = dot(basis[k], basis[k]);
    if (length === 0) continue;
    for (const other of [...basis.slice(k + 1), left]) {
      const part = dot(basis[k], other) / length;
      for (let i = 0; i < other.length; i++) other[i] -= part * basis[k][i];
    }
  }
  return dot(left, left);
}
