import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
import {
  forecastTarget,
  riskOfPassing,
} from "sagbook/fabrication/forecast_target.ts";
import {
  predictProgress,
  progressLimits,
} from "sagbook/fabrication/predict_progress.ts";
import { Random } from "sagbook/numerics/random.ts";
import type { Estimate } from "sagbook/statistics/estimate.ts";
import { progressCoverage } from "../studies/_progress_coverage.ts";

const exact = (value: number): Estimate => ({
  value,
  own: 0,
  dof: Infinity,
  common: {},
});

function fitOf(
  sags: readonly number[],
  common: (sag: number) => Record<string, number> = () => ({}),
) {
  return fitProgress([
    sags.map((value, i) => ({
      session: `S${i + 1}`,
      work: 10 * i,
      sag: { value, own: 0.001, dof: Infinity, common: common(value) },
    })),
  ]);
}

const STEADY = [3.4, 3.441, 3.479, 3.522, 3.559];
const near = (found: number, wanted: number, by: number): void =>
  ok(Math.abs(found - wanted) <= by, `${found} is not ${wanted}`);

Deno.test("forecastTarget() puts the target on the limits of the sag at both ends", () => {
  const fit = fitOf(STEADY, (sag) => ({ ring: 0.0003 * sag }));
  const target = exact(3.64);
  const found = forecastTarget(fit, target);
  ok(found.kind === "forecast");
  near(
    fit.level.value + found.work * fit.rate.value,
    3.64,
    1e-9,
  );
  const { low, high } = found.interval;
  near(progressLimits(predictProgress(fit, low)).high, 3.64, 1e-8);
  near(progressLimits(predictProgress(fit, high!)).low, 3.64, 1e-8);
  ok(low < found.work && found.work < high!);
});

Deno.test("forecastTarget() stops where the risk of passing is the accepted one", () => {
  const fit = fitOf(STEADY);
  for (const risk of [0.01, 0.05, 0.2]) {
    const found = forecastTarget(fit, exact(3.64), { risk });
    ok(found.kind === "forecast");
    near(riskOfPassing(fit, exact(3.64), found.most), risk, 1e-6);
    ok(found.most < found.work && found.riskNow < risk);
  }
});

Deno.test("forecastTarget() gives no further work where the risk is met already", () => {
  const fit = fitOf(STEADY);
  const target = exact(fit.level.value + 0.5 * fit.level.own);
  const found = forecastTarget(fit, target);
  ok(found.kind === "forecast");
  equal(found.most, 0);
  equal(found.interval.low, 0);
  ok(found.riskNow > 0.05 && found.riskNow < 0.5);
});

Deno.test("forecastTarget() takes the ring's error from sag and target together", () => {
  const ring = (sag: number) => ({ ring: 0.01 * sag });
  const own = forecastTarget(fitOf(STEADY, ring), exact(3.64));
  // A target that the same ring once read is off by the same part.
  const same = forecastTarget(fitOf(STEADY, ring), {
    ...exact(3.64),
    common: ring(3.64),
  });
  ok(own.kind === "forecast" && same.kind === "forecast");
  ok(same.toGo.common.ring < 0.1 * -own.toGo.common.ring);
  ok(
    same.interval.high! - same.interval.low <
      0.5 * (own.interval.high! - own.interval.low),
  );
});

Deno.test("forecastTarget() works the same toward a smaller sag", () => {
  const down = fitOf(STEADY.map((sag) => 7 - sag));
  const [a, b] = [
    forecastTarget(fitOf(STEADY), exact(3.64)),
    forecastTarget(down, exact(7 - 3.64)),
  ];
  ok(a.kind === "forecast" && b.kind === "forecast");
  near(b.work, a.work, 1e-6);
  near(b.most, a.most, 1e-6);
  near(b.interval.high!, a.interval.high!, 1e-6);
});

Deno.test("forecastTarget() says by how much a passed target is passed, without work", () => {
  const found = forecastTarget(fitOf(STEADY), exact(3.5), { from: 3.2 });
  ok(found.kind === "passed");
  near(found.by.value, 0.0597, 0.001);
  ok(found.probability > 0.99);
});

Deno.test("forecastTarget() names a rate that goes the wrong way, and one that is not clear", () => {
  const away = forecastTarget(fitOf(STEADY), exact(3.3), { from: 3.7 });
  equal(away.kind, "wrong way");
  const still = [3.4, 3.402, 3.399, 3.401, 3.4005];
  const unclear = forecastTarget(fitOf(still), exact(3.5), { from: 3.3 });
  ok(unclear.kind === "rate unclear" && unclear.p > 0.05);
});

Deno.test("forecastTarget() asks for sessions below four", () => {
  deepEqual(forecastTarget(fitOf(STEADY.slice(0, 2)), exact(3.6)), {
    kind: "too few sessions",
    sessions: 2,
    missing: 2,
  });
  deepEqual(forecastTarget(fitOf(STEADY.slice(0, 3)), exact(3.6)), {
    kind: "too few sessions",
    sessions: 3,
    missing: 1,
  });
  equal(forecastTarget(fitOf(STEADY.slice(0, 4)), exact(3.6)).kind, "forecast");
});

Deno.test("forecastTarget() leaves the far end open where no work reaches it for sure", () => {
  // Just clear of no rate at 5 %, so 99.9 % limits never leave the target.
  const rough = fitOf([3.4, 3.43, 3.46, 3.52, 3.55]);
  const found = forecastTarget(rough, exact(3.7), { confidence: 0.9999 });
  ok(found.kind === "forecast");
  equal(found.interval.high, undefined);
});

Deno.test("forecastTarget() refuses a risk and a confidence outside 0 to 1", () => {
  for (const name of ["risk", "confidence"] as const) {
    throws(() => forecastTarget(fitOf(STEADY), exact(3.6), { [name]: 1 }), {
      name: "RangeError",
      message:
        `Cannot forecast as ${name} must be between 0 and 1: current value is 1`,
    });
  }
});

Deno.test("forecastTarget() covers, and its risk holds, over seeded pieces", () => {
  // A small copy of the study; bounds are five simulation errors wide.
  const found = progressCoverage(
    {
      zeroing: 1,
      work: 6,
      truth: "accumulates",
      sessions: [4, 8],
      unequal: false,
    },
    1500,
    new Random(20_310_517),
  );
  const share = found.covered / found.forecasts;
  ok(share > 0.92 && share < 0.985, `${share}`);
  const passed = found.passed / found.stops;
  ok(passed > 0.025 && passed < 0.08, `${passed}`);
});
