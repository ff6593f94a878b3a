import { deepEqual, equal, match } from "node:assert/strict";
import { utf16 } from "./_encoded.ts";
import { HEADER, scan } from "./_scan_of_text.ts";

type Found = Awaited<ReturnType<typeof scan>>;

const sags = ({ readings }: Found) =>
  readings.map(({ sag }) => Number(sag.toFixed(6)));
const counts = ({ account }: Found) => [
  account.read,
  account.used,
  account.reported,
];
const mends = ({ problems }: Found, code: string) =>
  problems.filter((one) => one.code === code).map(({ mend }) => mend ?? "");
const ROW = (n: number) => `S1,${n},centre,0.71${n},mm\n`;

Deno.test("scanReadings() takes no number with a leading 0 for one of thousands, and none too small for one", async () => {
  const cells = [
    ..."0.715, 0,715. 0.715,5 0'715 0.715.000 1e-400".split(" "),
    ...["0 715", "00 715", "1.430,", "1,430."],
  ];
  for (const cell of cells) {
    const found = await scan(
      `session;zeroing;zone;reading;unit\nS1;1;centre;${cell};mm\nS1;1;centre;0.714;mm\n`,
    );
    deepEqual([sags(found), counts(found)], [[0.714], [2, 1, 1]], cell);
  }
});

Deno.test("scanReadings() asks what the middle is, in a column and in a heading", async () => {
  const tidy = await scan(
    `${HEADER}\n${ROW(1)}S1,1,middle,0.716,mm\nS1,1,Mid 2,0.716,mm\n`,
  );
  deepEqual(tidy.of("refused"), ["3 no-place", "4 no-place"]);
  match(mends(tidy, "no-place")[0], /the centre or half way to the rim/);
  const sheet = await scan(
    "diameter,ctr (mm),mid (mm),edge (mm)\n0,0.715,0.714,0.713\n",
  );
  deepEqual([sags(sheet), counts(sheet)], [[0.715, 0.713], [3, 2, 1]]);
  const placed = await scan(
    "session,zeroing,zone,offset,reading,unit\nS1,1,middle,20,0.715,mm\n",
  );
  equal(placed.readings[0].offset, 20);
});

Deno.test("scanReadings() tells of every reading under a heading that is a bare number", async () => {
  const found = await scan("diameter,0,20,40\n0,0.715,0.714,0.713\n");
  deepEqual([sags(found), counts(found)], [[0.715], [3, 1, 2]]);
  deepEqual(mends(found, "no-place"), [
    "write 20% for a percentage, 20 mm for a length",
    "write 40% for a percentage, 40 mm for a length",
  ]);
  const blank = await scan("diameter,centre,edge,2031\n0,0.715,0.714,\n");
  deepEqual(counts(blank), [2, 2, 0]);
});

Deno.test("scanReadings() refuses two tables that stand side by side", async () => {
  const found = await scan(
    "diameter,centre,edge,,diameter,centre,edge\n0,0.715,0.713,,60,0.716,0.714\n",
  );
  deepEqual(found.of("refused"), ["1 repeated-column"]);
  deepEqual(sags(found), []);
  match(found.problems[0].message, /two tables stand side by side$/);
});

Deno.test("scanReadings() takes what a printed form says above a sheet for all its readings", async () => {
  const found = await scan(
    "Bench sheet,,\nSession:,S7,\nGrade,9 micron,\nUnit: um,,\nDate,2031-05-17,\n\nDia.,centre,edge\n60,715,713\n",
  );
  deepEqual(sags(found), [0.715, 0.713]);
  const [{ session, grade, takenAt, diameterDegrees }] = found.readings;
  deepEqual([session, grade, takenAt, diameterDegrees], [
    ...["S7", "9 micron", "2031-05-17", 60],
  ]);
  deepEqual(found.of("note").filter((one) => !one.endsWith("for-all")), []);
  equal(found.of("note").length, 4);
  const below = await scan("diameter,centre,edge\nunit: um,,\n0,715,713\n");
  deepEqual(sags(below), [0.715, 0.713]);
  const above = await scan("deg,um,um\ndiameter,centre,edge\n0,715,713\n");
  deepEqual(sags(above), [0.715, 0.713]);
});

