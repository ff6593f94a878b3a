/**
 * What is too large for a page, and what stands there in its place.
 *
 * @module
 */
import { HeadRoom, Tail } from "./_kept_text.ts";

/** Most characters of one result that is drawn: a page can still be opened. */
const MOST_DRAWN = 8_000_000;
/** Most characters of one text; of a longer one the two ends are shown. */
const MOST_TEXT = 400_000;

/** A text, or its beginning and end with a line that says what is left out. */
export function textForPage(text: string): string {
  if (text.length <= MOST_TEXT) return text;
  const [head, rest] = new HeadRoom().take(text);
  const tail = new Tail();
  tail.add(rest);
  return `${head.endsWith("\n") ? head : `${head}\n`}${tail.finish()}`;
}

/** Says that a form of a result is too large; `undefined` if it is not. */
export function tooLargeForPage(
  type: string,
  value: unknown,
): string | undefined {
  const size = typeof value === "string"
    ? value.length
    : JSON.stringify(value).length;
  if (size <= MOST_DRAWN || type.startsWith("text/plain")) return undefined;
  const millions = Math.round(size / 100_000) / 10;
  return `[a result of the kind ${type} with ${millions} million characters is left out of this page; the notebook holds it]`;
}
