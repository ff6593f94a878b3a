import { deepEqual, equal } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { Place } from "sagbook/zones/place.ts";
import { setTable } from "sagbook/zones/set_table.ts";
import { near } from "./_session.ts";

/** zeroing, diameter, offset, sag in µm. */
type Row = readonly [string, number | undefined, number, number];

const DISTANCES = [0, 30, 60];

function tableOf(rows: readonly Row[], progress?: readonly number[]) {
  const places = DISTANCES.map(() => ({})) as unknown as Place[];
  return setTable(
    rows.map(([zeroing, diameterDegrees, offset]) => ({
      zeroing,
      offset: mm(offset),
      ...(diameterDegrees === undefined ? {} : { diameterDegrees }),
    })),
    rows.map(([, , , um]) => um / 1000),
    places,
    rows.map(([, , offset]) => DISTANCES.indexOf(Math.abs(offset))),
    progress,
  );
}

Deno.test("setTable() counts both ends of a diameter equally, however often each was read", () => {
  const [set] = tableOf([
    ["1", 0, 60, 700],
    ["1", 0, 60, 702],
    ["1", 0, -60, 711],
  ]);
  const cell = set.cells[2]!;
  near(cell.sag, 0.706, 1e-12);
  near(cell.plus, 0.701, 1e-12);
  near(cell.minus, 0.711, 1e-12);
  equal(cell.readings, 3);
  deepEqual(set.cells.slice(0, 2), [undefined, undefined]);
});

Deno.test("setTable() knows a diameter from both of its names and keeps its ends apart", () => {
  const [set] = tableOf([["1", 200, 60, 700], ["1", 20, 60, 710]]);
  equal(set.diameterDegrees, 20);
  near(set.cells[2]!.plus, 0.710, 1e-12);
  near(set.cells[2]!.minus, 0.700, 1e-12);
});

Deno.test("setTable() splits a zeroing by diameter where each stands on its own", () => {
  const sets = tableOf([
    ["1", 0, 0, 715],
    ["1", 0, 60, 700],
    ["1", 90, 0, 715],
    ["1", 90, 60, 702],
  ]);
  deepEqual(
    sets.map(({ label, diameterDegrees }) => [label, diameterDegrees]),
    [
      ["1 at 0°", 0],
      ["1 at 90°", 90],
    ],
  );
});

Deno.test("setTable() keeps a zeroing whole where diameters share the centre", () => {
  const sets = tableOf([
    ["1", 0, 0, 715],
    ["1", 0, 60, 700],
    ["1", 90, 60, 702],
  ]);
  equal(sets.length, 1);
  equal(sets[0].diameterDegrees, undefined);
  near(sets[0].cells[2]!.sag, 0.701, 1e-12);
  // The centre has no diameter of its own; the one off-centre diameter counts.
  const [one] = tableOf([["1", undefined, 0, 715], ["1", 40, 60, 700]]);
  equal(one.diameterDegrees, 40);
});

Deno.test("setTable() keeps how far between the looks each place and each end was read", () => {
  const [set] = tableOf([
    ["1", 0, 0, 715],
    ["1", 0, 60, 700],
    ["1", 0, -60, 700],
  ], [0.1, 0.4, 0.8]);
  near(set.cells[0]!.progress, 0.1, 1e-15);
  near(set.cells[2]!.progress, 0.6, 1e-15);
  near(set.cells[2]!.lag, -0.4, 1e-15);
  equal(tableOf([["1", 0, 60, 700]])[0].cells[2]!.progress, undefined);
});
