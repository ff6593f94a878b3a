import { deepEqual, equal, match, ok } from "node:assert/strict";
import { singleByte, utf16, utf32 } from "./_encoded.ts";
import { BENCH, HEADER, PIECE, ring, scan } from "./_scan_of_text.ts";

type Found = Awaited<ReturnType<typeof scan>>;

const sags = ({ readings }: Found) =>
  readings.map(({ sag }) => Number(sag.toFixed(6)));
const lines = ({ readings }: Found) => readings.map(({ line }) => line);
const counts = ({ account }: Found) => [
  account.read,
  account.used,
  account.reported,
];
const codes = (found: Found, severity: string) =>
  found.of(severity).filter((one) => !one.endsWith(" unit-assumed"));

const TWO = "S1,1,centre,0.715,mm\nS1,1,centre,0.716,mm\n";
const NOTED =
  `${HEADER},note\nS1,1,centre,0.715,mm,20 °C – cool\nS1,2,edge,0.716,mm,é 3 µm\n`;

Deno.test("scanReadings() reads a text in any encoding letter for letter", async () => {
  const encoded: [string, Uint8Array][] = [
    ["UTF-8", new TextEncoder().encode(NOTED)],
    ["UTF-8, marked twice", new TextEncoder().encode(`\ufeff\ufeff${NOTED}`)],
    ["UTF-16 little, marked", utf16(NOTED, "little", true)],
    ["UTF-16 big, marked", utf16(NOTED, "big", true)],
    ["UTF-16 little", utf16(NOTED, "little", false)],
    ["UTF-16 big", utf16(NOTED, "big", false)],
    ["UTF-16 big, tabs", utf16(NOTED.replaceAll(",", "\t"), "big", false)],
    ["Windows-1252", singleByte(NOTED, "windows-1252")],
    ["Mac Roman", singleByte(NOTED, "macintosh")],
  ];
  for (const [name, bytes] of encoded) {
    const found = await scan(bytes);
    deepEqual(sags(found), [0.715, 0.716], name);
    deepEqual(
      found.readings.map(({ note }) => note),
      ["20 °C – cool", "é 3 µm"],
      name,
    );
    deepEqual(codes(found, "refused"), [], name);
  }
});

Deno.test("scanReadings() says UTF-32, a file of NULs and a torn letter by their names", async () => {
  for (const order of ["little", "big"] as const) {
    const found = await scan(utf32(NOTED, order));
    match(found.problems[0].message, /in UTF-32$/);
    deepEqual(counts(found), [1, 0, 1]);
  }
  match(
    (await scan(new Uint8Array(500))).problems[0].message,
    /nothing but NUL bytes/,
  );
  const torn = await scan(utf16(NOTED, "little", true).slice(0, -3));
  deepEqual(codes(torn, "refused"), ["3 cut-off"]);
  deepEqual(sags(torn), [0.715]);
});

Deno.test("scanReadings() keeps whole letters of UTF-8 where one byte is damaged", async () => {
  const bytes = new TextEncoder().encode(
    `${NOTED}S1,3,centre,715,µm,ä ö ü\nS1,4,centre,715,µm,x\n`,
  );
  bytes[bytes.indexOf(0xe2)] = 0xff;
  const found = await scan(bytes);
  deepEqual(sags(found), [0.715, 0.716, 0.715, 0.715]);
  equal(found.readings[2].note, "ä ö ü");
  match(found.problems[0].message, /damaged letters/);
});

