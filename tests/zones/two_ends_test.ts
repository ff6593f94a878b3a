import { deepEqual, equal, ok } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { Place } from "sagbook/zones/place.ts";
import type { MeasuredSet } from "sagbook/zones/set_table.ts";
import { compareEnds } from "sagbook/zones/two_ends.ts";
import { near } from "./_session.ts";

const PLACES: readonly Place[] = [0, 30, 60].map((distance) => ({
  id: `${distance}`,
  label: `${distance}`,
  distance: mm(distance),
  foot: "foot out",
}));

/** Sets whose ends differ by c (a cos θ + b sin θ) plus an error by set. */
function ends(
  diameters: readonly (number | undefined)[],
  a: number,
  b: number,
  errors: readonly number[] = [],
): MeasuredSet[] {
  return diameters.map((diameterDegrees, k) => {
    const angle = (diameterDegrees ?? 0) * Math.PI / 180;
    const slope = a * Math.cos(angle) + b * Math.sin(angle) +
      (errors[k] ?? 0) / 60;
    return {
      label: "",
      zeroing: `${k}`,
      ...(diameterDegrees === undefined ? {} : { diameterDegrees }),
      cells: [0, 30, 60].map((distance) => {
        const half = distance * slope / 2;
        return distance === 0
          ? { sag: 0.7, readings: 1 }
          : { sag: 0.7, readings: 2, plus: 0.7 + half, minus: 0.7 - half };
      }),
    };
  });
}

Deno.test("compareEnds() recovers amplitude and direction of coma-like wear", () => {
  const [a, b] = [3e-5, -4e-5];
  const found = compareEnds(ends([0, 45, 90, 135], a, b), PLACES, 0, 4)!;
  near(found.amplitude, 60 * 5e-5, 1e-15);
  near(found.towardDegrees, 360 - Math.atan2(4, 3) * 180 / Math.PI, 1e-9);
  equal(found.pairs, 8);
  equal(found.dof, 2);
  equal(found.allDirections, true);
  near(found.upper, found.amplitude, 1e-12);
  near(found.lower, found.amplitude, 1e-12);
});

Deno.test("compareEnds() counts what the places of one set share once, not as often as it was read", () => {
  const errors = [0.001, -0.001, 0.001, -0.001, 0.001, -0.001];
  const diameters = [0, 30, 60, 90, 120, 150];
  const both = compareEnds(ends(diameters, 1e-4, 0, errors), PLACES, 0, 1)!;
  equal(both.dof, 4);
  // The same with the outer place only: no wider and no narrower.
  const outer = ends(diameters, 1e-4, 0, errors).map((set) => ({
    ...set,
    cells: set.cells.map((cell, place) => place === 1 ? undefined : cell),
  }));
  const alone = compareEnds(outer, PLACES, 0, 1)!;
  near(both.upper, alone.upper!, 1e-12);
  near(both.lower, alone.lower!, 1e-12);
});

Deno.test("compareEnds() averages sets on one diameter for any diameter, not for these", () => {
  const sets = ends([0, 0, 60, 60, 120, 120], 1e-4, 0, [1e-3, -1e-3]);
  equal(compareEnds(sets, PLACES, 0, 1)?.dof, 1);
  equal(compareEnds(sets, PLACES, 0, 1, "these diameters")?.dof, 4);
});

Deno.test("compareEnds() speaks of one line only where one diameter was read", () => {
  const sets = ends([30, 30, 30], 1e-4, 0, [1e-4, 0, -1e-4]);
  const found = compareEnds(sets, PLACES, 0, 1)!;
  equal(found.allDirections, false);
  equal(found.dof, 2);
  near(found.towardDegrees, 30, 1e-9);
  near(found.amplitude, 60e-4 * Math.cos(Math.PI / 6), 1e-12);
  ok(found.upper! > found.amplitude && found.lower! < found.amplitude);
});

Deno.test("compareEnds() has no direction without diameters and no limits without a degree of freedom", () => {
  const unknown = compareEnds(
    ends([undefined, undefined], 1e-4, 0),
    PLACES,
    0,
    1,
  )!;
  equal(unknown.towardDegrees, undefined);
  equal(unknown.allDirections, false);
  equal(unknown.dof, 1);
  const bare = compareEnds(ends([0, 90], 1e-4, 1e-4), PLACES, 0.001, 1)!;
  deepEqual([bare.dof, bare.upper, bare.lower], [0, undefined, undefined]);
});

Deno.test("compareEnds() keeps the display step in its limits when the ends stand still", () => {
  const still = compareEnds(ends([0, 45, 90, 135], 0, 0), PLACES, 0.001, 1)!;
  near(still.upper, 0.001 * (1 - Math.sqrt(0.1)), 1e-12);
  equal(still.lower, 0);
});

Deno.test("compareEnds() is undefined where no set read both ends", () => {
  const cells = [{ sag: 0.7, readings: 1 }, {
    sag: 0.7,
    readings: 1,
    plus: 0.7,
  }];
  const sets = [{ label: "", zeroing: "", cells }];
  equal(compareEnds(sets, PLACES, 0, 1), undefined);
});

Deno.test("compareEnds() carries unknown drift where one end was always read later", () => {
  const errors = [1e-3, -1e-3, 1e-3, -1e-3];
  const plain = ends([0, 45, 90, 135], 0, 0, errors);
  const late = plain.map((set) => ({
    ...set,
    cells: set.cells.map((cell) => cell && { ...cell, lag: 0.5 }),
  }));
  const drift = { standardError: mm(0.01), dof: 5, rounding: 0 };
  const [without, found] = [plain, late].map((sets) =>
    compareEnds(sets, PLACES, 0, 1, "any diameter", drift)!.upper!
  );
  ok(found > without + 0.005, `${found}, ${without}`);
});

Deno.test("compareEnds() compares the ends of a ring left as it is, one foot out here and two there", () => {
  const [out, feet] = ["foot out", "feet out"] as const;
  const places: Place[] = [out, feet].map((foot) => ({
    id: foot,
    label: foot,
    distance: mm(60),
    foot,
  }));
  const sets = [0, 60, 120].map((diameterDegrees, k) => ({
    label: "",
    zeroing: `${k}`,
    diameterDegrees,
    cells: [
      { sag: 0.703, readings: 1, plus: 0.703, progress: 0.5 },
      { sag: 0.7, readings: 1, minus: 0.7, progress: 0.75 },
    ],
  }));
  const found = compareEnds(sets, places, 0, 1)!;
  equal(found.pairs, 3);
  // By hand: 3 µm on each diameter, cosines 1, 1/2, -1/2 and sines 0, 0.866,
  // 0.866: two thirds of (3, 5.196) is (2, 3.464) µm, of length 4.
  near(found.amplitude, 0.004, 1e-12);
});
