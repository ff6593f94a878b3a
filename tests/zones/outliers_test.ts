import { deepEqual, equal } from "node:assert/strict";
import { flagOutliers } from "sagbook/zones/outliers.ts";
import { near, setsOf } from "./_session.ts";

Deno.test("flagOutliers() flags a slip, not the other places of its set nor a shift of its zero", () => {
  const rows = [715, 716, 714, 715, 716, 714].map((um, k) =>
    k === 2 ? [um + 40, um + 40, um + 40] : [um, um, um]
  );
  deepEqual(flagOutliers(setsOf(rows), 3, 0.001), []);
  rows[4][2] -= 12;
  const [flag, ...more] = flagOutliers(setsOf(rows), 3, 0.001);
  deepEqual(more, []);
  deepEqual([flag.set, flag.place], [4, 2]);
  // By hand: -12 at one of six, 0 at the others: 10 below their mean.
  near(flag.from, -0.010, 1e-12);
});

Deno.test("flagOutliers() flags both of two places, since nobody can tell which slipped", () => {
  const rows = [715, 716, 714, 715, 716, 714].map((um) => [um, um]);
  rows[3][1] += 15;
  const found = flagOutliers(setsOf(rows), 2, 0.001);
  deepEqual(found.map(({ set, place }) => [set, place]), [[3, 0], [3, 1]]);
});

Deno.test("flagOutliers() compares sags as they are where one place was read", () => {
  const rows = [[715], [715], [715], [716], [730]];
  const [flag] = flagOutliers(setsOf(rows), 1, 0.001);
  equal(flag.set, 4);
});

Deno.test("flagOutliers() needs four sets, and two display steps", () => {
  const slip = [[715, 715, 715], [715, 715, 715], [715, 715, 700]];
  deepEqual(flagOutliers(setsOf(slip), 3, 0.001), []);
  const rows = Array.from(
    { length: 9 },
    (_, k) => [715, 715, k === 4 ? 716 : 715],
  );
  deepEqual(flagOutliers(setsOf(rows), 3, 0.001), []);
  equal(flagOutliers(setsOf(rows), 3, 0.0004).length, 1);
});
