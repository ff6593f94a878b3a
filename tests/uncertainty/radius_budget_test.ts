import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { radiusSensitivities } from "sagbook/geometry/sensitivities.ts";
import type { Ring } from "sagbook/records/bench.ts";
import { subtractEstimates } from "sagbook/statistics/estimate_arithmetic.ts";
import { standardUncertainty } from "sagbook/statistics/estimate_uncertainty.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import type { RadiusMeasurement } from "sagbook/uncertainty/radius_measurement.ts";
import { radiusModel } from "sagbook/uncertainty/radius_model.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const near = (found: number | undefined, wanted: number, relative = 1e-9) =>
  ok(
    found !== undefined &&
      Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );

const ring = (more: Partial<Ring> = {}): Ring => ({
  id: "A",
  shape: {
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(6.35),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0),
  expansion: 11.5e-6,
  foot: { kind: "unknown" },
  ...more,
});
const feet = { circleRadius: mm(60), ballRadius: mm(6.35) };

const measure = (more: Partial<RadiusMeasurement> = {}): RadiusMeasurement => ({
  form: "concave",
  ring: ring(),
  sag: {
    value: sagFromRadius(mm(3000), feet, "concave"),
    own: 0,
    dof: Infinity,
    common: {},
  },
  ...more,
});
const lineOf = (measurement: RadiusMeasurement, source: string) =>
  radiusBudget(measurement).lines.find((line) => line.source === source);

Deno.test("radiusBudget() agrees with the closed form of R for both forms", () => {
  for (const form of ["concave", "convex"] as const) {
    for (const sag of [0.05, 0.715, 5, 40]) {
      const { radius } = radiusBudget(
        measure({
          form,
          sag: { value: sag, own: 0, dof: Infinity, common: {} },
        }),
      );
      near(radius, radiusFromSag(mm(sag), feet, form), 1e-13);
    }
  }
});

Deno.test("radiusBudget() has the sensitivities of the closed form, each source alone", () => {
  const value = sagFromRadius(mm(3000), feet, "concave");
  const exact = radiusSensitivities(value, feet, "concave");
  const repeated = { value, own: 0.001, dof: 5, common: {} };
  near(
    lineOf(measure({ sag: repeated }), "repetition")?.sensitivity,
    exact.sag,
  );
  const uncertain = ring({
    radiusUncertainty: mm(0.02),
    ballRadiusUncertainty: mm(0.001),
  });
  const both = measure({ ring: uncertain });
  near(lineOf(both, "ring radius")?.sensitivity, exact.circleRadius);
  near(lineOf(both, "ball radius")?.sensitivity, 1, 1e-6);
  near(
    lineOf({ ...both, form: "convex" }, "ball radius")?.sensitivity,
    -1,
    1e-6,
  );
  // The check values of the derivation: −4977.3557 and 99.7783.
  near(exact.sag, -4977.3557, 1e-8);
  near(exact.circleRadius, 99.7783, 1e-6);
});

Deno.test("radiusBudget() counts the display step of reading and zero at step/√12 each", () => {
  const budget = radiusBudget(measure({ step: mm(0.001) }));
  equal(budget.lines.length, 2);
  near(
    budget.standardUncertainty,
    4977.3557 * 0.001 * Math.sqrt(2 / 12),
    1e-8,
  );
  equal(
    radiusBudget(measure({ step: mm(0.001), roundingShare: 0 })).lines.length,
    0,
  );
});

Deno.test("radiusBudget() gives steel's 1.15e-4 of R for a ring 5 K off", () => {
  const warm = measure({ ringWarmerBy: { value: 5, halfWidth: 0 } });
  const { radius } = radiusBudget(warm);
  near((radius ?? 0) / 3000 - 1, 2 * 11.5e-6 * 5, 2e-3);
});

