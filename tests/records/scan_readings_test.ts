import { deepEqual, equal, match, ok } from "node:assert/strict";
import fc from "fast-check";
import type { Bench } from "sagbook/records/bench.ts";
import { describeProblems } from "sagbook/records/describe_problem.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { BENCH, HEADER, PIECE, ring, scan } from "./_scan_of_text.ts";

const sags = (found: { readings: readonly { sag: number }[] }) =>
  found.readings.map((one) => Number(one.sag.toFixed(6)));

Deno.test("scanReadings() says plainly that a file is empty", async () => {
  for (const text of ["", "\n\n", "\ufeff  \r\n"]) {
    const found = await scan(text);
    deepEqual(found.of("warning"), ["- empty-file"]);
    equal(found.account.read, 0);
  }
});

Deno.test("scanReadings() names a missing column and the one that was likely meant", async () => {
  const found = await scan(
    "session,zeroing,zone,readin,unit\nS1,1,centre,0.715,mm\nS1,1,edge,0.7,mm\n",
  );
  equal(found.problems[0].message, "the header has no column reading");
  equal(found.problems[0].mend, "rename the column “readin” to reading");
  deepEqual(
    [found.account.read, found.account.used, found.account.reported],
    [2, 0, 2],
  );
});

Deno.test("scanReadings() refuses a file without a header and shows its first line", async () => {
  const found = await scan("0.715,0.716\n0.714,0.713\n");
  equal(found.problems[0].code, "no-header");
  equal(found.problems[0].value, "0.715,0.716");
  equal(found.account.reported, 2);
});

Deno.test("scanReadings() refuses a ring that the bench does not have", async () => {
  const bench = { ...BENCH, rings: [ring("ring 120", 60), ring("B", 25)] };
  const found = await scan(
    "session,zeroing,ring,zone,reading\nS1,1,rnig 120,centre,0.715\nS1,1,,centre,0.715\nS1,1,RING 120,centre,0.715\n",
    { bench },
  );
  deepEqual(found.of("refused"), ["2 unknown-ring", "3 no-ring"]);
  equal(found.problems[0].mend, "did you mean ring 120?");
  equal(found.readings[0].ring, "ring 120");
});

Deno.test("scanReadings() turns a reading round by the surface the gauge counts up on", async () => {
  const text = `${HEADER}\nS1,1,centre,-0.715,mm\n`;
  const bench = (countsUpOn: "concave" | "convex"): Bench => ({
    ...BENCH,
    gauge: { ...BENCH.gauge, countsUpOn },
  });
  deepEqual(sags(await scan(text, { bench: bench("convex") })), [0.715]);
  const against = await scan(text, { bench: bench("concave") });
  deepEqual(sags(against), [-0.715]);
  deepEqual(against.of("warning"), ["2 negative-sag"]);
  match(against.problems[0].mend ?? "", /"counts_up_on": "convex"/);
});

Deno.test("scanReadings() reads headers in any case, order and spacing", async () => {
  const found = await scan(
    " Reading (mm) ; ZONE; Zeroing ;Session;Diameter °; Remarks\n0,715;Centre; 1 ;S1;60°;dry\n",
  );
  deepEqual(sags(found), [0.715]);
  equal(found.readings[0].diameterDegrees, 60);
  equal(found.readings[0].note, "dry");
  equal(found.readings[0].zeroing, "S1 / 1");
});

Deno.test("scanReadings() refuses a decimal comma that a comma file splits, and says why", async () => {
  const found = await scan(
    "session,zeroing,zone,reading\nS1,1,centre,0,715\nS1,1,centre,0.715\n",
  );
  deepEqual(found.of("refused"), ["2 too-many-cells"]);
  match(found.problems[0].mend ?? "", /decimal comma/);
  equal(found.account.used, 1);
});

