import { deepEqual, equal, match } from "node:assert/strict";
import { HEADER, PIECE, scan } from "./_scan_of_text.ts";

const sags = ({ readings }: Awaited<ReturnType<typeof scan>>) =>
  readings.map(({ sag }) => Number(sag.toFixed(6)));
const one = (cell: string) =>
  scan(`session;zeroing;zone;reading\nS1;1;centre;${cell}\n`);

Deno.test("scanReadings() names what a spreadsheet or a display put in a reading's place", async () => {
  const cells: [string, RegExp][] = [
    ...["1-Mar", "Jul-15", "15. Jul", "1. Mär 31", "7.15.2031", "2031-07-15"]
      .map((cell): [string, RegExp] => [cell, /^this is a date/]),
    ...["#N/A", "#REF!", "#DIV/0!", "#WERT!"]
      .map((cell): [string, RegExp] => [cell, /error of the spreadsheet/]),
    ...["OVER", "O.L.", "Err", "under"]
      .map((cell): [string, RegExp] => [cell, /display showed no number/]),
    ["'0,715", /^an apostrophe stands before the number/],
    ["’-0,715", /^an apostrophe stands before the number/],
  ];
  for (const [cell, words] of cells) {
    const { problems, account } = await one(cell);
    deepEqual([account.read, account.used, account.reported], [1, 0, 1], cell);
    deepEqual(
      [problems[0].code, problems[0].line, problems[0].value],
      ["not-a-number", 2, cell],
    );
    match(problems[0].message, words);
  }
  for (const cell of ["0,715", "7,15E-1", "1.234,5", "0.715 mm"]) {
    equal((await one(cell)).account.used, 1, cell);
  }
});

Deno.test("scanReadings() reads a unit behind a heading, and no zone as one", async () => {
  for (
    const [heading, cell] of [
      ["Sag in mm", "0.715"],
      ["reading_um", "715"],
      ["reading / µm", "715"],
      ["sag, thou", "28.1496063"],
      ["Reading mm", "0.715"],
      ["reading in inches", "0.0281496063"],
      ["reading [mm]", "0.715"],
    ]
  ) {
    const found = await scan(
      `session\tzeroing\tzone\t${heading}\nS1\t1\tcentre\t${cell}\n`,
      { bench: undefined },
    );
    deepEqual(sags(found), [0.715], heading);
    equal(found.problems.some(({ code }) => code === "unit-assumed"), false);
  }
  const sheet = await scan("diameter,centre mm,edge_um\n0,0.715,713\n");
  deepEqual(sags(sheet), [0.715, 0.713]);
  deepEqual(sheet.readings.map(({ zone }) => zone.label), ["centre", "edge"]);
  const places = await scan(
    "diameter,centre,10 mm,30 mm\n0,0.715,0.714,0.713\n",
  );
  deepEqual(
    places.readings.map(({ offset }) => offset as number),
    [0, 10, 30],
  );
});

Deno.test("scanReadings() refuses a table that lies on its side", async () => {
  const found = await scan(
    "session,S1,S1\nzeroing,1,2\nzone,centre,centre\nreading,0.715,0.716\nunit,mm,mm\n",
  );
  equal(found.account.used, 0);
  equal(found.problems[0].code, "sideways");
  match(found.problems[0].mend ?? "", /transposed/);
  // Settings above a header are no table on its side.
  const titled = await scan(
    `session: S1\noperator: A\n${HEADER}\nS1,1,centre,0.715,mm\n`,
  );
  equal(titled.account.used, 1);
});

Deno.test("scanReadings() says where other marks stand between the cells than in the header", async () => {
  const found = await scan(
    `${HEADER}\nS1,1,centre,0.715,mm\nsession;zeroing;zone;reading;unit\nS2;1;centre;0,716;mm\nS1,1,edge,0.714,mm\n`,
  );
  deepEqual(sags(found), [0.715, 0.714]);
  deepEqual(found.of("refused"), ["3 other-marks", "4 other-marks"]);
  match(
    found.problems[0].message,
    /^semicolons stand between the cells here, commas in the header \(line 1\)$/,
  );
});

Deno.test("scanReadings() tells that one zone heads two columns", async () => {
  const found = await scan("diameter,centre,edge,Edge\n0,0.715,0.714,0.713\n");
  equal(found.account.used, 3);
  equal(
    found.problems.find(({ code }) => code === "repeated-zone")?.column,
    "Edge",
  );
  const ends = await scan("diameter,-edge,centre,edge\n0,0.713,0.715,0.714\n");
  deepEqual(ends.of("note"), ["2 unit-assumed"]);
});

Deno.test("scanReadings() uses no line of another piece", async () => {
  const file = (...pieces: string[]) =>
    `piece,${HEADER}\n${
      pieces.map((name) => `${name},S1,1,centre,0.715,mm\n`).join("")
    }`;
  const two = await scan(file("blank 7", "Blank 07", "7", "", "blank 8"));
  equal(two.account.used, 4);
  deepEqual(two.of("refused"), ["6 other-piece"]);
  const other = await scan(file("disc A", "disc A"));
  equal(other.account.used, 0);
  match(other.problems[0].message, new RegExp(PIECE.name));
});

