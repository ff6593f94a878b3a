/**
 * Inch marks that a CSV parser would take for quotes, and quotes left open.
 *
 * @module
 */

/** A text whose quotes are all in order. */
export interface MendedText {
  /** The text, safe for a CSV parser. */
  readonly text: string;
  /** Lines, from 1, whose quotes had to be mended. */
  readonly mended: readonly number[];
}

/** A quoted cell longer than this many lines is a quote left open. */
const LONGEST_CELL_IN_LINES = 40;

type Quotes = "in order" | "open" | "broken";

/** How a line's quotes stand, the delimiters inside them, blanks before one. */
function quotesOf(
  line: string,
  delimiter: string,
  startsInside: boolean,
): { state: Quotes; inside: number; spaced: boolean } {
  let i = 0;
  let inside = 0;
  let spaced = false;
  let quoted = startsInside;
  const length = line.length;
  while (true) {
    if (!quoted) {
      const start = i;
      while (line[i] === " ") i++;
      if (line[i] !== '"') {
        const next = line.indexOf(delimiter, i);
        if (next < 0) return { state: "in order", inside, spaced };
        i = next + 1;
        continue;
      }
      if (i > start) spaced = true;
      i++;
      quoted = true;
    }
    for (;; i++) {
      if (i >= length) return { state: "open", inside, spaced };
      if (line[i] === delimiter) inside++;
      else if (line[i] === '"') {
        if (line[i + 1] === '"') i++;
        else break;
      }
    }
    i++;
    quoted = false;
    while (line[i] === " ") i++;
    if (i >= length) return { state: "in order", inside, spaced };
    if (line[i] !== delimiter) return { state: "broken", inside, spaced };
    i++;
  }
}

/** Quotes every cell that holds a quote mark, taking each mark literally. */
function literally(line: string, delimiter: string): string {
  return line.split(delimiter).map((cell) => {
    const bare = cell.trim();
    if (!bare.includes('"')) return cell;
    if (/^"(?:[^"]|"")*"$/.test(bare) && bare.length > 1) return bare;
    return `"${bare.replaceAll('"', '""')}"`;
  }).join(delimiter);
}

/**
 * Puts the quotes of a CSV text in order, without moving any line.
 *
 * A cell such as `"0.02815""` (a number with its inch mark, quoted by a
 * careless program) gets the missing mark. A quote that is never closed, is
 * closed in mid cell, or would swallow whole rows is taken literally, so that
 * it spoils its own line at most. Linear in the length of the text.
 */
export function mendQuotes(
  text: string,
  delimiter: string,
  columns: number,
): MendedText {
  if (!text.includes('"')) return { text, mended: [] };
  const edge = delimiter === "|" ? "\\|" : delimiter;
  const careless = new RegExp(
    `(^|${edge}) *"([-+\u2212\u2013]?[\\d.,'/ ]+)"" *(?=${edge}|$)`,
    "g",
  );
  const blankBeforeQuote = new RegExp(`(^|${edge}) +"`, "g");
  const mended: number[] = [];
  const lines = text.split("\n");
  for (let i = 0; i < lines.length; i++) {
    if (!lines[i].includes('"')) continue;
    const tidied = lines[i].replace(careless, '$1"$2"""');
    if (tidied !== lines[i]) mended.push(i + 1);
    lines[i] = tidied;
    const { state, spaced } = quotesOf(tidied, delimiter, false);
    if (state === "in order") {
      if (spaced) lines[i] = tidied.replace(blankBeforeQuote, '$1"');
      continue;
    }
    let end = -1;
    const last = Math.min(lines.length - 1, i + LONGEST_CELL_IN_LINES);
    for (let k = i + 1; state === "open" && k <= last; k++) {
      const next = quotesOf(lines[k], delimiter, true);
      if (next.inside >= Math.max(2, columns - 1)) break;
      if (next.state === "broken") break;
      if (next.state === "in order") {
        end = k;
        break;
      }
    }
    if (end > 0) {
      i = end;
      continue;
    }
    lines[i] = literally(tidied, delimiter);
    if (mended.at(-1) !== i + 1) mended.push(i + 1);
  }
  return { text: lines.join("\n"), mended };
}
