/**
 * The messages of the Jupyter protocol, as typed values.
 *
 * @module
 */

/** Version of the messaging protocol that is spoken. */
export const PROTOCOL_VERSION = "5.3";

/** An object as JSON has it. */
export interface JsonObject {
  /** Any JSON value. */
  readonly [key: string]: unknown;
}

/** Who sent a message, and which one it is. */
export interface MessageHeader {
  /** Unique id of the message. */
  readonly msg_id: string;
  /** Id of the sender's session. */
  readonly session: string;
  /** Name of the user, for display only. */
  readonly username: string;
  /** Time of sending, ISO 8601. */
  readonly date: string;
  /** Kind of message, such as `execute_request`. */
  readonly msg_type: string;
  /** Version of the protocol. */
  readonly version: string;
}

/** One message, apart from where it goes. */
export interface Message<Content extends JsonObject = JsonObject> {
  /** Routing prefix: identities on a router, a topic on the output channel. */
  readonly identities: readonly Uint8Array[];
  /** The message's own header. */
  readonly header: MessageHeader;
  /** Header of the message that caused this one; empty where none did. */
  readonly parent: MessageHeader | Record<string, never>;
  /** Additions outside the protocol. */
  readonly metadata: JsonObject;
  /** What is said. */
  readonly content: Content;
  /** Binary attachments. */
  readonly buffers: readonly Uint8Array[];
}

/** What a message is made of, beside what is filled in by itself. */
export interface MessageParts<Content extends JsonObject = JsonObject> {
  /** Kind of message. */
  readonly type: string;
  /** Sender's session. */
  readonly session: string;
  /** What is said. */
  readonly content: Content;
  /** Header of the message that is answered. */
  readonly parent?: MessageHeader | Record<string, never>;
  /** Additions outside the protocol. */
  readonly metadata?: JsonObject;
  /** Routing prefix. */
  readonly identities?: readonly Uint8Array[];
  /** Binary attachments. */
  readonly buffers?: readonly Uint8Array[];
}

/**
 * Makes a message with a fresh id and the time of now.
 *
 * @param parts Kind, session and content; the rest is empty unless given.
 * @returns The message.
 *
 * @example An answer names what it answers
 * ```ts
 * import { createMessage } from "sagbook/protocol/message.ts";
 * import { equal, notEqual } from "node:assert/strict";
 *
 * const asked = createMessage({ type: "kernel_info_request", session: "a", content: {} });
 * const answer = createMessage({
 *   type: "kernel_info_reply",
 *   session: "b",
 *   content: { status: "ok" },
 *   parent: asked.header,
 * });
 * equal(answer.parent.msg_id, asked.header.msg_id);
 * notEqual(answer.header.msg_id, asked.header.msg_id);
 * ```
 */
export function createMessage<Content extends JsonObject>(
  parts: MessageParts<Content>,
): Message<Content> {
  return {
    identities: parts.identities ?? [],
    header: {
      msg_id: crypto.randomUUID(),
      session: parts.session,
      username: "user",
      date: new Date().toISOString(),
      msg_type: parts.type,
      version: PROTOCOL_VERSION,
    },
    parent: parts.parent ?? {},
    metadata: parts.metadata ?? {},
    content: parts.content,
    buffers: parts.buffers ?? [],
  };
}
