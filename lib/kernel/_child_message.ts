import type { JsonObject, Message } from "../protocol/message.ts";
import { isObject, isWellFormed, readOutcome, readThrown } from "./_forged.ts";
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

/** Reads a message of the child; undefined if it is about itself, or no message. */
export function readChildMessage(message: Message): ChildMessage | undefined {
  const { header: { msg_type: type }, content, metadata, buffers } = message;
  const { data } = content;
  if (type === "display_data" && isObject(data)) {
    if (Object.hasOwn(data, OUTCOME_MIME)) {
      const said = data[OUTCOME_MIME];
      const outcome = readOutcome(said);
      if (outcome === undefined || !isObject(said)) return undefined;
      const { cell } = said;
      return typeof cell === "number"
        ? { kind: "outcome", cell, outcome }
        : undefined;
    }
    if (Object.hasOwn(data, UNCAUGHT_MIME)) {
      const said = data[UNCAUGHT_MIME];
      if (!isObject(said)) return undefined;
      const cell = typeof said.cell === "number" ? said.cell : undefined;
      return { kind: "uncaught", cell, error: readThrown(said.error) };
    }
  }
  if (!SHOWN.has(type) || !isWellFormed(type, content)) return undefined;
  const named = metadata[CELL_KEY];
  const cell = typeof named === "number" ? named : undefined;
  return { kind: "output", cell, type, content, buffers };
}