Deno.test("scanReadings() reads every delimiter with decimal commas, and an instruction to the spreadsheet above", async () => {
  const table = (mark: string, cell: string) =>
    [
      ["session", "zeroing", "zone", "reading", "unit"].join(mark),
      ["S1", "1", "centre", cell, "mm"].join(mark),
      ["S1", "1", "edge", cell, "mm"].join(mark),
    ].join("\n");
  for (const mark of [";", "\t", "|"]) {
    deepEqual(sags(await scan(table(mark, "0,715"))), [0.715, 0.715], mark);
    deepEqual(sags(await scan(table(mark, "0.715"))), [0.715, 0.715], mark);
  }
  for (const above of ["sep=;\n", "sep=;\r\n", '"sep=;"\n']) {
    const found = await scan(above + table(";", "0,715"));
    deepEqual(lines(found), [3, 4], above);
  }
  const quoted = await scan(`${HEADER}\nS1,1,centre,"0,715",mm\n`);
  deepEqual(sags(quoted), [0.715]);
  const drawn = await scan(
    "| session | zeroing | zone | reading | unit |\n|---|:---:|---|---:|---|\n| S1 | 1 | centre | 0.715 | mm |\n",
  );
  deepEqual([sags(drawn), counts(drawn)], [[0.715], [1, 1, 0]]);
  const blanks = await scan(
    "session  zeroing  zone    reading  unit\nS1       1        centre  0.715    mm\n",
  );
  match(blanks.problems[0].mend ?? "", /blanks stand between the cells/);
});

const one = (cell: string, unit = "mm") =>
  scan(`session;zeroing;zone;reading;unit\nS1;1;centre;${cell};${unit}\n`);

Deno.test("scanReadings() reads thousands set off by every space and apostrophe", async () => {
  const marks = [
    ..." .'’‘´`ʼ",
    ..."\u00a0\u202f\u2009\u2007\u200a\u2008\u2060\u200b",
  ];
  for (const mark of marks) {
    const name = `U+${mark.charCodeAt(0).toString(16)}`;
    deepEqual(sags(await one(`1${mark}430,2`, "um")), [1.4302], name);
    if (mark !== ".") {
      deepEqual(sags(await one(`1${mark}430`, "um")), [1.43], name);
    }
  }
  deepEqual(sags(await scan(`${HEADER}\nS1,1,centre,"1,430.2",um\n`)), [
    1.4302,
  ]);
  for (const cell of ["1_430,2", "1′430,2", "1·4302", "1٬430٫2", "14 30,2"]) {
    deepEqual(
      codes(await one(cell, "um"), "refused"),
      ["2 not-a-number"],
      cell,
    );
  }
});

Deno.test("scanReadings() reads every dash as a minus and never a negative as positive", async () => {
  const signs =
    "-\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u02d7\u207b\u2796\ufe58\ufe63\uff0d";
  for (const sign of signs) {
    const name = `U+${sign.charCodeAt(0).toString(16)}`;
    deepEqual(sags(await one(`${sign}0,715`)), [-0.715], name);
    deepEqual(sags(await one(`${sign}\u00a00,715`)), [-0.715], name);
  }
  for (const unseen of ["\u200e-0,715", "\u202a−0,715\u202c", "\ufeff-0,715"]) {
    deepEqual(sags(await one(unseen)), [-0.715], JSON.stringify(unseen));
  }
  deepEqual(sags(await one("+0,715")), [0.715]);
  for (
    const cell of ["0,715-", "(0,715)", "\u00ad0,715", "--0,715", "±0,715"]
  ) {
    deepEqual(codes(await one(cell), "refused"), ["2 not-a-number"], cell);
  }
});

Deno.test("scanReadings() takes no line with a signed reading for a header, whatever its other cells are called", async () => {
  const bench = { ...BENCH, rings: [ring("ring", 60)] };
  for (const sign of "-\u2010\u2013\u2212\u02d7\u2796\uff0d") {
    const typed = `${sign}0.715 mm`;
    const found = await scan(
      `session,ring,zeroing,zone,reading\nset,ring,1,centre,${typed}\nset,ring,2,edge,${typed}\n`,
      { bench },
    );
    deepEqual(sags(found), [-0.715, -0.715], typed);
    deepEqual(codes(found, "note"), [], typed);
    const sheet = await scan(
      `zeroing,ring,centre,edge\n1,ring,${typed},${typed}\n2,ring,${typed},${typed}\n`,
      { bench },
    );
    deepEqual(sags(sheet), [-0.715, -0.715, -0.715, -0.715], typed);
  }
});