Deno.test("radiusBudget() takes a gradient off with its sign: 0.74 mm for 1 K in 40 mm borosilicate", () => {
  const work = { thickness: mm(40), expansion: 3.3e-6 };
  const warm = (form: "concave" | "convex", value: number) =>
    radiusBudget(measure({
      form,
      work,
      upperFaceWarmerBy: { value, halfWidth: 0 },
      sag: {
        value: sagFromRadius(mm(3000), feet, form),
        own: 0,
        dof: Infinity,
        common: {},
      },
    })).radius ?? 0;
  // A warmer upper face makes concave work read longer: the truth is shorter.
  near(warm("concave", 1) - 3000, -0.7425, 1e-3);
  near(warm("convex", 1) - 3000, 0.7425, 1e-3);
  near(warm("concave", -1) - 3000, 0.7425, 1e-3);
});

Deno.test("radiusBudget() limits a flat by its bow over its size, the same 1/R for every ring", () => {
  const flat = { id: "F", size: mm(200), flatness: mm(0.001) };
  // A bow of 1 µm over 200 mm: curvature 2F/(D/2)² = 2e-7 1/mm at most.
  const expected = 2e-7 / Math.sqrt(3);
  for (const circle of [20, 60, 90]) {
    const shape = {
      kind: "balls",
      circleRadius: mm(circle),
      ballRadius: mm(3),
      probeOffset: mm(0),
    } as const;
    const sag = sagFromRadius(
      mm(3000),
      { circleRadius: mm(circle), ballRadius: mm(3) },
      "concave",
    );
    const { curvature } = radiusBudget(measure({
      flat,
      ring: ring({ shape }),
      sag: { value: sag, own: 0, dof: Infinity, common: {} },
    }));
    near(curvature.standardUncertainty, expected, 3e-3);
    ok(curvature.estimate.common["flat F curvature"] > 0);
  }
});

Deno.test("radiusBudget() does not take a stated lean out twice, and gives its doubt the slope there", () => {
  const gauge = { id: "G", scaleUncertainty: 0, tiltDegrees: 3 };
  const tilt = { standardUncertaintyDegrees: 0.5 };
  const budget = radiusBudget(measure({ gauge, tilt }));
  near(budget.radius, 3000, 1e-12);
  // dR/dθ = -∂R/∂s · s tan θ₀, here 2993.65 mm · tan 3° a radian.
  const slope = 4977.3557 * 0.6013330886181529 * Math.tan(3 * Math.PI / 180);
  near(budget.standardUncertainty, slope * 0.5 * Math.PI / 180, 1e-6);
});

Deno.test("radiusBudget() gives a doubted lean and centring their second order", () => {
  const gauge = { id: "G", scaleUncertainty: 0 };
  const lean = radiusBudget(
    measure({ gauge, tilt: { standardUncertaintyDegrees: 1 } }),
  );
  equal(lean.standardUncertainty, 0);
  const theta = Math.PI / 180;
  near(lean.secondOrderBias, 3000 * theta ** 2 / 2, 3e-3);
  near(lean.secondOrderUncertainty, 3000 * theta ** 2 / Math.SQRT2, 1e-2);
  const beside = radiusBudget(
    measure({ centring: { standardUncertainty: 3, conic: -1 } }),
  );
  near(beside.secondOrderBias, -9 / 3000, 1e-5); // R read grows by c²/R
  const sphere = radiusBudget(
    measure({ centring: { standardUncertainty: 3, conic: 0 } }),
  );
  equal(sphere.secondOrderUncertainty, 0);
});

