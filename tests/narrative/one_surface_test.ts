import { deepEqual, doesNotMatch, equal, match } from "node:assert/strict";
import { openGaugeStudy } from "sagbook/narrative/gauge_report.ts";
import { onOneSurface, unloggedWork } from "sagbook/narrative/one_surface.ts";
import { openPlan } from "sagbook/narrative/plan_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

/** Four sets near a sag in µm, one µm of scatter. */
const evening = (session: string, sag: number, sets = 4): string =>
  Array.from(
    { length: sets },
    (_, k) =>
      ["centre", "20 mm", "40 mm"].map((zone, n) =>
        `${session},${k + 1},${60 * k % 180},${zone},0.${
          sag + (k * 2 + n) % 3
        },F320\n`
      ).join(""),
  ).join("");

const HEADER = "session,zeroing,diameter_deg,zone,reading,grade\n";
const READINGS = HEADER + evening("A", 700, 5) + evening("B", 712) +
  evening("C", 724);
const LOG =
  "date,grade,wets,session\n2031-05-03,F320,8,A\n2031-05-10,F320,6,B\n2031-05-17,F320,6,C\n";

const at = <T>(
  files: Record<string, string>,
  use: (path: string) => Promise<T>,
) => withFolder({ files }, use);

Deno.test("openGaugeStudy() counts no progress of the work as scatter of the gauge", async () => {
  const worked = await at(
    { "readings.csv": READINGS, "worklog.csv": LOG },
    openGaugeStudy,
  );
  const alone = await at(
    { "readings.csv": HEADER + evening("A", 700, 5) },
    openGaugeStudy,
  );
  equal(worked.main?.total?.sag.deviation, alone.main?.total?.sag.deviation);
  deepEqual(
    worked.main?.figures.filter(({ sources }) => sources.includes("session")),
    [],
  );
  match(worked.reasons[0], /^Of 3 sessions A alone is studied: the glass was/);
  doesNotMatch(worked.answer.join(" "), /days shift|If the glass was worked/);
});

Deno.test("openGaugeStudy() says without a log that days which differ may be work", async () => {
  const told = await at({ "readings.csv": READINGS }, openGaugeStudy);
  match(
    told.answer.join(" "),
    /If the glass was worked between these sessions, that is its progress/,
  );
  deepEqual(unloggedWork(told.main!), [told.answer.at(-1)]);
  const calm = await openGaugeStudy("data/gauge-study");
  deepEqual(unloggedWork(calm.main!), []);
});

Deno.test("openPlan() plans by the scatter of one surface", async () => {
  const plan = await at(
    { "readings.csv": READINGS, "worklog.csv": LOG },
    (path) => openPlan(path, { studies: 50 }),
  );
  equal(plan.gauge.main?.design.readings, 15);
});

Deno.test("onOneSurface() keeps sessions together that no work lies between, and one that nothing places alone", async () => {
  const log =
    "date,grade,wets,session\n2031-05-03,F320,8,A\n2031-05-10,F320,6,C\n";
  await at({
    "readings.csv": "session,zeroing,zone,reading,taken_at\n" +
      [["A", "2031-05-03"], ["B", "2031-05-04"], ["C", "2031-05-10"]]
        .map(([name, day]) => `${name},1,centre,0.715,${day}\n`).join(""),
    "worklog.csv": log,
  }, async (path) => {
    const folder = await readPieceFolder(path);
    const { entries } = await readFolderWorkLog(path);
    const { folder: kept, notes } = onOneSurface(folder, entries);
    deepEqual(kept.readings.map(({ session }) => session), ["A", "B"]);
    match(notes[0], /^Of 3 sessions A and B are studied/);
    equal(onOneSurface(folder, []).folder, folder);
    const undated = {
      ...folder,
      readings: folder.readings.map(({ takenAt: _, ...rest }) => rest),
    };
    deepEqual(
      onOneSurface(undated, [entries[1]]).folder.readings
        .map(({ session }) => session),
      ["C"],
    );
  });
});
