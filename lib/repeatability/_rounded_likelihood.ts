/**
 * The likelihood of a scatter behind readings that a display has rounded.
 *
 * @module
 */
import { normalProbability } from "../statistics/normal_distribution.ts";

/** Readings of one expectation, each known to lie between two ends. */
export interface RoundedCell {
  /** Shown values. */
  readonly values: readonly number[];
  /** Half a display step for each. */
  readonly halfSteps: readonly number[];
}

/** Probability between two ends in standard deviations, small tails kept. */
function between(low: number, high: number): number {
  return low > 0
    ? normalProbability(low, "upper") - normalProbability(high, "upper")
    : normalProbability(high) - normalProbability(low);
}

/** Log of the product of the cell's probabilities at one expectation. */
function logLikelihoodAt(
  { values, halfSteps }: RoundedCell,
  mean: number,
  deviation: number,
): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    const [middle, half] = [values[i] - mean, halfSteps[i]];
    const chance = between(
      (middle - half) / deviation,
      (middle + half) / deviation,
    );
    if (!(chance > 0)) return -Infinity;
    sum += Math.log(chance);
  }
  return sum;
}

/**
 * Log of the cell's likelihood with its expectation integrated out, which is
 * the restricted likelihood where nothing is rounded.
 *
 * The trapezium rule at a quarter of a standard deviation: the integrand is
 * smooth on that scale and vanishes at both ends, so the error is far below
 * rounding.
 */
function logIntegrated(cell: RoundedCell, deviation: number): number {
  const { values, halfSteps } = cell;
  const low = Math.min(...values.map((value, i) => value - halfSteps[i])) -
    8 * deviation;
  const high = Math.max(...values.map((value, i) => value + halfSteps[i])) +
    8 * deviation;
  const count = Math.ceil((high - low) / (deviation / 4));
  const width = (high - low) / count;
  const logs: number[] = [];
  let most = -Infinity;
  for (let k = 0; k <= count; k++) {
    const log = logLikelihoodAt(cell, low + k * width, deviation);
    logs.push(log);
    if (log > most) most = log;
  }
  if (most === -Infinity) return -Infinity;
  return most + Math.log(width) +
    Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

/** A log-likelihood of a standard deviation above 0, over all cells. */
export function roundedLikelihood(
  cells: readonly RoundedCell[],
): (deviation: number) => number {
  // Cells that differ by a shift alone have one likelihood.
  const patterns = new Map<string, { cell: RoundedCell; times: number }>();
  for (const { values, halfSteps } of cells) {
    const order = values.map((_, i) => i).sort((a, b) =>
      values[a] - values[b] || halfSteps[a] - halfSteps[b]
    );
    const cell = {
      values: order.map((i) => values[i] - values[order[0]]),
      halfSteps: order.map((i) => halfSteps[i]),
    };
    const key = [...cell.values, ...cell.halfSteps].map((value) =>
      value.toPrecision(9)
    ).join(" ");
    const known = patterns.get(key);
    if (known) known.times++;
    else patterns.set(key, { cell, times: 1 });
  }
  const all = [...patterns.values()];
  return (deviation) =>
    all.reduce(
      (sum, { cell, times }) => sum + times * logIntegrated(cell, deviation),
      0,
    );
}
