import { deepEqual, ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { killRecorder } from "./_kill_recorder.ts";

Deno.test("task record loses no answered reading and tears no line when killed at ten random moments", async () => {
  const random = new Random(9);
  let answered = 0;
  for (let k = 0; k < 10; k++) {
    const { answered: more, ...lost } = await killRecorder(random.fork(`${k}`));
    deepEqual(lost, { missing: 0, unmarked: 0, torn: 0, strays: 0 });
    answered += more;
  }
  ok(answered > 20, `only ${answered} readings were answered in all`);
});
