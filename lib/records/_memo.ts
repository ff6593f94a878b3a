/**
 * Remembering what a text meant, for files repeat their cells.
 *
 * @module
 */

const LARGEST = 50_000;

/**
 * Wraps a function of one text so that it works each text out once.
 *
 * The last text is looked at first; the memory is emptied when it holds
 * 50,000 texts, so that a file of distinct cells cannot fill it.
 */
export function remembered<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  let lastText: string | undefined;
  let last: T;
  return (text) => {
    if (text === lastText) return last;
    let found = known.get(text);
    if (found === undefined) {
      if (known.size >= LARGEST) known.clear();
      found = work(text);
      known.set(text, found);
    }
    lastText = text;
    last = found;
    return found;
  };
}
