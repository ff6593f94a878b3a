import { deepEqual, equal, ok } from "node:assert/strict";
import { compareZones } from "sagbook/zones/compare_zones.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { near, setsOf } from "./_session.ts";

Deno.test("compareZones() leaves out a pair that no set read together", () => {
  const rows = [[715, 714, undefined], [716, 714, undefined], [
    715,
    undefined,
    713,
  ], [716, undefined, 713]];
  const found = compareZones(setsOf(rows), 3, 0.001, "any diameter");
  deepEqual(found.map(({ first, second, sets }) => [first, second, sets]), [
    [0, 1, 2],
    [0, 2, 2],
  ]);
  near(found[0].mean, 0.0015, 1e-12);
});

Deno.test("compareZones() widens the simultaneous interval alone for a further statement", () => {
  const sets = setsOf([[715, 714], [716, 714], [714, 715]]);
  const [alone] = compareZones(sets, 2, 0, "any diameter");
  const [shared] = compareZones(sets, 2, 0, "any diameter", 1);
  deepEqual(alone.interval95, shared.interval95);
  deepEqual(alone.interval95, alone.simultaneous95);
  ok(shared.simultaneous95!.high > alone.simultaneous95!.high);
});

Deno.test("compareZones() carries unknown drift to places read apart, and none to places read at once", () => {
  const times = [0.2, 0.8, 0.2];
  const sets = setsOf([[715, 714, 716], [716, 715, 715], [714, 715, 716]])
    .map((set) => ({
      ...set,
      cells: set.cells.map((cell, place) => ({
        ...cell!,
        progress: times[place],
      })),
    }));
  const drift = { standardError: mm(0.01), dof: 5, rounding: 0 };
  const without = compareZones(sets, 3, 0, "any diameter");
  const found = compareZones(sets, 3, 0, "any diameter", 0, drift);
  const width = (k: number, list = found): number =>
    list[k].interval95!.high - list[k].mean;
  // t with 5 degrees of freedom at 2.5 %: 2.5706.
  const added = 0.6 * 2.5706 * 0.01;
  near(width(0), Math.hypot(width(0, without), added), 1e-6);
  equal(width(1), width(1, without));
  near(width(2), Math.hypot(width(2, without), added), 1e-6);
});
