/**
 * Words in a row.
 *
 * @module
 */

/** Words in a row, the last joined by "and"; empty without a word. */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2
    ? last
    : `${words.slice(0, -1).join(", ")} and ${last}`;
}
