/**
 * How far a task is, on one line of a terminal or in a few lines of a log.
 *
 * @module
 */
import { printable } from "../records/printable.ts";
import { progress, terminalColumns } from "./_terminal.ts";

/** Clears the rest of a terminal's line (ECMA-48, erase in line). */
const CLEAR_LINE = "\r\x1B[K";
/** A job that is done sooner says nothing, in ms. */
const SHORT = 1_000;
/** Least time between two changes of the line, in ms. */
const PAUSE = 100;
/** In a log the first line comes after this, each other after twice as long. */
const FIRST_LINE = 30_000;

/** Where progress goes, and how. */
export interface ProgressSettings {
  /** Takes text for the standard error. */
  readonly write: (text: string) => void;
  /** Whether a line can be written over. */
  readonly isTerminal: boolean;
  /** Letters in a line of the terminal; 0 where that is not known. */
  readonly columns: () => number;
  /** The time in ms. */
  readonly now?: () => number;
}

/**
 * Shows how far a task is: nothing of what takes less than a second; on a
 * terminal one line that changes; in a log a line after 30, 60, 120 … s.
 */
export class TaskProgress {
  readonly #settings: ProgressSettings;
  readonly #now: () => number;
  readonly #start: number;
  readonly #timer: ReturnType<typeof setInterval>;
  #part = "";
  #words = "";
  #since: number;
  #shownAt = -Infinity;
  #isOpen = false;
  #nextLine = FIRST_LINE;

  /** Starts the clock. */
  constructor(settings: ProgressSettings) {
    this.#settings = settings;
    this.#now = settings.now ?? (() => performance.now());
    this.#start = this.#since = this.#now();
    this.#timer = setInterval(() => this.#show(true), 1_000);
    this.#timer.unref();
  }

  /** Says which part of the task is at hand, such as `piece 3 of 40, disc`. */
  part(words: string): void {
    this.#part = words;
    this.#words = "";
    this.#since = this.#now();
    this.#show();
  }

  /** Says how far that part is. */
  tell(words: string): void {
    this.#words = words;
    this.#show();
  }

  #show(isTick = false): void {
    const now = this.#now();
    const { write, isTerminal } = this.#settings;
    const elapsed = now - this.#start;
    const parts = [this.#part, this.#words].filter(Boolean);
    if (parts.length === 0) return;
    if (!isTerminal) {
      if (elapsed < this.#nextLine) return;
      while (this.#nextLine <= elapsed) this.#nextLine *= 2;
      write(`${printable(parts.join(": "))} (${seconds(elapsed)})\n`);
      return;
    }
    if (elapsed < SHORT || !isTick && now - this.#shownAt < PAUSE) return;
    this.#shownAt = now;
    const inPart = now - this.#since;
    write(
      CLEAR_LINE + this.#fit([
        ...parts,
        ...(inPart < SHORT ? [] : [seconds(inPart)]),
      ].join(": ")),
    );
    this.#isOpen = true;
  }

  #fit(line: string): string {
    const room = this.#settings.columns();
    const text = printable(line).replaceAll("\n", " ");
    return room > 0 ? text.slice(0, Math.max(0, room - 1)) : text;
  }

  /** Takes the line away, for words that stay. */
  clear(): void {
    if (this.#isOpen) this.#settings.write(CLEAR_LINE);
    this.#isOpen = false;
  }

  /** Takes the line away and stops the clock. */
  end(): void {
    clearInterval(this.#timer);
    this.clear();
  }
}

function seconds(elapsed: number): string {
  return `${Math.floor(elapsed / 1_000)} s`;
}

/** Progress on the standard error, whatever that is. */
export function startProgress(): TaskProgress {
  return new TaskProgress({
    write: progress,
    isTerminal: Deno.stderr.isTerminal(),
    columns: terminalColumns,
  });
}
