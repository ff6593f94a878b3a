import { equal, ok } from "node:assert/strict";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { Random } from "sagbook/numerics/random.ts";
import type { Ring } from "sagbook/records/bench.ts";
import type { RadiusMeasurement } from "sagbook/uncertainty/radius_measurement.ts";
import { radiusMonteCarlo } from "sagbook/uncertainty/radius_monte_carlo.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const near = (found: number | undefined, wanted: number, relative: number) =>
  ok(
    found !== undefined && Math.abs(found / wanted - 1) <= relative,
    `${found} is not ${wanted}`,
  );

const ring: Ring = {
  id: "A",
  shape: {
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(3),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0),
  expansion: 11.5e-6,
  foot: { kind: "unknown" },
};

const small: RadiusMeasurement = {
  form: "concave",
  ring,
  sag: { value: 0.010, own: 0.004, dof: Infinity, common: {} },
};

Deno.test("radiusMonteCarlo() sorts curvature where R has no mean, and drops nothing (case C02)", () => {
  const text = Deno.readTextFileSync(
    new URL("../cases/C02-heavy-tail.json", import.meta.url),
  );
  const data: { draws: number; seed: number; sag: Record<string, string> } =
    JSON.parse(text);
  equal(parseFloat(data.sag.value), small.sag.value);
  equal(parseFloat(data.sag.u), small.sag.own);
  for (const seed of [data.seed, 8]) {
    const found = radiusMonteCarlo(small, {
      random: new Random(seed),
      draws: data.draws,
    });
    equal(found.budget.shape, "heavy-tailed");
    near(found.symmetric?.lower, 100901, 0.01);
    near(found.symmetric?.upper, 833281, 0.01);
    near(found.otherSideDraws / found.draws, 0.00621, 0.06);
    equal(found.mean, undefined);
    equal(found.standardUncertainty, undefined);
    equal(found.shortest, undefined);
    equal(found.check, undefined);
    equal(found.histogramOf, "curvature");
    const counted = found.histogram.counts.reduce((sum, n) => sum + n, 0) +
      found.histogram.outside[0] + found.histogram.outside[1];
    equal(counted, data.draws);
  }
});

Deno.test("radiusMonteCarlo() gives a lower limit only for work that may be flat", () => {
  const flat = { ...small, sag: { ...small.sag, value: 0.002 } };
  const found = radiusMonteCarlo(flat, { random: new Random(1), draws: 1e5 });
  equal(found.symmetric, undefined);
  near(found.atLeast, 3600 / (2 * (0.002 + 1.96 * 0.004)), 0.02);
});

Deno.test("radiusMonteCarlo() agrees with the budget where all is small and normal", () => {
  const measurement: RadiusMeasurement = {
    form: "convex",
    ring: { ...ring, radiusUncertainty: mm(0.02) },
    sag: { value: 0.715, own: 0.0002, dof: Infinity, common: { zero: 0.0003 } },
    gauge: { id: "G", scaleUncertainty: 0.0005 },
  };
  const found = radiusMonteCarlo(measurement, { random: new Random(2) });
  const { budget } = found;
  ok(found.settled);
  near(found.standardUncertainty, budget.standardUncertainty ?? 0, 0.01);
  near(found.mean, budget.radius ?? 0, 1e-4);
  equal(found.check?.valid, true);
  equal(found.histogramOf, "radius");
  equal(found.otherSideDraws, 0);
});

Deno.test("radiusMonteCarlo() finds the bias and the skew that second order foretells", () => {
  const measurement: RadiusMeasurement = {
    form: "concave",
    ring,
    sag: { value: 0.6, own: 0.03, dof: Infinity, common: {} },
  };
  const found = radiusMonteCarlo(measurement, {
    random: new Random(3),
    draws: 1e6,
  });
  const { radius = 0, secondOrderBias = 0, shape } = found.budget;
  equal(shape, "skewed");
  // R (σ/s)² to leading order; the next term is 3 (σ/s)² of it.
  near(secondOrderBias, radius * 0.05 ** 2, 0.01);
  near((found.mean ?? 0) - radius, secondOrderBias, 0.08);
  equal(found.check?.valid, false);
  near(found.symmetric?.upper, found.budget.upper ?? 0, 0.003);
});

Deno.test("radiusMonteCarlo() shows the bias that averaging radii would have (10 mm ring: 10.8 mm)", () => {
  const feet = { circleRadius: mm(10), ballRadius: mm(6.35) };
  const value = sagFromRadius(mm(3000), feet, "concave");
  const found = radiusMonteCarlo({
    form: "concave",
    ring: {
      ...ring,
      shape: { kind: "balls", ...feet, probeOffset: mm(0) },
    },
    sag: { value, own: 0.001, dof: Infinity, common: {} },
  }, { random: new Random(4), draws: 1e6 });
  near((found.mean ?? 0) - 3000, 10.8, 0.1);
});
