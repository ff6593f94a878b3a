/**
 * One wild value must not flatten the picture of all the others.
 *
 * @module
 */

/** Values further out than this many quartile ranges leave the picture. */
const FENCE = 12;
/** Only few may leave it: more are no wild values but the data. */
const MOST_OUTSIDE = 0.1;

/**
 * Finds the range a picture should show.
 *
 * All values, unless at most one in ten lies more than twelve quartile ranges
 * outside the quartiles; those are left out, for the figure to name.
 *
 * @param values Values, finite, at least one.
 * @returns Lowest and highest value to show.
 */
export function visibleRange(
  values: ArrayLike<number>,
): { low: number; high: number } {
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  const all = { low: sorted[0], high: sorted[n - 1] };
  const [q1, q3] = [sorted[Math.floor(n / 4)], sorted[Math.floor(3 * n / 4)]];
  const reach = FENCE * (q3 - q1);
  if (n < 8 || reach === 0) return all;
  const inside = sorted.filter((v) => v >= q1 - reach && v <= q3 + reach);
  if (n - inside.length > MOST_OUTSIDE * n) return all;
  return { low: inside[0], high: inside[inside.length - 1] };
}
