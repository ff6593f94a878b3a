/**
 * Gathers problems without letting a broken column fill the memory.
 *
 * @module
 */
import type { Problem } from "./problem.ts";

/** So many lines of one kind in one file are kept one by one. */
const KEPT_OF_A_KIND = 20;

interface Rest {
  first: Problem;
  count: number;
  firstLine?: number;
  lastLine?: number;
}

/**
 * A list of problems that keeps the first twenty of each kind in each file and
 * column, and counts the others.
 */
export class ProblemCollector {
  readonly #kept: Problem[] = [];
  readonly #seen = new Map<string, number>();
  readonly #rest = new Map<string, Rest>();

  /** Adds one problem. */
  add(problem: Problem): void {
    const key =
      `${problem.severity}\u0000${problem.code}\u0000${problem.file}\u0000${
        problem.column ?? ""
      }`;
    const seen = this.#seen.get(key) ?? 0;
    if (seen < KEPT_OF_A_KIND) {
      this.#seen.set(key, seen + 1);
      this.#kept.push(problem);
      return;
    }
    const rest = this.#rest.get(key);
    const count = problem.count ?? 1;
    if (rest === undefined) {
      this.#rest.set(key, {
        first: problem,
        count,
        firstLine: problem.line,
        lastLine: problem.line,
      });
    } else {
      rest.count += count;
      rest.lastLine = problem.line;
    }
  }

  /** Adds several. */
  addAll(problems: Iterable<Problem>): void {
    for (const problem of problems) this.add(problem);
  }

  /** True when a problem of that kind has room to be kept one by one. */
  get size(): number {
    return this.#kept.length + this.#rest.size;
  }

  /** Everything gathered, the summaries of the rest last. */
  list(): Problem[] {
    const summaries = [...this.#rest.values()].map((rest): Problem => {
      const { severity, code, file, column, message, mend } = rest.first;
      const lines = rest.firstLine === undefined
        ? ""
        : ` (lines ${rest.firstLine} to ${rest.lastLine})`;
      return {
        severity,
        code,
        file,
        ...(column === undefined ? {} : { column }),
        message:
          `${rest.count} more of this kind${lines}, the first of them: ${message}`,
        ...(mend === undefined ? {} : { mend }),
        count: rest.count,
      };
    });
    return [...this.#kept, ...summaries];
  }
}
