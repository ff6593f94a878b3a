import { deepEqual, equal } from "node:assert/strict";
import { Inbox } from "sagbook/protocol/inbox.ts";

Deno.test("Inbox() hands each value out once and in order, waiting or not", async () => {
  const inbox = new Inbox<number>();
  const early = [inbox.take(), inbox.take()];
  for (let i = 0; i < 5_000; i++) inbox.push(i);
  const got = (await Promise.all(early)).map((taken) => taken.value);
  for (let i = 2; i < 5_000; i++) got.push((await inbox.take()).value);
  deepEqual(got, [...Array(5_000).keys()]);
});

Deno.test("Inbox() ends waiting takers when closed and takes nothing more", async () => {
  const inbox = new Inbox<number>();
  const waiting = inbox.take();
  inbox.close();
  inbox.push(1);
  equal((await waiting).done, true);
  equal((await inbox.take()).done, true);
});
