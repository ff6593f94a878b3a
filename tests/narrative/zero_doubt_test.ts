import { doesNotMatch, equal, match } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { openHistory } from "sagbook/narrative/history_report.ts";
import { sessionsTable } from "sagbook/narrative/report_tables.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import { drawZones } from "sagbook/narrative/report_figures.ts";
import type { SessionReport } from "sagbook/narrative/session_report.ts";
import { PIECE, withFolder } from "../records/_bench_of_cases.ts";

const HEADER = "session,zeroing,diameter_deg,zone,reading\n";

/** Five sets from a sphere, in µm; `slip` says how far the zero is off by then. */
const sphere = (
  slip: (order: number) => number,
  looks: "at both ends" | "after every reading" = "at both ends",
  edge = 0,
): string =>
  HEADER +
  [0, 1, 0, 1, 0].map((more, k) => {
    let order = 0;
    const line = (zone: string, sag: number) =>
      `E1,${k + 1},${30 * k},${zone},${
        ((sag + slip(order++)) / 1000).toFixed(3)
      }\n`;
    return ["centre", "20 mm", "40 mm"].reduce(
      (text, zone, n) =>
        text + line(zone, 714 + (more + n) % 2 + (n === 2 ? edge : 0)) +
        (looks === "after every reading" || n === 2 ? line("flat", 0) : ""),
      line("flat", 0),
    );
  }).join("");

const written = (report: SessionReport): string =>
  JSON.stringify(sessionsTable(report)[jupyterDisplay]());

const answer = (text: string) =>
  withFolder({
    piece: {
      ...PIECE,
      target: { radius: "2520 mm", tolerance: "40 mm" },
      sphericity_tolerance: { sag: "3 µm" },
    },
    files: { "readings.csv": text },
  }, async (path) => {
    const report = await openPiece(path);
    return {
      verdict: report.session?.sphericity.verdict,
      said: report.answer.join("\n").replace(/[\u00a0\u202f]/g, " "),
      next: report.answer.at(-1)!,
      title: (await drawZones(report))!.title,
      history: (await openHistory(path)).answer.join("\n"),
      table: written(report),
    };
  });

Deno.test("sessionReport() advises no stroke where a slip of the zero could have made the shape", async () => {
  // The zero slips by 9 µm after the last reading of each set: a sphere, that
  // an even creep taken out turns into a deep edge.
  const late = await answer(sphere((order) => order === 4 ? -9 : 0));
  equal(late.verdict, "outside");
  match(
    late.said,
    /^Check before you trust this: the zero moved by 9\.0 µm between two looks at the flat, more than the 3\.0 µm that zones may differ by\./,
  );
  match(late.table, /in doubt: the zero moved/);
  match(late.next, /^Next: settle that first/);
  doesNotMatch(late.said, /stroke|not a sphere|deep/);
  doesNotMatch(late.history, /stroke|not a sphere|deep/);
  // The other way round: before the outermost reading.
  const early = await answer(sphere((order) => order >= 3 ? -9 : 0));
  match(early.said, /^Check before you trust this: the zero moved/);
  match(early.next, /^Next: settle that first/);
  equal(/agree|differ by more/.test(late.title), false);
});

Deno.test("sessionReport() trusts a zero that was looked at often enough, or moved too little to matter", async () => {
  const creep = await answer(
    sphere((order) => -1.5 * order, "after every reading"),
  );
  equal(creep.verdict, "within");
  doesNotMatch(creep.said, /Check before/);
  const little = await answer(sphere((order) => order >= 3 ? -2 : 0));
  doesNotMatch(little.said, /Check before/);
  // A fault so large that no slip of this size made it.
  const large = await answer(
    sphere((order) => -2.5 * order, "at both ends", -40),
  );
  equal(large.verdict, "outside");
  match(large.next, /^Next: bring it to a sphere first/);
});

Deno.test("sessionsTable() says whose ± lacks the scatter of the zero", async () => {
  const table = async (text: string) =>
    await withFolder(
      { files: { "readings.csv": text } },
      async (path) => written(await openPiece(path)),
    );
  const once = HEADER + "E2,1,0,centre,0.714\nE2,1,60,centre,0.715\n";
  match(
    await table(sphere(() => 0) + once.slice(HEADER.length)),
    /Zeroed once only: E2; how the zero scatters is not in that ±/,
  );
  doesNotMatch(await table(sphere(() => 0)), /Zeroed once only/);
});
