/**
 * Whether a surface that is no sphere is told by its centre and its edge.
 *
 * @module
 */
import type { ZoneDifference } from "./zone_difference.ts";

/** What the innermost and the outermost place say of the shape. */
export interface CentreAgainstEdge {
  /**
   * Sag at the innermost place less that at the outermost, in mm; absent where
   * its sign is not sure, or where a place between departs far more.
   */
  readonly difference?: number;
  /** The place that lies farthest from the innermost, among the places. */
  readonly farthest: number;
}

/** A smaller part of the largest difference does not tell the shape. */
const TELLING = 0.5;

/**
 * Finds whether centre and edge tell the shape, or a zone between them does.
 *
 * A hole dug in the middle or a turned edge shows as a difference between the
 * two ends of the radius. A ring worn between them may leave both alike: the
 * sign of their difference then is chance, and no advice may rest on it. It is
 * taken for sure where the 95 % interval keeps clear of 0 and the difference
 * is at least half of the largest between any two places.
 *
 * @param differences Every pair of places, from differences within sets.
 * @param places How many places there are, at least 1.
 * @returns The difference where it tells, and the farthest place: the last one
 * where it does or where nothing was compared with the first.
 *
 * @example The middle stands 8 µm apart, and the two ends agree
 * ```ts
 * import { centreAgainstEdge } from "sagbook/zones/centre_against_edge.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const pair = (first: number, second: number, mean: number) => ({
 *   first, second, mean, sets: 5, dof: 4, rounding: 0,
 *   interval95: { low: mean - 0.001, high: mean + 0.001 },
 * });
 * deepEqual(
 *   centreAgainstEdge([pair(0, 1, 0.008), pair(0, 2, 0.0002), pair(1, 2, -0.0078)], 3),
 *   { farthest: 1 },
 * );
 * deepEqual(
 *   centreAgainstEdge([pair(0, 1, 0.003), pair(0, 2, 0.007), pair(1, 2, 0.004)], 3),
 *   { difference: 0.007, farthest: 2 },
 * );
 * ```
 */
export function centreAgainstEdge(
  differences: readonly ZoneDifference[],
  places: number,
): CentreAgainstEdge {
  const last = places - 1;
  const size = ({ mean }: ZoneDifference): number => Math.abs(mean);
  const largest = Math.max(0, ...differences.map(size));
  const ends = differences.find(({ first, second }) =>
    first === 0 && second === last
  );
  if (ends !== undefined && size(ends) >= TELLING * largest) {
    const { interval95, mean } = ends;
    if (interval95 && (interval95.low > 0 || interval95.high < 0)) {
      return { difference: mean, farthest: last };
    }
  }
  const [far] = differences.filter(({ first }) => first === 0)
    .sort((a, b) => size(b) - size(a));
  return { farthest: far?.second ?? last };
}
