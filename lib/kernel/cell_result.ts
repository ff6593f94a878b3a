/**
 * A cell that is to be run, and what became of it.
 *
 * @module
 */
import type { MimeBundle } from "../display/bundle.ts";
import type { ShownError } from "./_trace.ts";

/** A cell to be run. */
export interface CellRequest {
  /** Unique number of the run. */
  readonly id: number;
  /** Its text. */
  readonly source: string;
  /** What it is called in messages, such as "cell 3". */
  readonly name: string;
  /** Expressions to evaluate after it, by name. */
  readonly expressions: Readonly<Record<string, unknown>>;
  /** Says something on the cell's error stream. */
  say(text: string): void;
}

/** What became of a cell, in the words of the protocol. */
export type CellResult =
  & { readonly expressions: Record<string, Record<string, unknown>> }
  & (
    | {
      readonly status: "ok";
      readonly data?: MimeBundle;
      readonly pages?: readonly MimeBundle[];
    }
    | {
      readonly status: "error";
      readonly error: ShownError;
      /** True if the cell came to its end, and what failed was not awaited. */
      readonly uncaught?: boolean;
    }
  );
