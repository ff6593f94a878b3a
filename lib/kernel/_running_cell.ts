import { settled } from "../protocol/settled.ts";
import type { EvaluatorCell, Outcome } from "./evaluator.ts";

/** A cell between its start and its outcome. */
export class RunningCell {
  interrupted = false;
  /** Ends each question for input that has not been answered. */
  readonly dismissals = new Set<() => void>();
  #outcome = Promise.withResolvers<Outcome>();
  #done = false;

  constructor(readonly cell: EvaluatorCell) {}

  /** Whether the outcome is there. */
  get done(): boolean {
    return this.#done;
  }

  /** Kept with the outcome. */
  get outcome(): Promise<Outcome> {
    return this.#outcome.promise;
  }

  /** Gives the outcome; the first one counts. */
  finish(outcome: Outcome): void {
    this.#done = true;
    this.#outcome.resolve(outcome);
  }

  /** Waits for the outcome up to a limit in ms; tells whether it is there. */
  async doneWithin(limit: number): Promise<boolean> {
    await settled(this.#outcome.promise, limit);
    return this.#done;
  }
}
