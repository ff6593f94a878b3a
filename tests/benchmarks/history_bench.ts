/**
 * The history of a piece, from its files to everything the notebook shows: the
 * demonstration piece of 20 sessions (within 2 s) and one of 1000 (within 10 s),
 * beyond the start of a kernel.
 *
 * @module
 */
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

const SESSIONS = 1000;
const GRADES = ["F80", "F120", "F220", "F320", "F500"];
const FOLDER = "data/history-300";

/** A folder whose work goes on for a thousand evenings; the caller removes it. */
async function longHistory(): Promise<string> {
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
  for (let i = 0; i < SESSIONS; i++) {
    const date = new Date(Date.UTC(2024, 0, 1 + i)).toISOString().slice(0, 10);
    const grade = GRADES[Math.floor(5 * i / SESSIONS)];
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

Deno.bench("20 sessions, files to everything shown", {
  group: "history",
  n: 10,
  warmup: 2,
}, async () => {
  await render(FOLDER, "E13");
});

Deno.bench("1000 sessions, files to everything shown", {
  group: "long history",
  n: 3,
  warmup: 1,
}, async (measured) => {
  const folder = await longHistory();
  measured.start();
  await render(folder, "S990");
  measured.end();
  await Deno.remove(folder, { recursive: true });
});
