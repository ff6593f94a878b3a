import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { estimateComponents } from "sagbook/repeatability/estimate_components.ts";
import { judgeCapability } from "sagbook/repeatability/judge_capability.ts";
import { scatterModelOf } from "sagbook/repeatability/scatter_model_of.ts";
import type { SurfaceComponents } from "sagbook/repeatability/surface_components.ts";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import { correctByOperator } from "sagbook/repeatability/correct_by_operator.ts";
import { correctDrift } from "sagbook/zones/drift.ts";
import { readCase, readingsOf } from "./_readings.ts";

const near = (found: number, expected: number, within: number) =>
  ok(Math.abs(found - expected) <= within, `${found}, not ${expected}`);

async function surfaceOf(name: string): Promise<SurfaceComponents> {
  const { readings, piece, bench } = await readCase(name);
  return estimateComponents(readings, { piece, bench })[0];
}

Deno.test("judgeCapability() sets six sigma against the tolerance and the change of one stretch of work", async () => {
  const components = await surfaceOf("B05-reused-labels");
  const found = judgeCapability(components, {
    radiusTolerance: 30,
    change: 0.02,
  });
  ok(found.kind === "judged");
  const total = found.lines.at(-1)!;
  equal(total.kind, "total");
  // By hand: zeroing 7.75 and repeat 0.5 µm²; the session is below 0 and counts as 0.
  const sigma = Math.sqrt(8.25);
  near(total.sag.deviation * 1000, sigma, 1e-9);
  ok(
    total.sag.interval!.low * 1000 < sigma &&
      total.sag.interval!.high * 1000 > sigma,
  );
  const tolerance = 30 / components.perSag!;
  near(found.sagTolerance!, tolerance, 1e-12);
  near(
    total.percentOfTolerance!,
    100 * 6 * sigma / 1000 / (2 * tolerance),
    1e-6,
  );
  near(total.percentOfChange!, 100 * 6 * sigma / 20, 1e-6);
  equal(found.toleranceBand, "over 30");
  near(found.smallestChange * 1000, 1.959964 * Math.SQRT2 * sigma, 1e-4);
  near(
    found.smallestRadiusChange! / found.smallestChange,
    components.perSag!,
    1e-6,
  );
});

Deno.test("judgeCapability() keeps shares of the variance apart from spreads: shares add up, spreads do not", async () => {
  const found = judgeCapability(await surfaceOf("B05-reused-labels"), {
    sagTolerance: 0.02,
  });
  ok(found.kind === "judged");
  near(
    found.contributions.reduce((sum, { percent }) => sum + percent, 0),
    100,
    1e-9,
  );
  const percent = Object.fromEntries(
    found.contributions.map((one) => [one.sources[0], one.percent]),
  );
  near(percent.zeroing, 100 * 7.75 / 8.25, 1e-9);
  equal(percent.session, 0);
  const spreads = found.lines.filter(({ kind }) => kind === "figure").reduce(
    (sum, one) => sum + one.percentOfTolerance!,
    0,
  );
  ok(spreads > found.lines.at(-1)!.percentOfTolerance!);
});

Deno.test("judgeCapability() leaves out percent of study on one surface and says why", async () => {
  const components = await surfaceOf("B05-reused-labels");
  const one = judgeCapability(components, {});
  ok(one.kind === "judged");
  equal(one.noStudy, "one surface");
  equal(one.distinctCategories, undefined);
  ok(one.lines.every((line) => line.percentOfStudy === undefined));
  const declared = judgeCapability(components, {
    surfaces: { deviation: 0.05 },
  });
  ok(declared.kind === "judged");
  const sigma = Math.sqrt(8.25) / 1000;
  equal(declared.distinctCategories, Math.floor(Math.SQRT2 * 0.05 / sigma));
  near(
    declared.lines.at(-1)!.percentOfStudy!,
    100 * sigma / Math.hypot(sigma, 0.05),
    1e-9,
  );
  equal(declared.studyBand, "under 10");
  equal(declared.fewSurfaces, false);
  const studied = judgeCapability(components, {
    surfaces: { deviation: 0.05, count: 3 },
  });
  ok(studied.kind === "judged" && studied.fewSurfaces);
  const single = judgeCapability(components, {
    surfaces: { deviation: 0.05, count: 1 },
  });
  ok(single.kind === "judged" && single.noStudy === "fewer than two surfaces");
});

