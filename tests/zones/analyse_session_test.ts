import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { bench, piece, reading, session } from "./_session.ts";

const tolerance = (um: number) => ({
  sphericity: { statedAs: "sag" as const, amount: mm(um / 1000) },
});

Deno.test("analyseSession() finds a hole in the middle out of tolerance", () => {
  // By hand: differences 28, 28, 27 µm; mean 27.667, SD 0.577, t = 4.303.
  const rows = [[730, 715, 702], [731, 716, 703], [729, 715, 702]];
  const found = analyseSession(session(rows), piece(tolerance(3)), bench())!;
  const edge = found.differences.find(({ first, second }) =>
    first === 0 && second === 2
  )!;
  equal((edge.mean * 1000).toFixed(3), "27.667");
  equal((edge.deviation! * 1000).toFixed(3), "0.577");
  const half = (edge.interval95!.high - edge.interval95!.low) / 2 * 1000;
  // Student alone 1.434; with the rounding of two readings, 0.776 µm.
  equal(half.toFixed(3), Math.hypot(1.4342, 0.7764).toFixed(3));
  equal(found.sphericity.verdict, "outside");
  const radii = found.zones.map(({ radius }) => radius!.radius.toFixed(3));
  deepEqual(radii, ["2469.118", "2519.667", "2566.237"]);
});

Deno.test("analyseSession() calls a sphere within a tolerance the gauge can hold", () => {
  const rows = [[715, 715, 715], [716, 716, 715], [714, 714, 714], [
    715,
    716,
    715,
  ]];
  const found = analyseSession(session(rows), piece(tolerance(3)), bench())!;
  equal(found.sphericity.verdict, "within");
  ok(found.sphericity.agreeWithin! < 0.003);
  equal(found.whole.mean.zeroings, 4);
});

Deno.test("analyseSession() leaves identical readings to the display, never to certainty", () => {
  const rows = Array.from({ length: 8 }, () => [715, 715, 715]);
  const found = analyseSession(session(rows), piece(tolerance(0.5)), bench())!;
  equal(found.sphericity.verdict, "undecided");
  deepEqual(found.sphericity.setsNeeded, { kind: "display cannot decide" });
  equal(found.sphericity.displayLimited, true);
  const { low, high } = found.differences[0].interval95!;
  ok(high - low > 0.0015, `${high - low}`);
  equal(found.whole.radius!.radius.toFixed(3), "2520.840");
  ok(found.whole.radius!.interval95!.high - 2520.84 > 1.44);
});

Deno.test("analyseSession() takes people for looks in every zone where they differ by more than their zeroings, and only there", () => {
  // A reads 10 µm less than B, each with two zeroings that differ by 2 µm.
  const rows = [[709, 709, 709], [711, 711, 711], [719, 719, 719], [
    721,
    721,
    721,
  ]];
  const by = (names: readonly (string | undefined)[]) => {
    const read = session(rows).map((one, index) => {
      const operator = names[Math.floor(index / 3)];
      return operator === undefined ? one : { ...one, operator };
    });
    const { whole, zones } = analyseSession(read, piece(), bench())!;
    return [whole.mean, ...zones.map(({ mean }) => mean)];
  };
  for (const mean of by(["A", "A", "B", "B"])) {
    deepEqual([mean.people, mean.dof, mean.zeroings], [2, 1, 4]);
    // Means of 710 and 720: 5 µm by hand, where four zeroings would give 2.9.
    equal((mean.standardError! * 1000).toFixed(3), "5.000");
  }
  // Both read the same on average; one zeroing without a name; one person.
  for (
    const names of [["A", "B", "B", "A"], ["A", "A", "B", undefined], [
      ...["A", "A", "A", "A"],
    ]]
  ) {
    for (const mean of by(names)) {
      deepEqual([mean.people, mean.dof], [undefined, 3]);
    }
  }
});

Deno.test("analyseSession() gives one set a radius and no verdict", () => {
  const found = analyseSession(
    session([[715, 714, 713]]),
    piece(tolerance(3)),
    bench(),
  )!;
  equal(found.sphericity.verdict, "none");
  equal(found.sphericity.reason, "one set");
  equal(found.zones[0].radius!.radius.toFixed(3), "2520.840");
  equal(found.zones[0].radius!.interval95, undefined);
});

