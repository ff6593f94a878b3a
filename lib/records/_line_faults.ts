/**
 * Faults of the line that is being read.
 *
 * @module
 */
import type { Problem } from "./problem.ts";
import type { ProblemCollector } from "./_problem_collector.ts";

/** What is wrong with a cell, before its place is known. */
export type Fault = Pick<Problem, "code" | "message" | "expected" | "mend">;

/** Gathers what is wrong with one line, and what is worth a word in a file. */
export class LineFaults {
  /** Line of the row that is being read. */
  line = 0;
  /** True when the line was refused. */
  refused = false;
  readonly #file: string;
  readonly #problems: ProblemCollector;
  readonly #remarks = new Map<string, { problem: Problem; count: number }>();

  /** Sets the file. */
  constructor(file: string, problems: ProblemCollector) {
    this.#file = file;
    this.#problems = problems;
  }

  /** Starts a line. */
  start(line: number): void {
    this.line = line;
    this.refused = false;
  }

  /** Refuses the line because of a cell. */
  refuse(column: string, value: string, fault: Fault): void {
    this.refused = true;
    this.#problems.add(this.#placed("refused", column, value, fault));
  }

  /** Leaves out a line that the user marked as withdrawn. */
  withdraw(column: string, mark: string): void {
    this.refused = true;
    this.#problems.add(this.#placed("note", column, mark, {
      code: "withdrawn",
      message: "the line is marked as withdrawn and was left out",
      mend: "blank the mark to have it used",
    }));
  }

  /** Says something about a cell that is used all the same. */
  warn(column: string, value: string, fault: Fault): void {
    this.#problems.add(this.#placed("warning", column, value, fault));
  }

  /** Says something once for all lines it holds for. */
  remark(
    severity: "warning" | "note",
    column: string,
    value: string,
    fault: Fault,
  ): void {
    const key = `${fault.code}\u0000${column}\u0000${fault.message}`;
    const known = this.#remarks.get(key);
    if (known === undefined) {
      this.#remarks.set(key, {
        problem: this.#placed(severity, column, value, fault),
        count: 1,
      });
    } else known.count++;
  }

  /** Hands over what was remarked, each with the number of its lines. */
  finish(): void {
    for (const { problem, count } of this.#remarks.values()) {
      this.#problems.add(
        count === 1 ? problem : {
          ...problem,
          message: `${problem.message} (${count} readings, the first here)`,
          count,
        },
      );
    }
    this.#remarks.clear();
  }

  #placed(
    severity: Problem["severity"],
    column: string,
    value: string,
    fault: Fault,
  ): Problem {
    return {
      severity,
      code: fault.code,
      file: this.#file,
      line: this.line,
      column,
      value,
      message: fault.message,
      ...(fault.expected === undefined ? {} : { expected: fault.expected }),
      ...(fault.mend === undefined ? {} : { mend: fault.mend }),
    };
  }
}
