/**
 * Failures of a kernel, as against failures of a cell.
 *
 * @module
 */

/** How a kernel's process ended. */
export interface KernelExit {
  /** Exit code; 128 plus the signal's number where a signal ended it. */
  readonly code: number;
  /** The signal, if one ended it. */
  readonly signal: string | null;
  /** True if it was asked to shut down. */
  readonly expected: boolean;
  /** The last part of what it wrote on its own error stream. */
  readonly log: string;
}

/** The kernel's process ended though nobody asked it to. */
export class KernelDiedError extends Error {
  /** Class of the error. */
  override name = "KernelDiedError";
  /** How it ended. */
  readonly exit: KernelExit;

  /**
   * Says how the process ended.
   *
   * @param exit How it ended.
   */
  constructor(exit: KernelExit) {
    super(`the kernel ended (${describeExit(exit)})`);
    this.exit = exit;
  }
}

/** A cell ran longer than it may. */
export class TimeLimitError extends Error {
  /** Class of the error. */
  override name = "TimeLimitError";
  /** The limit in ms. */
  readonly timeLimit: number;
  /** True if the kernel stopped the cell and can go on. */
  readonly kernelLives: boolean;

  /**
   * Says how long the cell was allowed to run.
   *
   * @param timeLimit The limit in ms.
   * @param kernelLives Whether the kernel stopped the cell and can go on.
   */
  constructor(timeLimit: number, kernelLives: boolean) {
    super(
      `the cell ran longer than ${timeLimit / 1000} s` +
        (kernelLives
          ? " and was stopped"
          : " and did not stop when asked, so the kernel was ended"),
    );
    this.timeLimit = timeLimit;
    this.kernelLives = kernelLives;
  }
}

/** Words for the end of a process: "exit code 3", "signal SIGKILL". */
export function describeExit(
  exit: { readonly code: number; readonly signal: string | null },
): string {
  return exit.signal ? `signal ${exit.signal}` : `exit code ${exit.code}`;
}