Deno.test("scanReadings() reads inch marks, unit words and signs of every kind", async () => {
  const inch = [
    ..."″ ” “ '' ′′ ’’ in in. inch Inches IN (in) [inch]".split(" "),
    '"',
  ];
  for (const unit of inch) {
    const found = await scan(
      `session;zeroing;zone;reading\nS1;1;centre;0.02815${unit}\nS1;1;centre;0.02815 ${unit}\nS1;1;centre;0.02816 in\n`,
    );
    deepEqual(sags(found), [0.71501, 0.71501, 0.715264], unit);
  }
  const cells = [
    ["0.715 mm.", 0.715],
    ["0.715\u202fmm", 0.715],
    ["0.715 ㎜", 0.715],
    ["715 ㎛", 0.715],
    ["715μm", 0.715],
    [".715mm", 0.715],
    ["０．７１５", 0.715],
    ["28.15 mil", 0.71501],
    ["28150 µin", 0.71501],
    ["7.15e\u22121", 0.715],
  ] as const;
  for (const [cell, sag] of cells) {
    deepEqual(sags(await one(cell, "")), [sag], cell);
  }
  const words = ["furlong", "M", "tenths", "µ", "m m", "/mm"];
  for (const word of words) {
    deepEqual(codes(await one("0.715", word), "refused"), ["2 unknown-unit"]);
  }
});

Deno.test("scanReadings() makes a number of nothing that is none", async () => {
  const cells = [
    ..."=0.715 '0.715 #N/A #DIV/0! 1e400 0b11 0x2 1_000 ٠٫٧١٥ ≈0.715".split(
      " ",
    ),
    ..."<0.715 0..715 0.7.15 O.715 0.7l5 Jul-15 07:15 null TRUE NaN".split(" "),
    ..."∞ - — 0.714-0.716 0.715/0.716 0.715* 0.715? 99999999999".split(" "),
    ...["0.715 ± 0.001", "0.715 0.716", "7.15*10^-1", "9/16", "½", "0.7 (?)"],
  ];
  for (const cell of cells) {
    const found = await scan(
      `session;zeroing;zone;reading;unit\nS1;1;centre;${cell};mm\nS1;1;centre;0.714;mm\n`,
    );
    deepEqual([sags(found), counts(found)], [[0.714], [2, 1, 1]], cell);
  }
});

Deno.test("scanReadings() counts the same records under every line end", async () => {
  const text = `${HEADER}\n${TWO}`;
  const ends = [
    "\n",
    "\r\n",
    "\r",
    "\r\r\n",
    "\u0085",
    "\u2028",
    "\u2029",
    "\v",
  ];
  for (const end of ends) {
    const found = await scan(text.replaceAll("\n", end));
    deepEqual(sags(found), [0.715, 0.716], JSON.stringify(end));
    equal(found.account.reported, 0);
  }
  const mixed = await scan(
    `${HEADER},note\rS1,1,centre,0.715,mm,\r\nS1,1,edge,0.716,mm,"a\r\nb\nc"\nS1,2,centre,bad,mm,x\r\nS1,2,centre,0.714,mm,\u001a`,
  );
  deepEqual(lines(mixed), [2, 3, 7]);
  deepEqual(codes(mixed, "refused"), ["6 not-a-number"]);
  equal(mixed.readings[1].note, "a\nb\nc");
});