Deno.test("judgeCapability() of equal readings gives no percentage but the least the display allows (B03)", async () => {
  const found = judgeCapability(await surfaceOf("B03-all-equal"), {
    radiusTolerance: 30,
    change: 0.02,
  });
  ok(found.kind === "not judged");
  equal(found.reason, "limited by the display");
  near(found.floor!, 0.000408, 5e-7);
  near(
    found.leastPercentOfTolerance!,
    100 * 6 * 0.000408248 / (2 * 30 / 3520.5),
    0.01,
  );
  near(found.leastPercentOfChange!, 100 * 6 * 0.000408248 / 0.02, 0.001);
  ok(!("lines" in found) && !("distinctCategories" in found));
  const [nothing] = estimateComponents(readingsOf([{}]));
  equal(
    (judgeCapability(nothing, {}) as { reason: string }).reason,
    "too few readings",
  );
});

Deno.test("judgeCapability() sets the drift beside the figures, and what the gauge is worth if nobody takes it out", () => {
  const { readings, piece, bench } = inventStudy({ seed: 2 });
  const corrected = correctByOperator(readings, correctDrift);
  const [components] = estimateComponents(readings, {
    ...corrected,
    piece,
    bench,
  });
  const found = judgeCapability(components, { radiusTolerance: 15 });
  ok(found.kind === "judged");
  const line = (kind: string) => found.lines.find((one) => one.kind === kind)!;
  const [drift, total, both] = ["drift", "total", "total with drift"].map(line);
  near(
    both.sag.deviation,
    Math.hypot(drift.sag.deviation, total.sag.deviation),
    1e-12,
  );
  ok(
    drift.sag.interval!.low < drift.sag.deviation &&
      drift.sag.deviation < drift.sag.interval!.high,
  );
  ok(drift.percentOfTolerance! > 0 && drift.radius!.deviation > 0);
  near(
    found.contributions.reduce((sum, { percent }) => sum + percent, 0),
    100,
    1e-9,
  );
});

Deno.test("judgeCapability() refuses a tolerance of nothing", async () => {
  const components = await surfaceOf("B05-reused-labels");
  throws(() => judgeCapability(components, { change: 0 }), {
    name: "RangeError",
    message:
      "Cannot judge a gauge as the change must be above 0 mm: current value is 0 mm",
  });
});

Deno.test("scatterModelOf() takes rounding off once and counts what is confounded as the costliest", async () => {
  const { model, takenAsNone } = scatterModelOf(
    await surfaceOf("B05-reused-labels"),
  );
  near(model.repeat * 1000, Math.sqrt(0.5 - 1 / 12), 1e-9);
  near(model.zeroing * 1000, Math.sqrt(7.75 - 1 / 12), 1e-9);
  equal(model.occasion, 0);
  equal(model.step, 0.001);
  deepEqual(takenAsNone, ["zone × zeroing", "diameter", "operator"]);
  const single = scatterModelOf(await surfaceOf("B04-confounded"));
  deepEqual(single.countedAs, [{
    sources: ["repeat", "zeroing", "session"],
    as: "occasion",
  }]);
  near(single.model.occasion! * 1000, Math.sqrt(10 / 3), 1e-6);
});

Deno.test("scatterModelOf() of equal readings takes what the display leaves possible, and the ends of intervals", async () => {
  const equalReadings = await surfaceOf("B03-all-equal");
  near(scatterModelOf(equalReadings).model.repeat, 0, 1e-9);
  near(
    scatterModelOf(equalReadings, "high").model.repeat,
    equalReadings.display.scatter!.high,
    1e-9,
  );
  const { readings } = inventStudy({ seed: 1, cured: true });
  const [components] = estimateComponents(readings);
  const [low, middle, high] = (["low", "estimate", "high"] as const).map((
    end,
  ) => scatterModelOf(components, end).model);
  for (const name of ["repeat", "zeroing", "occasion"] as const) {
    ok(low[name]! <= middle[name]! && middle[name]! < high[name]!, name);
  }
});
