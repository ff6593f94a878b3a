/**
 * The known name that a mistyped one most likely means.
 *
 * @module
 */

/** Number of single-letter changes (swaps of neighbours count one) from `a` to `b`. */
function changes(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        row[j] = Math.min(row[j], before[j - 2] + 1);
      }
    }
    [before, above] = [above, row];
  }
  return above[b.length];
}

/**
 * Finds the known name closest to a typed one, if one is close enough to
 * suggest: at most a third of its letters differ.
 */
export function closestName(
  typed: string,
  known: Iterable<string>,
): string | undefined {
  if (typed.length > 60) return undefined;
  const plain = (name: string) => name.toLowerCase().replace(/[\s_-]+/g, "_");
  let best: string | undefined;
  let fewest = Infinity;
  for (const name of known) {
    const count = changes(plain(typed), plain(name));
    const allowed = Math.max(1, Math.floor(Math.max(name.length, 3) / 3));
    if (count <= allowed && count < fewest) {
      [best, fewest] = [name, count];
    }
  }
  return best;
}