Deno.test("scanReadings() asks about 1,234 and 1.234 unless the file or the user settles it", async () => {
  const of = async (header: string, ...rows: string[]) =>
    await scan([header, ...rows].join("\n"));
  const comma = await of(
    "session,zeroing,zone,reading,unit",
    'S1,1,centre,"1,234",um',
    "S1,1,centre,1.234,mm",
  );
  deepEqual(comma.of("refused"), ["2 ambiguous-number"]);
  match(comma.problems[0].message, /1\.234 µm or 1234 µm/);
  const semicolon = "session;zeroing;zone;reading;unit";
  const lone = await of(semicolon, "S1;1;centre;1.234;mm");
  deepEqual(lone.of("refused"), ["2 ambiguous-number"]);
  const shown = await of(
    semicolon,
    "S1;1;centre;1.234;mm",
    "S1;1;centre;0.715;mm",
  );
  deepEqual(sags(shown), [1.234, 0.715]);
  const mixed = await of(
    semicolon,
    "S1;1;centre;1.234;mm",
    "S1;1;centre;0.71;mm",
    "S1;1;centre;0,72;mm",
  );
  deepEqual(mixed.of("refused"), ["2 ambiguous-number"]);
  const stated = await scan(`${semicolon}\nS1;1;centre;1.234;um\n`, {
    bench: { ...BENCH, decimalMark: "comma" },
  });
  deepEqual(sags(stated), [1.234]);
  equal(stated.readings[0].shown?.amount, 1234);
});

Deno.test("scanReadings() reads bench sheets with zones on either side, settings and no zeroing", async () => {
  const found = await scan(
    "# session: third wet\n# grade: 9 micron\n# foot: feet out\ndiameter,-edge,-50 %,centre,50 %,edge\n0,0.71,0.712,0.715,0.713,0.711\n60,,,0.716,,\n",
    { file: "sheets/evening.csv" },
  );
  const first = found.readings.slice(0, 5);
  equal(found.account.layout, "sheet");
  deepEqual(first.map((one) => one.zone.label), [
    "edge",
    "50%",
    "centre",
    "50%",
    "edge",
  ]);
  deepEqual(first.map((one) => Math.sign(one.offset)), [-1, -1, 0, 1, 1]);
  equal(first[1].offset, -52.5);
  equal(first[4].offset, -first[0].offset);
  deepEqual(new Set(first.map((one) => one.zeroing)).size, 1);
  equal(found.readings[5].zeroing, "third wet / row 2");
  equal(found.readings[5].grade, "9 micron");
});

Deno.test("scanReadings() takes a sheet's session from the file's name and passes over rows to fill in", async () => {
  const found = await scan(
    "zeroing,diameter_deg,centre,edge\n1,0,0.715,\n2,60,,\n",
    { file: "sheets/2031-05-17.csv" },
  );
  equal(found.readings[0].session, "2031-05-17");
  deepEqual(found.of("note"), ["2 unit-assumed", "3 no-reading-yet"]);
  deepEqual([found.account.read, found.account.used], [1, 1]);
});

Deno.test("scanReadings() lets the offset win and asks about an offset in micrometres", async () => {
  const found = await scan(
    "session,zeroing,zone,offset,reading,unit\nS1,1,50%,40,0.713,mm\nS1,1,far,-1.5,0.0281,in\nS1,1,,40,715,um\nS1,1,,40 mm,715,um\nS1,1,40 mm,,0.713,mm\n",
  );
  deepEqual(found.readings.map((one) => [one.zone.label, one.offset]), [
    ["50%", 40],
    ["far", -38.1],
    ["40 mm", 40],
    ["40 mm", 40],
  ]);
  deepEqual(found.of("refused"), ["4 no-place"]);
  match(found.problems[0].message, /40 µm or 40 mm/);
  ok(found.of("note").includes("2 offset-wins"));
});

Deno.test("scanReadings() takes edge for the reach in the feet's direction", async () => {
  const found = await scan(
    "session,zeroing,diameter_deg,foot_deg,zone,reading\nS1,1,0,foot out,edge,0.715\nS1,1,0,feet out,edge,0.715\nS1,1,60,60,edge,0.715\nS1,1,60,60,-edge,0.715\nS1,1,0,,edge,0.715\nS1,1,0,sideways,edge,0.715\n",
  );
  // By hand: contact 60 · 2520/2517; usable 103; one foot out 103 − 60.0715.
  const contact = 60 * 2520 / 2517;
  const near = 103 - contact;
  // Two feet out: c² + c·contact + contact² = 103².
  const far = (-contact + Math.sqrt(4 * 103 ** 2 - 3 * contact ** 2)) / 2;
  const expected = [near, far, near, -far, near];
  found.readings.forEach((one, i) => {
    ok(Math.abs(one.offset - expected[i]) < 1e-9, `${i}: ${one.offset}`);
  });
  deepEqual(found.of("refused"), ["7 not-a-foot-direction"]);
});

