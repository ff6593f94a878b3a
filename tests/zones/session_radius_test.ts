import { deepEqual, equal, ok } from "node:assert/strict";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { Random } from "sagbook/numerics/random.ts";
import type { Interval } from "sagbook/statistics/interval.ts";
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

Deno.test("meanSag() takes each person for one look, and zeroings where one has no name", () => {
  // Means of A, B and C by hand: 10, 14 and 18, with 2, 2 and 1 zeroings.
  const sags = [9, 11, 13, 15, 18];
  const zeroings = ["1", "2", "3", "4", "5"];
  const personOf = new Map([["1", "A"], ["2", "A"], ["3", "B"], ["4", "B"]]);
  deepEqual(meanSag(sags, zeroings, 0, personOf), meanSag(sags, zeroings, 0));
  personOf.set("5", "C");
  const found = meanSag(sags, zeroings, 0, personOf);
  near(found.sag, 14, 1e-12);
  near(found.standardError!, 4 / Math.sqrt(3), 1e-12);
  equal(found.dof, 2);
  equal(found.people, 3);
  // The scatter between zeroings is told as it was.
  near(found.deviation!, meanSag(sags, zeroings, 0).deviation!, 1e-12);
});

Deno.test("meanSag() covers the truth as stated with three people, and would not by zeroings alone", () => {
  // 400 sessions of three people with three zeroings, people 1.5 times apart.
  const zeroings = Array.from({ length: 9 }, (_, k) => `${k}`);
  const personOf = new Map(zeroings.map((key, k) => [key, `${k % 3}`]));
  const random = new Random(1);
  const held = { people: 0, alone: 0 };
  const holds = ({ interval95 }: { interval95?: Interval }): number =>
    interval95!.low <= 0 && interval95!.high >= 0 ? 1 : 0;
  for (let session = 0; session < 400; session++) {
    const people = [0, 1, 2].map(() => 1.5 * random.normal());
    const sags = zeroings.map((_, k) => people[k % 3] + random.normal());
    held.people += holds(meanSag(sags, zeroings, 0, personOf));
    held.alone += holds(meanSag(sags, zeroings, 0));
  }
  // Theory: 95 % and 70 %; the standard error of a count is 1.1 and 2.3 %.
  ok(held.people / 400 > 0.91, `${held.people}`);
  ok(held.alone / 400 < 0.78, `${held.alone}`);
});
