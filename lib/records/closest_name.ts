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
 * suggest: at most a third of its letters differ. Case, spaces, dashes and low
 * lines count for nothing.
 *
 * @param typed What was typed.
 * @param known The names there are.
 * @returns The closest, the first of several; undefined if none is close, or
 * if more than 60 characters were typed.
 *
 * @see The distance counts single letters put in, left out or changed, and
 * swaps of neighbours (optimal string alignment).
 *
 * @example
 * ```ts
 * import { closestName } from "sagbook/records/closest_name.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(closestName("zeorings", ["zone", "zeroing"]), "zeroing");
 * equal(closestName("temperature", ["zone", "zeroing"]), undefined);
 * ```
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
