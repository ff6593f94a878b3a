/**
 * Running one piece of code on a kernel.
 *
 * @module
 */
import type { ErrorOutput, KernelOutput } from "./kernel_output.ts";
import type { JsonObject, Message } from "./message.ts";

/** Where an output came from. */
export interface OutputOrigin {
  /** Id of the request whose output it is. */
  readonly parentId: string;
  /** True if the request had been answered before the output came. */
  readonly late: boolean;
}

/** How code is to be run. */
export interface ExecuteOptions {
  /** Called for each output, in order; also for those that come late. */
  readonly onOutput?: (output: KernelOutput, origin: OutputOrigin) => void;
  /** Answers a question for input; without it the code may not ask. */
  readonly onInput?: (
    prompt: string,
    password: boolean,
  ) => string | Promise<string>;
  /** Longest time in ms; the code is then interrupted. No limit unless told. */
  readonly timeLimit?: number;
  /**
   * Time in ms that interrupted code has to stop before the kernel is ended;
   * 10 000 unless told.
   */
  readonly graceLimit?: number;
  /** No outputs of the value, no history; false unless told. */
  readonly silent?: boolean;
  /** Counts and keeps the code in the history; true unless told or silent. */
  readonly storeHistory?: boolean;
  /** Abandons requests that wait behind it if it fails; true unless told. */
  readonly stopOnError?: boolean;
  /** Expressions to evaluate after the code, by name. */
  readonly userExpressions?: Readonly<Record<string, string>>;
}

/** What became of the code. */
export interface ExecuteResult {
  /** `aborted` if code before it failed and it was not run. */
  readonly status: "ok" | "error" | "aborted";
  /** The number in the cell's margin. */
  readonly executionCount: number | null;
  /** The failure, if there was one. */
  readonly error?: Omit<ErrorOutput, "output_type">;
  /** The reply's whole content. */
  readonly content: JsonObject;
  /** Id of the request, as in {@linkcode OutputOrigin}. */
  readonly id: string;
  /** The reply itself. */
  readonly reply: Message;
}
