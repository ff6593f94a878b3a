import { deepEqual, equal, ok } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import {
  analyseSession,
  type SessionAnalysis,
} from "sagbook/zones/analyse_session.ts";
import { splitSessions } from "sagbook/zones/split_sessions.ts";

/** Every session of a demo piece, in order. */
async function sessionsOf(folder: string): Promise<SessionAnalysis[]> {
  const { readings, piece, bench } = await readPieceFolder(`data/${folder}`);
  return splitSessions(readings).map((group) =>
    analyseSession(group, piece, bench)!
  );
}

const um = (mm: number): number => 1000 * mm;

Deno.test("analyseSession() finds the turned edge with one foot out", async () => {
  for (const session of await sessionsOf("turned-edge-300")) {
    const { verdict, byEnds, deciding } = session.sphericity;
    equal(verdict, "outside");
    equal(byEnds, false);
    equal(session.zones[deciding!.second].place.label, "edge");
    // The truth file: 1.9 µm between centre and edge.
    ok(Math.abs(um(deciding!.mean) - 1.9) < 0.6, `${um(deciding!.mean)}`);
  }
});

Deno.test("analyseSession() calls the same edge within with two feet out, and says it could not have seen it", async () => {
  for (const session of await sessionsOf("turned-edge-300-twin")) {
    equal(session.sphericity.verdict, "within");
    const rim = session.unseen.find(({ kind }) => kind === "rim");
    ok(rim?.kind === "rim" && rim.twoFeetOut);
    // The fault is 15 mm wide and lies wholly outside what a foot touched.
    ok(rim.rim - rim.beyond > 13, `${rim.rim - rim.beyond}`);
  }
});

Deno.test("analyseSession() finds coma-like wear by the two ends, and its direction", async () => {
  for (const { sphericity, ends, outliers } of await sessionsOf("coma-200")) {
    equal(sphericity.verdict, "outside");
    equal(sphericity.byEnds, true);
    deepEqual(outliers, []);
    // The truth file: 14 µm high at the rim, high side at 30°.
    ok(Math.abs(ends!.towardDegrees! - 30) < 10, `${ends!.towardDegrees}`);
    ok(ends!.allDirections);
  }
});

Deno.test("analyseSession() calls the astigmatic disc within, with astigmatism first among what it cannot see", async () => {
  for (const { sphericity, unseen } of await sessionsOf("astigmatic-200")) {
    equal(sphericity.verdict, "within");
    equal(unseen[0].kind, "astigmatism");
  }
});

Deno.test("analyseSession() leaves the coarse display undecided, since the display cannot decide", async () => {
  const [{ sphericity }] = await sessionsOf("coarse-display-180");
  equal(sphericity.verdict, "undecided");
  deepEqual(sphericity.setsNeeded, { kind: "display cannot decide" });
  equal(sphericity.displayLimited, true);
});

Deno.test("analyseSession() calls the good sphere within in every session, ends included", async () => {
  const sessions = await sessionsOf("metric-250");
  equal(sessions.length, 3);
  for (const { sphericity, ends, whole } of sessions) {
    equal(sphericity.verdict, "within");
    ok(ends!.upper! <= sphericity.tolerance!.sag);
    // The truth file: R 3003.5 mm; the ring is stated 3 µm too large.
    const { low, high } = whole.radius!.interval95!;
    ok(low < 3004 && high > 3003, `${low} to ${high}`);
  }
});

Deno.test("analyseSession() finds the hole in the middle out of tolerance in inches", async () => {
  for (const { sphericity, zones } of await sessionsOf("inch-200")) {
    equal(sphericity.verdict, "outside");
    equal(zones[sphericity.deciding!.first].place.label, "centre");
    ok(sphericity.deciding!.mean > 0);
  }
});
