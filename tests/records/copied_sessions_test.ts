import { deepEqual, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { withFolder } from "./_bench_of_cases.ts";

/** A sheet of four sets, in µm. */
const sheet = (rows: readonly (readonly number[])[], day?: string): string =>
  `zeroing;diameter_deg;centre;edge${day === undefined ? "" : ";taken_at"}\n` +
  rows.map(([centre, edge], k) =>
    `${k + 1};${45 * k};0,${centre};0,${edge}${
      day === undefined ? "" : `;${day}`
    }\n`
  ).join("");

const copied = (files: Record<string, string>) =>
  withFolder({ files }, readPieceFolder).then(({ problems }) =>
    problems.filter(({ code }) => code === "copied-session")
  );

const READ = [[715, 714], [714, 715], [716, 714], [715, 716]];

Deno.test("readPieceFolder() asks about a sheet that holds what another one holds", async () => {
  const [problem, ...more] = await copied({
    "sheets/a.csv": sheet(READ),
    "sheets/a (1).csv": sheet(READ),
    "sheets/b.csv": sheet([...READ].reverse()),
  });
  deepEqual([problem.severity, more.length], ["warning", 0]);
  match(
    problem.message,
    /^session a( \(1\))? holds the same 8 readings as session a( \(1\))? in sheets\/a( \(1\))?\.csv, in the same order/,
  );
});

Deno.test("readPieceFolder() does not ask about readings that a coarse display makes alike, nor about dated evenings", async () => {
  const alike = [[715, 714], [715, 714], [715, 714], [715, 714]];
  deepEqual(
    await copied({
      "sheets/a.csv": sheet(alike),
      "sheets/b.csv": sheet(alike),
    }),
    [],
  );
  deepEqual(
    await copied({
      "sheets/a.csv": sheet(READ, "2031-05-10"),
      "sheets/b.csv": sheet(READ, "2031-05-17"),
    }),
    [],
  );
});
