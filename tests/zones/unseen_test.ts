import { deepEqual, equal, ok } from "node:assert/strict";
import type { FootDirection } from "sagbook/geometry/feet.ts";
import type { RingShape } from "sagbook/geometry/ring.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { outermostTouched, unseenBy } from "sagbook/zones/unseen.ts";
import { near, reading } from "./_session.ts";

const balls: RingShape = {
  kind: "balls",
  circleRadius: mm(60),
  ballRadius: mm(0),
  probeOffset: mm(0),
};
const bar: RingShape = { kind: "bar", span: mm(80), ballRadius: mm(0) };
const out: FootDirection = { kind: "foot out" };
const angle = (degrees: number): FootDirection => ({ kind: "angle", degrees });

const at = (offset: number, foot: FootDirection, diameterDegrees = 0) =>
  reading({ sag: mm(0.7), offset: mm(offset), foot, diameterDegrees });

const kinds = (
  readings: Parameters<typeof unseenBy>[0],
  shape: RingShape = balls,
  bothEnds = true,
  rim = 150,
) =>
  unseenBy(readings, shape, "concave", mm(3000), mm(rim), bothEnds)
    .map(({ kind }) => kind);

Deno.test("unseenBy() names astigmatism first for three feet, always", () => {
  const full = [at(0, out), at(89.8, angle(0)), at(89.8, angle(60), 60)];
  deepEqual(kinds(full), ["astigmatism"]);
  deepEqual(kinds([at(0, out)])[0], "astigmatism");
});

Deno.test("unseenBy() says that a bar sees one direction, and what its ends reach", () => {
  deepEqual(kinds([at(0, angle(0)), at(110, angle(0))], bar), [
    "across the bar",
  ]);
});

Deno.test("unseenBy() finds the rim that two feet out leave untouched, and that one would reach it", () => {
  const unseen = unseenBy(
    [at(0, out), at(80, { kind: "feet out" })],
    balls,
    "concave",
    mm(3000),
    mm(150),
    true,
  );
  const rim = unseen.find(({ kind }) => kind === "rim");
  ok(rim?.kind === "rim" && rim.twoFeetOut);
  // By hand: feet at 60 degrees either side: hypot(80 + 30, 51.96).
  near(rim.beyond, Math.hypot(110, 60 * Math.sqrt(0.75)), 1e-9);
  const one = unseenBy([at(80, out)], balls, "concave", mm(3000), mm(150), true)
    .find(({ kind }) => kind === "rim");
  ok(one?.kind === "rim" && !one.twoFeetOut);
  near(one.beyond, 140, 1e-9);
});

Deno.test("unseenBy() counts on two feet only where nobody wrote the direction down, and says so", () => {
  const unseen = unseenBy(
    [at(80, { kind: "unknown" }), at(80, { kind: "unknown" })],
    balls,
    "concave",
    mm(3000),
    mm(150),
    true,
  );
  const rim = unseen.find(({ kind }) => kind === "rim");
  ok(rim?.kind === "rim");
  near(rim.beyond, Math.hypot(110, 60 * Math.sqrt(0.75)), 1e-9);
  deepEqual(unseen.at(-1), { kind: "direction unknown", readings: 2 });
});

Deno.test("unseenBy() misses coma without both ends and trefoil without a turn of the ring on the work", () => {
  const still = [at(0, angle(0)), at(89.8, angle(0))];
  deepEqual(kinds(still, balls, false), ["astigmatism", "coma", "trefoil"]);
  // A third of a turn is no turn for three feet, a sixth is.
  deepEqual(kinds([...still, at(60, angle(120))]), ["astigmatism", "trefoil"]);
  deepEqual(kinds([...still, at(60, angle(60))]), ["astigmatism"]);
  // Foot out at both ends of a diameter is half a turn on the work.
  deepEqual(kinds([at(0, out), at(89.8, out), at(-89.8, out)]), [
    "astigmatism",
  ]);
});

Deno.test("outermostTouched() is 0 without readings", () => {
  equal(outermostTouched([], balls, "concave", mm(3000)), 0);
});

Deno.test("unseenBy() says how near the centre was read, where it was not", () => {
  const seen = (...offsets: number[]) =>
    unseenBy(
      offsets.map((offset) => at(offset, out)),
      balls,
      "concave",
      mm(3000),
      mm(150),
      true,
    ).find(({ kind }) => kind === "centre");
  deepEqual(seen(89.8, 40, -89.8), { kind: "centre", nearest: 40 });
  equal(seen(89.8, -5), undefined);
  equal(seen(0, 80), undefined);
});
