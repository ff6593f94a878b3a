/**
 * The cells of one notebook on one kernel, one after the other.
 *
 * @module
 */
import type { RunningKernel } from "../protocol/running_kernel.ts";
import type { CellRecorder } from "./_cell_recorder.ts";
import { type CellOutcome, KernelSession } from "./_kernel_session.ts";
import { evaluatorEnd } from "./_own_kernel.ts";
import { type PlacedError, placeError } from "./_place_error.ts";
import { RunLedger } from "./_run_ledger.ts";
import { RunOutputs } from "./_run_outputs.ts";
import {
  cellTags,
  type CodeCell,
  type ErrorOutput,
  isJsonObject,
  type Notebook,
} from "./document.ts";
import type { RunProgress } from "./run_result.ts";

/** What the cells are run with. */
export interface CellRunSettings {
  /** In s. */
  readonly timeLimit: number;
  readonly isChecked?: boolean;
  readonly onProgress?: (progress: RunProgress) => void;
  readonly signal?: AbortSignal;
}

/** Runs cells and keeps what they give out. */
export class CellRun {
  readonly #notebook: Notebook;
  readonly #settings: CellRunSettings;
  readonly #kernel: RunningKernel;
  readonly #session: KernelSession;
  readonly #outputs = new RunOutputs();
  /** What went wrong so far. */
  readonly ledger: RunLedger;

  constructor(
    notebook: Notebook,
    kernel: RunningKernel,
    settings: CellRunSettings,
  ) {
    this.#notebook = notebook;
    this.ledger = new RunLedger(notebook);
    this.#kernel = kernel;
    this.#settings = settings;
    this.#session = new KernelSession(kernel, this.#outputs, settings);
  }

  /** Runs every cell that is to be run, until one fails. */
  async all(): Promise<void> {
    await this.#session.prepare();
    for (const [index, cell] of this.#notebook.cells.entries()) {
      if (cell.cell_type !== "code") continue;
      const isSkipped = cell.source.trim() === "" ||
        cellTags(cell).includes("skip-execution");
      if (isSkipped) this.#progress(index, "skipped", 0);
      else if (!await this.#one(index, cell)) break;
    }
    const { status } = this.ledger;
    if (status === "complete" || status === "failed") {
      await this.#session.settle();
    }
    await this.#takeFailures();
  }

  #progress(
    index: number,
    state: RunProgress["state"],
    seconds: number,
    words?: string,
  ): void {
    const { numbers } = this.ledger;
    const [cell, of] = [numbers[index], numbers[numbers.length - 1]];
    const told = words === undefined ? {} : { words };
    this.#settings.onProgress?.({ cell, of, state, seconds, ...told });
  }

  /** Runs one cell; tells whether the next may run. */
  async #one(index: number, cell: CodeCell): Promise<boolean> {
    const start = performance.now();
    const elapsed = (): number => (performance.now() - start) / 1000;
    this.#progress(index, "running", 0);
    this.#outputs.onWords = (from, words) => {
      if (from === index) this.#progress(index, "running", elapsed(), words);
    };
    const recorder = this.#outputs.open(index);
    const before = this.ledger.problems.length;
    let goesOn: boolean;
    try {
      const outcome = await this.#session.run(index, cell.source, recorder);
      goesOn = await this.#judge(index, cell, recorder, outcome);
    } catch (error) {
      const { timeLimit, signal } = this.#settings;
      recorder.fail(
        this.ledger.breakOff(index, error, timeLimit, signal?.aborted === true),
      );
      goesOn = false;
    }
    const hasFailed = this.ledger.problems.length > before;
    this.#progress(
      index,
      hasFailed ? "failed" : "done",
      elapsed(),
    );
    return goesOn;
  }

  async #judge(
    index: number,
    cell: CodeCell,
    recorder: CellRecorder,
    { isError: isRefused, faultLine }: CellOutcome,
  ): Promise<boolean> {
    const mayFail = cellTags(cell).includes("raises-exception");
    const number = this.ledger.numbers[index];
    const [error] = recorder.errors;
    // A value whose display fails is shown as an error in a cell that "ran".
    const isError = isRefused || error !== undefined;
    let [line, words] = [faultLine, error?.evalue];
    if (isError && line === undefined) {
      const end = this.#session.kind === "own"
        ? evaluatorEnd(error)
        : undefined;
      if (end !== undefined) {
        const how = `the kernel ended (${end})`;
        recorder.restateError(this.ledger.kernelEnded(index, how));
        return false;
      }
      const placed = await this.#place(index, error);
      ({ line, words } = placed);
      recorder.restateError(placed.error);
    }
    const unawaited = await this.#takeFailures();
    if (mayFail) {
      if (isError || unawaited.includes(index)) return true;
      this.ledger.add(
        index,
        "no-error",
        `cell ${number} is tagged raises-exception, but it ran without an error`,
      );
      return true;
    }
    if (!isError) return true;
    const where = this.ledger.place(index, line);
    this.ledger.add(
      index,
      "error",
      `${where}: ${error.ename}: ${words}`,
      line,
    );
    return false;
  }

  /** Finds the place of an error of the cell at `index`. */
  #place(
    index: number,
    error: Omit<ErrorOutput, "output_type">,
  ): Promise<PlacedError> {
    const { cells } = this.#notebook;
    const countOf = (at: number) => this.#outputs.recorder(at)?.executionCount;
    return placeError(error, this.#session.kind, {
      source: cells[index].source,
      number: this.ledger.numbers[index],
      count: countOf(index) ?? null,
      numberOf: (count) =>
        this.ledger.numbers[cells.findIndex((_, at) => countOf(at) === count)],
    });
  }

  /** Enters failures that nobody awaited; gives the indices of their cells. */
  async #takeFailures(): Promise<number[]> {
    const indices: number[] = [];
    for (const failure of this.#outputs.takeFailures()) {
      const index = failure.cell;
      const cell = this.#notebook.cells[index];
      const placed = await this.#place(index, {
        ename: failure.name,
        evalue: failure.message,
        traceback: failure.stack === "" ? [] : failure.stack.split("\n"),
      });
      this.#outputs.recorder(index)?.fail(placed.error);
      indices.push(index);
      if (cellTags(cell).includes("raises-exception")) continue;
      const where = this.ledger.place(index, placed.line);
      this.ledger.add(
        index,
        "unawaited",
        `${where}: ${failure.name}: ${placed.words} (nothing awaited it)`,
        placed.line,
      );
    }
    return indices;
  }

  /** The notebook as the run has left it. */
  finish(): Notebook {
    const info = this.#kernel.info.language_info;
    return {
      metadata: isJsonObject(info)
        ? { ...this.#notebook.metadata, language_info: info }
        : this.#notebook.metadata,
      cells: this.#notebook.cells.map((cell, index) => {
        const recorder = this.#outputs.recorder(index);
        if (recorder === undefined || cell.cell_type !== "code") return cell;
        return {
          ...cell,
          execution_count: recorder.executionCount,
          outputs: recorder.finish(),
        };
      }),
    };
  }
}
