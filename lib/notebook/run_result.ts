/**
 * What became of a run.
 *
 * @module
 */
import type { Notebook } from "./document.ts";

/**
 * How a run ended: every cell as it should; with a cell that failed; because
 * the kernel's process ended; because a cell took too long; because the caller
 * said so.
 */
export type RunStatus =
  | "complete"
  | "failed"
  | "kernel-ended"
  | "time-limit"
  | "stopped";

/** The exit code that a program running a notebook gives for each ending. */
export const RUN_EXIT_CODES: Readonly<Record<RunStatus, number>> = {
  "complete": 0,
  "failed": 1,
  "kernel-ended": 3,
  "time-limit": 4,
  "stopped": 130,
};

/** One thing that went wrong, and where. */
export interface CellProblem {
  /** Number of the cell as its author counts, from 1. */
  readonly cell: number;
  /** The cell's id. */
  readonly id: string;
  /** Line in the cell, from 1, where it is known. */
  readonly line?: number;
  /**
   * `error`: the cell failed. `unawaited`: something it had started failed
   * while nobody waited for it. `no-error`: it is tagged `raises-exception`
   * and did not. `type`: the type checker complains, whatever became of the
   * cell. The others as in {@linkcode RunStatus}.
   */
  readonly kind:
    | "type"
    | "error"
    | "unawaited"
    | "no-error"
    | "kernel-ended"
    | "time-limit"
    | "stopped";
  /**
   * One sentence that names cell and line; of a type error also the line of
   * text, with a mark below it.
   */
  readonly message: string;
}

/** What a run gives back. */
export interface RunResult {
  /** The notebook with its outputs; cells that were not run are as before. */
  readonly notebook: Notebook;
  /** How the run ended. */
  readonly status: RunStatus;
  /** 0 for a complete run; see {@linkcode RUN_EXIT_CODES}. */
  readonly exitCode: number;
  /** Everything that went wrong, in order. */
  readonly problems: readonly CellProblem[];
  /** Why a page of this notebook is incomplete; left out if it is complete. */
  readonly incomplete?: string;
}

/** What is going on in a run. */
export interface RunProgress {
  /** Number of the cell, from 1. */
  readonly cell: number;
  /** Number of the last cell. */
  readonly of: number;
  /** `running` when it starts, one of the others when it has ended. */
  readonly state: "running" | "done" | "failed" | "skipped";
  /** Time that the cell has taken so far, in s; 0 when it starts. */
  readonly seconds: number;
  /** How far the cell is, where it tells so. */
  readonly words?: string;
}
