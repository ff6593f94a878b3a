/**
 * A notebook run from top to bottom without a screen.
 *
 * @module
 */
import { TemporaryFolderError } from "../files/private_folder.ts";
import { startKernel } from "../protocol/start_kernel.ts";
import { CellRun } from "./_cell_run.ts";
import { isJsonObject, type JsonValue, type Notebook } from "./document.ts";
import { chooseKernel } from "./kernel_choice.ts";
import { withParameters } from "./parameters.ts";
import {
  RUN_EXIT_CODES,
  type RunProgress,
  type RunResult,
} from "./run_result.ts";

/** How a notebook is run. */
export interface RunOptions {
  /**
   * A kernel's name, or its command with `{connection_file}`; left out, the
   * kernel that the notebook names, else `deno`.
   */
  readonly kernel?: string | readonly string[];
  /** Working folder of the kernel; the current one unless told. */
  readonly cwd?: string;
  /** Variables added to the kernel's environment. */
  readonly env?: Readonly<Record<string, string>>;
  /** Values for names that the cell tagged `parameters` declares. */
  readonly parameters?: Readonly<Record<string, JsonValue>>;
  /** Longest time that one cell may take, in s; 600 unless told. */
  readonly timeLimit?: number;
  /**
   * True if the caller checks the types itself: that a kernel does not is then
   * no part of the outputs. False unless told.
   */
  readonly isChecked?: boolean;
  /** Told when a cell starts and when it has ended. */
  readonly onProgress?: (progress: RunProgress) => void;
  /** Takes what the kernel's process writes on its own streams. */
  readonly onLog?: (text: string) => void;
  /** Ends the run and its kernel when aborted. */
  readonly signal?: AbortSignal;
}

function kernelOf(notebook: Notebook): string {
  const { kernelspec } = notebook.metadata;
  return isJsonObject(kernelspec) && typeof kernelspec.name === "string"
    ? kernelspec.name
    : "deno";
}

/**
 * Runs the code cells of a notebook in order on a kernel of its own, and ends
 * that kernel's process in every case.
 *
 * A cell that fails ends the run, and the cells after it stay as they were.
 * Tags change that: `raises-exception` marks a cell that is expected to fail
 * (one that does not is reported, and the run goes on), `skip-execution` one
 * that is left alone. A failure that nobody awaited, and a failure in a timer,
 * are reported with their cell; the run goes on, but does not count as good.
 *
 * Of printed text the first and last 500 lines (and at most 100 000 characters
 * each) of a cell are kept, with a line that says how much is left out. What a
 * cell prints or shows after it has ended, from a timer or a promise, goes to
 * that cell. Colour codes are taken out of results and of traces.
 *
 * With Deno's own kernel, text that a subprocess writes to the kernel's output
 * does not reach the notebook; pipe it and print it. In its traces a function
 * of an earlier cell has the line of the kernel's own print of that cell.
 *
 * @param notebook What to run; it is not changed.
 * @param options Kernel, folder, parameters, limits, listeners.
 * @returns The notebook with its outputs, how the run ended, what went wrong,
 * and the exit code for a program: 0 complete, 1 a cell failed, 3 the kernel
 * ended, 4 time limit, 130 stopped by the caller.
 * @throws {RangeError} If no such kernel is installed, a parameter is not
 * declared, or the time limit is not above 0.
 * @throws {Error} If the kernel does not start.
 *
 * @example
 * ```ts
 * import { runNotebook } from "sagbook/notebook/run_notebook.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const { status, notebook } = await runNotebook({
 *   metadata: {},
 *   cells: [{
 *     cell_type: "code",
 *     id: "a",
 *     metadata: {},
 *     source: "console.log(60 ** 2 / (2 * 0.72))",
 *     execution_count: null,
 *     outputs: [],
 *   }],
 * });
 * equal(status, "complete");
 * const [cell] = notebook.cells;
 * deepEqual("outputs" in cell && cell.outputs, [
 *   { output_type: "stream", name: "stdout", text: "2500\n" },
 * ]);
 * ```
 */
export async function runNotebook(
  notebook: Notebook,
  options: RunOptions = {},
): Promise<RunResult> {
  const { timeLimit = 600, signal } = options;
  if (!(timeLimit > 0)) {
    throw new RangeError(
      `Cannot run a notebook as the time limit must be above 0 s: current value is ${timeLimit} s`,
    );
  }
  const prepared = options.parameters === undefined
    ? notebook
    : withParameters(notebook, options.parameters);
  const choice = await chooseKernel(options.kernel ?? kernelOf(notebook));
  signal?.throwIfAborted();
  const kernel = await startKernel(choice.command, {
    cwd: options.cwd,
    env: { ...choice.env, ...options.env },
    interruptBy: choice.interruptBy,
    onLog: options.onLog,
  }).catch((error: Error) => {
    if (error instanceof TemporaryFolderError) throw error;
    throw new Error(
      `Cannot start kernel "${choice.name}" as its command must run and answer: ${error.message}`,
      { cause: error },
    );
  });
  const stop = () => void kernel.kill();
  signal?.addEventListener("abort", stop);
  if (signal?.aborted) stop();
  const run = new CellRun(prepared, kernel, { ...options, timeLimit });
  try {
    await run.all();
  } finally {
    signal?.removeEventListener("abort", stop);
    await kernel.shutdown(2_000);
  }
  const { status, problems } = run.ledger;
  const [first] = problems;
  return {
    notebook: run.finish(),
    status,
    exitCode: RUN_EXIT_CODES[status],
    problems,
    ...(first === undefined ? {} : { incomplete: first.message }),
  };
}
