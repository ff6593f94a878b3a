import { deepEqual, equal, match } from "node:assert/strict";
import fc from "fast-check";
import type { Bench } from "sagbook/records/bench.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { tidyText, writeTidy } from "sagbook/records/write_tidy.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { BENCH, PIECE, ring, scan } from "./_scan_of_text.ts";
import { caseBytes } from "./_bench_of_cases.ts";

const CONTEXT = { piece: PIECE, bench: BENCH };

/** A reading without what a copy cannot keep: its file and its line. */
function placeless(reading: Reading): Omit<Reading, "file" | "line"> {
  const { file: _file, line: _line, ...rest } = reading;
  return rest;
}

Deno.test("tidyText() reads back to the same readings for every hard input", async () => {
  const names = [...Deno.readDirSync(new URL("../cases", import.meta.url))]
    .map((entry) => entry.name).filter((name) =>
      /^[ABCG].*\.(?:csv|txt)$/.test(name)
    );
  let compared = 0;
  for (const name of names) {
    const { readings } = await scan(await caseBytes(name));
    const again = await scan(tidyText(readings, CONTEXT));
    equal(again.account.reported, 0, name);
    deepEqual(
      again.readings.map((one) => ({ ...placeless(one), note: one.note })),
      readings.map((one) => ({
        ...placeless(one),
        note: one.note ?? "",
      })),
      name,
    );
    compared += readings.length;
  }
  equal(compared > 80, true);
});

const text = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 10 }),
  fc.constantFrom("=1+1", "-x", "'", "#1", 'a "b", c', "two\nlines", "@"),
).map((one) => one.trim().replaceAll("\r", " ").replaceAll("\u0000", ""));
const word = text.map((one) => one === "" ? "S" : one);
const row = fc.record({
  session: word,
  zeroing: word,
  operator: text,
  grade: text,
  note: text,
  zone: fc.constantFrom(
    "centre",
    "edge",
    "-edge",
    "50% reach",
    "-20%",
    "30 mm",
    "flat",
    "-0.1",
  ),
  amount: fc.double({ min: -2, max: 2, noNaN: true, noDefaultInfinity: true }),
  unit: fc.constantFrom("mm", "in", "um", "thou", "uin", "cm"),
  before: fc.option(fc.integer({ min: -9, max: 9 }), { nil: undefined }),
  diameter: fc.option(fc.integer({ min: 0, max: 179 }), { nil: undefined }),
  foot: fc.constantFrom("", "foot out", "feet out", "30", "unknown"),
});

Deno.test("tidyText() reads back equal whatever stands in the cells", async () => {
  const gauges: Bench[] = [
    BENCH,
    { ...BENCH, gauge: { ...BENCH.gauge, countsUpOn: "convex" } },
    { ...BENCH, gauge: { ...BENCH.gauge, tiltDegrees: 2 } },
    {
      ...BENCH,
      rings: [{
        ...ring("=ring", 50),
        foot: { kind: "feet out" },
      }],
    },
  ];
  await fc.assert(
    fc.asyncProperty(
      fc.array(row, { minLength: 1, maxLength: 8 }),
      fc.constantFrom(...gauges),
      async (rows, bench) => {
        const quote = (cell: string) =>
          `"${
            // A plain file has its own apostrophe before such a text.
            /^[\s]*[=+\-@|#']/.test(cell)
              ? `'${cell.replaceAll('"', '""')}`
              : cell.replaceAll('"', '""')}"`;
        const lines = rows.map((one) =>
          [
            quote(one.session),
            quote(one.zeroing),
            quote(one.operator),
            quote(one.grade),
            quote(one.note),
            one.zone,
            String(one.amount),
            one.unit,
            one.before ?? "",
            one.diameter ?? "",
            one.foot,
          ].join(",")
        );
        const typed = [
          "session,zeroing,operator,grade,note,zone,reading,unit,zero_before,diameter_deg,foot_deg",
          ...lines,
        ].join("\n");
        const first = await scan(typed, { bench });
        const copy = tidyText(first.readings, { piece: PIECE, bench });
        const again = await scan(copy, { bench });
        equal(again.account.reported, 0);
        deepEqual(
          again.readings.map(placeless),
          first.readings.map(placeless),
        );
      },
    ),
    { seed: 17, numRuns: 300 },
  );
});

Deno.test("tidyText() gives each cell its unit where a line has two", async () => {
  const { readings } = await scan(
    "session,zeroing,zone,zero_before,reading\nS1,1,centre,0.00005 in,0.715 mm\n",
  );
  const copy = tidyText(readings, CONTEXT);
  match(copy, /,0\.00005 in,|,0\.00005 in/);
  const again = await scan(copy);
  deepEqual(again.readings.map((one) => one.zeroBefore), [
    readings[0].zeroBefore,
  ]);
});

Deno.test("tidyText() writes a reading that was not typed from its sag", async () => {
  const { readings } = await scan(
    "session,zeroing,zone,reading\nS1,1,centre,0.715\n",
  );
  const { shown: _shown, ...bare } = readings[0];
  const again = await scan(
    tidyText([{ ...bare, sag: mm(0.7151) }], CONTEXT),
  );
  equal(again.readings[0].sag, 0.7151);
});

Deno.test("writeTidy() writes the same text to a file", async () => {
  const { readings } = await scan(
    "session,zeroing,zone,reading\nS1,1,centre,0.715\n",
  );
  const path = await Deno.makeTempFile();
  await writeTidy(path, readings, CONTEXT);
  equal(await Deno.readTextFile(path), tidyText(readings, CONTEXT));
  await Deno.remove(path);
});