Deno.test("scanReadings() finds a header below titles, across merged cells and above units", async () => {
  const sheets: [string, number[]][] = [
    [
      "Sags of 12 May, bench 2, by me\n\n,,,\ndiameter,centre,edge\n0,0.715,0.713\n",
      [0],
    ],
    [
      "Sag of blank 7,,\nDiameter,Zone,\n,centre,edge\n,mm,mm\n60,0.715,0.713\n",
      [60],
    ],
    ["Diameter,Sag (mm),\n,centre,edge\n60,0.715,0.713\n", [60]],
    ["diameter;centre;edge\n[°];[mm];[mm]\n30;0,715;0,713\n", [30]],
    ["diameter,centre,edge\ndeg,mm,\n0,0.715,0.713\n", [0]],
    ["diameter,centre,edge,,,\n0,0.715,0.713,,,\n,,,,,\n,,,,,\n", [0]],
  ];
  for (const [text, diameters] of sheets) {
    const found = await scan(text);
    deepEqual(sags(found), [0.715, 0.713], text);
    equal(found.readings[0].diameterDegrees, diameters[0], text);
    deepEqual(codes(found, "refused"), [], text);
    deepEqual(codes(found, "warning"), [], text);
  }
  const wrong = await scan(
    "diameter,centre,edge\n,mm,furlong\n0,0.715,0.713\n",
  );
  deepEqual(counts(wrong), [4, 2, 2]);
});

Deno.test("scanReadings() takes no mean, deviation or count for a reading", async () => {
  const sheet = (header: string, ...rest: string[]) =>
    scan([header, ...rest].join("\n") + "\n");
  const found = [
    await sheet(
      "diameter,centre,edge",
      "0,0.715,0.713",
      "60,0.716,0.714",
      "mean,0.7155,0.7135",
    ),
    await sheet(
      "zeroing,diameter,centre,edge",
      "1,0,0.715,0.713",
      "2,60,0.716,0.714",
      ",Average,0.7155,0.7135",
      ",SD,0.0007,0.0007",
    ),
    await sheet(
      "zeroing,diameter,centre,edge",
      "1,0,0.715,0.713",
      "2,60,0.716,0.714",
      "Mean,,0.7155,0.7135",
      "Std. dev.,,0.0007,0.0007",
      "n,,2,2",
    ),
    await sheet(
      "zeroing;centre;edge",
      "1;0,715;0,713",
      "2;0,716;0,714",
      "AVERAGE:;0,7155;0,7135",
      "Max;0,716;0,714",
      "Min;0,715;0,713",
      "Range;0,001;0,001",
    ),
    await sheet(
      ",diameter,centre,edge",
      "a,0,0.715,0.713",
      "b,60,0.716,0.714",
      "Mean of 2,,0.7155,0.7135",
    ),
  ];
  for (const one of found) {
    deepEqual(sags(one), [0.715, 0.713, 0.716, 0.714]);
    ok(one.account.reported >= 2);
    deepEqual([...new Set(codes(one, "refused").map((c) => c.split(" ")[1]))], [
      "summary-line",
    ]);
    equal(one.account.read, one.account.used + one.account.reported);
  }
  for (
    const line of [
      "mean,,,0.7155,mm",
      ",,mean,0.7155,mm",
      "S1,mean,centre,0.7155,mm",
    ]
  ) {
    const tidy = await scan(`${HEADER}\n${TWO}${line}\n`);
    deepEqual(codes(tidy, "refused"), ["4 summary-line"], line);
    equal(tidy.account.used, 2);
  }
  const bare = await scan(
    "centre,edge\n0.715,0.713\n0.716,0.715\n\n0.7155,0.714\n",
  );
  deepEqual(codes(bare, "warning"), ["5 like-a-mean"]);
  const equalRows = await scan(
    "centre,edge\n0.715,0.713\n0.715,0.713\n\n0.715,0.713\n",
  );
  deepEqual(codes(equalRows, "warning"), []);
  const labels = await scan(
    `${HEADER}\nS1,n,centre,0.715,mm\nS1,u,centre,0.716,mm\n`,
  );
  equal(labels.account.used, 2);
  const noted = await scan(
    `${HEADER},note\nS1,1,centre,0.715,mm,\nS1,1,centre,0.715,mm,mean\n`,
  );
  deepEqual(codes(noted, "warning"), ["3 summary-in-note"]);
});

