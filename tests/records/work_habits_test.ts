import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { openHistory } from "sagbook/narrative/mod.ts";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { BENCH, PIECE, withFolder } from "./_bench_of_cases.ts";

const PIECE_TOLD = { ...PIECE, sphericity_tolerance: { sag: "0.003 mm" } };
const WORK = {
  strokes: {
    shorten: { position: "tool on top", stroke: "my own long stroke" },
  },
  pit_grain_sizes: 2,
  removal: { amount: "4 µm", uncertainty: "0.5 µm", per: "wet" },
  thickness_uncertainty: "0.002 mm",
};
const ZONES = ["centre", "50% reach", "edge"];
/** A sphere of R 2621 mm or so: still longer than the target of 2520 mm. */
const READINGS = "session,zeroing,diameter_deg,zone,reading,unit\n" +
  ["S1", "S2"].flatMap((session) =>
    [0, 1, 2, 3].flatMap((k) =>
      ZONES.map((zone) =>
        `${session},${k + 1},${45 * k},${zone},${(687 + k % 2) / 1000},mm\n`
      )
    )
  ).join("");
const log = (thickness: readonly [string, string]) =>
  "date,grade,wets,position,session,thickness_centre\n" +
  `2031-05-01,F220,10,mirror on top,S1,${thickness[0]}\n` +
  `2031-05-02,F320,10,mirror on top,S2,${thickness[1]}\n`;

const told = (work: unknown, thickness: readonly [string, string]) =>
  withFolder({
    piece: PIECE_TOLD,
    bench: { ...BENCH, ...(work === undefined ? {} : { work }) },
    files: { "readings.csv": READINGS, "worklog.csv": log(thickness) },
  }, async (path) => ({
    folder: await readPieceFolder(path),
    history: await openHistory(path),
  }));
const words = (lines: readonly string[] = []) =>
  lines.join("\n").replace(/[\u00a0\u202f]/g, " ");

Deno.test("readPieceFolder() reads what a shop states about its own work", async () => {
  const { folder } = await told(WORK, ["", ""]);
  deepEqual(folder.bench.work, {
    strokes: { shorten: WORK.strokes.shorten },
    pitGrainSizes: 2,
    removal: { amount: 0.004, uncertainty: 0.0005, per: "wet" },
    thicknessUncertainty: 0.002,
  });
  const { folder: plain } = await told(undefined, ["", ""]);
  equal(plain.bench.work, undefined);
});

Deno.test("sessionReport() and openHistory() advise the shop's own stroke, and the common one else", async () => {
  const own = await told(WORK, ["", ""]);
  match(words(sessionReport(own.folder).answer), /my own long stroke/);
  match(words(own.history.answer), /my own long stroke/);
  const common = await told(undefined, ["", ""]);
  match(
    words(sessionReport(common.folder).answer),
    /mirror on top, the usual stroke/,
  );
});

Deno.test("openHistory() reckons removal by the shop's rate, and thicknesses by its caliper", async () => {
  const byRate = await told(WORK, ["", ""]);
  // Ten wets of 4 µm, ± 1.96 × 5 µm.
  match(
    words(byRate.history.pits?.sentences),
    /By your own rate of removal 40\.0 ± 9\.8 µm went off/,
  );
  const byCaliper = await told(WORK, ["40.12 mm", "40.07 mm"]);
  // 0.05 mm, ± 1.96 √2 × 2 µm.
  match(
    words(byCaliper.history.pits?.sentences),
    /By the thickness 50\.0 ± 5\.5 µm went off .*taken as good to 2 µm/,
  );
  const plain = await told(undefined, ["40.12 mm", "40.07 mm"]);
  match(
    words(plain.history.pits?.sentences),
    /50 ± 28 µm went off .*taken as good to 10 µm/,
  );
  // A rate for a minute says nothing about wets.
  const other = { ...WORK, removal: { ...WORK.removal, per: "minute" } };
  ok(
    !/rate of removal/.test(
      words((await told(other, ["", ""])).history.pits?.sentences),
    ),
  );
});

Deno.test("readPieceFolder() refuses habits that are none", async () => {
  for (
    const work of [
      { strokes: { shorten: { position: "sideways", stroke: "x" } } },
      { removal: { amount: "4", per: "wet" } },
      { removal: { amount: "4 µm", per: "hour" } },
      { pit_grain_sizes: 0 },
      { thickness_uncertainty: "-1 µm" },
    ]
  ) {
    await rejects(
      withFolder({ bench: { ...BENCH, work } }, readPieceFolder),
      { name: "RecordError" },
      JSON.stringify(work),
    );
  }
  const { problems } = await withFolder({
    bench: { ...BENCH, work: { strokes: { shortn: WORK.strokes.shorten } } },
  }, readPieceFolder);
  const unknown = problems.find(({ code }) => code === "unknown-key");
  match(`${unknown?.mend}`, /shorten/);
});
