import { deepEqual, equal, ok } from "node:assert/strict";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { conicSurface } from "sagbook/geometry/contact_surface.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import {
  type SessionPlan,
  type SimulatedReading,
  simulateSession,
} from "sagbook/geometry/simulate_session.ts";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const STILL = { repeat: mm(0), zeroing: mm(0), diameter: mm(0) };
const plan = (changes: Partial<SessionPlan> = {}): SessionPlan => ({
  surface: conicSurface(3000, 0),
  form: "concave",
  gauge: ringGauge(60, 6.35),
  diameters: [0, 60, 120],
  places: [
    { zone: "centre", offset: mm(0) },
    { zone: "edge", offset: mm(80) },
    { zone: "edge", offset: mm(-80) },
    { zone: "flat", offset: mm(0) },
  ],
  foot: "foot out",
  scatter: STILL,
  step: mm(0),
  ...changes,
});
const sag = sagFromRadius(
  mm(3000),
  { circleRadius: mm(60), ballRadius: mm(6.35) },
  "concave",
);
const variance = (values: readonly number[]) => {
  const mean = values.reduce((a, b) => a + b) / values.length;
  return values.reduce((sum, v) => sum + (v - mean) ** 2, 0) /
    (values.length - 1);
};
const where = (
  readings: readonly SimulatedReading[],
  zone: string,
  sign = 1,
) =>
  readings.filter((reading) =>
    reading.zone === zone &&
    (sign < 0 ? reading.offset < 0 : reading.offset >= 0)
  ).map(({ shown }): number => shown);

Deno.test("simulateSession() without scatter shows the sag of the sphere, and 0 on the flat", () => {
  const readings = simulateSession(plan(), new Random(1));
  equal(readings.length, 12);
  for (const { zone, shown, truth } of readings) {
    ok(Math.abs(shown - (zone === "flat" ? 0 : sag)) < 1e-12);
    equal(shown, truth);
  }
});

Deno.test("simulateSession() points foot 1 as asked at both ends of a diameter", () => {
  const feet = (foot: SessionPlan["foot"]) =>
    simulateSession(plan({ foot, diameters: [60] }), new Random(1)).slice(0, 3)
      .map(({ footDegrees }) => footDegrees);
  deepEqual(feet("foot out"), [60, 60, 240]);
  deepEqual(feet("feet out"), [240, 240, 60]);
  deepEqual(feet(-30), [330, 330, 330]);
});

Deno.test("simulateSession() shows whole steps, reading and zero both rounded", () => {
  const step = mm(0.001);
  const readings = simulateSession(
    plan({ step, diameters: new Array(2000).fill(0) }),
    new Random(2),
  );
  const shown = where(readings, "centre");
  for (const value of shown) {
    ok(Math.abs(value / step - Math.round(value / step)) < 1e-9);
    ok(Math.abs(value - sag) <= step);
  }
  // A step with a random phase: P(up) is the part of the step that is left.
  const mean = shown.reduce((a, b) => a + b, 0) / shown.length;
  ok(Math.abs(mean - sag) < 5 * step / Math.sqrt(4 * 2000));
});

Deno.test("simulateSession() puts repeat, zeroing and diameter where the model has them", () => {
  const scatter = {
    repeat: mm(0.001),
    zeroing: mm(0.002),
    diameter: mm(0.003),
  };
  const diameters = Array.from({ length: 3000 }, (_, i) => i * 180 / 3000);
  const readings = simulateSession(plan({ scatter, diameters }), new Random(3));
  const [centre, flat] = [where(readings, "centre"), where(readings, "flat")];
  const [edge, other] = [where(readings, "edge"), where(readings, "edge", -1)];
  // Relative error of a variance over 3000 sets: √(2/3000) = 2.6 %; four of them.
  const near = (found: number, wanted: number) =>
    ok(Math.abs(found / wanted / 1e-6 - 1) < 0.11, `${found} ${wanted}`);
  near(variance(centre), 1 + 4);
  near(variance(edge), 1 + 4 + 9);
  near(variance(centre.map((value, i) => value - flat[i])), 2);
  near(variance(edge.map((value, i) => value - other[i])), 2);
  near(variance(edge.map((value, i) => value - centre[i])), 2 + 9);

  const opposite = simulateSession(
    plan({
      scatter: { ...scatter, diameterPattern: "opposite ends" },
      diameters,
    }),
    new Random(3),
  );
  const [up, down] = [where(opposite, "edge"), where(opposite, "edge", -1)];
  near(variance(up.map((value, i) => value - down[i])), 2 + 4 * 9);
});

Deno.test("simulateSession() keeps a diameter's own scatter when it is read again", () => {
  const scatter = { ...STILL, diameter: mm(0.003) };
  const edge = where(
    simulateSession(plan({ scatter, diameters: [0, 60, 0] }), new Random(4)),
    "edge",
  );
  equal(edge[0], edge[2]);
  ok(edge[0] !== edge[1]);
  const later = where(
    simulateSession(plan({ scatter }), new Random(5), new Random(4)),
    "edge",
  );
  equal(later[1], edge[1]);
});

Deno.test("simulateSession() creeps by the same amount from reading to reading", () => {
  const scatter = { ...STILL, driftPerReading: mm(0.0005) };
  const readings = simulateSession(
    plan({ scatter, diameters: [0] }),
    new Random(5),
  );
  const last = readings[readings.length - 1];
  equal(last.zone, "flat");
  ok(Math.abs(last.shown - 0.002) < 1e-15);
});

Deno.test("simulateSession() is fixed by the seed, and each source by its own branch", () => {
  const scatter = { ...STILL, repeat: mm(0.001) };
  const first = simulateSession(plan({ scatter }), new Random(6));
  deepEqual(first, simulateSession(plan({ scatter }), new Random(6)));
  const more = simulateSession(
    plan({ scatter: { ...scatter, zeroing: mm(0.01) } }),
    new Random(6),
  );
  // The same repeat under another zero: differences within a set agree.
  ok(
    Math.abs(
      (more[1].shown - more[0].shown) - (first[1].shown - first[0].shown),
    ) < 1e-15,
  );
});
