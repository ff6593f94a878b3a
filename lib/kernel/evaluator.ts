/**
 * What runs a cell's code for a kernel.
 *
 * @module
 */
import type { MimeBundle } from "../display/bundle.ts";
import type { JsonObject, Message } from "../protocol/message.ts";

/** A cell ready to be run. */
export interface EvaluatorCell {
  /** Unique number of this run. */
  readonly id: number;
  /** JavaScript as `rewriteCell` makes it. */
  readonly code: string;
  /** Expressions to evaluate after it, by name, rewritten in the same way. */
  readonly expressions: Readonly<Record<string, string>>;
}

/** An error as it was thrown, not yet traced back to the cell. */
export interface ThrownError {
  /** Name of its class. */
  readonly name: string;
  /** Its message. */
  readonly message: string;
  /** The runtime's stack, with places in the rewritten code. */
  readonly stack: string;
}

/** Value of an expression that was asked for beside the cell. */
export type ExpressionValue =
  | { readonly status: "ok"; readonly data: MimeBundle }
  | { readonly status: "error"; readonly error: ThrownError };

/** What became of a cell. */
export type Outcome =
  & {
    /** Names that have a value now. */
    readonly assigned: readonly string[];
    /** What the cell wants a pager to show, beside its outputs. */
    readonly pages: readonly MimeBundle[];
    /** Values of the expressions asked for. */
    readonly expressions: Readonly<Record<string, ExpressionValue>>;
  }
  & (
    | {
      readonly status: "ok";
      /** Forms of the last expression's value, unless it is undefined. */
      readonly data?: MimeBundle;
    }
    | { readonly status: "error"; readonly error: ThrownError }
    | { readonly status: "interrupted" }
    | {
      /** The evaluator ended; all variables are gone. */
      readonly status: "lost";
      /** How it ended, such as "exit code 3". */
      readonly reason: string;
    }
  );

/** What an evaluator tells while it runs. */
export interface EvaluatorEvents {
  /**
   * Something to show.
   *
   * @param type Kind of message on the output channel.
   * @param content What is shown.
   * @param cell The run it belongs to, if that is known.
   * @param buffers Binary attachments.
   */
  output(
    type: string,
    content: JsonObject,
    cell: number | undefined,
    buffers: readonly Uint8Array[],
  ): void;
  /** An error that no cell waits for: a rejection, or one out of a timer. */
  uncaught(error: ThrownError, cell: number | undefined): void;
  /**
   * A question for the user.
   *
   * @returns The answer; undefined if it was refused or interrupted.
   */
  question(prompt: string, password: boolean): Promise<string | undefined>;
  /** The evaluator ended while no cell was running; a new one is started. */
  lost(reason: string): void;
}

/**
 * Runs cells one at a time in a scope that lasts.
 *
 * A kernel talks to its evaluator through this interface alone, so that another
 * way of running code can take its place.
 */
export interface Evaluator {
  /** Kept when cells can be run. */
  readonly ready: Promise<void>;
  /** Runs a cell; never rejects. */
  run(cell: EvaluatorCell): Promise<Outcome>;
  /** Stops the running cell; does nothing if none runs. */
  interrupt(): Promise<void>;
  /** Passes a message on, such as a comm's, and gives the reply if it has one. */
  forward(message: Message): Promise<Message | undefined>;
  /** Ends it and all its processes. */
  stop(): Promise<void>;
}
