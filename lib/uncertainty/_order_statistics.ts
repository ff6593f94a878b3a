/**
 * Some of the smallest, middle or largest of many numbers, sorted.
 *
 * @module
 */

const SAMPLE = 4096;

/**
 * Finds the order statistics of ranks `from` to `to` (from 0, `to` excluded).
 *
 * Only numbers between two thresholds taken from a sample are sorted; when the
 * thresholds miss, everything is. The answer is exact either way.
 */
export function sortedRange(
  values: Float64Array,
  from: number,
  to: number,
): Float64Array {
  const n = values.length;
  if (n <= 4 * SAMPLE) return values.toSorted().subarray(from, to);
  const sample = new Float64Array(SAMPLE);
  for (let i = 0; i < SAMPLE; i++) {
    sample[i] = values[Math.floor((i + 0.5) * n / SAMPLE)];
  }
  sample.sort();
  const margin = 6 * Math.sqrt(SAMPLE);
  const first = Math.floor(from / n * SAMPLE - Math.min(margin, from)) - 2;
  const last = Math.ceil(to / n * SAMPLE + Math.min(margin, n - to)) + 2;
  const low = first < 0 ? -Infinity : sample[first];
  const high = last >= SAMPLE ? Infinity : sample[last];
  let [below, inside] = [0, 0];
  const kept = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const value = values[i];
    if (value < low) below++;
    else if (value <= high) kept[inside++] = value;
  }
  if (below > from || below + inside < to) {
    return values.toSorted().subarray(from, to);
  }
  return kept.subarray(0, inside).sort().slice(from - below, to - below);
}
