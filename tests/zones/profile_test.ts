import { deepEqual, equal, ok } from "node:assert/strict";
import { peakToValley } from "sagbook/geometry/asphericity.ts";
import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { FootClass, Place } from "sagbook/zones/place.ts";
import { fitProfile } from "sagbook/zones/profile.ts";
import { near } from "./_session.ts";

const A = 150;
const R = 3000;
const ground = {
  contactCircle: 60,
  halfDiameter: A,
  radius: mm(R),
  step: 0,
  scope: "any diameter",
} as const;
const DEGREES = { "foot out": 0, "feet out": 180, turned: 30 } as const;

const place = (
  distance: number,
  foot: FootClass,
  threefold?: number,
): Place => ({
  id: "",
  label: "",
  distance: mm(distance),
  foot,
  ...(threefold === undefined ? {} : { threefold }),
});

/** What exact three-foot means of a polynomial read at the places. */
function sags(
  places: readonly Place[],
  terms: Readonly<Record<number, number>>,
): number[] {
  const departure = (x: number, y: number): number =>
    Object.entries(terms).reduce(
      (sum, [power, height]) =>
        sum + height * (Math.hypot(x, y) / A) ** Number(power),
      0,
    );
  return places.map(({ distance, foot }) =>
    0.6 + threeFootMean(departure, {
      circleRadius: mm(60),
      offset: distance,
      diameterDegrees: 0,
      footDegrees: DEGREES[foot as keyof typeof DEGREES] ?? 0,
    })
  );
}

const oneSet = (values: readonly number[], shift = 0) => ({
  label: "",
  zeroing: "",
  cells: values.map((sag) => ({ sag: sag + shift, readings: 1 })),
});

Deno.test("fitProfile() recovers the terms a polynomial was made of, with the feet in any direction", () => {
  const places = [
    place(0, "any", 1),
    place(45, "foot out", 1),
    place(75, "feet out", -1),
    place(88, "turned", 0),
  ];
  const terms = { 4: 0.002, 6: -0.0007, 8: 0.0004 };
  const found = fitProfile([oneSet(sags(places, terms))], places, ground)!;
  deepEqual(found.powers, [4, 6, 8]);
  found.coefficients.forEach(({ value }, k) =>
    near(value, Object.values(terms)[k], 1e-12)
  );
});

Deno.test("fitProfile() draws the departure from the best sphere over the clear diameter", () => {
  const places = [place(0, "any"), place(88, "foot out", 1)];
  const { points, peakToValley: height } = fitProfile(
    [oneSet(sags(places, { 4: 0.002 }))],
    places,
    ground,
  )!;
  // u⁴ less its best sphere over the disc is u⁴ - u² + 1/6, by hand.
  for (const { distance, departure } of points) {
    const u = distance / A;
    near(departure.value, 0.002 * (u ** 4 - u * u + 1 / 6), 1e-12);
  }
  near(points.at(-1)!.distance, A, 1e-12);
  near(height.value, peakToValley(0.002 / A ** 4, mm(A)), 1e-15);
});

Deno.test("fitProfile() fits a4 alone where a direction is unknown, and that does not depend on it", () => {
  const places = [
    place(0, "any"),
    place(75, "unknown"),
    place(88, "unknown"),
  ];
  const found = fitProfile(
    [oneSet(sags(places, { 4: 0.002 }))],
    places,
    ground,
  )!;
  deepEqual(found.powers, [4]);
  near(found.coefficients[0].value, 0.002, 1e-12);
});

Deno.test("fitProfile() does not take two ways of standing at one distance for two distances", () => {
  const places = [
    place(0, "any"),
    place(88, "feet out", -1),
    place(88.3, "foot out", 1),
  ];
  const found = fitProfile(
    [oneSet(sags(places, { 4: 0.002 }))],
    places,
    ground,
  )!;
  deepEqual(found.powers, [4]);
  const same = [place(88, "feet out", -1), place(88.3, "foot out", 1)];
  equal(fitProfile([oneSet([0.6, 0.6])], same, ground), undefined);
});

Deno.test("fitProfile() cancels the zero of each set and uses only sets that read every place", () => {
  const places = [place(0, "any"), place(88, "foot out", 1)];
  const values = sags(places, { 4: 0.002 });
  const sets = [
    oneSet(values, 0.01),
    oneSet(values, -0.02),
    { label: "", zeroing: "", cells: [undefined, { sag: 9, readings: 1 }] },
  ];
  const found = fitProfile(sets, places, ground)!;
  equal(found.sets, 2);
  near(found.coefficients[0].value, 0.002, 1e-12);
  const { low, high } = found.coefficients[0].interval95!;
  ok(high - low < 1e-9);
  equal(fitProfile(sets.slice(2), places, ground), undefined);
});

Deno.test("fitProfile() keeps the display step in every interval when nothing scatters", () => {
  const places = [place(0, "any"), place(88, "foot out", 1)];
  const sets = [oneSet([0.6, 0.6]), oneSet([0.6, 0.6]), oneSet([0.6, 0.6])];
  const { conic } = fitProfile(sets, places, { ...ground, step: 0.001 })!;
  // By hand: K = 2 R³ / (c² r²) for each mm of difference.
  const perSag = 2 * R ** 3 / (88 * 60) ** 2;
  const floor = 0.001 * (1 - Math.sqrt(0.05)) * perSag;
  near(conic.value, 0, 1e-9);
  near(conic.interval95!.high, floor, 1e-6 * floor);
});
