/**
 * The first and the last part of what a cell prints, whatever it prints.
 *
 * @module
 */

/** Lines kept at the beginning, and again at the end. */
const LINES = 500;
/** Characters kept at the beginning, and again at the end. */
const CHARACTERS = 100_000;

/** A number with its thousands set apart, as in "199 000". */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, " ");
}

function countLines(text: string): number {
  let lines = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) {
    lines++;
  }
  return lines;
}

/** Where the first `lines` lines of `text` end, or its length. */
function endOfLines(text: string, lines: number): number {
  let at = 0;
  for (let i = 0; i < lines; i++) {
    const end = text.indexOf("\n", at);
    if (end < 0) return text.length;
    at = end + 1;
  }
  return at;
}

/** Never between the halves of one character. */
function wholeCharacters(text: string, at: number): number {
  return /[\uDC00-\uDFFF]/.test(text[at] ?? "") ? at - 1 : at;
}

/** How much of a cell's beginning is still to be kept. */
export class HeadRoom {
  #lines = LINES;
  #characters = CHARACTERS;

  /** Cuts text into what still fits and what does not. */
  take(text: string): [head: string, rest: string] {
    if (this.#lines <= 0 || this.#characters <= 0) return ["", text];
    const end = wholeCharacters(
      text,
      Math.min(endOfLines(text, this.#lines), this.#characters),
    );
    const head = text.slice(0, end);
    this.#lines -= countLines(head);
    this.#characters -= head.length;
    if (end < text.length) this.#lines = 0;
    return [head, text.slice(end)];
  }
}

/** The end of a stream whose beginning is kept elsewhere. */
export class Tail {
  #pieces: string[] = [];
  #length = 0;
  #lines = 0;
  #characters = 0;

  /** Adds text, dropping what is older than the last part. */
  add(text: string): void {
    this.#pieces.push(text);
    this.#length += text.length;
    if (this.#length > 4 * CHARACTERS) this.#trim();
  }

  #trim(): void {
    const text = this.#pieces.join("");
    const lines = countLines(text);
    const open = text.endsWith("\n") ? 0 : 1;
    let start = lines + open > LINES
      ? endOfLines(text, lines + open - LINES)
      : 0;
    start = wholeCharacters(text, Math.max(start, text.length - CHARACTERS));
    const dropped = text.slice(0, start);
    this.#lines += countLines(dropped);
    this.#characters += dropped.length;
    this.#pieces = [text.slice(start)];
    this.#length = text.length - start;
  }

  /** The last part, below a line that says how much is left out. */
  finish(): string {
    this.#trim();
    const [text] = this.#pieces;
    if (this.#characters === 0) return text;
    const amount = this.#lines > 0
      ? `${grouped(this.#lines)} lines`
      : `${grouped(this.#characters)} characters`;
    return `[… ${amount} left out …]\n${text}`;
  }
}