Deno.test("scanReadings() refuses names of places that are none", async () => {
  const zones = ["somewhere", "50", "150%", "1.5", ""];
  const found = await scan(
    `${HEADER}\n${zones.map((zone) => `S1,1,${zone},0.715,mm`).join("\n")}\n`,
  );
  equal(found.account.reported, zones.length);
  deepEqual(new Set(found.problems.map((one) => one.code)).size, 1);
  match(found.problems[1].mend ?? "", /write 50% for a percentage/);
});

Deno.test("scanReadings() reports a line that the end of the file cuts off", async () => {
  const found = await scan(`${HEADER}\nS1,1,centre,0.715,mm\nS1,1,centre,0.7`);
  deepEqual(found.of("refused"), ["3 cut-off"]);
  equal(found.account.used, 1);
});

Deno.test("scanReadings() keeps a quote left open to its own line", async () => {
  const header = "session,zeroing,zone,reading,unit,note";
  const found = await scan(
    [
      header,
      'S1,1,centre,0.715,mm,"wiped',
      "S1,1,centre,0.716,mm,",
      'S1,1,centre,0.717,mm,"again"',
      'S1,1,centre,0.718,mm,"so ""they"" say"',
      'S1,1,centre,0.0281",in,',
      'S1,1,centre,"0.0282"",in,"x"',
    ].join("\n"),
  );
  deepEqual(found.readings.map((one) => one.line), [2, 3, 4, 5, 6, 7]);
  deepEqual(found.readings.map((one) => one.note), [
    '"wiped',
    "",
    "again",
    'so "they" say',
    "",
    "x",
  ]);
  equal(found.readings[5].shown?.amount, 0.0282);
});

Deno.test("scanReadings() keeps unknown columns and passes over repeated headers and comments", async () => {
  const found = await scan(
    `${HEADER},humidity\n# before lunch\nS1,1,centre,0.715,mm,45 %\n\n${HEADER},humidity\nS1,2,centre,0.716,mm,\n#S1,3,centre,0.716,mm,\n`,
  );
  deepEqual(found.readings.map((one) => one.other), [
    { humidity: "45 %" },
    {},
  ]);
  deepEqual(found.of("note"), [
    "1 unknown-column",
    "5 header-again",
    "7 comment-line",
  ]);
  equal(found.account.read, 2);
});

Deno.test("scanReadings() reads times and temperatures, and does without those it cannot", async () => {
  const found = await scan(
    "session,zeroing,zone,reading,taken_at,temperature_air,temperature_work,zero_before\nS1,1,centre,0.715,2031-05-17 14:20,20.5 °C,19,0.001\nS1,1,centre,0.715,3/4/2031,warm,,x\n",
  );
  const [first, second] = found.readings;
  equal(first.takenAt, "2031-05-17T14:20");
  deepEqual([first.temperatureAir, first.temperatureWork], [20.5, 19]);
  equal(first.zeroBefore, 0.001);
  deepEqual([second.takenAt, second.temperatureAir], [undefined, undefined]);
  deepEqual(found.of("warning").sort(), [
    "3 ambiguous-date",
    "3 not-a-number",
    "3 not-a-temperature",
  ]);
  equal(found.account.used, 2);
});

Deno.test("scanReadings() warns of a nought on the work, of a unit slip in a session and of another ring", async () => {
  const zero = await scan(
    `${HEADER}\nS1,1,centre,0,mm\nS1,1,centre,0.715,mm\n`,
  );
  deepEqual(zero.of("warning"), ["2 zero-reading"]);
  const slip = await scan(
    `${HEADER}\nS1,1,centre,0.715,mm\nS1,1,centre,0.716,mm\nS1,1,centre,0.0282,mm\n`,
  );
  deepEqual(slip.of("warning"), ["4 other-unit"]);
  const bench = { ...BENCH, rings: [ring("A", 60), ring("B", 40)] };
  const swapped = await scan(
    "session,zeroing,ring,zone,reading\nS1,1,B,centre,0.715\n",
    { bench },
  );
  const warning = swapped.problems.find((one) => one.severity === "warning");
  equal(warning?.code, "other-ring");
  match(warning?.message ?? "", /with ring A it would be 2520\.8/);
  const rough = await scan(`${HEADER}\nS1,1,centre,0.5,mm\n`, {
    piece: { ...PIECE, startingRadius: mm(20_000) },
  });
  deepEqual(rough.of("warning"), []);
});

