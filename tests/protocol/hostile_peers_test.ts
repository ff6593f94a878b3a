import { equal, ok } from "node:assert/strict";
import { Dealer } from "sagbook/protocol/dealer.ts";
import { Router } from "sagbook/protocol/router.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

/** Reads until the other side hangs up. */
async function hungUp(connection: Deno.TcpConn): Promise<void> {
  try {
    while (await connection.read(new Uint8Array(512)) !== null);
  } catch {
    // A reset is a hang-up as well.
  }
  connection.close();
}

Deno.test("Router() serves on beside many connections that never finish their greeting, and hangs up on them", async () => {
  const router = new Router({ hostname: "127.0.0.1", port: 0 });
  const at = { hostname: "127.0.0.1", port: router.port };
  const silent: Deno.TcpConn[] = [];
  for (let k = 0; k < 150; k++) silent.push(await Deno.connect(at));
  // A few bytes now and then do not buy more time.
  const dribbling = silent.slice(0, 20).map((connection) => {
    const timer = setInterval(() => {
      connection.write(Uint8Array.of(0xff)).catch(() => {});
    }, 1_000);
    return timer;
  });
  const ended = Promise.all(silent.map(hungUp));
  for (let k = 0; k < 3; k++) {
    const dealer = await Dealer.connect(at);
    dealer.send([bytes(`served ${k}`)]);
    const { identity, frames } = (await router.inbox.take()).value;
    equal(new TextDecoder().decode(frames[0]), `served ${k}`);
    router.send(identity, frames);
    equal((await dealer.inbox.take()).value.length, 1);
    dealer.close();
  }
  await ended; // within the ten seconds that a greeting may take
  for (const timer of dribbling) clearInterval(timer);
  await router.close();
});

Deno.test("Router() closes without waiting for peers in the middle of a greeting", async () => {
  const router = new Router({ hostname: "127.0.0.1", port: 0 });
  const at = { hostname: "127.0.0.1", port: router.port };
  const half = await Deno.connect(at);
  await half.write(Uint8Array.of(0xff, 0, 0));
  const dealer = await Dealer.connect(at);
  dealer.close();
  const gone = hungUp(half);
  const begun = performance.now();
  await router.close();
  await gone;
  // A greeting may take ten seconds; a stop must not.
  ok(performance.now() - begun < 8_000);
});
