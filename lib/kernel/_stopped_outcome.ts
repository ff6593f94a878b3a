/**
 * An outcome of a cell that is being stopped.
 */
import type { Outcome } from "./evaluator.ts";

/**
 * What the engine throws where it ends code inside a call of its own, such as a
 * wait, is null: in a cell that is being stopped it is the stop.
 */
export function asStopped(outcome: Outcome): Outcome {
  if (outcome.status !== "error") return outcome;
  const { error: { name, message, stack }, ...others } = outcome;
  return name === "object" && message === "null" && stack === ""
    ? { ...others, status: "interrupted" }
    : outcome;
}
