import { deepEqual, equal, ok } from "node:assert/strict";
import { roundingLeft } from "sagbook/zones/rounding_left.ts";
import { setsOf } from "./_session.ts";

Deno.test("roundingLeft() keeps all of it at a place that stands still or was read once", () => {
  const rows = [[715, 702, 698], [715, 690, undefined], [715, 711, undefined], [
    715,
    697,
    undefined,
  ]];
  const [centre, edge, once] = roundingLeft(setsOf(rows), 3, 0.001);
  equal(centre, 1);
  ok(edge < 1e-9, `${edge}`);
  equal(once, 1);
  deepEqual(roundingLeft(setsOf(rows), 3, 0), [0, 0, 0]);
});
