import { deepEqual, equal } from "node:assert/strict";
import fc from "fast-check";
import { readWorkLog, WORK_LOG_HEADER } from "sagbook/records/work_log.ts";

Deno.test("readWorkLog() reads every column, in the user's own spelling", async () => {
  const { entries, lines } = await readWorkLog(
    "Date;Abrasive;Minutes;Wets;Position;Stroke;Session;Thickness Centre;Thickness_edge;Pits;Notes\n2031-05-17;80 grit;45;12;Mirror on top;third;S1;24,5 mm;25,1;centre;=wet\n",
    "worklog.csv",
    "mm",
  );
  deepEqual(lines, { read: 1, used: 1, reported: 0 });
  deepEqual(entries[0], {
    line: 2,
    date: "2031-05-17",
    grade: "80 grit",
    minutes: 45,
    wets: 12,
    position: "mirror on top",
    stroke: "third",
    session: "S1",
    thicknessCentre: 24.5,
    thicknessEdge: 25.1,
    pits: "centre",
    note: "=wet",
  });
});

Deno.test("readWorkLog() reports a line it cannot read, with the likely word", async () => {
  const { entries, lines, problems } = await readWorkLog(
    "date,wets,position,pits,thickness_edge\n2031-05-17,-1,mirror on top,,\n3.4.2031,,,,\n,,mirror on topp,,\n,,,cntre,\n,3,,,25\n,3,tool on top,none,\n",
    "worklog.csv",
  );
  deepEqual(problems.map((one) => `${one.line} ${one.code}`), [
    "2 not-a-number",
    "3 ambiguous-date",
    "4 unknown-word",
    "5 unknown-word",
    "6 not-a-length",
  ]);
  equal(problems[2].mend, "did you mean mirror on top?");
  equal(problems[3].mend, "did you mean centre?");
  equal(entries.length, 1);
  deepEqual(lines, { read: 6, used: 1, reported: 5 });
});

Deno.test("readWorkLog() reads a header alone and an empty file as no work", async () => {
  for (const text of ["", `${WORK_LOG_HEADER.join(",")}\n`]) {
    const { entries, problems } = await readWorkLog(text, "worklog.csv");
    deepEqual([entries, problems], [[], []]);
  }
});

Deno.test("readWorkLog() reads used plus reported whatever it is given", async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
      const head = new TextEncoder().encode("date,wets,note\n");
      const all = new Uint8Array([...head, ...bytes]);
      const { entries, lines } = await readWorkLog(all, "worklog.csv", "mm");
      equal(lines.read, lines.used + lines.reported);
      equal(entries.length, lines.used);
    }),
    { seed: 19, numRuns: 300 },
  );
});

Deno.test("readWorkLog() lists columns that it does not use, and refuses one that stands twice", async () => {
  const read = async (header: string) => {
    const { problems, lines } = await readWorkLog(
      `${header}\n2031-05-17,80,60,x,y\n`,
      "worklog.csv",
      "mm",
    );
    equal(lines.read, lines.used + lines.reported);
    return [
      lines.used,
      ...problems.map(({ severity, code, mend }) =>
        `${severity} ${code} ${mend ?? ""}`.trim()
      ),
    ];
  };
  deepEqual(await read("date,grade,minutes,sessoin,moon"), [
    1,
    "warning unknown-column did you mean session?",
    "note unknown-column",
  ]);
  deepEqual(await read("date,grade,minutes,session,Session"), [
    0,
    "refused repeated-column rename or take out the one that is not meant",
  ]);
  deepEqual(await read("date,grade,minutes,abrasive,note"), [1]);
});

Deno.test("readWorkLog() says which line is dated before one above it, and keeps it", async () => {
  const read = (...dates: string[]) =>
    readWorkLog(`date,wets\n${dates.map((d) => `${d},2\n`).join("")}`, "w.csv");
  const { lines, problems } = await read("2031-05-10", "", "2031-05-01");
  deepEqual(lines, { read: 3, used: 3, reported: 0 });
  deepEqual(
    problems.map(({ severity, code, line, value }) => [
      severity,
      code,
      line,
      value,
    ]),
    [["note", "dates-go-back", 4, "2031-05-01"]],
  );
  deepEqual(
    (await read("2031-05-10", "2031-05-10", "2031-05-11")).problems,
    [],
  );
});