Deno.test("analyseSession() gives one zone a radius with its interval and no verdict", () => {
  const rows = [[715], [716], [715]];
  const found = analyseSession(session(rows), piece(tolerance(3)), bench())!;
  equal(found.sphericity.reason, "one zone");
  equal(found.whole.radius!.radius.toFixed(3), "2519.667");
  ok(found.whole.radius!.interval95);
  deepEqual(found.unseen.map(({ kind }) => kind), [
    "astigmatism",
    "zones",
    "rim",
  ]);
});

Deno.test("analyseSession() does not call within what no set read together", () => {
  const rows = [
    [715, 715, undefined],
    [715, 716, undefined],
    [716, 716, undefined],
    [715, undefined, 715],
    [716, undefined, 715],
    [715, undefined, 716],
  ];
  const found = analyseSession(session(rows), piece(tolerance(5)), bench())!;
  equal(found.differences.length, 2);
  equal(found.sphericity.verdict, "undecided");
});

Deno.test("analyseSession() says there is nothing to judge without a tolerance, and how well the zones agree", () => {
  const rows = [[715, 715, 715], [716, 716, 715], [714, 714, 714]];
  const found = analyseSession(session(rows), piece(), bench())!;
  equal(found.sphericity.reason, "no tolerance");
  ok(found.sphericity.agreeWithin! > 0);
});

Deno.test("analyseSession() keeps the flagged reading and shows the answer without it", () => {
  const rows = [
    [715, 715, 715],
    [716, 716, 716],
    [715, 715, 715],
    [714, 714, 700],
    [715, 715, 715],
    [716, 716, 716],
    [714, 714, 714],
  ];
  const found = analyseSession(session(rows), piece(tolerance(3)), bench())!;
  deepEqual(found.outliers.map(({ set, place }) => [set, place]), [[3, 2]]);
  equal(found.readings.length, 21);
  equal(found.sphericity.verdict, "undecided");
  equal(found.withoutOutliers!.sphericity.verdict, "within");
});

Deno.test("analyseSession() takes the hand's heat out of the readings", () => {
  // By hand: the zero moved 5 µm over 5 steps, so 714 µm four times.
  const rows = [["flat", 0], ["work", 715], ["work", 716], ["work", 717], [
    "work",
    718,
  ], ["flat", 5]] as const;
  const readings = rows.map(([on, um], order) =>
    reading({
      sag: mm(um / 1000),
      on,
      order,
      ...(on === "flat" ? { zone: { label: "flat", distance: mm(0) } } : {}),
    })
  );
  const found = analyseSession(readings, piece(), bench())!;
  deepEqual(
    found.readings.map(({ sag }) => sag.toFixed(6)),
    Array(4).fill("0.714000"),
  );
  equal(found.whole.radius!.radius.toFixed(3), "2524.365");
  equal(found.drifts[0].treatment, "corrected");
});

Deno.test("analyseSession() lists what three feet cannot see, first of all astigmatism", () => {
  const rows = [[715, 715, 715], [716, 716, 715]];
  const two = analyseSession(
    session(rows, { foot: { kind: "feet out" } }),
    piece(),
    bench(),
  )!;
  deepEqual(two.unseen.map(({ kind }) => kind), ["astigmatism", "rim", "coma"]);
  const rim = two.unseen.find(({ kind }) => kind === "rim")!;
  ok(rim.kind === "rim" && rim.twoFeetOut);
});

Deno.test("analyseSession() gives no analysis of a session that holds looks at the flat only", () => {
  const flat = reading({
    sag: mm(0),
    on: "flat",
    zone: { label: "flat", distance: mm(0) },
  });
  equal(analyseSession([flat], piece(), bench()), undefined);
});

Deno.test("analyseSession() refuses a ring that is not on the bench", () => {
  throws(
    () =>
      analyseSession(
        [reading({ sag: mm(0.7), ring: "ring 80" })],
        piece(),
        bench(),
      ),
    {
      name: "RangeError",
      message:
        "Cannot analyse a session as its ring must be on the bench: current value is ring 80",
    },
  );
});
