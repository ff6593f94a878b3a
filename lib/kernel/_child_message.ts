import type { JsonObject, Message } from "../protocol/message.ts";
import { CELL_KEY, OUTCOME_MIME, UNCAUGHT_MIME } from "./_host_protocol.ts";
import type { Outcome, ThrownError } from "./evaluator.ts";

/** What the evaluator's child says on its output channel. */
export type ChildMessage =
  | {
    readonly kind: "outcome";
    readonly cell: number;
    readonly outcome: Outcome;
  }
  | {
    readonly kind: "uncaught";
    readonly cell: number | undefined;
    readonly error: ThrownError;
  }
  | {
    readonly kind: "output";
    readonly cell: number | undefined;
    readonly type: string;
    readonly content: JsonObject;
    readonly buffers: readonly Uint8Array[];
  };

/** Kinds of message that are passed to the notebook. */
const SHOWN = new Set([
  "stream",
  "display_data",
  "update_display_data",
  "clear_output",
  "comm_open",
  "comm_msg",
  "comm_close",
]);

/** Reads a message of the child; undefined if it is about itself. */
export function readChildMessage(message: Message): ChildMessage | undefined {
  const { header: { msg_type: type }, content, metadata, buffers } = message;
  const data = content.data as JsonObject | undefined;
  if (type === "display_data" && data) {
    const outcome = data[OUTCOME_MIME];
    if (outcome) {
      const { cell } = outcome as { cell: number };
      return { kind: "outcome", cell, outcome: outcome as Outcome };
    }
    const uncaught = data[UNCAUGHT_MIME];
    if (uncaught) {
      const { cell, error } = uncaught as { cell?: number; error: ThrownError };
      return { kind: "uncaught", cell, error };
    }
  }
  if (!SHOWN.has(type)) return undefined;
  const named = metadata[CELL_KEY];
  const cell = typeof named === "number" ? named : undefined;
  return { kind: "output", cell, type, content, buffers };
}
