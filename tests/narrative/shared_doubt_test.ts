import { deepEqual, equal, match, ok } from "node:assert/strict";
import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import { gaugeReport } from "sagbook/narrative/gauge_report.ts";
import {
  type FirstKnown,
  type GaugePlan,
  planSentence,
} from "sagbook/narrative/mod.ts";
import {
  type BetterKnown,
  betterKnown,
  type SharedDoubt,
  sharedDoubt,
} from "sagbook/narrative/shared_doubt.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const QUICK = { studies: 300 } as const;

/** The study of the demo with another figure for the ring's size. */
async function studyWith(radiusUncertainty: number) {
  const folder = await readPieceFolder("data/gauge-study");
  const rings = folder.bench.rings.map((ring) => ({
    ...ring,
    radiusUncertainty: mm(radiusUncertainty),
  }));
  return { ...folder, bench: { ...folder.bench, rings } };
}

Deno.test("sharedDoubt() agrees with the propagation of ring, scale and flat by hand", async () => {
  const { bench, piece } = await studyWith(0.05);
  const [ring] = bench.rings;
  const feet = effectiveFeet(ring.shape, piece.form);
  const found: SharedDoubt = sharedDoubt(2500, ring, feet, piece, bench);
  const { circleRadius: r, ballRadius: b } = feet;
  const q = 2500 - b;
  const sag = q - Math.sqrt(q * q - r * r);
  const byHand = {
    "ring radius": r / sag * 0.05,
    "gauge scale": Math.abs(1 / 2 - r * r / (2 * sag * sag)) * sag *
      bench.gauge.scaleUncertainty!,
  };
  for (const [source, amount] of Object.entries(byHand)) {
    const line = found.lines.find((one) => one.source === source)!;
    ok(Math.abs(line.contribution / amount - 1) < 1e-3, source);
  }
  equal(found.lines[0].source, "ring radius");
  const perRadius = r * r / (2 * q * q);
  ok(Math.abs(found.sag / (found.radius * perRadius) - 1) < 1e-3);
});

Deno.test("betterKnown() asks for as few sources as will do, and for none that serve already", () => {
  const lines = [
    { source: "ring radius", contribution: 4, stated: 0.02 },
    { source: "gauge scale", contribution: 4, stated: 0.001 },
    { source: "reference flat", contribution: 1, stated: 0.0005 },
  ];
  const doubt = { radius: Math.hypot(4, 4, 1), sag: 0, lines };
  deepEqual(betterKnown(doubt, 6), []);
  const wanted = (largest: number): readonly BetterKnown[] =>
    betterKnown(doubt, largest);
  // By hand: √(5² - 4² - 1²) = √8 of 4.
  deepEqual(wanted(5), [
    { source: "ring radius", now: 0.02, wanted: 0.014 },
  ]);
  // Two of them left √((3² - 1²) / 2) = 2 each.
  deepEqual(wanted(3), [
    { source: "ring radius", now: 0.02, wanted: 0.01 },
    { source: "gauge scale", now: 0.001, wanted: 0.0005 },
  ]);
});

Deno.test("planFor() counts what no zeroing averages, and planSentence() says what to measure first", async () => {
  const known = gaugeReport(await studyWith(0.005), QUICK).plans[0];
  ok(known.answer.kind === "plan" && !known.shared!.forbids);
  const folder = await studyWith(0.2);
  const plan: GaugePlan = gaugeReport(folder, QUICK).plans[0];
  ok(plan.answer.kind === "no plan" && plan.answer.reason === "common");
  ok(plan.shared!.forbids);
  ok(plan.power.every(({ chance }) => chance < 0.05));
  const first: FirstKnown = plan.first!;
  deepEqual(first.sources.map(({ source }) => source), ["ring radius"]);
  match(
    plain(planSentence(plan, "mm")),
    /^No number of zeroings decides whether the radius is within its tolerance: what all readings share leaves ±\d+ mm of it open \(95 %\), most of it from the ring radius\. Measure the ring radius to 0\.\d+ mm or better first \(0\.20 mm now\); then \d+ zeroings decide with a chance of \d\d? % if the radius is exactly on target\.$/,
  );
  // Measured that well, the very plan promised exists.
  const { wanted } = first.sources[0];
  const after = gaugeReport(await studyWith(wanted), QUICK).plans[0];
  ok(after.answer.kind === "plan");
  ok(Math.abs(after.answer.best.zeroings - first.then.zeroings) <= 3);
});
