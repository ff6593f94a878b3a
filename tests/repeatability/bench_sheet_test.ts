import { deepEqual, equal, notDeepEqual, ok, throws } from "node:assert/strict";
import {
  type BenchSheetOrder,
  writeBenchSheet,
} from "sagbook/repeatability/bench_sheet.ts";
import {
  benchSheetCsv,
  benchSheetTable,
} from "sagbook/repeatability/bench_sheet_csv.ts";
import { readSheet } from "./_readings.ts";

const ORDER: BenchSheetOrder = {
  session: 'S7, after "120"',
  zones: [
    { label: "centre", offset: 0 },
    { label: "50%", offset: 20 },
    { label: "edge", offset: -40.25 },
  ],
  size: { zeroings: 6, diameters: 3, repeats: 2 },
  foot: { kind: "angle", degrees: 0 },
  seed: 4,
};

Deno.test("writeBenchSheet() looks at the flat before and after each set and numbers every step", () => {
  const { rows } = writeBenchSheet(ORDER);
  deepEqual(rows.map(({ number }) => number), rows.map((_, k) => k + 1));
  for (let zeroing = 1; zeroing <= 6; zeroing++) {
    const set = rows.filter((row) => row.zeroing === `${zeroing}`);
    deepEqual(set.map(({ act }) => act), [
      "zero",
      "look",
      ...Array(6).fill("read"),
      "look",
    ]);
    equal(
      new Set(
        set.filter(({ act }) => act === "read").map(({ diameterDegrees }) =>
          diameterDegrees
        ),
      ).size,
      1,
    );
    for (const repeat of [1, 2]) {
      deepEqual(
        set.filter((row) => row.act === "read" && row.repeat === repeat).map((
          { zone },
        ) => zone).sort(),
        ["50%", "centre", "edge"],
      );
    }
  }
});

Deno.test("writeBenchSheet() uses every diameter equally often, in an order of chance that the seed fixes", () => {
  const turns = (seed: number) =>
    writeBenchSheet({ ...ORDER, seed }).rows.filter(({ act, repeat, zone }) =>
      act === "read" && repeat === 1 && zone === "centre"
    ).map(({ diameterDegrees }) => diameterDegrees);
  deepEqual([...turns(4)].sort(), [0, 0, 120, 120, 60, 60]);
  deepEqual(turns(4), turns(4));
  ok(
    [1, 2, 3, 4, 5].some((seed) =>
      JSON.stringify(turns(seed)) !== JSON.stringify(turns(6))
    ),
  );
  const orders = writeBenchSheet(ORDER).rows.filter(({ act }) => act === "read")
    .map(({ zone }) => zone);
  notDeepEqual(orders.slice(0, 12), orders.slice(12, 24));
});

Deno.test("writeBenchSheet() lets operators take turns, each with all zeroings", () => {
  const { rows } = writeBenchSheet({ ...ORDER, operators: ["A", "B", "C"] });
  const sets = [
    ...new Map(rows.map(({ zeroing, operator }) => [zeroing, operator]))
      .values(),
  ];
  equal(sets.length, 18);
  for (let round = 0; round < 18; round += 3) {
    deepEqual(sets.slice(round, round + 3).sort(), ["A", "B", "C"]);
  }
});

Deno.test("writeBenchSheet() refuses a size that cannot be done", () => {
  const size = (changes: Partial<BenchSheetOrder["size"]>) => () =>
    writeBenchSheet({ ...ORDER, size: { ...ORDER.size, ...changes } });
  throws(size({ repeats: 0 }), {
    name: "RangeError",
    message:
      "Cannot write a bench sheet as the number of repeats must be a whole number of at least 1: current value is 0",
  });
  throws(size({ diameters: 7 }), {
    name: "RangeError",
    message:
      "Cannot write a bench sheet as there must be a zeroing for each of 7 diameters: current value is 6 zeroings",
  });
});

Deno.test("benchSheetCsv() comes back as the readings it asked for once it is filled in", async () => {
  const sheet = writeBenchSheet({ ...ORDER, operators: ["A; B", "=C"] });
  const blank = benchSheetCsv(sheet);
  const filled = blank.replaceAll(/,,mm,/g, () => ",0.715,mm,");
  const folder = await readSheet(filled);
  const expected = sheet.rows.filter(({ act }) => act !== "zero");
  equal(folder.lines.used, expected.length);
  deepEqual(
    folder.problems.filter(({ severity }) => severity === "refused"),
    [],
  );
  deepEqual(
    folder.readings.map((
      { zone, offset, zeroing, operator, on, foot, diameterDegrees, session },
    ) => [
      zone.label,
      offset,
      zeroing,
      operator,
      on,
      on === "work" ? foot : 0,
      on === "work" ? diameterDegrees : 0,
      session,
    ]),
    expected.map((row) => [
      row.zone,
      row.offset,
      `${ORDER.session} / ${row.zeroing}`,
      row.operator,
      row.act === "read" ? "work" : "flat",
      row.act === "read" ? ORDER.foot : 0,
      row.act === "read" ? row.diameterDegrees : 0,
      ORDER.session,
    ]),
  );
});

Deno.test("benchSheetCsv() left blank is reported line by line, never read as noughts", async () => {
  const sheet = writeBenchSheet(ORDER);
  const folder = await readSheet(benchSheetCsv(sheet));
  equal(folder.readings.length, 0);
  equal(folder.lines.used + folder.lines.reported, folder.lines.read);
});

Deno.test("benchSheetTable() prints one row a step, the operator only where one is named", () => {
  const table = benchSheetTable(writeBenchSheet(ORDER));
  equal(table.rows.length, 6 * 9);
  ok(table.rows.every((row) => row.length === table.columns.length));
  equal(table.columns.includes("operator"), false);
  const named = benchSheetTable(
    writeBenchSheet({ ...ORDER, operators: ["A"], unit: "in" }),
  );
  ok(named.columns.includes("operator"));
  ok(named.rows.some((row) => row.includes("-1.5846 in")));
});