Deno.test("radiusBudget() lets common errors cancel in a difference of zones", () => {
  const own = ring({
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(3),
      probeOffset: mm(0),
    },
    radiusUncertainty: mm(0.02),
  });
  const text = Deno.readTextFileSync(
    new URL("../cases/C03-common-errors.json", import.meta.url),
  );
  const data: {
    zero: { u: string };
    ring: { u_r: string };
    zones: { sag: string; u: string }[];
  } = JSON.parse(text);
  equal(parseFloat(data.ring.u_r), own.radiusUncertainty);
  const [centre, edge] = data.zones.map(({ sag, u }) =>
    radiusBudget(measure({
      ring: own,
      sag: {
        value: parseFloat(sag),
        own: parseFloat(u),
        dof: Infinity,
        common: { "zero": parseFloat(data.zero.u) },
      },
    }))
  );
  equal(centre.radius?.toFixed(3), "2520.840");
  equal(edge.radius?.toFixed(3), "2527.901");
  const sensitivity = (budget: typeof edge, source: string) =>
    budget.lines.find((line) => line.source === source)?.sensitivity;
  equal(sensitivity(centre, "repetition")?.toFixed(2), "-3520.45");
  equal(sensitivity(edge, "repetition")?.toFixed(2), "-3540.24");
  equal(sensitivity(centre, "ring radius")?.toFixed(3), "83.916");
  equal(sensitivity(edge, "ring radius")?.toFixed(3), "84.151");
  ok(centre.estimate && edge.estimate);
  const change = subtractEstimates(edge.estimate, centre.estimate);
  equal(change.value.toFixed(4), "7.0607");
  equal(change.own.toFixed(4), "2.4963");
  equal(Math.abs(change.common["zero"]).toFixed(4), "0.0198");
  equal(Math.abs(change.common["ring A radius"]).toFixed(4), "0.0047");
  equal(standardUncertainty(change).toFixed(4), "2.4964");
  equal((change.value / standardUncertainty(change)).toFixed(2), "2.83");
});

Deno.test("radiusBudget() inverts curvature for nearly flat work (case C02)", () => {
  const small = measure({
    ring: ring({
      shape: {
        kind: "balls",
        circleRadius: mm(60),
        ballRadius: mm(3),
        probeOffset: mm(0),
      },
    }),
    sag: { value: 0.010, own: 0.004, dof: Infinity, common: {} },
  });
  const budget = radiusBudget(small);
  equal(budget.shape, "heavy-tailed");
  near(budget.lower, 100901, 2e-5);
  near(budget.upper, 833281, 1e-4);
  near(budget.radius, 180003, 1e-7);
  near(budget.otherSideProbability, 0.00621, 1e-3);
  equal(budget.standardUncertainty, undefined);
  equal(budget.estimate, undefined);
  equal(budget.expanded, undefined);
});

Deno.test("radiusBudget() gives a lower limit only when the interval includes a flat", () => {
  for (const value of [0.005, 0, -0.001]) {
    const budget = radiusBudget(
      measure({ sag: { value, own: 0.004, dof: Infinity, common: {} } }),
    );
    equal(budget.shape, "nearly flat");
    equal(budget.upper, undefined);
    const flattest = 2 * (Math.abs(value) + 1.959964 * 0.004) / 3600;
    near(budget.lower, 1 / flattest, 1e-3);
    equal(budget.radius === undefined, value <= 0);
  }
});

Deno.test("radiusBudget() calls an interval skewed when ± would move its ends by half a figure", () => {
  const shape = (own: number) =>
    radiusBudget(
      measure({ sag: { value: 0.6, own, dof: Infinity, common: {} } }),
    ).shape;
  equal(shape(0.0002), "symmetric");
  equal(shape(0.03), "skewed");
  const { lower, upper = 0, radius = 0 } = radiusBudget(
    measure({ sag: { value: 0.6, own: 0.03, dof: Infinity, common: {} } }),
  );
  ok(upper - radius > 1.1 * (radius - lower));
});

Deno.test("radiusBudget() names what it could not count and what it assumed", () => {
  deepEqual(radiusBudget(measure()).notCounted, [
    "display step",
    "gauge scale",
    "reference flat",
    "temperature of the ring",
    "temperature gradient in the work",
  ]);
  const assumed = ring({ radiusUncertaintyAssumed: true });
  deepEqual(radiusBudget(measure({ ring: assumed })).assumed, ["ring radius"]);
});

