import { deepEqual, equal } from "node:assert/strict";
import { Dealer } from "sagbook/protocol/dealer.ts";
import { Router } from "sagbook/protocol/router.ts";

const HERE = { hostname: "127.0.0.1", port: 0 };
const at = (port: number) => ({ hostname: "127.0.0.1", port });
const bytes = (text: string) => new TextEncoder().encode(text);
const text = (frame: Uint8Array) => new TextDecoder().decode(frame);

/** Greeting, READY of a DEALER named "raw", then `frames` as one message. */
function rawBytes(...frames: Uint8Array[]): Uint8Array {
  const ready = [
    ...[5, ...bytes("READY")],
    ...[11, ...bytes("Socket-Type"), 0, 0, 0, 6, ...bytes("DEALER")],
    ...[8, ...bytes("Identity"), 0, 0, 0, 3, ...bytes("raw")],
  ];
  const greeting = new Uint8Array(64);
  greeting.set([0xff, 0, 0, 0, 0, 0, 0, 0, 1, 0x7f, 3, 0, ...bytes("NULL")]);
  const message = frames.flatMap((frame, index) => {
    const more = index < frames.length - 1 ? 1 : 0;
    if (frame.length < 256) return [more, frame.length, ...frame];
    const size = new Uint8Array(8);
    new DataView(size.buffer).setBigUint64(0, BigInt(frame.length));
    return [more | 2, ...size, ...frame];
  });
  return Uint8Array.from([...greeting, 4, ready.length, ...ready, ...message]);
}

Deno.test("Router() and Dealer() lose none of 1,800 messages over nine pairs", async () => {
  const pairs = await Promise.all(
    Array.from({ length: 9 }, async () => {
      const router = new Router(HERE);
      return { router, dealer: await Dealer.connect(at(router.port)) };
    }),
  );
  const echoes = pairs.map(async ({ router }) => {
    for await (const { identity, frames } of router.inbox) {
      await router.send(identity, frames);
    }
  });
  const heard = await Promise.all(pairs.map(async ({ dealer }, pair) => {
    const got: string[] = [];
    for (let i = 0; i < 200; i++) dealer.send([bytes(`${pair}/${i}`)]);
    while (got.length < 200) {
      got.push(text((await dealer.inbox.take()).value[0]));
    }
    return got;
  }));
  for (const [pair, got] of heard.entries()) {
    deepEqual(got, Array.from({ length: 200 }, (_, i) => `${pair}/${i}`));
  }
  for (const { router, dealer } of pairs) {
    dealer.close();
    await router.close();
  }
  await Promise.all(echoes);
});

Deno.test("Router() reads a handshake and a message that arrive byte by byte", async () => {
  const router = new Router(HERE);
  const connection = await Deno.connect(at(router.port));
  connection.setNoDelay(true);
  const long = new Uint8Array(300).fill(9);
  for (const byte of rawBytes(bytes("one"), new Uint8Array(0), long)) {
    await connection.write(Uint8Array.of(byte));
  }
  const { identity, frames } = (await router.inbox.take()).value;
  equal(text(identity), "raw");
  deepEqual(frames, [bytes("one"), new Uint8Array(0), long]);
  connection.close();
  await router.close();
});

Deno.test("Router() carries messages of 1 and 100 MB both ways unchanged", async () => {
  const router = new Router(HERE);
  const dealer = await Dealer.connect(at(router.port));
  for (const size of [1_000_000, 100_000_000]) {
    const big = new Uint8Array(size);
    for (let i = 0; i < size; i += 997) big[i] = i % 251;
    dealer.send([bytes("head"), big]);
    const asked = (await router.inbox.take()).value;
    router.send(asked.identity, asked.frames);
    const [head, body] = (await dealer.inbox.take()).value;
    equal(text(head), "head");
    equal(body.length, size);
    let same = true;
    for (let i = 0; i < size; i++) same &&= body[i] === big[i];
    equal(same, true);
  }
  dealer.close();
  await router.close();
});

Deno.test("Router() hangs up on what is no ZMTP and goes on serving others", async () => {
  const router = new Router(HERE);
  const http = bytes("GET / HTTP/1.1\r\nHost: localhost\r\n\r\n".padEnd(64));
  const curve = rawBytes();
  curve.set(bytes("CURVE"), 12);
  const badFlags = Uint8Array.from([...rawBytes(), 0xf8, 1, 0]);
  const endless = Uint8Array.from([...rawBytes(), 2, ...Array(8).fill(0x7f)]);
  const manyFrames = Uint8Array.from([
    ...rawBytes(),
    ...Array(5_000).fill([1, 0]).flat(),
  ]);
  const noName = Uint8Array.from([...rawBytes(), 4, 2, 9, 9]);
  for (const wrong of [http, curve, badFlags, endless, manyFrames, noName]) {
    const connection = await Deno.connect(at(router.port));
    await connection.write(wrong).catch(() => 0);
    try {
      while (await connection.read(new Uint8Array(512)) !== null);
    } catch {
      // A reset is a hang-up as well.
    }
    connection.close();
  }
  const dealer = await Dealer.connect(at(router.port));
  dealer.send([bytes("still here")]);
  const { frames } = (await router.inbox.take()).value;
  equal(text(frames[0]), "still here");
  dealer.close();
  await router.close();
});

Deno.test("Router() answers PING with PONG and its context", async () => {
  const router = new Router(HERE);
  const connection = await Deno.connect(at(router.port));
  await connection.write(rawBytes());
  const ping = [4, ...bytes("PING"), 0, 10, ...bytes("ctx")];
  await connection.write(Uint8Array.from([4, ping.length, ...ping]));
  const all: number[] = [];
  const pong = [4, 8, 4, ...bytes("PONGctx")];
  const chunk = new Uint8Array(512);
  while (all.slice(-pong.length).join() !== pong.join()) {
    all.push(...chunk.subarray(0, (await connection.read(chunk))!));
  }
  connection.close();
  await router.close();
});

Deno.test("Router() names nameless peers apart and reports one that has left", async () => {
  const router = new Router(HERE);
  const [a, b] = [
    await Dealer.connect(at(router.port)),
    await Dealer.connect(at(router.port)),
  ];
  a.send([bytes("a")]);
  const first = (await router.inbox.take()).value;
  b.send([bytes("b")]);
  const second = (await router.inbox.take()).value;
  equal(await router.send(second.identity, [bytes("to b")]), true);
  equal(await router.send(first.identity, [bytes("to a")]), true);
  equal(text((await a.inbox.take()).value[0]), "to a");
  equal(text((await b.inbox.take()).value[0]), "to b");
  equal(await router.send(bytes("nobody"), [bytes("x")]), false);
  a.close();
  b.close();
  await router.close();
});

Deno.test("Router() closes its port, so that another may open it", async () => {
  const router = new Router(HERE);
  const { port } = router;
  const dealer = await Dealer.connect(at(port));
  await router.close();
  await dealer.ended;
  equal((await dealer.inbox.take()).done, true);
  await new Router(at(port)).close();
});
