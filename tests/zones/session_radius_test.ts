import { deepEqual, equal } from "node:assert/strict";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import {
  meanOfSets,
  meanSag,
  radiusOfSag,
} from "sagbook/zones/session_radius.ts";
import { near, setsOf } from "./_session.ts";

const feet = { circleRadius: mm(60), ballRadius: mm(3) };

Deno.test("meanSag() counts zeroings, not readings", () => {
  // By hand: zeroings at 1 and 3; mean 2, deviation sqrt(2), error 1.
  const found = meanSag([1, 1, 1, 3], ["a", "a", "a", "b"], 0);
  deepEqual([found.sag, found.readings, found.zeroings, found.dof], [
    2,
    4,
    2,
    1,
  ]);
  near(found.deviation, Math.SQRT2, 1e-15);
  near(found.standardError, 1, 1e-15);
  // Student's t with one degree of freedom is tan: 12.7062 at 2.5 %.
  near(found.interval95!.high, 2 + Math.tan(0.475 * Math.PI), 1e-9);
});

Deno.test("meanSag() keeps all of the display step when nothing scatters", () => {
  const { interval95, rounding } = meanSag(
    [0.7, 0.7, 0.7],
    ["a", "b", "c"],
    0.001,
  );
  equal(rounding, 1);
  near(interval95!.high, 0.7 + 0.001 * (1 - Math.sqrt(0.05)), 1e-12);
});

Deno.test("meanSag() has no scatter from one zeroing", () => {
  deepEqual(meanSag([0.7, 0.8], ["a", "a"], 0.001), {
    sag: 0.75,
    readings: 2,
    zeroings: 1,
    dof: 0,
    rounding: 1,
  });
});

Deno.test("meanOfSets() counts each place of a set once", () => {
  const sets = setsOf([[700, 720], [undefined, 730]]);
  near(meanOfSets(sets, 0).sag, 0.72, 1e-12);
});

Deno.test("radiusOfSag() turns the ends of the interval round, and leaves it out where it reaches the flat", () => {
  const mean = meanSag([0.714, 0.715, 0.716], ["a", "b", "c"], 0);
  const found = radiusOfSag(mean, feet, "concave")!;
  const { low, high } = mean.interval95!;
  near(found.radius, radiusFromSag(mm(0.715), feet, "concave"), 1e-9);
  equal(found.interval95!.low, radiusFromSag(mm(high), feet, "concave"));
  equal(found.interval95!.high, radiusFromSag(mm(low), feet, "concave"));
  const shallow = meanSag([0.0001, 0.001], ["a", "b"], 0);
  equal(radiusOfSag(shallow, feet, "concave")!.interval95, undefined);
});

Deno.test("radiusOfSag() has no radius for a flat, a hollow the wrong way or a hemisphere", () => {
  for (const sag of [0, -0.1, 60.1]) {
    equal(radiusOfSag(meanSag([sag], ["a"], 0), feet, "concave"), undefined);
  }
});
