/**
 * One kernel told to run cells, each with all that it gives out.
 *
 * @module
 */
import type { RunningKernel } from "../protocol/running_kernel.ts";
import type { CellRecorder } from "./_cell_recorder.ts";
import { DENO_PRELUDE, enterCell, fenceCell } from "./_deno_prelude.ts";
import { cellMagic, explainSyntax } from "./_explain_syntax.ts";
import { isPatience } from "./_own_kernel.ts";
import {
  isTypeScriptKernel,
  type KernelKind,
  kernelKind,
} from "./_place_error.ts";
import type { RunOutputs } from "./_run_outputs.ts";

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

/** What a cell came to. */
export interface CellOutcome {
  readonly isError: boolean;
  /** The line of a fault that the kernel has not named itself. */
  readonly faultLine?: number;
}

/** Runs sources on a kernel. */
export class KernelSession {
  readonly kind: KernelKind;
  readonly #kernel: RunningKernel;
  readonly #outputs: RunOutputs;
  /** In ms, for each cell. */
  readonly #timeLimit: number;
  readonly #isTypeScript: boolean;

  constructor(kernel: RunningKernel, outputs: RunOutputs, timeLimit: number) {
    this.#kernel = kernel;
    this.#outputs = outputs;
    this.#timeLimit = timeLimit;
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
      onOutput: (output) => {
        if (this.kind === "own" && isPatience(output)) return;
        this.#outputs.hear(output, index);
      },
    });
  }

  /** Waits until all that a cell has given out so far is here. */
  async #fence(index: number): Promise<void> {
    const arrived = this.#outputs.fence(index);
    await this.#execute(fenceCell(index), index, true);
    const ended = Promise.race([arrived, this.#kernel.exited]);
    for (let heard = -1; heard !== this.#outputs.heard;) {
      heard = this.#outputs.heard;
      if (await isSettled(ended, GRACE)) return;
    }
  }
}
