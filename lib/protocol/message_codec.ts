/**
 * Messages as signed frames.
 *
 * @module
 */
import { Buffer } from "node:buffer";
import { createHmac, timingSafeEqual } from "node:crypto";
import type { JsonObject, Message, MessageHeader } from "./message.ts";

const DELIMITER = new TextEncoder().encode("<IDS|MSG>");
const REMEMBERED = 65_536;

/** Why a message was not taken. */
export type Rejection = "malformed" | "forged" | "replayed";

/** A message that must be ignored: nothing in it may be acted on. */
export class MessageRejected extends Error {
  /** Class of the error. */
  override name = "MessageRejected";
  /** Why it was not taken. */
  readonly reason: Rejection;

  /**
   * Says what was wrong.
   *
   * @param reason Why the message was not taken.
   * @param detail What was wrong with it.
   */
  constructor(reason: Rejection, detail: string) {
    super(`Cannot take a message as ${detail}: it is ${reason}`);
    this.reason = reason;
  }
}

/**
 * Turns messages into frames with an HMAC-SHA256 signature, and back.
 *
 * The signature is checked in constant time before any byte of the message is
 * parsed. A signature seen before is refused, so a recorded message cannot be
 * sent again; the last 65 536 are remembered.
 *
 * @see Jupyter messaging protocol 5.3, "The wire protocol"; RFC 2104 (HMAC).
 *
 * @example A message comes back whole, once, and only under its own key
 * ```ts
 * import { createMessage } from "sagbook/protocol/message.ts";
 * import { MessageCodec } from "sagbook/protocol/message_codec.ts";
 * import { equal, throws } from "node:assert/strict";
 *
 * const message = createMessage({
 *   type: "execute_request",
 *   session: "a",
 *   content: { code: "1 + 1" },
 * });
 * const frames = new MessageCodec("secret").encode(message);
 * const reader = new MessageCodec("secret");
 * equal(reader.decode(frames).content.code, "1 + 1");
 * throws(() => reader.decode(frames), { reason: "replayed" });
 * throws(() => new MessageCodec("other").decode(frames), { reason: "forged" });
 * ```
 */
export class MessageCodec {
  #key: string;
  #seen = new Set<string>();

  /**
   * Takes the secret of one connection.
   *
   * @param key Secret that both sides share; not empty.
   * @throws {RangeError} If the key is empty: any process on the machine could
   * then run code.
   */
  constructor(key: string) {
    if (key === "") {
      throw new RangeError(
        "Cannot sign messages as the key must not be empty: current value is empty text",
      );
    }
    this.#key = key;
  }

  /**
   * Signs a message.
   *
   * @param message The message.
   * @returns Its frames: identities, delimiter, signature, four parts of JSON,
   * attachments.
   */
  encode(message: Message): Uint8Array[] {
    const parts = [
      message.header,
      message.parent,
      message.metadata,
      message.content,
    ].map((part) => Buffer.from(JSON.stringify(part)));
    return [
      ...message.identities,
      DELIMITER,
      Buffer.from(this.#sign(parts).toString("hex")),
      ...parts,
      ...message.buffers,
    ];
  }

  /**
   * Checks and reads a message.
   *
   * @param frames The frames as received.
   * @returns The message.
   * @throws {MessageRejected} If the frames are no message, or the signature is
   * wrong or was seen before.
   */
  decode(frames: readonly Uint8Array[]): Message {
    const at = frames.findIndex((frame) =>
      frame.length === DELIMITER.length &&
      Buffer.compare(frame, DELIMITER) === 0
    );
    if (at < 0 || frames.length < at + 6) {
      throw new MessageRejected("malformed", "it lacks a delimiter or a part");
    }
    const parts = frames.slice(at + 2, at + 6);
    const signature = Buffer.from(frames[at + 1]).toString("latin1");
    const given = /^[0-9a-f]{64}$/i.test(signature)
      ? Buffer.from(signature, "hex")
      : Buffer.alloc(32);
    if (!timingSafeEqual(given, this.#sign(parts))) {
      throw new MessageRejected(
        "forged",
        "its signature does not fit its text",
      );
    }
    this.#refuseRepeated(signature.toLowerCase());
    const [header, parent, metadata, content] = parts.map(readObject);
    return {
      identities: frames.slice(0, at),
      header: readHeader(header),
      parent: Object.keys(parent).length === 0 ? {} : readHeader(parent),
      metadata,
      content,
      buffers: frames.slice(at + 6),
    };
  }

  #sign(parts: readonly Uint8Array[]): Buffer {
    const hmac = createHmac("sha256", this.#key);
    for (const part of parts) hmac.update(part);
    return hmac.digest() as Buffer;
  }

  #refuseRepeated(signature: string): void {
    if (this.#seen.has(signature)) {
      throw new MessageRejected("replayed", "its signature was seen before");
    }
    this.#seen.add(signature);
    if (this.#seen.size > REMEMBERED) {
      this.#seen.delete(this.#seen.values().next().value!);
    }
  }
}

const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

function readObject(bytes: Uint8Array): JsonObject {
  let value: unknown;
  try {
    value = JSON.parse(text.decode(bytes));
  } catch {
    throw new MessageRejected("malformed", "a part of it is not JSON in UTF-8");
  }
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw new MessageRejected("malformed", "a part of it is not an object");
  }
  return value as JsonObject;
}

function readHeader(object: JsonObject): MessageHeader {
  const { msg_id, msg_type, session, username, date, version } = object;
  if (typeof msg_id !== "string" || typeof msg_type !== "string") {
    throw new MessageRejected("malformed", "its header has no id or no type");
  }
  const word = (value: unknown) => typeof value === "string" ? value : "";
  return {
    ...object,
    msg_id,
    msg_type,
    session: word(session),
    username: word(username),
    date: word(date),
    version: word(version),
  };
}
