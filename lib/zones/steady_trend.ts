/**
 * Values that climb or fall one after another.
 *
 * @module
 */
import { medianOf } from "../statistics/median.ts";
import { normalProbability } from "../statistics/normal_distribution.ts";

/** A steady change over values in order. */
export interface SteadyTrend {
  /** Change from the first to the last by the median slope. */
  readonly change: number;
  /** Chance of values in such order, or a stricter one, without a trend. */
  readonly chance: number;
}

/** Up to here the chance is counted, above it approximated. */
const MOST_COUNTED = 50;

/** Orders of `count` values by how many pairs stand the wrong way round. */
function ordersByInversions(count: number): number[] {
  let orders = [1];
  for (let n = 2; n <= count; n++) {
    const next = new Array<number>(orders.length + n - 1).fill(0);
    orders.forEach((share, inversions) => {
      for (let more = 0; more < n; more++) {
        next[inversions + more] += share / n;
      }
    });
    orders = next;
  }
  return orders;
}

function chanceOf(score: number, count: number): number {
  const pairs = count * (count - 1) / 2;
  if (count > MOST_COUNTED) {
    const spread = Math.sqrt(count * (count - 1) * (2 * count + 5) / 18);
    const z = Math.max(0, Math.abs(score) - 1) / spread;
    return 2 * normalProbability(z, "upper");
  }
  const least = (pairs - Math.abs(score)) / 2;
  const tail = ordersByInversions(count).slice(0, Math.floor(least) + 1)
    .reduce((sum, share) => sum + share, 0);
  return Math.min(1, 2 * tail);
}

/**
 * Finds out whether values change steadily in the order they were taken.
 *
 * Kendall's rank test against the order: every pair counts up or down. The
 * chance is exact up to 50 values (orders counted by inversions); equal values
 * count for neither side, which makes the test a little shyer. A trend is
 * found where chance alone does that in at most one series of fifty, so five
 * values must all climb or all fall.
 *
 * @param values At least two values in order, finite.
 * @returns The change and its chance; undefined where there is no trend.
 * @throws {RangeError} If a value is not finite.
 *
 * @see Kendall (1938), Biometrika 30, 81-93; Theil (1950) for the slope. Checked
 * against R 4 `cor.test(…, method = "kendall", exact = TRUE)`.
 *
 * @example
 * ```ts
 * import { steadyTrend } from "sagbook/zones/steady_trend.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(steadyTrend([1, 2, 3, 4, 5, 6])?.change, 5);
 * equal(steadyTrend([1, 3, 2, 4, 1, 2]), undefined);
 * ```
 */
export function steadyTrend(
  values: readonly number[],
): SteadyTrend | undefined {
  const wrong = values.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) {
    throw new RangeError(
      `Cannot look for a trend as every value must be a finite number: current value is ${wrong}`,
    );
  }
  const count = values.length;
  const slopes: number[] = [];
  let score = 0;
  for (let first = 0; first < count; first++) {
    for (let next = first + 1; next < count; next++) {
      const rise = values[next] - values[first];
      slopes.push(rise / (next - first));
      score += Math.sign(rise);
    }
  }
  const chance = count < 2 ? 1 : chanceOf(score, count);
  if (chance > 0.02) return undefined;
  const slope = medianOf(slopes)!;
  return slope === 0 ? undefined : { change: slope * (count - 1), chance };
}
