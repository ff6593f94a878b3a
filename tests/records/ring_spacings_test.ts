import { deepEqual, equal, match } from "node:assert/strict";
import { circleRadiusFromSpacings } from "sagbook/geometry/ring_from_spacings.ts";
import { readRingSpacings } from "sagbook/records/ring_spacings.ts";
import { caseBytes } from "./_bench_of_cases.ts";

Deno.test("readRingSpacings() gives the ring of a caliper's file", async () => {
  const { spacings, problems } = await readRingSpacings(
    await caseBytes("G09-foot-spacing.csv"),
    "ring.csv",
  );
  deepEqual(problems, []);
  deepEqual(spacings, [103, 104, 104.8]);
  // Heron by hand: K = 4676.7593 mm², r = ABC / 4K.
  equal(circleRadiusFromSpacings(spacings!).toFixed(6), "60.010443");
});

Deno.test("readRingSpacings() wants three, each with a unit", async () => {
  const read = async (rows: string, unit?: "mm" | "in") =>
    await readRingSpacings(`pair,spacing\n${rows}`, "ring.csv", unit);
  equal((await read("A-B,103\nB-C,104\n", "mm")).problems[0].code, "not-three");
  match(
    (await read("A-B,103\nB-C,104\nC-A,105\n")).problems[0].message,
    /names no unit/,
  );
  deepEqual((await read("A-B,4\nB-C,4\nC-A,4\n", "in")).spacings, [
    101.6,
    101.6,
    101.6,
  ]);
  const blank = await read("A-B,103\nB-C,\nC-A,105\n", "mm");
  equal(blank.problems[0].code, "blank-cell");
  equal(blank.spacings, undefined);
});
