import { deepEqual, equal, ok } from "node:assert/strict";
import fc from "fast-check";
import Papa from "papaparse";
import { cellOfCsv, csvText } from "sagbook/records/csv_text.ts";

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
