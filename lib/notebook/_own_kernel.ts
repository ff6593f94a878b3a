/**
 * What the project's own kernel says, in terms of a notebook: it counts cells
 * by the number in their margin, and talks to whoever sits before it.
 *
 * @module
 */
import type { KernelOutput } from "../protocol/kernel_output.ts";
import type { ErrorOutput } from "./document.ts";

/** The name under which that kernel introduces itself. */
export const OWN_KERNEL = "sagbook";

/** The name of its error when its evaluator has ended. */
const RESTARTED = "EvaluatorRestarted";

/** What it says to one who waits; it depends on the machine's load. */
const PATIENCE = "Waiting for the type checker …\n";

/** True for a word to one who waits: no part of a notebook's outputs. */
export function isPatience(output: KernelOutput): boolean {
  return output.output_type === "stream" && output.name === "stderr" &&
    output.text === PATIENCE;
}

/** What it says once where it was told not to check types. */
const UNCHECKED = "Cells are not type-checked (--no-check).\n";

/** True for the kernel's word that types are not checked. */
export function isUncheckedNotice(output: KernelOutput): boolean {
  return output.output_type === "stream" && output.name === "stderr" &&
    output.text === UNCHECKED;
}

/** What it adds to the message of an error that nothing awaited. */
const UNAWAITED = / \(not caught in [^()]*: nothing awaited it\)$/;

/** How the evaluator ended, if that is what the error says. */
export function evaluatorEnd(
  error: Omit<ErrorOutput, "output_type">,
): string | undefined {
  if (error.ename !== RESTARTED) return undefined;
  return /\(([^)]*)\)/.exec(error.evalue)?.[1] ?? "reason unknown";
}

/** An error whose places are those of the notebook. */
export interface RenumberedError {
  readonly error: Omit<ErrorOutput, "output_type">;
  /** Line in the cell that failed, from 1, if the error names it. */
  readonly line?: number;
  /** The message without a place at its start. */
  readonly words: string;
}

/**
 * Restates an error of the project's own kernel.
 *
 * @param error As the kernel gives it.
 * @param count Number in the margin of the cell that failed.
 * @param numberOf The notebook's number of the cell with a margin number.
 */
export function renumber(
  error: Omit<ErrorOutput, "output_type">,
  count: number | null,
  numberOf: (count: number) => number | undefined,
): RenumberedError {
  const restate = (text: string) =>
    text.replace(
      /\bcell (\d+)(?=, line \d+, column \d+|: nothing awaited )/g,
      (found, margin) => {
        const number = numberOf(Number(margin));
        return number === undefined ? found : `cell ${number}`;
      },
    );
  const start = /^cell (\d+), line (\d+), column \d+: /.exec(error.evalue);
  // The last frame in the cell that failed is the cell's own line.
  const frames = error.traceback.flatMap((text) => {
    const found = /^\s+at .*\bcell (\d+), line (\d+), column \d+\)?$/.exec(
      text,
    );
    return found !== null && Number(found[1]) === count ? [found[2]] : [];
  });
  const line = start?.[2] ?? frames.at(-1);
  return {
    error: {
      ename: error.ename,
      evalue: start === null && !UNAWAITED.test(error.evalue)
        ? error.evalue
        : restate(error.evalue),
      traceback: error.traceback.map(restate),
    },
    ...(line === undefined ? {} : { line: Number(line) }),
    words: error.evalue.slice(start?.[0].length ?? 0)
      .replace(UNAWAITED, ""),
  };
}
