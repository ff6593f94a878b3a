import { deepEqual, equal, ok } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { bench, near, piece, readCase, readText } from "./_session.ts";

const tolerance = (um: number) => ({
  sphericity: { statedAs: "sag" as const, amount: mm(um / 1000) },
});

/** No NaN and no infinity anywhere. */
function allFinite(value: unknown, path = "result"): void {
  if (typeof value === "number") ok(Number.isFinite(value), path);
  else if (typeof value === "object" && value !== null) {
    for (const [key, part] of Object.entries(value)) {
      allFinite(part, `${path}.${key}`);
    }
  }
}

Deno.test("analyseSession() finds the surface of G07 out of tolerance, with its hand-made numbers", async () => {
  const readings = await readCase("G07-not-spherical");
  const found = analyseSession(readings, piece(tolerance(3)), bench())!;
  // Of this disc half way lies outside the reach of one foot out, so that the
  // zones stand in the order centre, edge, 50 %.
  const labels = found.zones.map(({ place }) => place.label);
  const of = (label: string): number => labels.indexOf(label);
  const edge = found.differences.find(({ first, second }) =>
    first === of("centre") && second === of("edge")
  )!;
  near(edge.mean, 0.027667, 5e-7);
  near(edge.deviation, 0.000577, 5e-7);
  equal(edge.dof, 2);
  // The interval before the floor of the display step: ± 1.43 µm.
  const half = edge.interval95!.high - edge.mean;
  const floor = 0.001 * (1 - Math.sqrt(0.05));
  near(Math.sqrt(half ** 2 - floor ** 2), 0.00143, 5e-6);
  equal(found.sphericity.verdict, "outside");
  const radii = { centre: 2469.118, "50%": 2519.667, edge: 2566.237 };
  for (const [label, radius] of Object.entries(radii)) {
    near(found.zones[of(label)].radius?.radius, radius, 5e-4);
  }
  near(found.whole.mean.sag, 0.7159, 5e-5);
  near(found.whole.radius?.radius, 2517.715, 5e-4);
  allFinite(found);
});

Deno.test("analyseSession() corrects the hand's heat of G05 and keeps the uncertainty of both looks", async () => {
  const readings = await readCase("G05-hand-heat");
  const found = analyseSession(readings, piece(), bench())!;
  for (const { sag } of found.readings) near(sag, 0.714, 1e-9);
  near(found.whole.radius?.radius, 2524.365, 5e-4);
  near(found.drifts[0].moved, 0.005, 1e-12);
  equal(found.drifts[0].steps, 5);
  equal(found.drifts[0].treatment, "corrected");
  // At least the rounding of two looks, half of it half way between them.
  ok(found.driftUncertainty >= 0.001 / Math.sqrt(6) / 2);
  equal(found.looks.length, 2);
});

Deno.test("analyseSession() limits B03 by the display: no certainty from readings that never differ", async () => {
  const readings = await readCase("B03-all-equal");
  const found = analyseSession(readings, piece(tolerance(3)), bench())!;
  const { mean, radius } = found.whole;
  near(radius?.radius, 2520.84, 5e-4);
  near(radius?.perSag, -3520.5, 0.05);
  equal(mean.rounding, 1);
  equal(mean.deviation, 0);
  // At least 1.44 mm of standard uncertainty, so 2.8 mm at 95 % if normal; two
  // uniform errors have shorter tails: 0.776 steps.
  const half = radius!.interval95!.high - radius!.radius;
  near(half, 0.7764 * 0.001 * 3520.5, 0.02);
  equal(found.sphericity.reason, "one zone");
  allFinite(found);
});

const HEAD = "session,zeroing,diameter_deg,foot_deg,zone,reading,unit\n";
const line = (set: number, zone: string, um: number): string =>
  `S1,${set},${20 * set},foot out,${zone},${(um / 1000).toFixed(3)},mm\n`;

Deno.test("analyseSession() makes of unbalanced sets and a missing centre what they carry", async () => {
  // Two sets lack the centre, one lacks the edge.
  const text = HEAD + line(1, "centre", 715) + line(1, "edge", 714) +
    line(2, "50% reach", 716) + line(2, "edge", 715) + line(3, "centre", 715) +
    line(3, "50% reach", 715) + line(4, "50% reach", 714) +
    line(4, "edge", 714) +
    line(5, "centre", 714) + line(5, "50% reach", 715) + line(5, "edge", 714);
  const found = analyseSession(
    await readText(text),
    piece(tolerance(3)),
    bench(),
  )!;
  deepEqual(found.differences.map(({ sets }) => sets), [2, 2, 3]);
  deepEqual(found.differences.map(({ dof }) => dof), [1, 1, 2]);
  equal(found.sphericity.verdict, "undecided");
  equal(found.profile!.sets, 1);
  equal(found.profile!.conic.interval95, undefined);
  deepEqual(found.sphericity.setsNeeded, { kind: "unknown" });
  allFinite(found);
});

Deno.test("analyseSession() does without a centre altogether", async () => {
  const text = HEAD +
    [1, 2, 3, 4].map((set) =>
      line(set, "50% reach", 715 + set % 2) + line(set, "edge", 715 + set % 3)
    ).join("");
  const found = analyseSession(
    await readText(text),
    piece(tolerance(4)),
    bench(),
  )!;
  deepEqual(found.zones.map(({ place }) => place.label), ["50% reach", "edge"]);
  equal(found.differences.length, 1);
  equal(found.sphericity.verdict, "within");
});

Deno.test("analyseSession() compares nothing between zones that no set shares", async () => {
  const text = HEAD + line(1, "centre", 715) + line(2, "edge", 714) +
    line(3, "centre", 715) + line(4, "edge", 714);
  const found = analyseSession(
    await readText(text),
    piece(tolerance(3)),
    bench(),
  )!;
  equal(found.sphericity.verdict, "none");
  equal(found.sphericity.reason, "no common sets");
  equal(found.profile, undefined);
  equal(found.sphericity.agreeWithin, undefined);
});

Deno.test("analyseSession() judges two zones, and a tolerance the display cannot resolve it never grants", async () => {
  const same = HEAD +
    [1, 2, 3, 4, 5, 6, 7, 8].map((set) =>
      line(set, "centre", 715) + line(set, "edge", 715)
    ).join("");
  const readings = await readText(same);
  const at = (um: number) =>
    analyseSession(readings, piece(tolerance(um)), bench())!.sphericity;
  equal(at(1).verdict, "within");
  equal(at(0.6).verdict, "undecided");
  deepEqual(at(0.6).setsNeeded, { kind: "display cannot decide" });
  equal(at(0.6).displayLimited, true);
});
