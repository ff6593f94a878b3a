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

/** A cell whose equal values are counted. */
interface CountedCell {
  readonly values: readonly number[];
  readonly halfSteps: readonly number[];
  readonly counts: readonly number[];
  readonly size: number;
}

/** Log of the product of the cell's probabilities at one expectation. */
function logLikelihoodAt(
  { values, halfSteps, counts }: CountedCell,
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
    sum += counts[i] * Math.log(chance);
  }
  return sum;
}

/**
 * Log of the cell's likelihood with its expectation integrated out, which is
 * the restricted likelihood where nothing is rounded.
 *
 * The trapezium rule with nodes closer than two thirds of the scatter of the
 * cell's mean: the integrand is smooth on that scale and vanishes at both
 * ends, so that the error is below 1e-11.
 */
function logIntegrated(cell: CountedCell, deviation: number): number {
  const { values, halfSteps, size } = cell;
  let [low, high] = [Infinity, -Infinity];
  values.forEach((value, i) => {
    low = Math.min(low, value - halfSteps[i]);
    high = Math.max(high, value + halfSteps[i]);
  });
  low -= 7 * deviation;
  high += 7 * deviation;
  const count = Math.ceil(
    (high - low) / deviation * 1.5 * Math.sqrt(size),
  );
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
  const patterns = new Map<string, { cell: CountedCell; times: number }>();
  for (const { values, halfSteps } of cells) {
    const order = values.map((_, i) => i).sort((a, b) =>
      values[a] - values[b] || halfSteps[a] - halfSteps[b]
    );
    const counted = new Map<string, [number, number, number]>();
    for (const i of order) {
      const entry = [values[i] - values[order[0]], halfSteps[i]] as const;
      const name = entry.map((value) => value.toFixed(9)).join(" ");
      const known = counted.get(name);
      if (known) known[2]++;
      else counted.set(name, [...entry, 1]);
    }
    const entries = [...counted.values()];
    const cell: CountedCell = {
      values: entries.map(([value]) => value),
      halfSteps: entries.map(([, half]) => half),
      counts: entries.map(([, , count]) => count),
      size: values.length,
    };
    const key = [...counted].map(([name, [, , count]]) => `${name} ${count}`)
      .join(" ");
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
