import { deepEqual, equal, match } from "node:assert/strict";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { withFolder } from "./_bench_of_cases.ts";

/** A sheet of three sets, the first reading in µm. */
const sheet = (sag: number): string =>
  "zeroing;diameter_deg;centre;edge\n" +
  [1, 2, 3].map((k) =>
    `${k};${60 * k};0,${sag + k % 2};0,${sag + (k + 1) % 2}\n`
  ).join("");

/** Two evenings on one line each, dated. */
const dated = (session: string, day: string, sag: number): string =>
  [1, 2, 3].map((k) =>
    `${session},${k},centre,0.${sag + k % 2},${day}\n` +
    `${session},${k},edge,0.${sag + (k + 1) % 2},${day}\n`
  ).join("");

const HEADER = "session,zeroing,zone,reading,taken_at\n";

const last = (files: Record<string, string>) =>
  withFolder({ files }, async (path) => {
    const folder = await readPieceFolder(path);
    const { session, answer } = sessionReport(folder);
    return { session: session?.session, answer, folder };
  });

Deno.test("readPieceFolder() dates sessions by the work log, so that an old sheet is not the answer", async () => {
  const log =
    "date,grade,wets,session\n2031-05-10,F220,8,evening A\n2031-05-17,F320,6,evening B\n";
  const { session, folder } = await last({
    "readings.csv": HEADER + dated("evening B", "2031-05-17T19:00", 715),
    "sheets/evening A.csv": sheet(705),
    "worklog.csv": log,
  });
  equal(session, "evening B");
  deepEqual(
    folder.readings.filter((one) => one.session === "evening A")
      .map(({ takenAt }) => takenAt),
    new Array(6).fill("2031-05-10"),
  );
  deepEqual(
    folder.problems.filter(({ code }) => code === "dated-by-work-log")
      .map(({ message }) => message),
    [
      "readings without a date were given that of the work before them: evening A 2031-05-10",
    ],
  );
  deepEqual(
    folder.problems.filter(({ severity }) => severity === "warning"),
    [],
  );
});

Deno.test("sessionReport() doubts a last session without a date beside one that has a date in another file", async () => {
  const files = {
    "readings.csv": HEADER + dated("evening B", "2031-05-17T19:00", 715),
    "sheets/evening A.csv": sheet(705),
  };
  const { session, answer } = await last(files);
  equal(session, "evening A");
  match(
    answer[0],
    /^Check before you trust this: session evening A has no date and was taken for the last, after session evening B of 2031-05-17 in another file/,
  );
  match(answer.at(-1)!, /settle that first/);
  // Nothing is dated, or the undated one stands below in the same file: fine.
  const calms: Record<string, string>[] = [
    {
      "readings.csv": HEADER + dated("evening B", "", 715),
      "sheets/evening C.csv": sheet(712),
    },
    {
      "readings.csv": HEADER + dated("A", "2031-05-17", 715) +
        dated("B", "", 714),
    },
  ];
  for (const calm of calms) {
    const { folder } = await last(calm);
    deepEqual(
      folder.problems.filter(({ severity }) => severity === "warning"),
      [],
    );
  }
});

Deno.test("readPieceFolder() reads evening 9 before evening 10", async () => {
  const { session, folder } = await last({
    "sheets/evening 10.csv": sheet(715),
    "sheets/evening 9.csv": sheet(712),
    "sheets/evening 1.csv": sheet(705),
  });
  equal(session, "evening 10");
  deepEqual(folder.files.map(({ file }) => file), [
    "sheets/evening 1.csv",
    "sheets/evening 9.csv",
    "sheets/evening 10.csv",
  ]);
});

Deno.test("readPieceFolder() names every table that lies beside sheets/ and is not read", async () => {
  const { folder } = await last({
    "readings.csv": HEADER + dated("A", "", 715),
    "evening 4.csv": sheet(715),
    "notes.txt": "buy cerium",
    "plan.csv": "zeroing,zone,reading\n",
    "sheet-template.csv": "zeroing,centre\n",
  });
  deepEqual(
    folder.problems.filter(({ code }) => code === "file-not-read")
      .map(({ file }) => file),
    ["evening 4.csv"],
  );
});

Deno.test("sessionReport() says which table was passed over where no reading was found", async () => {
  const alone = await last({ "evening 4.csv": sheet(715) });
  deepEqual(alone.answer, [
    "There is nothing to answer yet: no reading of the work was found, and evening 4.csv is not read where it lies.",
    "Next: put it under sheets/, or name it readings.csv, and run this again.",
  ]);
  const none = await last({});
  match(none.answer[1], /^Next: zero the gauge on the flat/);
});

Deno.test("readPieceFolder() takes no mean for a set, in whatever language its row is labelled", async () => {
  for (const word of ["Mittelwert", "Moyenne", "gemiddelde", "MW"]) {
    const { folder } = await last({
      "sheets/a.csv": `${sheet(715)}${word};;0,715;0,715\n`,
    });
    equal(folder.readings.length, 6, word);
    equal(folder.lines.reported, 2);
  }
  // A word that nobody here knows, with the means behind it.
  const { folder, answer } = await last({
    "sheets/a.csv": `${sheet(715)}vidurkis;;0,716;0,715\n`,
  });
  deepEqual(
    folder.problems.filter(({ severity }) => severity === "warning")
      .map(({ line, code }) => [line, code]),
    [[5, "like-a-mean"]],
  );
  match(answer[0], /^Check before you trust this/);
});

Deno.test("readPieceFolder() says once that a header has foreign names, and which names are read", async () => {
  const { folder, answer } = await last({
    "sheets/a.csv": "Nullung;Ring;Mitte;halb;Rand\n1;A;0,715;0,714;0,715\n",
  });
  deepEqual(
    folder.problems.filter(({ severity }) => severity === "refused")
      .map(({ line, message, expected }) => [line, message, expected]),
    [[
      1,
      "the names of the columns are not those known here",
      "session,zeroing,zone,reading or, on a bench sheet, zeroing,diameter_deg,centre,50%,edge",
    ]],
  );
  match(answer[0], /^No reading could be used: the one line was left out\. /);
  match(
    answer[1],
    /^Next: write the names in English, such as zeroing,diameter_deg,centre,/,
  );
});
