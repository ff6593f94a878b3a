import { deepEqual, equal, rejects } from "node:assert/strict";
import { Dealer } from "sagbook/protocol/dealer.ts";
import { Router } from "sagbook/protocol/router.ts";

function freePort(): number {
  const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  listener.close();
  return listener.addr.port;
}

Deno.test("Dealer.connect() waits for a port that opens later, and gives its name", async () => {
  const at = { hostname: "127.0.0.1", port: freePort() };
  const identity = Uint8Array.of(7, 0, 255);
  const connecting = Dealer.connect(at, { identity });
  await new Promise((done) => setTimeout(done, 60));
  const router = new Router(at);
  const dealer = await connecting;
  dealer.send([Uint8Array.of(1)]);
  deepEqual((await router.inbox.take()).value.identity, identity);
  dealer.close();
  await router.close();
});

Deno.test("Dealer.connect() gives up in words, or with the reason it was stopped for", async () => {
  const at = { hostname: "127.0.0.1", port: freePort() };
  await rejects(Dealer.connect(at, { timeLimit: 20 }), (error: Error) => {
    equal(error.name, "TimedOut");
    equal(
      error.message.startsWith(
        `Cannot connect to port ${at.port} within 20 ms: `,
      ),
      true,
    );
    return true;
  });
  const signal = AbortSignal.abort(new Error("no longer wanted"));
  await rejects(Dealer.connect(at, { signal }), {
    message: "no longer wanted",
  });
});

Deno.test("Dealer() sends nothing, and does not throw, after its connection has ended", async () => {
  const router = new Router({ hostname: "127.0.0.1", port: 0 });
  const dealer = await Dealer.connect({
    hostname: "127.0.0.1",
    port: router.port,
  });
  await router.close();
  await dealer.ended;
  await dealer.send([Uint8Array.of(1)]);
});
