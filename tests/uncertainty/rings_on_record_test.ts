import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import type { Bench, Ring } from "sagbook/records/bench.ts";
import type { RingRecord } from "sagbook/records/ring_record.ts";
import { ringsOnRecord } from "sagbook/uncertainty/rings_on_record.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { SurfaceForm } from "sagbook/geometry/feet.ts";

const RING: Ring = {
  id: "A",
  shape: {
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(3),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0.02),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.001),
  expansion: 11.5e-6,
  foot: { kind: "unknown" },
};
const CALIPER = {
  id: "C",
  standardUncertainty: mm(0.01),
  assumed: false,
  scaleUncertainty: 0,
} as const;
const EMPTY: RingRecord = { surfaces: [], earlier: [] };
const spacings = (radius: number): RingRecord["spacings"] => {
  const figure = mm(radius * Math.sqrt(3));
  return {
    figures: [figure, figure, figure],
    over: "centres",
    overStated: true,
    caliper: CALIPER,
  };
};
const bench = (...rings: Ring[]): Bench => ({
  gauge: {
    id: "G",
    shows: { kind: "sag" },
    countsUpOn: "concave",
    steps: { mm: mm(0.001) },
    scaleUncertainty: 0.0005,
  },
  rings,
});
const plate = (
  form: SurfaceForm,
  circle: number,
  ball: number,
  scatter: readonly number[] = [0],
) => {
  const feet = { circleRadius: mm(circle), ballRadius: mm(ball) };
  const sag = sagFromRadius(mm(1500), feet, form);
  return {
    id: `plate ${form}`,
    form,
    radius: mm(1500),
    radiusUncertainty: mm(0.1),
    sags: scatter.map((off) => mm(sag + off)),
  };
};
const TODAY = { today: "2031-05-17" };

Deno.test("ringsOnRecord() says nothing of a ring without a record", () => {
  deepEqual(ringsOnRecord(bench(RING), TODAY), [{
    ring: "A",
    uncertaintyAssumed: false,
    radiusUncertainty: 0.02,
    sizes: [],
    monthsAssumed: true,
    undated: false,
  }]);
});

Deno.test("ringsOnRecord() holds spacings, surfaces and the stated radius against each other", () => {
  const [{ sizes: [size] }] = ringsOnRecord(
    bench({
      ...RING,
      record: {
        ...EMPTY,
        spacings: spacings(60.001),
        surfaces: [plate("concave", 60.002, 3, [-0.0004, 0.0004, 0])],
      },
    }),
    TODAY,
  );
  ok(size.agreement?.agree);
  equal(size.bySurfaces?.scatterFrom, "these readings");
  ok(Math.abs(size.bySurfaces!.circleRadius.value - 60.002) < 1e-6);
  equal(size.best, size.bySpacings);
  equal(size.verdict, "agrees");
  // A ball of 3 mm at either end: 6 mm of figure, 6/√3 mm of radius.
  ok(Math.abs(60.001 - size.bySpacings!.ifOther! - 6 / Math.sqrt(3)) < 1e-9);
});

Deno.test("ringsOnRecord() recognises a diameter and a spacing written as the radius", () => {
  const verdicts = [120, 60 * Math.sqrt(3), 60.2, 60].map((circle) => {
    const shape = { ...RING.shape, circleRadius: mm(circle) } as Ring["shape"];
    const record = { ...EMPTY, spacings: spacings(60) };
    return ringsOnRecord(bench({ ...RING, shape, record }), TODAY)[0].sizes[0]
      .verdict;
  });
  deepEqual(verdicts, [
    "diameter for radius",
    "spacing for radius",
    "differs",
    "agrees",
  ]);
});

Deno.test("ringsOnRecord() notices a plate whose form is written the wrong way round", () => {
  const wrong = { ...plate("convex", 60, 3), form: "concave" as const };
  const [{ sizes: [size] }] = ringsOnRecord(
    bench({ ...RING, record: { ...EMPTY, surfaces: [wrong] } }),
    TODAY,
  );
  equal(size.bySurfaces?.suspectedForm[0]?.surface, "plate convex");
  ok(Math.abs(size.bySurfaces!.suspectedForm[0].radiusIfOther - 60) < 1e-6);
  equal(size.verdict, "differs");
});

Deno.test("ringsOnRecord() takes the gauge's scatter, else the display step, for plates read once", () => {
  const one = bench({
    ...RING,
    record: { ...EMPTY, surfaces: [plate("concave", 60, 3)] },
  });
  const from = (more = {}) =>
    ringsOnRecord(one, { ...TODAY, ...more })[0].sizes[0].bySurfaces!;
  equal(from().scatterFrom, "display step");
  const known = from({ repeatability: { standardDeviation: 0.01 } });
  equal(known.scatterFrom, "the gauge");
  ok(known.standardUncertainty > 3 * from().standardUncertainty);
});

Deno.test("ringsOnRecord() calibrates each edge of a sharp edge by the surfaces it touches", () => {
  const shape = {
    kind: "edge",
    innerRadius: mm(59),
    outerRadius: mm(60),
  } as const;
  const surfaces = [plate("concave", 60, 0), plate("convex", 59, 0)];
  const [{ sizes }] = ringsOnRecord(
    bench({ ...RING, shape, record: { ...EMPTY, surfaces } }),
    TODAY,
  );
  deepEqual(
    sizes.map(({ size, best }) => [size, best.circleRadius.value.toFixed(6)]),
    [["outer edge", "60.000000"], ["inner edge", "59.000000"]],
  );
});

Deno.test("ringsOnRecord() finds when the next calibration is due, and changes over the years", () => {
  const earlier = [
    { on: "2027-05-02", radius: mm(60.05), radiusUncertainty: mm(0.005) },
  ];
  const ring = {
    ...RING,
    calibratedOn: "2030-05-02",
    radiusUncertainty: mm(0.005),
    record: { ...EMPTY, earlier, everyMonths: 12 },
  };
  const [{ history, monthsAssumed, undated }] = ringsOnRecord(
    bench(ring),
    TODAY,
  );
  equal(history?.dueOn, "2031-05-02");
  equal(history.daysLeft, -15);
  equal(history.changed, true);
  equal(monthsAssumed, false);
  equal(undated, false);
  const [open] = ringsOnRecord(
    bench({ ...ring, calibratedOn: undefined }),
    TODAY,
  );
  equal(open.undated, true);
  equal(open.history?.dueOn, "2028-05-02");
  throws(() => ringsOnRecord(bench(ring), { today: "today" }), SyntaxError);
});

Deno.test("ringsOnRecord() compares a duplicate once, with what one caliper makes common taken off", () => {
  const scaled = {
    ...spacings(60)!,
    caliper: { ...CALIPER, scaleUncertainty: 0.001 },
  };
  const twin = (id: string, other: string, radius: number): Ring => ({
    ...RING,
    id,
    record: {
      ...EMPTY,
      twin: other,
      spacings: { ...scaled, figures: spacings(radius)!.figures },
    },
  });
  const found = ringsOnRecord(
    bench(twin("A", "b", 60), twin("B", "A", 60.03)),
    TODAY,
  );
  equal(found[1].twin, undefined);
  const { ring, comparison, measured } = found[0].twin!;
  equal(ring, "B");
  equal(measured, true);
  deepEqual(comparison.shared, ["caliper C scale"]);
  // Own parts alone: 0.01/3 each; the caliper's 0.06 mm would have hidden it.
  equal(comparison.agree, false);
});
