import { deepEqual, equal } from "node:assert/strict";
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

Deno.test("splitSessions() takes sessions by their dates where all are dated, else as they stand", () => {
  const orderOf = (...at: [string, string | undefined, string?][]) =>
    splitSessions(at.map(([session, takenAt, ring = "a"], order) => ({
      ...reading({ sag: mm(0.7), session, ring, order }),
      takenAt,
    }))).map(([{ session, ring }]) => session + ring).join(" ");
  equal(
    orderOf(["S2", "2031-05-10"], ["S3", "2031-05-11"], ["S1", "2031-05-09"]),
    "S1a S2a S3a",
  );
  // The second ring of a session stays with it, whatever its own time.
  equal(
    orderOf(
      ["S2", "2031-05-10T10:00"],
      ["S1", "2031-05-10T09:00"],
      ["S1", "2031-05-10T11:00", "b"],
    ),
    "S1a S1b S2a",
  );
  // A day without times, and a session without a date, leave the files' order.
  equal(orderOf(["S2", "2031-05-10T10:00"], ["S1", "2031-05-10"]), "S2a S1a");
  equal(
    orderOf(["S2", "2031-05-10"], ["S0", undefined], ["S1", "2031-05-09"]),
    "S2a S0a S1a",
  );
});
