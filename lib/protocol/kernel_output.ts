/**
 * What a cell gives out while it runs.
 *
 * @module
 */
import type { MimeBundle } from "../display/bundle.ts";
import type { JsonObject, Message } from "./message.ts";

/** Printed text. */
export interface StreamOutput {
  /** Kind of output. */
  readonly output_type: "stream";
  /** Which stream it was written to. */
  readonly name: "stdout" | "stderr";
  /** The text; several pieces may follow each other. */
  readonly text: string;
}

/** Something shown. */
export interface DisplayDataOutput {
  /** Kind of output. */
  readonly output_type: "display_data";
  /** Its forms by MIME type. */
  readonly data: MimeBundle;
  /** Additions by MIME type. */
  readonly metadata: JsonObject;
  /** Id under which it may be changed later; not kept in a file. */
  readonly transient?: { readonly display_id?: string };
}

/** The value of the cell. */
export interface ExecuteResultOutput {
  /** Kind of output. */
  readonly output_type: "execute_result";
  /** The number in the cell's margin. */
  readonly execution_count: number | null;
  /** Its forms by MIME type. */
  readonly data: MimeBundle;
  /** Additions by MIME type. */
  readonly metadata: JsonObject;
  /** Id under which it may be changed later; not kept in a file. */
  readonly transient?: { readonly display_id?: string };
}

/** A failure. */
export interface ErrorOutput {
  /** Kind of output. */
  readonly output_type: "error";
  /** Name of the error. */
  readonly ename: string;
  /** Its message. */
  readonly evalue: string;
  /** Lines to show, as the kernel formats them. */
  readonly traceback: readonly string[];
}

/** A change of what was shown under an id. */
export interface UpdateDisplayDataOutput {
  /** Kind of output. */
  readonly output_type: "update_display_data";
  /** Its new forms by MIME type. */
  readonly data: MimeBundle;
  /** Additions by MIME type. */
  readonly metadata: JsonObject;
  /** Which display changes. */
  readonly transient: { readonly display_id?: string };
}

/** A wish to clear the cell's outputs. */
export interface ClearOutput {
  /** Kind of output. */
  readonly output_type: "clear_output";
  /** Clear only when the next output comes. */
  readonly wait: boolean;
}

/** An output that a notebook file keeps (nbformat 4). */
export type NotebookOutput =
  | StreamOutput
  | DisplayDataOutput
  | ExecuteResultOutput
  | ErrorOutput;

/** Any output message; the last two change earlier outputs. */
export type KernelOutput =
  | NotebookOutput
  | UpdateDisplayDataOutput
  | ClearOutput;

/**
 * Reads a message of the output channel as an output.
 *
 * @param message Any message.
 * @returns The output, or undefined if the message is of another kind or lacks
 * what its kind must have.
 *
 * @see Jupyter messaging protocol 5.3; nbformat 4.5.
 *
 * @example Printed text
 * ```ts
 * import { readOutput } from "sagbook/protocol/kernel_output.ts";
 * import { createMessage } from "sagbook/protocol/message.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const message = createMessage({
 *   type: "stream",
 *   session: "a",
 *   content: { name: "stdout", text: "0.715\n" },
 * });
 * deepEqual(readOutput(message), {
 *   output_type: "stream",
 *   name: "stdout",
 *   text: "0.715\n",
 * });
 * ```
 */
export function readOutput(message: Message): KernelOutput | undefined {
  const { content } = message;
  switch (message.header.msg_type) {
    case "stream":
      if (typeof content.text !== "string") return;
      return {
        output_type: "stream",
        name: content.name === "stderr" ? "stderr" : "stdout",
        text: content.text,
      };
    case "display_data":
      return isObject(content.data)
        ? { output_type: "display_data", ...shown(content) }
        : undefined;
    case "update_display_data":
      return isObject(content.data)
        ? {
          output_type: "update_display_data",
          transient: {},
          ...shown(content),
        }
        : undefined;
    case "execute_result":
      return isObject(content.data)
        ? {
          output_type: "execute_result",
          execution_count: typeof content.execution_count === "number"
            ? content.execution_count
            : null,
          ...shown(content),
        }
        : undefined;
    case "error":
      return { output_type: "error", ...readError(content) };
    case "clear_output":
      return { output_type: "clear_output", wait: content.wait === true };
  }
}

/** Name, message and lines of an error in a reply or an output. */
export function readError(
  content: JsonObject,
): Omit<ErrorOutput, "output_type"> {
  const { ename, evalue, traceback } = content;
  return {
    ename: typeof ename === "string" ? ename : "Error",
    evalue: typeof evalue === "string" ? evalue : "",
    traceback: Array.isArray(traceback) ? traceback.map(String) : [],
  };
}

function shown(content: JsonObject) {
  const { transient } = content;
  return {
    data: content.data as MimeBundle,
    metadata: isObject(content.metadata) ? content.metadata : {},
    ...(isObject(transient) && typeof transient.display_id === "string" &&
      { transient: { display_id: transient.display_id } }),
  };
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
