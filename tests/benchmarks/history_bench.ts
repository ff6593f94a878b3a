/**
 * The history of a piece, from its files to everything the notebook shows.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { Random } from "sagbook/numerics/random.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { radiusFromSurfaceSag } from "sagbook/geometry/surface_sag.ts";
import {
  drawGrades,
  drawProgress,
  drawRates,
  drawZonesOverTime,
  historyTable,
  openHistory,
  pieceRecord,
  ratesTable,
  sentences,
  showHistoryAnswer,
} from "sagbook/narrative/mod.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { benchProgram } from "./_program.ts";
import { median, sideBySide } from "./_side_by_side.ts";

const GRADES = ["F80", "F120", "F220", "F320", "F500"];
const FOLDER = fileURLToPath(
  new URL("../../data/history-300", import.meta.url),
);

/** A folder whose work goes on for so many evenings; the caller removes it. */
async function longHistory(sessions: number): Promise<string> {
  const folder = await Deno.makeTempDir({ prefix: "history-" });
  const random = new Random(1000);
  for (const name of ["piece.json", "bench.json"]) {
    await Deno.copyFile(`${FOLDER}/${name}`, `${folder}/${name}`);
  }
  const feet = { circleRadius: mm(60), ballRadius: mm(6) };
  const readings = [
    "session,taken_at,grade,ring,zeroing,diameter_deg,foot_deg,zone,reading,unit",
  ];
  const work = ["date,grade,minutes,wets,position,session"];
  let sag = 3.3;
  for (let i = 0; i < sessions; i++) {
    const date = new Date(Date.UTC(2024, 0, 1 + i)).toISOString().slice(0, 10);
    const grade = GRADES[Math.floor(5 * i / sessions)];
    sag += 0.0004 * (1 + 0.2 * random.normal());
    if (i > 0) work.push(`${date},${grade},6,1,mirror on top,S${i}`);
    const radius = radiusFromSurfaceSag(mm(sag), mm(150));
    const truth = sagFromRadius(radius, feet, "concave");
    for (let set = 0; set < 4; set++) {
      const zero = 0.001 * random.normal();
      for (const zone of ["centre", "50%", "edge"]) {
        const shown = (truth + zero + 0.0006 * random.normal()).toFixed(3);
        readings.push(
          `S${i},${date}T19:00,${grade},ring 120,${set + 1},${
            45 * set
          },foot out,${zone},${shown},mm`,
        );
      }
    }
  }
  await Deno.writeTextFile(`${folder}/readings.csv`, readings.join("\n"));
  await Deno.writeTextFile(`${folder}/worklog.csv`, work.join("\n"));
  return folder;
}

/** Everything the notebook shows, as the kernel would hand it over. */
async function render(folder: string, evening: string): Promise<number> {
  const report = await openHistory(folder);
  const back = await openHistory(folder, { upTo: evening });
  const shown = [
    showHistoryAnswer(report),
    await drawProgress(report),
    sentences(report.notes),
    await drawRates(report),
    ratesTable(report),
    await drawProgress(report, "sag"),
    sentences(report.pits?.sentences ?? []),
    await drawZonesOverTime(report),
    await drawGrades(report),
    historyTable(report),
    sentences(back.answer),
    await drawProgress(back),
    pieceRecord(report),
    sentences(report.cautions),
    sentences(report.safety),
  ];
  let size = 0;
  for (const one of shown) {
    size += JSON.stringify(await one?.[jupyterDisplay]() ?? "").length;
  }
  return size;
}

if (import.meta.main) {
  await benchProgram({
    ours: async (sessions) => {
      const folder = await longHistory(sessions);
      addEventListener(
        "unload",
        () => Deno.removeSync(folder, { recursive: true }),
      );
      return async () => [
        await render(folder, `S${Math.floor(sessions * 0.9)}`),
      ];
    },
    run: async (size) => {
      const isTiny = size === "tiny";
      const { row } = await sideBySide({
        program: import.meta.url,
        what: "History of 1,000 sessions, files to everything shown",
        grows: "sessions",
        sizes: isTiny ? [10] : [10, 100, 1000],
        runs: (n) => isTiny ? 1 : n < 1000 ? 5 : 3,
        rounds: 1,
      });
      const times: number[] = [];
      for (let run = 0; run < (isTiny ? 1 : 10); run++) {
        const start = performance.now();
        await render(FOLDER, "E13");
        times.push(performance.now() - start);
      }
      return {
        title: "History of a piece",
        about:
          "From the folder's files to all answers, tables and figures that the notebook shows, a look back included, beyond the start of a kernel. Four sets of three readings a session. We know of nothing general to hold it against.",
        rows: [
          {
            what:
              "History of the invented piece in data/, files to everything shown",
            ours: median(times),
            limit: { of: "ours", atMost: 2000 },
          },
          { ...row, limit: { of: "ours", atMost: 10_000 } },
        ],
      };
    },
  });
}
