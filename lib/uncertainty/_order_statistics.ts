/**
 * The smallest and the largest of many numbers, sorted.
 *
 * @module
 */

const SAMPLE = 4096;

/** Both tails of a sample, each in ascending order. */
export interface Tails {
  /** The `count` smallest. */
  readonly lows: Float64Array;
  /** The `count` largest. */
  readonly highs: Float64Array;
}

/**
 * Finds the `count` smallest and the `count` largest of many numbers.
 *
 * Only numbers beyond thresholds taken from a sample are sorted; when a
 * threshold misses, everything is. The answer is exact either way.
 */
export function sortedTails(values: Float64Array, count: number): Tails {
  const n = values.length;
  // Six standard deviations of the rank that a sample's quantile has.
  const share = count / n;
  const rank = SAMPLE * share + 6 * Math.sqrt(SAMPLE * share * (1 - share)) + 4;
  if (n <= 4 * SAMPLE || rank >= SAMPLE / 2) return tailsOfAll(values, count);
  const sample = new Float64Array(SAMPLE);
  for (let i = 0; i < SAMPLE; i++) {
    sample[i] = values[Math.floor((i + 0.5) * n / SAMPLE)];
  }
  sample.sort();
  const place = Math.ceil(rank);
  const low = sample[place];
  const high = sample[SAMPLE - 1 - place];
  const room = Math.ceil(1.5 * n * place / SAMPLE) + 16;
  const [below, above] = [new Float64Array(room), new Float64Array(room)];
  let [lows, highs] = [0, 0];
  for (let i = 0; i < n; i++) {
    const value = values[i];
    if (value <= low) below[lows++] = value; // past its end: not kept, counted
    else if (value >= high) above[highs++] = value;
  }
  if (lows < count || highs < count || lows > room || highs > room) {
    return tailsOfAll(values, count);
  }
  return {
    lows: below.subarray(0, lows).sort().slice(0, count),
    highs: above.subarray(0, highs).sort().slice(highs - count),
  };
}

function tailsOfAll(values: Float64Array, count: number): Tails {
  const sorted = values.toSorted();
  return {
    lows: sorted.slice(0, count),
    highs: sorted.slice(sorted.length - count),
  };
}
