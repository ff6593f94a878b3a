import { deepEqual } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import { splitSessions } from "sagbook/zones/split_sessions.ts";
import { reading } from "./_session.ts";

Deno.test("splitSessions() keeps sessions and rings apart, in the order they began", () => {
  const rows = [["S2", "a"], ["S1", "a"], ["S2", "b"], ["S2", "a"]] as const;
  const readings = rows.map(([session, ring], order) =>
    reading({ sag: mm(0.7), session, ring, order })
  );
  deepEqual(
    splitSessions(readings).map((group) => group.map(({ order }) => order)),
    [[0, 3], [1], [2]],
  );
  deepEqual(splitSessions([]), []);
});
