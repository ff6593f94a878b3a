import { deepEqual, throws } from "node:assert/strict";
import { Buffer } from "node:buffer";
import { createHmac } from "node:crypto";
import { createMessage } from "sagbook/protocol/message.ts";
import {
  MessageCodec,
  MessageRejected,
} from "sagbook/protocol/message_codec.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const request = (code: string) =>
  createMessage({
    type: "execute_request",
    session: "s",
    content: { code },
    identities: [bytes("peer")],
    metadata: { m: 1 },
    buffers: [Uint8Array.of(1, 2)],
  });

function signed(key: string, parts: readonly Uint8Array[]): Uint8Array[] {
  const hmac = createHmac("sha256", key);
  for (const part of parts) hmac.update(part);
  return [bytes("<IDS|MSG>"), bytes(hmac.digest("hex")), ...parts];
}

Deno.test("MessageCodec() brings back every part, with text outside ASCII", () => {
  const code = "const Öse = 'R ≈ 2520 mm 🔭'; // \u2028 \ud83d";
  const message = request(code);
  const frames = new MessageCodec("k").encode(message);
  const back = new MessageCodec("k").decode(frames);
  deepEqual(back.header, message.header);
  deepEqual(back.content, { code });
  deepEqual(back.metadata, { m: 1 });
  deepEqual(back.identities, [bytes("peer")]);
  deepEqual(back.buffers, [Uint8Array.of(1, 2)]);
});

Deno.test("MessageCodec() signs as HMAC-SHA256 over the four parts in order", () => {
  // The delimiter follows one identity; the digest comes from node:crypto.
  const frames = new MessageCodec("k").encode(request("1"));
  deepEqual(
    frames.slice(1, 7),
    signed("k", frames.slice(3, 7)).map((f) => Buffer.from(f)),
  );
});

Deno.test("MessageCodec() refuses any changed byte of a signed part or of the signature", () => {
  const frames = new MessageCodec("k").encode(request("1 + 1"));
  for (const part of [2, 3, 4, 5, 6]) {
    const changed = frames.map((frame) => Uint8Array.from(frame));
    changed[part][changed[part].length >> 1] ^= 1;
    throws(() => new MessageCodec("k").decode(changed), {
      name: "MessageRejected",
      reason: "forged",
    });
  }
  for (const signature of ["", "00", "g".repeat(64), "0".repeat(64)]) {
    const changed = [...frames];
    changed[2] = bytes(signature);
    throws(() => new MessageCodec("k").decode(changed), { reason: "forged" });
  }
});

Deno.test("MessageCodec() refuses a message a second time, also in capitals", () => {
  const frames = new MessageCodec("k").encode(request("1"));
  const reader = new MessageCodec("k");
  reader.decode(frames);
  const error = {
    name: "MessageRejected",
    message:
      "Cannot take a message as its signature was seen before: it is replayed",
  };
  throws(() => reader.decode(frames), error);
  const capitals = [...frames];
  capitals[2] = bytes(Buffer.from(frames[2]).toString().toUpperCase());
  throws(() => reader.decode(capitals), error);
});

Deno.test("MessageCodec() refuses what is rightly signed and still no message", () => {
  const header = bytes('{"msg_id":"1","msg_type":"a"}');
  const empty = bytes("{}");
  const wrong: Uint8Array[][] = [
    [bytes("<IDS|MSG>")],
    [],
    [bytes("x"), bytes("y")],
    signed("k", [header, empty, empty]).slice(0, 5),
    signed("k", [empty, empty, empty, empty]),
    signed("k", [bytes("[]"), empty, empty, empty]),
    signed("k", [header, empty, empty, bytes("null")]),
    signed("k", [header, empty, empty, bytes("{")]),
    signed("k", [header, empty, empty, Uint8Array.of(123, 34, 0xff, 34)]),
    signed("k", [header, bytes('{"msg_id":1}'), empty, empty]),
  ];
  for (const frames of wrong) {
    throws(
      () => new MessageCodec("k").decode(frames),
      (error) =>
        error instanceof MessageRejected && error.reason === "malformed",
    );
  }
});

Deno.test("MessageCodec() refuses to work without a key", () => {
  throws(() => new MessageCodec(""), {
    name: "RangeError",
    message:
      "Cannot sign messages as the key must not be empty: current value is empty text",
  });
});
