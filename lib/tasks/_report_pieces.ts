/**
 * Reports on every piece of a folder, some at once, and a page that lists them.
 *
 * @module
 */
import { basename } from "node:path";
import type { FoundPieces } from "./_find_pieces.ts";
import { earlierReport, reportUpToDate } from "./_report_earlier.ts";
import { type PieceOutcome, writeReportIndex } from "./_report_index.ts";
import {
  type Ended,
  type ReportCall,
  reportOnce,
  without,
} from "./_report_once.ts";
import { displayPath, EXIT, plainWords } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

/** More at once would need more memory than a small computer has. */
const MOST_AT_ONCE = 16;
/** Unless told, half the processors are used, and this many at most. */
const USUAL_AT_ONCE = 4;
/** A list of pieces is written now and then, in ms, in case the run is killed. */
const BETWEEN_LISTS = 60_000;

/** What is wrong with the value of `--at-once`, if anything is. */
export function wrongCount(value: string | true | undefined) {
  const count = Number(value ?? 1);
  return Number.isInteger(count) && count >= 1 && count <= MOST_AT_ONCE
    ? undefined
    : `--at-once needs a whole number from 1 to ${MOST_AT_ONCE}: current value is ${value}.`;
}

/** The run over the pieces of one folder. */
class PiecesRun {
  readonly #group: FoundPieces;
  readonly #call: ReportCall;
  readonly #outcomes: (PieceOutcome | undefined)[];
  readonly #tellings: (Ended["tell"] | undefined)[] = [];
  readonly #hasIndex: boolean;
  #told = 0;
  #next = 0;
  #listed = performance.now();
  #said: string | undefined;
  #fault: unknown;
  worst: number = EXIT.ok;

  constructor(group: FoundPieces, call: ReportCall, hasIndex: boolean) {
    this.#group = group;
    this.#call = call;
    this.#hasIndex = hasIndex && group.isGroup;
    this.#outcomes = group.pieces.map(() => undefined);
  }

  /** Reports on one piece after another until there is none left. */
  async work(): Promise<void> {
    const { pieces } = this.#group;
    const { signal } = this.#call;
    while (this.#next < pieces.length && this.#fault === undefined) {
      if (signal.aborted) {
        this.worst = Math.max(this.worst, EXIT.stopped);
        return;
      }
      const index = this.#next++;
      try {
        const { code, outcome, tell } = await this.#one(pieces[index], index);
        this.worst = Math.max(this.worst, code);
        if (code !== EXIT.stopped) this.#outcomes[index] = outcome;
        this.#tellings[index] = tell;
      } catch (error) {
        this.#fault ??= error;
        this.#tellings[index] = () => {};
      }
      this.#tell();
      if (performance.now() - this.#listed > BETWEEN_LISTS) await this.list();
    }
  }

  async #one(piece: string, index: number): Promise<Ended> {
    const { pieces, isGroup, hint } = this.#group;
    const { flags, kind, progress } = this.#call;
    if (isGroup) {
      const place = `piece ${index + 1} of ${pieces.length}`;
      progress.part(`${place}, ${basename(piece)}`);
    }
    if (flags.continue === true) {
      const outcome = await reportUpToDate(piece, kind);
      if (outcome !== undefined) {
        const tell = () => say(`${displayPath(piece)}: up to date.`);
        return { code: EXIT.ok, outcome, tell };
      }
    }
    try {
      return await reportOnce(piece, this.#call, hint);
    } catch (error) {
      // One piece that fails stops no other; what fails for two, all.
      const why = plainWords(error);
      if (!isGroup || why === this.#said) throw error;
      this.#said = why;
      return without(piece, EXIT.failed, why, () => complain(why));
    }
  }

  /** Says what became of the pieces, in their order. */
  #tell(): void {
    while (this.#tellings[this.#told] !== undefined) {
      this.#call.progress.clear();
      this.#tellings[this.#told]!();
      this.#told++;
    }
  }

  /** Writes the list, with earlier reports of what this run has not done. */
  async list(): Promise<string | undefined> {
    this.#listed = performance.now();
    if (!this.#hasIndex || this.#outcomes.every((one) => one === undefined)) {
      return undefined;
    }
    const { folder, pieces } = this.#group;
    const all: PieceOutcome[] = [];
    for (const [index, piece] of pieces.entries()) {
      all.push(
        this.#outcomes[index] ??
          (await earlierReport(piece, this.#call.kind))?.outcome ??
          { folder: piece, answer: [], faults: [], isPending: true },
      );
    }
    return await writeReportIndex(folder, all);
  }

  /** Writes the list for good and says where it is. */
  async finish(): Promise<void> {
    const page = await this.list();
    const done = this.#outcomes.filter((one) => one !== undefined).length;
    if (page !== undefined) {
      this.#call.progress.clear();
      const all = done === this.#outcomes.length
        ? "All of them"
        : `${done} of ${this.#outcomes.length} were done; they and the earlier reports`;
      say(`${all}: ${displayPath(page)}`);
    }
    if (this.#fault !== undefined) throw this.#fault;
  }
}

/**
 * Reports on the pieces of a folder.
 *
 * @param group What a folder of the command line holds.
 * @param call What every report is made with.
 * @param hasIndex Whether a folder of pieces gets a page that lists them.
 * @returns The worst exit code of a piece.
 */
export async function reportOnPieces(
  group: FoundPieces,
  call: ReportCall,
  hasIndex: boolean,
): Promise<number> {
  const told = call.flags["at-once"];
  const usual = Math.floor(navigator.hardwareConcurrency / 2);
  const atOnce = told === undefined
    ? Math.max(1, Math.min(USUAL_AT_ONCE, usual))
    : Number(told);
  const run = new PiecesRun(group, call, hasIndex);
  const hands = Math.min(atOnce, group.pieces.length);
  await Promise.all(Array.from({ length: hands }, () => run.work()));
  await run.finish();
  return run.worst;
}
