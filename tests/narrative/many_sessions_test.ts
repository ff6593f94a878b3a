import { deepEqual, equal, match } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { reportResults } from "sagbook/narrative/report_results.ts";
import { sessionsTable } from "sagbook/narrative/report_tables.ts";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";

const DATA = new URL("../../data/metric-250", import.meta.url).pathname;

Deno.test("sessionReport() works out the first and the last 199 of many sessions, and says so", async () => {
  const folder = await readPieceFolder(DATA);
  const last = folder.readings.at(-1)!.session;
  const one = folder.readings.filter(({ session }) => session === last)
    .slice(0, 6);
  const readings = Array.from(
    { length: 230 },
    (_, number) =>
      one.map((reading) => ({
        ...reading,
        session: `evening ${number + 1}`,
        zeroing: reading.zeroing.replace(last, `evening ${number + 1}`),
      })),
  ).flat();
  const report = sessionReport({ ...folder, readings });
  deepEqual(
    report.sessions.map(({ session }) => session).slice(0, 3),
    ["evening 1", "evening 32", "evening 33"],
  );
  equal(report.sessions.length, 200);
  equal(report.session?.session, "evening 230");
  equal(report.sessionsLeftOut, 30);
  equal(reportResults(report).sessions_left_out, 30);
  const { "text/html": html } = await sessionsTable(report)[jupyterDisplay]();
  match(
    String(html),
    /The first session and the last 199 of 230, each with its ring; the 30 between were read and not worked out/,
  );
});

Deno.test("sessionReport() works out every session of a folder of few", async () => {
  const report = sessionReport(await readPieceFolder(DATA));
  equal(report.sessionsLeftOut, undefined);
  equal("sessions_left_out" in reportResults(report), false);
});
