/**
 * What went wrong in a run, in the order in which it did.
 *
 * @module
 */
import { KernelDiedError, TimeLimitError } from "../protocol/kernel_error.ts";
import type { ErrorOutput, Notebook } from "./document.ts";
import { cellNumbers } from "./parameters.ts";
import type { CellProblem, RunStatus } from "./run_result.ts";

/** Keeps problems and the status that follows from them. */
export class RunLedger {
  readonly #notebook: Notebook;
  /** Numbers of the cells as their author counts them. */
  readonly numbers: readonly number[];
  readonly problems: CellProblem[] = [];
  status: RunStatus = "complete";

  constructor(notebook: Notebook) {
    this.#notebook = notebook;
    this.numbers = cellNumbers(notebook.cells);
  }

  /** Enters a problem of the cell at `index`. */
  add(
    index: number,
    kind: CellProblem["kind"],
    message: string,
    line?: number,
  ): void {
    if (
      kind === "kernel-ended" || kind === "time-limit" || kind === "stopped"
    ) this.status = kind;
    else if (this.status === "complete") this.status = "failed";
    this.problems.push({
      cell: this.numbers[index],
      id: this.#notebook.cells[index].id,
      ...(line === undefined ? {} : { line }),
      kind,
      message,
    });
  }

  /** "cell 3, line 2", or without the line where it is not known. */
  place(index: number, line: number | undefined): string {
    const cell = `cell ${this.numbers[index]}`;
    return line === undefined ? cell : `${cell}, line ${line}`;
  }

  #told(
    index: number,
    kind: CellProblem["kind"],
    ename: string,
    evalue: string,
  ): Omit<ErrorOutput, "output_type"> {
    this.add(index, kind, evalue);
    return { ename, evalue, traceback: [] };
  }

  /** Enters that the kernel has ended; gives an error for the cell's outputs. */
  kernelEnded(index: number, how: string): Omit<ErrorOutput, "output_type"> {
    const cell = this.place(index, undefined);
    return this.#told(
      index,
      "kernel-ended",
      "KernelEnded",
      `${how} while running ${cell}`,
    );
  }

  /**
   * Enters that the kernel is gone, or was taken away from a cell that would
   * not end; gives an error for the cell's outputs.
   */
  breakOff(
    index: number,
    error: unknown,
    timeLimit: number,
    isStopped: boolean,
  ): Omit<ErrorOutput, "output_type"> {
    const cell = this.place(index, undefined);
    if (isStopped) {
      return this.#told(
        index,
        "stopped",
        "RunStopped",
        `the run was stopped while running ${cell}`,
      );
    }
    if (error instanceof KernelDiedError) {
      return this.kernelEnded(index, error.message);
    }
    if (error instanceof TimeLimitError) {
      return this.#told(
        index,
        "time-limit",
        "TimeLimit",
        `${cell} ran longer than its limit of ${timeLimit} s and was stopped`,
      );
    }
    throw error;
  }
}