Deno.test("scanReadings() reads on by every header that stands below the first", async () => {
  const again = await scan(
    `${HEADER}\n${TWO}\ufeffSession, Zeroing,Zone,Reading,Unit,,\n${TWO}${HEADER}\n${TWO}`,
  );
  deepEqual(lines(again), [2, 3, 5, 6, 8, 9]);
  deepEqual(codes(again, "note"), ["4 header-again", "7 header-again"]);
  const turned = await scan(
    `${HEADER}\n${TWO}zeroing,session,zone,reading,unit\n2,S1,edge,0.717,mm\n`,
  );
  deepEqual(turned.readings.at(-1)?.zeroing, "S1 / 2");
  const wider = await scan(
    "diameter,centre,edge\n0,0.715,0.713\n\ndiameter,centre,50% reach,edge\n60,0.716,0.715,0.714\n",
  );
  deepEqual(lines(wider), [2, 2, 5, 5, 5]);
  deepEqual(wider.readings.map(({ zone }) => zone.label), [
    ...["centre", "edge", "centre", "50% reach", "edge"],
  ]);
  const swapped = await scan(
    "diameter,centre,edge\n0,0.715,0.713\ndiameter,edge,centre\n,in,in\n60,0.0281,0.0282\n",
  );
  deepEqual(swapped.readings.map(({ zone }) => zone.label), [
    ...["centre", "edge", "edge", "centre"],
  ]);
  deepEqual(sags(swapped).slice(2), [0.71374, 0.71628]);
  const above = await scan(
    "0,0.715,0.713\n60,0.716,0.714\ndiameter,centre,edge\n0,0.71,0.7\n",
  );
  deepEqual(counts(above), [4, 2, 2]);
  deepEqual(codes(above, "refused"), ["1 above-header", "2 above-header"]);
});

Deno.test("scanReadings() says what a column without a name and a line without marks hold", async () => {
  const found = await scan(
    "diameter,centre,,edge\n0,0.715,0.716,0.713\nread by an invented person\n0;0.7;0.8\n",
  );
  deepEqual(codes(found, "warning"), ["2 unnamed-column"]);
  deepEqual(codes(found, "note"), ["3 text-line"]);
  deepEqual(codes(found, "refused"), ["4 too-few-cells"]);
  deepEqual(codes(await scan(`${HEADER}\n`), "note"), ["1 no-readings"]);
});

const PLACE = "# session: S1\n# zeroing: 1\n# zone: centre\n";

Deno.test("scanReadings() reads a cable's log in every way a cable writes", async () => {
  const logs = [
    "+  0.7150,MM\n+  0.7160,MM\n",
    "+0.7150 MM\r\n+0.7160 MM\r\n",
    "0.7150,mm\n0.7160,mm\n",
    "+  0,7150,MM\n+  0,7160,MM\n",
    "+ 715.0,UM\n+ 716.0,UM\n",
    "2031-05-17 14:20:01 +  0.7150,MM\n2031-05-17 14:20:09 +  0.7160,MM\n",
  ];
  for (const log of logs) {
    const found = await scan(PLACE + log);
    equal(found.account.layout, "cable log", log);
    deepEqual(sags(found), [0.715, 0.716], log);
    const bare = await scan(log);
    deepEqual([counts(bare), codes(bare, "refused")], [
      [2, 0, 2],
      ["1 no-place", "2 no-place"],
    ], log);
  }
  equal(
    (await scan(PLACE + logs[5])).readings[1].takenAt,
    "2031-05-17T14:20:09",
  );
  const cut = ["+  0.71", "+  0.7170,M", "+  0.7\0\0\0", "+", "+  0.7170,"];
  for (const end of cut) {
    const found = await scan(PLACE + logs[0] + end);
    deepEqual(sags(found), [0.715, 0.716], end);
    deepEqual(codes(found, "refused"), ["6 cut-off"], end);
  }
  const errors = await scan("ERR 1\nERR 2\n+ 0.7150,MM\n");
  deepEqual(codes(errors, "refused"), [
    ...["1 no-cable-value", "2 no-cable-value", "3 no-place"],
  ]);
});

