/**
 * The cells of one notebook on one kernel, one after the other.
 *
 * @module
 */
import type { RunningKernel } from "../protocol/running_kernel.ts";
import { placeTrace } from "./_cell_lines.ts";
import type { CellRecorder } from "./_cell_recorder.ts";
import { DENO_PRELUDE, enterCell, fenceCell } from "./_deno_prelude.ts";
import { RunLedger } from "./_run_ledger.ts";
import { RunOutputs } from "./_run_outputs.ts";
import { cellMagic, explainSyntax } from "./_explain_syntax.ts";
import {
  cellTags,
  type CodeCell,
  isJsonObject,
  type JsonObject,
  type Notebook,
} from "./document.ts";
import type { RunProgress } from "./run_result.ts";

/** Time in ms for a stopped cell to end, and for the last outputs to come. */
const GRACE = 3_000;

/** Waits for a promise, but no longer than `limit` ms; tells if it was kept. */
async function isSettled(
  promise: Promise<unknown>,
  limit: number,
): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((done) =>
    timer = setTimeout(() => done(false), limit)
  );
  const isKept = await Promise.race([promise.then(() => true), late]);
  clearTimeout(timer);
  return isKept;
}

/** What the cells are run with. */
export interface CellRunSettings {
  /** In s. */
  readonly timeLimit: number;
  readonly onProgress?: (progress: RunProgress) => void;
  readonly signal?: AbortSignal;
}

/** Runs cells and keeps what they give out. */
export class CellRun {
  readonly #notebook: Notebook;
  readonly #settings: CellRunSettings;
  readonly #kernel: RunningKernel;
  readonly #isDeno: boolean;
  readonly #isTypeScript: boolean;
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
    const { implementation, language_info } = kernel.info;
    this.#isDeno = implementation === "Deno kernel";
    this.#isTypeScript =
      (language_info as JsonObject | undefined)?.name === "typescript";
  }

  /** Runs every cell that is to be run, until one fails. */
  async all(): Promise<void> {
    if (this.#isDeno) {
      const { status } = await this.#kernel.execute(DENO_PRELUDE, {
        silent: true,
        timeLimit: 30_000,
      });
      if (status !== "ok") {
        throw new Error(
          "Cannot run the notebook as Deno's kernel refused its prelude",
        );
      }
    }
    for (const [index, cell] of this.#notebook.cells.entries()) {
      if (cell.cell_type !== "code") continue;
      const isSkipped = cell.source.trim() === "" ||
        cellTags(cell).includes("skip-execution");
      if (isSkipped) this.#progress(index, "skipped", 0);
      else if (!await this.#one(index, cell)) break;
    }
    await this.#takeFailures();
  }

  #progress(index: number, state: RunProgress["state"], seconds: number): void {
    const { numbers } = this.ledger;
    const [cell, of] = [numbers[index], numbers[numbers.length - 1]];
    this.#settings.onProgress?.({ cell, of, state, seconds });
  }

  /** Runs one cell; tells whether the next may run. */
  async #one(index: number, cell: CodeCell): Promise<boolean> {
    const start = performance.now();
    this.#progress(index, "running", 0);
    const recorder = this.#outputs.open(index);
    const before = this.ledger.problems.length;
    let goesOn: boolean;
    try {
      goesOn = await this.#execute(index, cell, recorder);
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
      (performance.now() - start) / 1000,
    );
    return goesOn;
  }

  async #execute(
    index: number,
    cell: CodeCell,
    recorder: CellRecorder,
  ): Promise<boolean> {
    const magic = this.#isTypeScript ? cellMagic(cell.source) : undefined;
    let fault = magic;
    let isError = magic !== undefined;
    if (magic === undefined) {
      if (this.#isDeno) {
        await this.#kernel.execute(enterCell(index), { silent: true });
      }
      const result = await this.#kernel.execute(cell.source, {
        timeLimit: this.#settings.timeLimit * 1000,
        graceLimit: GRACE,
        onOutput: (output) => this.#outputs.hear(output, index),
      });
      recorder.executionCount = result.executionCount;
      isError = result.status !== "ok";
      if (this.#isDeno) await this.#fence(index);
      if (isError && recorder.errors.length === 0) {
        // Deno's kernel says "Execution failed" of a cell that is no program.
        if (this.#isTypeScript) fault = await explainSyntax(cell.source);
        if (fault === undefined) {
          recorder.fail(
            result.error ?? { ename: "Error", evalue: "", traceback: [] },
          );
        }
      }
    }
    if (fault !== undefined) {
      const { message } = fault;
      recorder.fail({ ename: "SyntaxError", evalue: message, traceback: [] });
    }
    return await this.#judge(index, cell, recorder, isError, fault?.line);
  }

  async #judge(
    index: number,
    cell: CodeCell,
    recorder: CellRecorder,
    isError: boolean,
    faultLine: number | undefined,
  ): Promise<boolean> {
    const mayFail = cellTags(cell).includes("raises-exception");
    const number = this.ledger.numbers[index];
    let line = faultLine;
    const [error] = recorder.errors;
    if (isError && line === undefined && this.#isDeno) {
      const placed = await placeTrace(error.traceback, cell.source, number);
      line = placed.line;
      recorder.restateError({ ...error, traceback: placed.traceback });
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
      `${where}: ${error.ename}: ${error.evalue}`,
      line,
    );
    return false;
  }

  /** Enters failures that nobody awaited; gives the indices of their cells. */
  async #takeFailures(): Promise<number[]> {
    const indices: number[] = [];
    for (const failure of this.#outputs.takeFailures()) {
      const index = failure.cell;
      const cell = this.#notebook.cells[index];
      const number = this.ledger.numbers[index];
      const placed = await placeTrace(
        failure.stack === "" ? [] : failure.stack.split("\n"),
        cell.source,
        number,
      );
      this.#outputs.recorder(index)?.fail({
        ename: failure.name,
        evalue: failure.message,
        traceback: placed.traceback,
      });
      indices.push(index);
      if (cellTags(cell).includes("raises-exception")) continue;
      const where = this.ledger.place(index, placed.line);
      this.ledger.add(
        index,
        "unawaited",
        `${where}: ${failure.name}: ${failure.message} (nothing awaited it)`,
        placed.line,
      );
    }
    return indices;
  }

  /** Waits until all that a cell has given out so far is here. */
  async #fence(index: number): Promise<void> {
    const arrived = this.#outputs.fence(index);
    await this.#kernel.execute(fenceCell(index), {
      silent: true,
      timeLimit: this.#settings.timeLimit * 1000,
      graceLimit: GRACE,
      onOutput: (output) => this.#outputs.hear(output, index),
    });
    const ended = Promise.race([arrived, this.#kernel.exited]);
    for (let heard = -1; heard !== this.#outputs.heard;) {
      heard = this.#outputs.heard;
      if (await isSettled(ended, GRACE)) return;
    }
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
