/**
 * What has been run in this session.
 *
 * @module
 */
import type { JsonObject } from "../protocol/message.ts";

/** One cell that has been run. */
export interface HistoryEntry {
  /** The number in its margin. */
  readonly line: number;
  /** Its text. */
  readonly input: string;
  /** Its value as text, if it had one. */
  output?: string;
}

/** A row of a history reply: session, line, and text or text with value. */
export type HistoryRow = readonly [
  number,
  number,
  string | readonly [string, string | null],
];

const SESSION = 1;

/**
 * Keeps the cells of one session and answers `history_request`.
 *
 * Nothing is written to disk: a notebook keeps its own text, and what was typed
 * into a console may be private.
 *
 * @see Jupyter messaging protocol 5.3, "History".
 *
 * @example
 * ```ts
 * import { History } from "sagbook/kernel/history.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const history = new History();
 * history.add({ line: 1, input: "const sag = 0.7" });
 * history.add({ line: 2, input: "sag * 2", output: "1.4" });
 * deepEqual(history.find({ hist_access_type: "tail", n: 1 }), [[1, 2, "sag * 2"]]);
 * ```
 */
export class History {
  #entries: HistoryEntry[] = [];

  /** Adds a cell. */
  add(entry: HistoryEntry): void {
    this.#entries.push(entry);
  }

  /**
   * Finds cells as a request asks.
   *
   * @param request Content of a `history_request`: `tail` with `n`; `range`
   * with `session` (1, or 0 and below counted from now), `start` and `stop`
   * (exclusive); `search` with a `pattern` of `*` and `?`, `n`, `unique`.
   * @returns The rows, oldest first, with values if `output` is true.
   */
  find(request: JsonObject): HistoryRow[] {
    const { hist_access_type: kind, n, output } = request;
    const count = typeof n === "number" && n > 0 ? n : undefined;
    let found = this.#entries;
    if (kind === "tail") found = last(found, count ?? 10);
    else if (kind === "range") found = this.#range(request);
    else if (kind === "search") {
      const fits = glob(String(request.pattern ?? "*"));
      found = found.filter(({ input }) => fits.test(input));
      if (request.unique === true) found = unique(found);
      found = last(found, count);
    } else found = [];
    return found.map(({ line, input, output: value }) => [
      SESSION,
      line,
      output === true ? [input, value ?? null] : input,
    ]);
  }

  #range({ session, start, stop }: JsonObject): HistoryEntry[] {
    if (session !== SESSION && session !== 0 && session !== undefined) {
      return [];
    }
    const from = typeof start === "number" ? start : 1;
    const to = typeof stop === "number" ? stop : Infinity;
    return this.#entries.filter(({ line }) => line >= from && line < to);
  }
}

function last(
  entries: HistoryEntry[],
  count: number | undefined,
): HistoryEntry[] {
  return count === undefined ? entries : entries.slice(-count);
}

function unique(entries: HistoryEntry[]): HistoryEntry[] {
  const seen = new Map<string, HistoryEntry>();
  for (const entry of entries) {
    seen.delete(entry.input);
    seen.set(entry.input, entry);
  }
  return [...seen.values()];
}

function glob(pattern: string): RegExp {
  const source = pattern.replace(/[.+^${}()|[\]\\]/g, "\\$&")
    .replaceAll("*", "[^]*").replaceAll("?", "[^]");
  return new RegExp(`^${source}$`);
}
