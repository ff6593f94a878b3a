/**
 * The count of a table's lines, and rows refused as a whole.
 *
 * @module
 */
import type { Fault } from "./_line_faults.ts";
import type { ProblemCollector } from "./_problem_collector.ts";

/** Counts lines; what is read is used or reported. */
export class TableCount {
  /** Readings read. */
  read = 0;
  /** Readings used. */
  used = 0;
  /** Readings reported. */
  reported = 0;
  readonly #file: string;
  readonly #problems: ProblemCollector;

  /** Sets the file. */
  constructor(file: string, problems: ProblemCollector) {
    this.#file = file;
    this.#problems = problems;
  }

  /** Refuses a row as a whole, with the readings it would hold. */
  refuse(line: number, row: string, fault: Fault, count = 1): void {
    this.read += count;
    this.reported += count;
    this.#problems.add({
      severity: "refused",
      code: fault.code,
      file: this.#file,
      line,
      value: row,
      message: fault.message,
      ...(fault.mend === undefined ? {} : { mend: fault.mend }),
      ...(count === 1 ? {} : { count }),
    });
  }

  /** Says something of a line that costs nothing. */
  say(severity: "warning" | "note", line: number, fault: Fault): void {
    this.#problems.add({ severity, file: this.#file, line, ...fault });
  }
}