Deno.test("radiusBudget() keeps session temperatures common within a session only", () => {
  const heat = { ringWarmerBy: { value: 0, halfWidth: 2 } };
  const alone = radiusBudget(measure(heat)).estimate;
  ok(alone && alone.own > 0);
  const named = radiusBudget(measure({ ...heat, session: "S1" })).estimate;
  equal(named?.own, 0);
  ok(named && named.common["session S1 ring temperature"] > 0);
});

Deno.test("radiusBudget() measures edges and bars with the radius that touches", () => {
  const edge = ring({
    shape: { kind: "edge", innerRadius: mm(24), outerRadius: mm(25) },
    ballRadiusUncertainty: mm(0.01),
  });
  const sag = { value: 0.5, own: 0, dof: Infinity, common: {} };
  near(radiusBudget(measure({ ring: edge, sag })).radius, 625.25, 1e-13);
  near(
    radiusBudget(measure({ ring: edge, sag, form: "convex" })).radius,
    radiusFromSag(
      mm(0.5),
      { circleRadius: mm(24), ballRadius: mm(0) },
      "convex",
    ),
    1e-13,
  );
  equal(lineOf(measure({ ring: edge, sag }), "ball radius"), undefined);
  const bar = ring({ shape: { kind: "bar", span: mm(40), ballRadius: mm(0) } });
  near(
    radiusBudget(measure({
      ring: bar,
      sag: { ...sag, value: 2.020410288672876 },
    })).radius,
    100,
    1e-12,
  );
});

Deno.test("radiusBudget() takes a probe off the centre into account, at second order where it is centred", () => {
  const off = ring({
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(6.35),
      probeOffset: mm(2),
    },
  });
  const value = 0.6;
  const sag = { value, own: 0, dof: Infinity, common: {} };
  near(
    radiusBudget(measure({ ring: off, sag })).radius,
    ((3600 - 4) / value + value) / 2 + 6.35,
    1e-12,
  );
  const doubted = radiusBudget(
    measure({ sag, probeOffsetUncertainty: mm(1) }),
  );
  equal(doubted.standardUncertainty, 0);
  near(doubted.secondOrderBias, -1 / (2 * value), 1e-6);
});

Deno.test("radiusModel() and radiusBudget() refuse what cannot be", () => {
  throws(() => radiusModel(measure({ roundingShare: 2 })), {
    name: "RangeError",
    message:
      "Cannot set up a radius as the rounding share must be from 0 to 1: current value is 2",
  });
  const sag = { value: 61, own: 0, dof: Infinity, common: {} };
  throws(() => radiusBudget(measure({ sag })), {
    name: "RangeError",
    message:
      "Cannot find a radius as sag must not exceed the foot circle radius of 60 mm: current value is 61 mm",
  });
});

Deno.test("radiusBudget() keeps every shared part of a sag apart, with its sign", () => {
  const value = sagFromRadius(mm(3000), feet, "concave");
  const common = { zero: 0.001, creep: -0.0005 };
  const { estimate } = radiusBudget(
    measure({ sag: { value, own: 0, dof: Infinity, common } }),
  );
  near(estimate?.common.zero, -4.9773557, 1e-7);
  near(estimate?.common.creep, 4.9773557 / 2, 1e-7);
});

Deno.test("radiusBudget() goes there and back on small rings and strong curves", () => {
  // Check values: r = 10, b = 1.5, R = 50.
  const small = ring({
    shape: {
      kind: "balls",
      circleRadius: mm(10),
      ballRadius: mm(1.5),
      probeOffset: mm(0),
    },
  });
  for (
    const [form, value] of [
      ["concave", 1.0421239413308763],
      ["convex", 0.9802019006409726],
    ] as const
  ) {
    const sag = { value, own: 0, dof: Infinity, common: {} };
    near(radiusBudget(measure({ form, ring: small, sag })).radius, 50, 1e-13);
  }
});