Deno.test("scanReadings() says that a bench sheet lies on its side", async () => {
  const sheets = [
    "zone,diameter 0,diameter 60\ncentre,0.715,0.716\nedge,0.713,0.714\n",
    "Session,S7,\ncentre,0.715,0.716\nedge,0.713,0.714\n",
    "diameter,0,60\ncentre,0.715,0.716\nedge,0.713,0.714\nflat,0,0\n",
  ];
  for (const sheet of sheets) {
    const found = await scan(sheet);
    deepEqual(found.of("refused").map((one) => one.split(" ")[1]), [
      "sideways",
    ], sheet);
    match(
      found.problems[0].message,
      /zones stand below each other \(centre, e/,
    );
  }
});

Deno.test("scanReadings() names the mark between the names where it parts no cells", async () => {
  const marks: [string, RegExp][] = [
    ["diameter centre\n0 0,715\n", /^blanks stand/],
    ["diameter:centre\n0:0,715\n", /^colons stand/],
    ["diameter/centre\n0/0,715\n", /^slashes stand/],
    ["diameter；centre\n0；0,715\n", /^a semicolon of another script stands/],
    ["diameter，centre\n0，0.715\n", /^a comma of another script stands/],
  ];
  for (const [text, words] of marks) {
    const found = await scan(text);
    deepEqual(found.of("refused"), ["1 no-header"], text);
    match(mends(found, "no-header")[0], words);
  }
  const rows = await scan("diameter,centre,edge\n0;0,715;0,714\n");
  deepEqual(rows.of("refused"), ["2 other-marks"]);
});

Deno.test("scanReadings() reads a file whose mark is spelled out or lies, and one that changes its encoding", async () => {
  const text = `${HEADER}\n${ROW(1)}${ROW(2)}`;
  const utf8 = new TextEncoder();
  const bytes = (...parts: (string | Uint8Array)[]) =>
    new Uint8Array(
      parts.flatMap((one) => [
        ...(typeof one === "string" ? utf8.encode(one) : one),
      ]),
    );
  const little = Uint8Array.of(0xff, 0xfe);
  const big = Uint8Array.of(0xfe, 0xff);
  const whole: [string, Uint8Array, number][] = [
    ["a mark read as three letters", bytes(`ï»¿${text}`), 2],
    ["UTF-8 marked as UTF-16", bytes(little, text), 2],
    ["the other byte order", bytes(big, utf16(text, "little", false)), 2],
    ["the other way round", bytes(little, utf16(text, "big", false)), 2],
    ["lines added", bytes(text, utf16(ROW(3), "little", false)), 3],
    ["marked lines added", bytes(text, utf16(ROW(3), "little", true)), 3],
    ["big lines added", bytes(text, utf16(ROW(3), "big", false)), 3],
  ];
  for (const [name, file, count] of whole) {
    const found = await scan(file);
    deepEqual(sags(found), [0.711, 0.712, 0.713].slice(0, count), name);
    deepEqual(counts(found), [count, count, 0], name);
  }
});

Deno.test("scanReadings() takes a label that another person takes up again for a zeroing of its own", async () => {
  const read = async (order: string) => {
    const rows = order.split(" ").map((one) => {
      const [label, who] = one;
      return `S1,${label},${who},centre,0.715,mm\n`;
    });
    const found = await scan(
      `session,zeroing,operator,zone,reading,unit\n${rows.join("")}`,
    );
    const said = found.of("note");
    return [
      found.readings.map(({ zeroing }) => zeroing.slice(5)).join(" "),
      said.length,
    ];
  };
  deepEqual(await read("1A 1A 2A 1B 2B 2B 1A"), [
    ...["1 1 2 1, B 2, B 2, B 1", 2],
  ]);
  deepEqual(await read("1A 1B 2A 2B 1A 1B"), ["1 1 2 2 1 1", 0]);
  deepEqual(await read("1A 2B 1A 2B"), ["1 2 1 2", 0]);
});
