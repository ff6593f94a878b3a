import { deepEqual, equal } from "node:assert/strict";
import { Publisher } from "sagbook/protocol/publisher.ts";
import { Subscriber } from "sagbook/protocol/subscriber.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

Deno.test("Publisher() keeps 20,000 messages whole and in order for each subscriber", async () => {
  const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
  const at = { hostname: "127.0.0.1", port: publisher.port };
  const subscribers: Subscriber[] = [];
  for (let i = 0; i < 3; i++) {
    subscribers.push(await Subscriber.connect(at));
  }
  // Every subscriber has been heard once each has got a greeting.
  const greeted = subscribers.map((one) => one.inbox.take());
  const timer = setInterval(() => publisher.send([bytes("hello")]), 5);
  await Promise.all(greeted);
  clearInterval(timer);
  for (let i = 0; i < 20_000; i++) publisher.send([bytes(String(i))]);
  for (const { inbox } of subscribers) {
    let next = 0;
    while (next < 20_000) {
      const word = new TextDecoder().decode((await inbox.take()).value[0]);
      if (word !== "hello") equal(word, String(next++));
    }
  }
  for (const one of subscribers) one.close();
  await publisher.close();
});

Deno.test("Publisher() takes subscriptions and their end as message and as command", async () => {
  const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
  const connection = await Deno.connect({
    hostname: "127.0.0.1",
    port: publisher.port,
  });
  const greeting = new Uint8Array(64);
  greeting.set([0xff, 0, 0, 0, 0, 0, 0, 0, 1, 0x7f, 3, 1, ...bytes("NULL")]);
  const ready = [
    ...[5, ...bytes("READY")],
    ...[11, ...bytes("Socket-Type"), 0, 0, 0, 3, ...bytes("SUB")],
  ];
  const command = (name: string, prefix: string) => {
    const body = [name.length, ...bytes(name), ...bytes(prefix)];
    return [4, body.length, ...body];
  };
  const pong = async () => {
    await connection.write(
      Uint8Array.from([4, 7, 4, ...bytes("PING"), 0, 0]),
    );
    const chunk = new Uint8Array(4096);
    let heard = "";
    while (!heard.includes("PONG")) {
      heard += new TextDecoder("latin1").decode(
        chunk.subarray(0, (await connection.read(chunk))!),
      );
    }
    return heard;
  };
  await connection.write(Uint8Array.from([
    ...greeting,
    ...[4, ready.length, ...ready],
    ...command("SUBSCRIBE", "new"),
    ...[0, 4, 1, ...bytes("old")],
  ]));
  await publisher.subscribed();
  await pong();
  for (const word of ["newer", "older", "other"]) publisher.send([bytes(word)]);
  const both = await pong();
  deepEqual(both.match(/newer|older|other/g), ["newer", "older"]);
  await connection.write(Uint8Array.from([
    ...command("CANCEL", "new"),
    ...[0, 4, 0, ...bytes("old")],
  ]));
  await pong();
  for (const word of ["newer", "older", "other"]) publisher.send([bytes(word)]);
  equal((await pong()).match(/newer|older|other/g), null);
  connection.close();
  await publisher.close();
});
