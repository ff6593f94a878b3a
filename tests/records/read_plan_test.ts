import { deepEqual, equal } from "node:assert/strict";
import { readPlan } from "sagbook/records/read_plan.ts";
import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
import { benchSheetCsv } from "sagbook/repeatability/bench_sheet_csv.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { BENCH, PIECE } from "./_scan_of_text.ts";

const context = { file: "plan.csv", piece: PIECE, bench: BENCH };

Deno.test("readPlan() reads every line of a bench sheet that the planner wrote, in both units", async () => {
  for (const unit of ["mm", "in"] as const) {
    const sheet = writeBenchSheet({
      session: "S1",
      zones: [{ label: "centre", offset: 0 }, { label: "edge", offset: 40 }],
      size: { zeroings: 2, diameters: 2, repeats: 1 },
      foot: { kind: "feet out" },
      unit,
      seed: 1,
    });
    const { readings, problems } = await readPlan(
      benchSheetCsv(sheet),
      context,
    );
    deepEqual(problems, []);
    const steps = sheet.rows.filter(({ act }) => act !== "zero");
    deepEqual(
      readings.map(({ cells, place }) => [
        cells.note,
        cells.zeroing,
        place.on,
        Number(place.offset.toFixed(2)),
        place.diameterDegrees,
      ]),
      steps.map(({ number, zeroing, act, offset, diameterDegrees }) => [
        `step ${number}`,
        zeroing,
        act === "read" ? "work" : "flat",
        offset,
        diameterDegrees,
      ]),
    );
  }
});

Deno.test("readPlan() refuses places that cannot be read, by their own line, and keeps the rest", async () => {
  const { readings, problems } = await readPlan(
    "# for Sunday\nsession;zeroing;zone;offset;reading\n\nS1;1;centre;;\nS1;1;;70;0.6\nS1;1;edge;;\n",
    context,
  );
  deepEqual(readings.map(({ line }) => line), [4, 6]);
  deepEqual(problems.map(({ code, line }) => [code, line]), [[
    "beyond-reach",
    5,
  ]]);
});

Deno.test("readPlan() says what is no plan", async () => {
  const sheet = await readPlan("diameter,centre,edge\n0,,\n", context);
  deepEqual(sheet.problems.map(({ code }) => code), ["no-plan"]);
  const none = await readPlan("nothing here\n", context);
  equal(none.problems[0].code, "no-header");
  equal(none.readings.length, 0);
});

Deno.test("readPlan() needs no unit in a plan, whatever the gauge shows", async () => {
  const set = { circleRadius: mm(60), ballRadius: mm(3) };
  for (
    const shows of [
      { kind: "sag" },
      { kind: "radius", ...set },
      { kind: "power", index: 1.53, ...set },
    ] as const
  ) {
    const { unit: _, ...gauge } = BENCH.gauge;
    const bench = { ...BENCH, gauge: { ...gauge, shows } };
    const { readings, problems } = await readPlan(
      "session,zeroing,zone\nS1,1,centre\n",
      { ...context, bench },
    );
    // A table without a column for readings is one with none filled in.
    deepEqual([readings.length, problems.map(({ code }) => code)], [0, [
      "missing-column",
    ]]);
    const blank = await readPlan(
      "session,zeroing,zone,reading\nS1,1,centre,\n",
      { ...context, bench },
    );
    deepEqual([blank.readings.length, blank.problems], [1, []]);
  }
});
