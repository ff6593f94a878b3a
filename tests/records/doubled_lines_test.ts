import { deepEqual, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { withFolder } from "./_bench_of_cases.ts";
import { scan } from "./_scan_of_text.ts";

const HEADER = "session,zeroing,zone,reading,unit\n";
const SETS = [[715, 714, 713], [716, 715, 714], [714, 713, 712]].flatMap((
  set,
  k,
) =>
  set.map((um, zone) =>
    `S1,${k + 1},${["centre", "50% reach", "edge"][zone]},${um / 1000},mm\n`
  )
).join("");

Deno.test("scanReadings() asks whether a block of lines was put in twice", async () => {
  const twice = await scan(HEADER + SETS + HEADER + SETS);
  deepEqual(twice.of("warning"), ["12 doubled-lines"]);
  match(
    twice.problems.find(({ code }) => code === "doubled-lines")!.message,
    /^lines 12 to 20 hold the same 9 readings as lines 2 to 10, in the same order/,
  );
  deepEqual((await scan(HEADER + SETS)).of("warning"), []);
  // Another session, or the same places read again, is no copy.
  deepEqual(
    (await scan(HEADER + SETS + SETS.replaceAll("S1", "S2"))).of("warning"),
    [],
  );
  const again = "S1,1,centre,0.715,mm\nS1,1,edge,0.714,mm\n".repeat(12);
  deepEqual((await scan(HEADER + again)).of("warning"), []);
});

Deno.test("readPieceFolder() asks whether two files of a folder hold the same readings", async () => {
  const { problems } = await withFolder({
    files: {
      "readings.csv": HEADER + SETS,
      "sheets/readings copy.csv": HEADER + SETS,
    },
  }, readPieceFolder);
  const found = problems.find(({ code }) => code === "doubled-lines")!;
  deepEqual([found.file, found.line, found.count], [
    "sheets/readings copy.csv",
    2,
    9,
  ]);
  match(found.message, /as lines 2 to 10 of readings\.csv, in the same order/);
});

Deno.test("scanReadings() asks about a zeroing that goes on after the next has begun", async () => {
  const timed = (...rows: [zeroing: string, minute: number][]) =>
    scan(
      "session,zeroing,zone,reading,unit,taken_at\n" +
        rows.map(([zeroing, minute]) =>
          `S1,${zeroing},centre,0.715,mm,2031-05-17T19:${
            String(minute).padStart(2, "0")
          }\n`
        ).join(""),
    );
  deepEqual(
    (await timed(["1", 1], ["1", 2], ["2", 2], ["2", 3])).of("warning"),
    [],
  );
  // The order of the lines does not matter, the clock does.
  deepEqual(
    (await timed(["1", 1], ["2", 5], ["1", 2], ["2", 6])).of("warning"),
    [],
  );
  const mixed = await timed(["1", 1], ["2", 3], ["1", 4], ["2", 5]);
  deepEqual(mixed.of("warning"), ["3 zeroings-overlap"]);
  match(
    mixed.problems[0].message,
    /^zeroing 2 begins while zeroing 1 still goes on/,
  );
});

Deno.test("scanReadings() asks about a session on two grades or over many days", async () => {
  const rows = (columns: string, ...cells: string[]) =>
    scan(
      `session,zeroing,zone,reading,unit,${columns}\n` +
        cells.map((cell, k) => `S1,${k + 1},centre,0.715,mm,${cell}\n`).join(
          "",
        ),
    );
  const grades = await rows("grade", "80", "", "80", "F500", "F500");
  deepEqual(grades.of("warning"), ["5 grades-mixed"]);
  match(grades.problems[0].message, /after grade 80 and after grade F500/);
  deepEqual((await rows("grade", "80", "", "80")).of("warning"), []);
  const days = await rows(
    "taken_at",
    "2031-05-17",
    "2031-05-18T23:00",
    "2031-06-20",
  );
  deepEqual(days.of("warning"), ["4 long-session"]);
  match(days.problems[0].message, /goes on for 34 days/);
  deepEqual(
    (await rows("taken_at", "2031-05-17", "2031-05-18T23:00")).of("warning"),
    [],
  );
});

Deno.test("scanReadings() says which session is dated before one above it, and what order was taken", async () => {
  const found = async (...rows: string[]) =>
    (await scan(
      "session,zeroing,zone,reading,unit,taken_at\n" +
        rows.map((row, k) => {
          const [session, at] = row.split(" ");
          return `${session},${k + 1},centre,0.715,mm,${at}\n`;
        }).join(""),
    )).problems.filter(({ code }) => code === "sessions-out-of-order");
  deepEqual(await found("S1 2031-05-09", "S2 2031-05-09", "S3 2031-05-10"), []);
  const [back, ...more] = await found(
    "S2 2031-05-10",
    "S3 2031-05-11",
    "S1 2031-05-08",
  );
  deepEqual([back.line, back.severity, more.length], [4, "note", 0]);
  match(
    back.message,
    /^session S1 is dated 2031-05-08, before session S3 of 2031-05-11 .* in the order of their dates/,
  );
  const [mixed] = await found("S2 2031-05-10", "S0 ", "S1 2031-05-08");
  match(mixed.message, /as they stand in the files, since session S0 has no/);
});
