import { deepEqual, equal, ok } from "node:assert/strict";
import fc from "fast-check";
import Papa from "papaparse";
import { cellOfCsv, csvText } from "sagbook/records/csv_text.ts";
import { tidyText } from "sagbook/records/write_tidy.ts";
import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
import { benchSheetCsv } from "sagbook/repeatability/bench_sheet_csv.ts";
import { BENCH, PIECE, ring, scan } from "./_scan_of_text.ts";

Deno.test("csvText() makes every start of a formula harmless", () => {
  const starts = [
    "=1+1",
    "+cmd|' /C calc'!A0",
    "-2+3",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    " =1",
    "\u00a0=1",
    "＝1",
    "#comment",
    "|x",
  ];
  for (const text of starts) {
    const [[cell]] = Papa.parse<string[]>(csvText([[text]]), {
      delimiter: ",",
      newline: "\n",
    }).data;
    ok(cell.startsWith("'"), JSON.stringify(text));
    equal(cellOfCsv(cell), text);
  }
});

Deno.test("csvText() leaves numbers alone, with their signs", () => {
  equal(
    csvText([["-0.715", "+1", "1e-7", "-.5"]]),
    "-0.715,+1,1e-7,-.5\n",
  );
});

Deno.test("csvText() leaves signed lengths alone, and no text that only looks like one", () => {
  const lengths = ["+0.364 mm", "-0.364mm", "+000.364 mm", "-.5 in", "-14 µm"];
  for (const text of lengths) equal(csvText([[text]]), `${text}\n`);
  equal(csvText([["-0,5 mm"]]), '"-0,5 mm"\n');
  for (const text of ["-1/2", "-1+A1 mm", "+1 mm|x", "+1 cmd", "-mm", "+1*2"]) {
    ok(csvText([[text]]).startsWith("'"), text);
  }
});

Deno.test("csvText() comes back whole through a CSV parser and cellOfCsv()", () => {
  const text = fc.oneof(
    fc.string({ unit: "grapheme", maxLength: 12 }),
    fc.string({
      unit: fc.constantFrom("'", '"', ",", "\n", "=", "-", " ", "1", "#", "\t"),
      maxLength: 8,
    }),
  );
  fc.assert(
    fc.property(
      fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), {
        minLength: 1,
        maxLength: 5,
      }),
      (rows) => {
        const { data } = Papa.parse<string[]>(csvText(rows).slice(0, -1), {
          delimiter: ",",
          newline: "\n",
        });
        deepEqual(data.map((row) => row.map(cellOfCsv)), rows);
      },
    ),
    { seed: 13, numRuns: 1_000 },
  );
});

/** Cells of a file that a spreadsheet would take for a formula. */
function formulas(file: string): string[] {
  const { data } = Papa.parse<string[]>(file.trimEnd(), { delimiter: "," });
  return data.flat().filter((cell) =>
    /^[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20\t\r]/.test(cell) &&
    !/^[-+]?[\d.]+(?:e[-+]?\d+)?(?: \S+)?$/i.test(cell)
  );
}

Deno.test("every file of readings, sheet and plan that is written starts no formula", async () => {
  const starts = ["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1", " =1", "＝1"];
  for (const start of starts) {
    const text = csvText([
      [
        "session",
        "zeroing",
        "ring",
        "zone",
        "offset",
        "reading",
        "note",
        start,
      ],
      [
        start,
        start,
        `${start} ring`,
        `${start} zone`,
        "1",
        "0.7",
        start,
        start,
      ],
    ]);
    const bench = { ...BENCH, rings: [ring(`${start} ring`, 60)] };
    const { readings, account } = await scan(text, { bench });
    equal(account.used, 1, start);
    equal(readings[0].note, start.trim() === start ? start : readings[0].note);
    deepEqual(formulas(text), [], start);
    deepEqual(formulas(tidyText(readings, { piece: PIECE, bench })), [], start);
    const sheet = writeBenchSheet({
      session: start,
      zones: [
        { label: `${start} zone`, offset: 1 },
        { label: start, offset: -2 },
      ],
      operators: [`${start} hand`, start],
      ring: `${start} ring`,
      size: { zeroings: 2, diameters: 1, repeats: 1 },
      foot: { kind: "foot out" },
      seed: 1,
    });
    deepEqual(formulas(benchSheetCsv(sheet)), [], start);
  }
});

Deno.test("csvText() with decimal commas parts cells by semicolons and keeps numbers as they are", () => {
  equal(
    csvText([["-0,715", "+1,5e-3", "-1,2,3", "a;b", "=1", "-0.715"]], {
      decimalComma: true,
    }),
    `-0,715;+1,5e-3;"'-1,2,3";"a;b";'=1;'-0.715\n`,
  );
});
