import { equal } from "node:assert/strict";
import { createHmac } from "node:crypto";
import { Dealer } from "sagbook/protocol/dealer.ts";
import { createMessage } from "sagbook/protocol/message.ts";
import { MessageCodec } from "sagbook/protocol/message_codec.ts";
import { Session } from "./_session.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

Deno.test("Kernel() survives forged, repeated, broken and huge messages, and runs none of them", async () => {
  await using session = await Session.start();
  const { endpoints, key } = session.kernel.connection;
  const dealer = await Dealer.connect(endpoints.shell);
  const codec = new MessageCodec(key);
  const request = (code: string) =>
    createMessage({
      type: "execute_request",
      session: "x",
      content: { code, silent: false, store_history: true, allow_stdin: false },
    });
  await session.run("globalThis.count = 0");

  // Another key, no signature, a changed byte, and a repetition.
  await dealer.send(new MessageCodec("guess").encode(request("count += 100")));
  const unsigned = codec.encode(request("count += 100"));
  unsigned[1] = bytes("");
  await dealer.send(unsigned);
  const changed = codec.encode(request("count += 1"));
  changed[5] = bytes('{"code":"count += 100"}');
  await dealer.send(changed);
  const once = codec.encode(request("count += 1"));
  await dealer.send(once);
  await dealer.send(once);

  // Rightly signed, but not what the protocol says.
  const sign = (...parts: string[]) => {
    const hmac = createHmac("sha256", key);
    for (const part of parts) hmac.update(part);
    return [bytes("<IDS|MSG>"), bytes(hmac.digest("hex")), ...parts.map(bytes)];
  };
  const header = '{"msg_id":"m","msg_type":"execute_request"}';
  await dealer.send(sign(header, "{}", "{}", '{"code":5}'));
  await dealer.send(sign("[]", "{}", "{}", "{}"));
  await dealer.send(sign(header, "{}", "{}", "nonsense"));
  await dealer.send([bytes("<IDS|MSG>")]);
  await dealer.send([]);

  // Bytes that are no transport at all, on every port.
  for (const at of Object.values(endpoints)) {
    const connection = await Deno.connect(at);
    await connection.write(
      bytes("\u00ff\u0000GET / HTTP/1.1\r\n\r\n".repeat(9)),
    );
    connection.close();
  }
  // The replies show that what was sent before has been dealt with.
  for (let replies = 0; replies < 2; replies++) await dealer.inbox.take();
  const { value } = await session.run("count");
  equal(value, "1");
  for (const size of [1_000_000, 100_000_000]) {
    const { value } = await session.run(`"${"x".repeat(size)}".length`, {
      storeHistory: false,
    });
    equal(value, String(size));
  }
  dealer.close();
});