Deno.test("scanReadings() keeps every kind of stray quote to its own line", async () => {
  const header = `${HEADER},note`;
  const found = await scan(
    [
      header,
      'S1,1,centre,0.715,mm,5" disc',
      'S1,1,centre,0.716,mm,"open',
      'S1,1,centre,0.717,mm,"a ""b"" c"',
      'S1,1,"centre,0.718,mm,x',
      "S1,1,centre,0.719,mm,“wiped”",
      'S1,1,centre,0.0282",in,6" and 7"',
      'S1,1,centre,"0.0283""",in,y',
    ].join("\n") + "\n",
  );
  deepEqual(lines(found), [2, 3, 4, 6, 7, 8]);
  deepEqual(codes(found, "refused"), ["5 no-place"]);
  deepEqual(counts(found), [7, 6, 1]);
});

Deno.test("scanReadings() reads dates that have one reading and gives both of those that have two", async () => {
  const dates = [
    ["2031-05-17", "2031-05-17"],
    ["2031/05/17 9:05", "2031-05-17T09:05"],
    ["20310517", "2031-05-17"],
    ["17.5.2031", "2031-05-17"],
    ["5/17/2031", "2031-05-17"],
    ["5/5/2031", "2031-05-05"],
    ["17 May 2031", "2031-05-17"],
    ["Sept. 7, 2031", "2031-09-07"],
    ["2031-05-17T14:20:30.5Z", "2031-05-17T14:20:30.5Z"],
  ];
  const refused = [
    "3/4/2031",
    "2031-02-30",
    "45794",
    "17/5/31",
    "31.4.2031",
    "noon",
  ];
  const typed = [...dates.map(([date]) => date), ...refused];
  const found = await scan(
    `session,zeroing,zone,reading,taken_at\n${
      typed.map((date) => `S1,1,centre,0.715,"${date}"`).join("\n")
    }\n`,
  );
  deepEqual(found.readings.map(({ takenAt }) => takenAt), [
    ...dates.map(([, read]) => read),
    ...refused.map(() => undefined),
  ]);
  const [two] = found.problems.filter(({ code }) => code === "ambiguous-date");
  match(two.message, /two ways: 2031-04-03 or 2031-03-04/);
});

Deno.test("scanReadings() speaks of an inch piece in inches, with no more figures than help", async () => {
  const piece = { ...PIECE, unit: "in" as const };
  const bench = { ...BENCH, rings: [ring("A", 60), ring("B", 40)] };
  const text = "session,zeroing,ring,zone,offset,reading,unit\n" +
    "S1,1,A,centre,,0.715,in\nS1,1,A,centre,,0.715,in\n" +
    "S2,1,A,centre,,-0.02815,in\nS3,1,A,,1.9,0.0281,in\n" +
    "S4,1,B,centre,,0.02815,in\nS5,1,A,50%,,0.0281,in\nS6,1,A,50%,1,0.0281,in\n" +
    "S7,1,A,centre,,5,in\n";
  const { problems } = await scan(text, { piece, bench });
  const said = problems.filter(({ code }) =>
    code !== "unit-assumed" && code !== "finer-than-step"
  );
  deepEqual([...new Set(said.map(({ code }) => code))].sort(), [
    ...["beyond-reach", "foot-unknown", "impossible-sag", "negative-sag"],
    ...["offset-wins", "other-ring", "other-unit"],
  ]);
  for (const { message } of said) {
    ok(!/\d mm/.test(message), message);
    ok(!/\d\.\d{6}|\d{6}\./.test(message), message);
  }
});
