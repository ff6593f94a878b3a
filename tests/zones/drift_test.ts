import { deepEqual, equal, ok } from "node:assert/strict";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { correctDrift } from "sagbook/zones/drift.ts";
import { near, reading } from "./_session.ts";

const STEP = 0.001;

/** Readings of zeroings in µm: `f0` is a look at the flat, `c715` the centre. */
function table(
  zeroings: readonly string[],
  at?: (index: number, set: number) => string,
): Reading[] {
  const readings: Reading[] = [];
  zeroings.forEach((row, set) => {
    row.split(" ").forEach((word, index) => {
      const [letter, um] = [word[0], Number(word.slice(1))];
      const label = { f: "flat", c: "centre", h: "50%", e: "edge" }[letter]!;
      readings.push(reading({
        on: letter === "f" ? "flat" : "work",
        zone: { label, distance: mm(0) },
        sag: mm(um / 1000),
        order: readings.length,
        zeroing: `S1 / ${set + 1}`,
        ...(at === undefined ? {} : { takenAt: at(index, set) }),
      }));
    });
  });
  return readings;
}

const ums = (sag: readonly number[]): string[] =>
  sag.map((mm) => (1000 * mm).toFixed(3));

Deno.test("correctDrift() leaves readings alone where nobody looked back", () => {
  const readings = table(["f0 c715 e714", "c716 e714"]);
  const { sag, progress, drifts, left, carried } = correctDrift(readings, STEP);
  deepEqual(sag, readings.map((one) => one.sag));
  deepEqual(progress, [0, 0, 0, 0, 0]);
  deepEqual(drifts, []);
  equal(left, undefined);
  equal(carried, 0);
});

Deno.test("correctDrift() takes a clear move out in proportion to order, from where zero was pressed", () => {
  // By hand: pressed one step before the centre, 6 µm over 3 steps.
  const { sag, drifts, progress } = correctDrift(table(["c715 e714 f6"]), STEP);
  deepEqual(ums(sag), ["713.000", "710.000", "6.000"]);
  near(progress[0], 1 / 3, 1e-15);
  equal(drifts[0].treatment, "corrected");
  equal(drifts[0].by, "order");
  equal(drifts[0].steps, 3);
});

Deno.test("correctDrift() goes by the clock where it tells readings apart, and by order where it does not", () => {
  // Opening look, a quarter of an hour's wait, then the work.
  const minutes = [0, 15, 18, 20];
  const clock = table(
    ["f0 c715 e714 f8"],
    (index) => `2024-01-01T19:${String(minutes[index]).padStart(2, "0")}`,
  );
  const found = correctDrift(clock, STEP);
  equal(found.drifts[0].by, "time");
  deepEqual(ums(found.sag), ["0.000", "709.000", "706.800", "8.000"]);
  const stopped = table(["f0 c715 e714 f8"], () => "2024-01-01T19:00");
  equal(correctDrift(stopped, STEP).drifts[0].by, "order");
});

Deno.test("correctDrift() follows looks in the middle of a set", () => {
  // By hand: 8 µm by the middle look, then nothing more.
  const { sag } = correctDrift(table(["f0 c715 f8 e714 f8"]), STEP);
  deepEqual(ums(sag), ["0.000", "711.000", "8.000", "706.000", "8.000"]);
});

Deno.test("correctDrift() never takes a move of one display step for one zeroing's own", () => {
  const single = correctDrift(table(["c715 c715 c715 f1"]), STEP);
  equal(single.drifts[0].treatment, "carried");
  // Three zeroings that stand still to the step and one that moved by one.
  const rows = ["c715 c715 f0", "c715 c715 f0", "c715 c715 f0", "c715 c715 f1"];
  const several = correctDrift(table(rows), STEP);
  deepEqual(several.drifts.map(({ treatment }) => treatment), [
    "carried",
    "carried",
    "carried",
    "carried",
  ]);
});

Deno.test("correctDrift() takes out the mean move that several zeroings share, and keeps its error", () => {
  const rows = ["c715 e714 f2", "c716 e714 f1", "c715 e713 f2", "c715 e714 f2"];
  const { sag, drifts, left } = correctDrift(table(rows), STEP);
  ok(drifts.every(({ treatment }) => treatment === "pooled"));
  // By hand: mean 1.75 µm; centre after one step of three.
  near(sag[0], 0.715 - 0.00175 / 3, 1e-12);
  near(left?.standardError, 0.00025, 1e-12);
  equal(left?.dof, 3);
  equal(left?.rounding, 1);
});

Deno.test("correctDrift() carries moves of either sign as uncertainty, larger than none", () => {
  const rows = [
    "c715 e714 f2",
    "c716 e714 f-1",
    "c715 e713 f-2",
    "c715 e714 f0",
  ];
  const readings = table(rows);
  const { sag, drifts, carried, left } = correctDrift(readings, STEP);
  deepEqual(sag, readings.map((one) => one.sag));
  ok(drifts.every(({ treatment }) => treatment === "carried"));
  ok(left!.standardError > 0.0008, `${left!.standardError}`);
  ok(carried > 0.0004, `${carried}`);
});

Deno.test("correctDrift() corrects the one zeroing that ran away and leaves the others", () => {
  const rows = [
    "c715 e714 f1",
    "c716 e714 f-1",
    "c725 e733 f30",
    "c715 e714 f0",
  ];
  const { sag, drifts } = correctDrift(table(rows), STEP);
  deepEqual(drifts.map(({ treatment }) => treatment), [
    "carried",
    "carried",
    "corrected",
    "carried",
  ]);
  near(sag[6], 0.715, 1e-12);
  near(sag[7], 0.713, 1e-12);
});

Deno.test("correctDrift() keeps the looks' uncertainty of a single zeroing that it corrected", () => {
  const { carried, drifts, left } = correctDrift(
    table(["f0 c715 c716 c717 c718 f5"]),
    STEP,
  );
  near(left?.standardError, drifts[0].uncertainty, 1e-15);
  // The work was read half way between the looks on average.
  near(carried, drifts[0].uncertainty / 2, 1e-12);
});
