import { deepEqual, equal, match, ok } from "node:assert/strict";
import {
  compareRadii,
  differenceSentence,
  planReport,
  sessionReport,
} from "sagbook/narrative/mod.ts";
import type { Bench } from "sagbook/records/bench.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { bench, piece, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const folder = (readings: readonly Reading[], of: Bench = bench()) => ({
  path: "folder",
  piece: piece(),
  bench: of,
  readings,
  files: [],
  problems: [],
  lines: { read: 0, used: 0, reported: 0 },
});
const compared = (readings: readonly Reading[], of: Bench = bench()) => {
  const report = sessionReport(folder(readings, of));
  return compareRadii(report.session!, report.sessions, piece(), of);
};
/** Three sets whose edges lie 2 µm below their centres. */
const SETS = [[715, , 713], [716, , 714], [714, , 712], [715, , 713]];

Deno.test("compareRadii() lets ring, scale and zero cancel between zones of one session", () => {
  const of = bench();
  const [zones, ...rest] = compared(session(SETS), of);
  deepEqual(rest, []);
  deepEqual([zones.first, zones.second, zones.between], [
    "edge",
    "centre",
    "zones",
  ]);
  // Centre 2520.840 and edge 2527.901 by case C03's arithmetic.
  equal(zones.difference.toFixed(4), "7.0607");
  // Within sets the difference is 2 µm with an interval of its own; at
  // −3530 mm/mm the interval of R is that of the sag, ring and zero gone.
  const { differences } = sessionReport(folder(session(SETS))).session!;
  const { low, high } = differences[0].interval95!;
  ok(Math.abs(zones.expanded / (3535 * (high - low) / 2) - 1) < 0.01);
  // The ring's 0.02 mm alone would be 2 · 1.68 mm at each place.
  ok(zones.asIfIndependent > 1.3 * zones.expanded);
  match(
    plain(differenceSentence(zones, "mm")),
    /ring, gauge and zero are the same for both and cancel/,
  );
});

Deno.test("compareRadii() subtracts dates with the same ring, and rings with what they share", () => {
  const two = bench();
  const other = {
    ...two.rings[0],
    id: "ring 60b",
    // No surer than the first, or the answer would rest on this one.
    radiusUncertainty: two.rings[0].radiusUncertainty,
  };
  const of = { ...two, rings: [...two.rings, other] };
  const earlier = session([[700], [701], [700]]).map((one) => ({
    ...one,
    session: "S0",
  }));
  const now = session([[715], [716], [715]]);
  const again = session([[716], [715], [715]]).map((one) => ({
    ...one,
    ring: "ring 60b",
  }));
  const found = compared([...earlier, ...now, ...again], of);
  deepEqual(found.map(({ between, second }) => [between, second]), [
    ["dates", "S0"],
    ["rings", "ring 60b"],
  ]);
  const [dates, rings] = found;
  ok(dates.shared.includes("ring ring 60 radius"));
  ok(!rings.shared.some((id) => id.includes("radius")));
  match(
    plain(differenceSentence(dates, "mm")),
    /^R is 5\d\.\d ± .* shorter than in S0: the ring is the same/,
  );
  match(
    plain(differenceSentence(rings, "mm")),
    /^ring 60 and ring 60b agree on this surface: .*E_n 0\./,
  );
});

Deno.test("differenceSentence() names rings that do not agree, and differences that do not show", () => {
  const rings = {
    between: "rings",
    first: "A",
    second: "B",
    difference: -30,
    standardUncertainty: 5,
    expanded: 10,
    normalisedError: 3,
    asIfIndependent: 10,
    shared: ["gauge G scale"],
  } as const;
  match(
    plain(differenceSentence(rings, "mm")),
    /^Ring A and ring B do not agree on this surface: R is 30 ± 10 mm shorter with ring A \(E_n 3\.00, above 1\); what both share \(gauge G scale\) is taken off first\. Look for a wrong ring size/,
  );
  const dates = {
    ...rings,
    between: "dates",
    difference: 3,
    normalisedError: 0.3,
  } as const;
  match(
    plain(differenceSentence(dates, "mm")),
    /^R differs from B by 3 ± 10 mm, no change that shows/,
  );
});

Deno.test("planReport() says how far R differs between zones", () => {
  const { reasons, differences } = planReport(folder(session(SETS)), {
    studies: 20,
    today: "2031-05-17",
  });
  equal(differences.length, 1);
  match(plain(reasons.join(" ")), /R (is|at edge)/);
});
