/**
 * Readings that stand in a folder twice.
 *
 * @module
 */
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** So many readings are remembered. */
const MOST = 20_000;
/** So many are looked at: nobody reads more, and a machine repeats itself. */
const LAST = 40_000;
/** Fewer readings in the same order may be chance. */
const FEWEST = 6;

interface Place {
  readonly at: number;
  readonly file: string;
  readonly line: number;
}

interface Run {
  readonly from: Place;
  readonly file: string;
  readonly line: number;
  last: Place;
  lastLine: number;
  count: number;
  readonly zeroings: Set<string>;
}

/** Watches for blocks of readings that were there before, in the same order. */
export class DoubledLines {
  readonly #first = new Map<string, Place>();
  readonly #found: Run[] = [];
  #at = 0;
  #run: Run | undefined;

  /** Looks at one reading. */
  see(reading: Reading): void {
    if (this.#at >= LAST) return this.#end();
    const { file, line, session, ring, zeroing, zone, sag } = reading;
    const { offset, takenAt = "", operator = "" } = reading;
    const key = [
      session,
      ring,
      zeroing,
      zone.label,
      offset,
      sag,
      takenAt,
      operator,
    ].join("\u0000");
    const known = this.#first.get(key);
    const at = this.#at++;
    if (known === undefined) {
      this.#end();
      if (this.#first.size < MOST) this.#first.set(key, { at, file, line });
      return;
    }
    const run = this.#run;
    if (run !== undefined && run.last.at + 1 === known.at) {
      run.last = known;
      run.lastLine = line;
      run.count++;
      run.zeroings.add(zeroing);
      return;
    }
    this.#end();
    this.#run = {
      from: known,
      file,
      line,
      last: known,
      lastLine: line,
      count: 1,
      zeroings: new Set([zeroing]),
    };
  }

  #end(): void {
    const run = this.#run;
    this.#run = undefined;
    if (
      run !== undefined && run.count >= FEWEST && run.zeroings.size > 1 &&
      this.#found.length < 20
    ) this.#found.push(run);
  }

  /** Every block that stands twice. */
  problems(): Problem[] {
    this.#end();
    return this.#found.map(({ from, file, line, last, lastLine, count }) => {
      const there = from.file === file ? "" : ` of ${from.file}`;
      return {
        severity: "warning",
        code: "doubled-lines",
        file,
        line,
        message:
          `lines ${line} to ${lastLine} hold the same ${count} readings as lines ${from.line} to ${last.line}${there}, in the same order: were they put in twice?`,
        mend:
          "take one copy out: readings that count twice seem surer than they are",
        count,
      };
    });
  }
}