Deno.test("scanReadings() answers files that are no text with what they are", async () => {
  const found = await scan(new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]));
  equal(found.problems[0].code, "not-text");
  match(found.problems[0].mend ?? "", /save the sheet as CSV/);
  const latin = await scan(
    new Uint8Array([
      ...new TextEncoder().encode(`${HEADER}\nS1,1,centre,715,`),
      0xb5,
      0x6d,
    ]),
  );
  deepEqual(sags(latin), [0.715]);
  deepEqual(latin.of("note"), ["- encoding"]);
});

Deno.test("scanReadings() tells 300,000 bad lines in under 10 kB", async () => {
  const bytes = await Deno.readFile(
    new URL("../cases/F02-not-numbers.csv", import.meta.url),
  );
  const [header, ...rows] = new TextDecoder().decode(bytes).trim().split("\n");
  const bad = rows.filter((_, i) => i !== 3 && i !== 9);
  equal(bad.length, 8);
  const lines = Array.from({ length: 300_000 }, (_, i) => bad[i % 8]);
  const { account, problems } = await scanReadings(
    [header, ...lines].join("\n"),
    { file: "readings.csv", piece: PIECE, bench: BENCH },
    () => {
      throw new Error("no line of these is a reading");
    },
  );
  deepEqual(
    [account.read, account.used, account.reported],
    [300_000, 0, 300_000],
  );
  const counted = problems.reduce((sum, one) => sum + (one.count ?? 1), 0);
  equal(counted, 300_000);
  const text = describeProblems(problems);
  ok(new TextEncoder().encode(text).length < 10_000);
  match(text, /line 2, column reading/);
  match(text, /more of this kind/);
});

const cell = fc.oneof(
  fc.constantFrom(
    "S1",
    "1",
    "centre",
    "edge",
    "50%",
    "0.715",
    "0,715",
    "1.430",
    "-0.7",
    "mm",
    "in",
    '"',
    '""',
    "",
    " ",
    "#",
    "\u0000",
    "A",
    "flat",
    "1e999",
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
);
const line = fc.array(cell, { maxLength: 9 });

Deno.test("scanReadings() reads any lines as used plus reported, every reading finite", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(
        HEADER,
        "session;zeroing;zone;offset;reading;unit;note",
        "zeroing\tdiameter\tcentre\t50%\tedge",
        "diameter,centre",
        "",
      ),
      fc.array(line, { maxLength: 12 }),
      fc.constantFrom(",", ";", "\t"),
      fc.constantFrom("\n", "\r\n", "\r"),
      async (header, lines, delimiter, end) => {
        const text = [header, ...lines.map((one) => one.join(delimiter))]
          .join(end);
        const { readings, account, problems } = await scan(text);
        equal(account.read, account.used + account.reported);
        equal(account.used, readings.length);
        const refused = problems.filter((one) => one.severity === "refused")
          .reduce((sum, one) => sum + (one.count ?? 1), 0);
        ok(refused >= account.reported);
        for (const one of readings) {
          ok(Number.isFinite(one.sag) && Number.isFinite(one.offset));
        }
      },
    ),
    { seed: 7, numRuns: 400 },
  );
});

Deno.test("scanReadings() loses no plain line whatever stands in its note", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.string({ unit: "grapheme", maxLength: 30 }), {
        minLength: 1,
        maxLength: 20,
      }),
      async (notes) => {
        const quoted = notes.map((note) =>
          `S1,1,centre,0.715,mm,"${note.replaceAll('"', '""')}"`
        );
        const { account } = await scan(
          [`${HEADER},note`, ...quoted].join("\n"),
        );
        equal(account.read, notes.length);
        equal(account.used, notes.length);
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});

Deno.test("scanReadings() turns any bytes into readings or typed problems", async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
      const { readings, account } = await scan(bytes);
      equal(account.read, account.used + account.reported);
      equal(account.used, readings.length);
    }),
    { seed: 5, numRuns: 400 },
  );
});

Deno.test("scanReadings() accounts for every line of mutated hard inputs", async () => {
  const names = [...Deno.readDirSync(new URL("../cases", import.meta.url))]
    .map((entry) => entry.name).filter((name) =>
      /^[ABCG].*\.(?:csv|txt)$/.test(name)
    ).sort();
  const files = names.map((name) =>
    Deno.readFileSync(new URL(`../cases/${name}`, import.meta.url))
  );
  await fc.assert(
    fc.asyncProperty(
      fc.nat(files.length - 1),
      fc.array(fc.tuple(fc.nat(400), fc.nat(255)), {
        minLength: 1,
        maxLength: 4,
      }),
      async (which, changes) => {
        const bytes = files[which].slice();
        for (const [at, value] of changes) bytes[at % bytes.length] = value;
        const { readings, account } = await scan(bytes);
        equal(account.read, account.used + account.reported);
        equal(account.used, readings.length);
      },
    ),
    { seed: 3, numRuns: 1_000 },
  );
});

