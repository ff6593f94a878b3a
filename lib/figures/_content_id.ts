/**
 * An id that belongs to one content alone.
 *
 * @module
 */

import { ID } from "./_theme.ts";

/** Numbers the ids of a body in their order, whatever a library called them. */
export function renumbered(body: string): string {
  const numbers = new Map<string, number>();
  return body.replace(new RegExp(`${ID}-([\\w.:-]+)`, "g"), (_, name) => {
    if (!numbers.has(name)) numbers.set(name, numbers.size + 1);
    return `${ID}-part-${numbers.get(name)}`;
  });
}

/**
 * Makes an id from a text: the same text, the same id.
 *
 * FNV-1a over the UTF-16 units, twice with other starts, as 64 bits in
 * letters; two different figures on a page share one by chance in 10⁻¹⁶.
 *
 * @see Fowler, Noll, Vo: the FNV hash (IETF draft-eastlake-fnv).
 */
export function contentId(text: string): string {
  const hash = (start: number) => {
    let h = start;
    for (let i = 0; i < text.length; i++) {
      h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
    }
    return (h >>> 0).toString(36);
  };
  return `figure-${hash(0x811c9dc5)}${hash(0x9e3779b9)}`;
}
