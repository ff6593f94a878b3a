import { deepEqual, equal, ok } from "node:assert/strict";
import { createMessage, PROTOCOL_VERSION } from "sagbook/protocol/message.ts";

Deno.test("createMessage() fills in id, time and version, and leaves the rest empty", () => {
  const before = Date.now();
  const message = createMessage({ type: "status", session: "s", content: {} });
  equal(message.header.version, PROTOCOL_VERSION);
  equal(message.header.session, "s");
  equal(message.header.msg_type, "status");
  ok(Date.parse(message.header.date) >= before - 1);
  deepEqual([message.parent, message.metadata, message.buffers], [{}, {}, []]);
  const ids = new Set(
    Array.from(
      { length: 1_000 },
      () =>
        createMessage({ type: "a", session: "s", content: {} }).header.msg_id,
    ),
  );
  equal(ids.size, 1_000);
});