Deno.test("scanReadings() reads a header whose cells hold line breaks", async () => {
  const found = await scan(
    'session,zeroing,"zone","reading\n(mm)","note\nof the day"\nS1,1,centre,0.715,dry\n',
  );
  deepEqual(sags(found), [0.715]);
  equal(found.readings[0].line, 4);
  equal(found.readings[0].other?.["note\nof the day"], "dry");
});

Deno.test("scanReadings() warns of micrometres taken for millimetres and of a sag no sphere has", async () => {
  const micro = await scan(`${HEADER}\nS1,1,centre,715,mm\n`);
  const warning = micro.problems.find((one) => one.severity === "warning");
  match(
    warning?.message ?? "",
    /reads like micrometres .* as micrometres 0\.715 mm \(R 2520\.8 mm\)/,
  );
  const deep = await scan(`${HEADER}\nS1,1,centre,61,mm\n`);
  deepEqual(deep.of("warning"), ["2 impossible-sag"]);
});

Deno.test("scanReadings() refuses numbers past any measurement without overflowing", async () => {
  const found = await scan(
    "session,zeroing,zone,offset,reading,unit\nS1,1,centre,,1e308,m\nS1,1,,1e308 m,0.715,mm\nS1,1,centre,,1e-320,mm\n",
  );
  deepEqual(found.of("refused"), ["2 not-a-number", "3 no-place"]);
  equal(found.account.used, 1);
});

Deno.test("scanReadings() prefers a column's own name and refuses it twice", async () => {
  const found = await scan(
    "session,zeroing,zone,sag,reading,angle,diameter_deg\nS1,1,centre,9,0.715,5,60\n",
  );
  deepEqual(sags(found), [0.715]);
  equal(found.readings[0].diameterDegrees, 60);
  deepEqual(found.readings[0].other, { sag: "9", angle: "5" });
  const twice = await scan(
    "session,zeroing,zone,reading,reading\nS1,1,centre,0.715,0.716\n",
  );
  equal(twice.problems[0].code, "repeated-column");
  equal(twice.account.reported, 1);
});

Deno.test("scanReadings() reads fractions of the half diameter in any writing", async () => {
  const zones = ["0.25", "1/4", "25%", "25 %", "0,25", "+.25", "-1/4"];
  const found = await scan(
    `session;zeroing;zone;reading\n${
      zones.map((zone) => `S1;1;${zone};0.715`).join("\n")
    }\n`,
  );
  deepEqual(
    found.readings.map((one) => one.zone.label),
    zones.map(() => "25%"),
  );
  deepEqual(found.readings.map((one) => one.offset), [
    ...Array(6).fill(26.25),
    -26.25,
  ]);
});

Deno.test("scanReadings() takes headings named like properties of an object for columns", async () => {
  const found = await scan(
    `${HEADER},__proto__,constructor,toString\nS1,1,centre,0.715,mm,a,b,c\nS1,1,centre,0.715,mm,,,\n`,
  );
  const [first, second] = found.readings;
  deepEqual(Object.entries(first.other ?? {}), [
    ["__proto__", "a"],
    ["constructor", "b"],
    ["toString", "c"],
  ]);
  deepEqual(Object.entries(second.other ?? {}), []);
});

Deno.test("scanReadings() reads units in the headings of zones and a lone column of decimal commas", async () => {
  const sheet = await scan(
    "Diameter (deg),Centre (mm),Edge [in]\n0,0.715,0.0281\n",
  );
  deepEqual(sheet.readings.map((one) => [one.zone.label, one.unit]), [
    ["centre", "mm"],
    ["edge", "in"],
  ]);
  deepEqual(sheet.of("note"), []);
  deepEqual(sags(await scan("centre\n0,715\n0,716\n")), [0.715, 0.716]);
});

Deno.test("scanReadings() asks what an unknown column and a zone turned into a date were meant to be", async () => {
  const found = await scan(
    "session,zeroing,zone,reading,rnig\nS1,1,01-Feb,0.715,A\n",
  );
  const warning = found.problems.find((one) => one.severity === "warning");
  equal(warning?.mend, "did you mean ring?");
  const refused = found.problems.find((one) => one.severity === "refused");
  match(refused?.mend ?? "", /a spreadsheet made a date of a fraction/);
});