Deno.test("scanReadings() passes over characters without width in names and words", async () => {
  const found = await scan(
    `${HEADER}\nS1\u200b,\ufeff1,cen\u200btre,0.7\u200b15,m\u2060m\nS1,1,centre,0.716,mm\n`,
  );
  deepEqual(sags(found), [0.715, 0.716]);
  deepEqual(found.readings[0].zeroing, found.readings[1].zeroing);
  deepEqual(found.problems, []);
});

Deno.test("scanReadings() asks whether two spellings are one name", async () => {
  const typed = [
    ["S1", "1", "Ann"],
    ["s1 ", "1", "Ann"],
    ["S 1", "01", "ann"],
    ["S01", "1", "Ann"],
    ["S1", "1.0", "Ann"],
    ["S10", "10", "Anne"],
  ];
  const found = await scan(
    `operator,${HEADER}\n${
      typed.map(([session, zeroing, operator]) =>
        `${operator},${session},${zeroing},centre,0.715,mm\n`
      ).join("")
    }`,
  );
  const said = found.problems.filter(({ code }) => code === "two-spellings")
    .map(({ line, column, value }) => `${line} ${column} ${value}`);
  deepEqual(said, [
    "3 session s1",
    "4 session S 1",
    "4 operator ann",
    "5 session S01",
    "6 zeroing 1.0",
  ]);
  const apart = await scan(
    `${HEADER}\n${
      ["2031-1-11", "2031-11-1", "A1", "A10", "A100", "1", "10"].map((name) =>
        `${name},1,centre,0.715,mm\n`
      ).join("")
    }`,
  );
  deepEqual(apart.of("warning"), []);
});

Deno.test("scanReadings() refuses headings that count steps of a display, and takes the place of a zone for none", async () => {
  const under = (first: string, second: string, cells = "121;121") =>
    scan(`session;zeroing;${first};${second}\nS1;1;${cells}\n`);
  for (
    const scale of [
      ...["0.0001 in", "0,0001 in", "1e-4 in", '.0001"', "x 0.01 mm", "1 µm"],
      ...["5 µm", "tenths", "div.", "counts"],
    ]
  ) {
    const found = await under(`centre (${scale})`, `edge [${scale}]`);
    deepEqual(found.of("refused"), ["1 scaled-heading", "1 scaled-heading"]);
    deepEqual(sags(found), [], scale);
    const tidy = await scan(
      `session,zeroing,zone,"reading (${
        scale.replaceAll('"', '""')
      })"\nS1,1,centre,121\n`,
    );
    deepEqual(tidy.of("refused"), ["1 scaled-heading"], scale);
  }
  // Also where another header follows further down.
  const below = await scan(
    "session;zeroing;centre;edge\nS1;1;0.715;0.714\n\nsession;zeroing;centre (tenths);edge (tenths)\nS2;1;281;281\n\nsession;zeroing;centre;edge\nS3;1;0.715;0.714\n",
  );
  deepEqual(sags(below), [0.715, 0.714, 0.715, 0.714]);
  deepEqual(below.of("refused"), [
    ...["4 scaled-heading", "4 scaled-heading", "5 scaled-heading"],
  ]);
  equal(below.account.read, below.account.used + below.account.reported);
  for (const place of ["0 mm", "26 mm", "0.5 in", "2.6 cm", "first", "mm"]) {
    const found = await under(`centre (${place})`, "edge", "0.715;0.714");
    deepEqual(found.of("refused"), [], place);
    deepEqual(sags(found), [0.715, 0.714], place);
  }
});

Deno.test("scanReadings() reads lines below another header in that header's unit, however it writes it", async () => {
  for (
    const [centre, edge] of [
      ["centre (in)", "edge (in)"],
      ["centre in inches", "edge in inches"],
      ["centre [in]", "edge [in]"],
    ]
  ) {
    const found = await scan(
      `session;zeroing;centre (mm);edge (mm)\nS1;1;0.715;0.714\n\nsession;zeroing;${centre};${edge}\nS2;1;0.0281;0.0281\n`,
    );
    deepEqual(sags(found), [0.715, 0.714, 0.71374, 0.71374], centre);
    deepEqual(found.of("refused"), [], centre);
    equal(found.account.read, 4);
  }
  const tidy = await scan(
    "session;zeroing;zone;reading (mm)\nS1;1;centre;0.715\nsession;zeroing;zone;reading (in)\nS1;2;centre;0.0281\n",
  );
  deepEqual(sags(tidy), [0.715, 0.71374]);
});

Deno.test("scanReadings() asks where the words above a header name another unit than was taken", async () => {
  const under = (title: string, headings = "centre;edge") =>
    scan(`${title}\nsession;zeroing;${headings}\nS1;1;0.0281;0.0281\n`);
  for (
    const title of [
      "sag in inches",
      "all readings: thou;;",
      "Bench 2, unit: in",
      "µm",
    ]
  ) {
    const found = await under(title);
    deepEqual(found.of("warning").slice(0, 1), ["3 title-unit"], title);
    match(
      found.problems.find(({ code }) => code === "title-unit")!.message,
      /^line 1 above the header says \S+; no column .* and mm was taken/,
    );
  }
  // The same unit, a size, or a unit where it belongs: nothing to ask.
  for (const title of ["sag in mm", "a disc of 8 in", '5 1/2 inch, 2" ring']) {
    const found = await under(title);
    equal(found.of("warning").some((one) => one.includes("title")), false);
  }
  const named = await under("sag in inches", "centre in mm;edge in mm");
  equal(named.of("warning").some((one) => one.includes("title")), false);
});
