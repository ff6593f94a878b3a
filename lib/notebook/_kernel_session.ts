/**
 * One kernel told to run cells, each with all that it gives out.
 *
 * @module
 */
import type { RunningKernel } from "../protocol/running_kernel.ts";
import { settled } from "../protocol/settled.ts";
import type { CellRecorder } from "./_cell_recorder.ts";
import { DENO_PRELUDE, enterCell, fenceCell } from "./_deno_prelude.ts";
import { cellMagic, explainSyntax } from "./_explain_syntax.ts";
import { isPatience, isUncheckedNotice } from "./_own_kernel.ts";
import {
  isTypeScriptKernel,
  type KernelKind,
  kernelKind,
} from "./_place_error.ts";
import type { RunOutputs } from "./_run_outputs.ts";

/** Time in ms for a stopped cell to end, and for the last outputs to come. */
const GRACE = 3_000;

/** What a cell came to. */
export interface CellOutcome {
  readonly isError: boolean;
  /** The line of a fault that the kernel has not named itself. */
  readonly faultLine?: number;
}

/** How cells are run. */
export interface SessionSettings {
  /** Longest time for one cell, in s. */
  readonly timeLimit: number;
  /** True if the types are checked elsewhere; false unless told. */
  readonly isChecked?: boolean;
}

/** Runs sources on a kernel. */
export class KernelSession {
  readonly kind: KernelKind;
  readonly #kernel: RunningKernel;
  readonly #outputs: RunOutputs;
  /** In ms, for each cell. */
  readonly #timeLimit: number;
  readonly #isTypeScript: boolean;
  /** True if the types are checked elsewhere. */
  readonly #isChecked: boolean;

  constructor(
    kernel: RunningKernel,
    outputs: RunOutputs,
    { timeLimit, isChecked = false }: SessionSettings,
  ) {
    this.#kernel = kernel;
    this.#outputs = outputs;
    this.#timeLimit = timeLimit * 1000;
    this.#isChecked = isChecked;
    this.kind = kernelKind(kernel.info);
    this.#isTypeScript = isTypeScriptKernel(kernel.info);
  }

  /** Teaches the kernel what it lacks. */
  async prepare(): Promise<void> {
    if (this.kind !== "deno") return;
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

  /** Runs the source of the cell at `index` and waits for all it gives out. */
  async run(
    index: number,
    source: string,
    recorder: CellRecorder,
  ): Promise<CellOutcome> {
    let fault = this.#isTypeScript ? cellMagic(source) : undefined;
    if (fault === undefined) {
      if (this.kind === "deno") {
        await this.#kernel.execute(enterCell(index), { silent: true });
      }
      const result = await this.#execute(source, index, false);
      recorder.executionCount = result.executionCount;
      if (this.kind === "deno") await this.#fence(index);
      if (result.status === "ok") return { isError: false };
      if (this.kind === "own" && result.content.uncaught === true) {
        // The cell itself came to its end; something it started did not.
        const error = recorder.withdrawError() ?? result.error;
        if (error !== undefined) this.#outputs.addFailure(index, error);
        return { isError: false };
      }
      if (recorder.errors.length > 0) return { isError: true };
      // Deno's kernel says "Execution failed" of a cell that is no program.
      if (this.#isTypeScript) fault = await explainSyntax(source);
      if (fault === undefined) {
        recorder.fail(
          result.error ?? { ename: "Error", evalue: "", traceback: [] },
        );
        return { isError: true };
      }
    }
    const { message, line } = fault;
    recorder.fail({ ename: "SyntaxError", evalue: message, traceback: [] });
    return { isError: true, faultLine: line };
  }

  #execute(code: string, index: number, silent: boolean) {
    return this.#kernel.execute(code, {
      silent,
      timeLimit: this.#timeLimit,
      graceLimit: GRACE,
      onOutput: (output, { late }) => {
        if (this.kind === "own") {
          if (isPatience(output)) return;
          if (this.#isChecked && isUncheckedNotice(output)) return;
          if (late && output.output_type === "error") {
            return this.#outputs.addFailure(index, output);
          }
        }
        this.#outputs.hear(output, index);
      },
    });
  }

  /** Lets what the last cell has started come to the turn that is due. */
  async settle(): Promise<void> {
    if (this.kind !== "own") return;
    const turn = "await new Promise((done) => setTimeout(done, 0));";
    await this.#kernel.execute(turn, { silent: true, timeLimit: GRACE })
      .catch(() => {}); // Every cell has run: a kernel that ends now is no loss.
  }

  /** Waits until all that a cell has given out so far is here. */
  async #fence(index: number): Promise<void> {
    const arrived = this.#outputs.fence(index);
    await this.#execute(fenceCell(index), index, true);
    const ended = Promise.race([arrived, this.#kernel.exited]);
    for (let heard = -1; heard !== this.#outputs.heard;) {
      heard = this.#outputs.heard;
      if (await settled(ended, GRACE)) return;
    }
  }
}
