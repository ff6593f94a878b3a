import { deepEqual, equal, rejects } from "node:assert/strict";
import { Dealer } from "sagbook/protocol/dealer.ts";
import { Publisher } from "sagbook/protocol/publisher.ts";
import { Subscriber } from "sagbook/protocol/subscriber.ts";

Deno.test("Subscriber() ends its inbox after all that was sent when the publisher closes", async () => {
  const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
  const at = { hostname: "127.0.0.1", port: publisher.port };
  const subscriber = await Subscriber.connect(at);
  await publisher.subscribed();
  for (let i = 0; i < 100; i++) publisher.send([Uint8Array.of(i)]);
  await publisher.close();
  const heard = await Array.fromAsync(subscriber.inbox);
  deepEqual(heard.map(([frame]) => frame[0]), [...Array(100).keys()]);
  await subscriber.ended;
});

Deno.test("Subscriber() and Publisher() refuse a partner of the wrong kind", async () => {
  const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
  const at = { hostname: "127.0.0.1", port: publisher.port };
  await rejects(Dealer.connect(at, { timeLimit: 50 }), (error: Error) => {
    equal(/PUB|hung up|inside a frame|reset/.test(error.message), true);
    return true;
  });
  await publisher.close();
});
