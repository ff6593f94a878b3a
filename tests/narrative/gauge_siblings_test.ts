import { deepEqual, equal, match, ok } from "node:assert/strict";
import type { GaugeReport } from "sagbook/narrative/gauge_report.ts";
import {
  creepSentences,
  type GaugeOutliers,
  gaugeOutliers,
  gaugeReport,
  outlierSentences,
  planReport,
  planSheet,
  sheetCsv,
  trendSentences,
} from "sagbook/narrative/mod.ts";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { benchSheetTable } from "sagbook/repeatability/bench_sheet_csv.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { millimetres } from "sagbook/units/length.ts";
import { BENCH, PIECE, withFolder } from "../records/_bench_of_cases.ts";

const HEADER = "session,zeroing,zone,reading,unit\n";
/** A set for each list, in µm. */
const sets = (...um: number[][]) =>
  HEADER +
  um.flatMap((set, k) =>
    set.map((one) => `S1,${k + 1},centre,${one / 1000},mm\n`)
  ).join("");
const words = (lines: readonly string[]) =>
  lines.join("\n").replace(/[\u00a0\u202f]/g, " ");

async function both(csv: string, gauge: Record<string, unknown> = {}) {
  const folder = await withFolder({
    bench: { ...BENCH, gauge: { ...BENCH.gauge, ...gauge } },
    files: { "readings.csv": csv },
  }, readPieceFolder);
  return {
    folder,
    study: gaugeReport(folder, { studies: 50 }),
    session: sessionReport(folder),
  };
}

/** Variances of repeat and zeroing in µm². */
const variances = ({ main }: GaugeReport) =>
  main?.figures.map(({ usable }) => usable * 1e6) ?? [];

function near(found: readonly number[], wanted: readonly number[]): void {
  equal(found.length, wanted.length);
  found.forEach((one, k) =>
    ok(Math.abs(one - wanted[k]) < 2e-4 * Math.max(1, wanted[k]), `${found}`)
  );
}

Deno.test("gaugeReport() splits unbalanced readings as lme4 does, a zeroing read once among them", async () => {
  // lme4 1.1 in R 4, lmer(y ~ 1 + (1 | z), REML = TRUE), ftol_abs 1e-14.
  const uneven = [[715, 716, 714], [718], [713, 714], [719, 720, 719, 718]];
  near(variances((await both(sets(...uneven))).study), [
    0.747355676,
    6.26735183,
  ]);
  const single = [[715, 716, 714], [718, 717, 719], [713]];
  near(variances((await both(sets(...single))).study), [
    1.00466449,
    5.65971245,
  ]);
});

Deno.test("gaugeReport() names a reading that makes most of the scatter, with the answer without it", async () => {
  const um = [[715, 716, 715], [716, 715, 735], [715, 715, 716], [
    716,
    716,
    715,
  ], [715, 716, 716]];
  const { study, folder } = await both(sets(...um));
  // Within zeroings 770/3 µm² on 10 degrees of freedom; by lme4, which holds
  // zeroing at its bound of 0, 25.6 µm² with it and 0.269230769 without.
  near(variances(study).slice(0, 1), [77 / 3]);
  near([study.main!.byLikelihood![0].usable * 1e6], [25.6]);
  const { outliers, main, corrected } = study;
  ok(outliers?.without && main);
  deepEqual(outliers.flags.map(({ index }) => index), [5]);
  near([outliers.without.figures[0].usable * 1e6], [0.269230769]);
  match(
    words(study.answer),
    /One reading stands 20 µm from the others of its place and zeroing \(centre, readings\.csv, line 7\); it is kept, and counts\. Without it one reading scatters by 0\.52 µm instead of 5\.1 µm\./,
  );
  const again: GaugeOutliers = gaugeOutliers(folder, corrected.sag, main);
  deepEqual(again.flags, outliers.flags);
  deepEqual(
    outlierSentences({ flags: [] }, main, folder.readings, "mm"),
    [],
  );
});

Deno.test("gaugeReport() is not certain of no scatter where an estimate is none", async () => {
  const below = await both(sets([712, 718], [713, 717]));
  // Means are equal: (0 - 13)/2 < 0 for zeroing.
  const [, zeroing] = below.study.main!.figures;
  deepEqual([zeroing.belowZero, zeroing.sag.interval], [true, undefined]);
  match(words(below.study.reasons), /zeroing again none to be seen\./);
  const within = await both(sets([715, 715], [718, 718], [712, 712]));
  const [repeat] = within.study.main!.figures;
  deepEqual([repeat.sag.deviation, repeat.sag.interval], [0, undefined]);
  match(
    words(within.study.reasons),
    /setting the gauge down again none to be seen; zeroing again 3\.0 µm/,
  );
  match(words(within.study.limits), /below what the display shows \(step 1 µm/);
});

Deno.test("gaugeReport() says what is equal, and what no display step leaves unknown", async () => {
  const equalOnes = sets([715, 715], [715, 715]);
  match(
    words((await both(equalOnes)).study.answer),
    /^The readings are all equal: they are limited by the display \(step 1 µm\)/,
  );
  const unknown = await both(equalOnes, { display_step: undefined });
  match(
    words(unknown.study.answer),
    /^The readings are all equal; bench\.json states no display step, so how much the display hides is not known/,
  );
  ok(!/step 0|at least 0 µm/.test(words(unknown.study.answer)));
  const additive = [[715, 712, 709], [717, 714], [714, 711, 708]].map((set) =>
    set.map((um, zone) => [["centre", "50% reach", "edge"][zone], um] as const)
  );
  const rows = additive.flatMap((set, k) =>
    set.map(([zone, um]) => `S1,${k + 1},${zone},${um / 1000},mm\n`)
  );
  match(
    words((await both(HEADER + rows.join(""))).study.answer),
    /^The zeroings differ by up to \d\.\d µm, and beside that the readings repeat to the last figure: they are limited by the display/,
  );
});

Deno.test("gaugeReport() and sessionReport() do not take a steady climb for scatter", async () => {
  const climb = await both(
    sets(...[716, 717, 718, 719, 720, 721].map((um) => [um, um])),
  );
  for (const said of [climb.study.limits, climb.session.cautions]) {
    match(
      words(said),
      /The zeroings climb one after another, by 5\.0 µm from the first to the last: scatter does not do that/,
    );
  }
  const scatter = await both(
    sets(...[716, 719, 717, 721, 718, 720].map((um) => [um, um])),
  );
  ok(!/one after another/.test(words(scatter.study.limits)));
  match(
    trendSentences([5, 4, 3, 2, 1].map((um) => um / 1000), 0.001, "mm")[0],
    /^The zeroings fall/,
  );
  deepEqual(trendSentences([1, 2, 3, 4].map((um) => um / 1000), 0, "mm"), []);
});

Deno.test("gaugeReport() puts doubts about the readings first", async () => {
  const { study } = await both(sets([715, 716], [715, 28.2], [716, 715]));
  match(study.answer[0], /^Check before you trust this: 1 of 6 readings/);
});

Deno.test("sessionReport() takes a set that lacks a zone for no outlier", async () => {
  const rows = [1, 2, 3, 4].flatMap((k) =>
    ["centre", "50% reach", "edge"].filter((_, zone) =>
      !(k === 2 && zone === 2)
    )
      .map((zone, at) =>
        `S1,${k},${45 * k},${zone},${
          ((715 + [0, 2, -1, 1][k - 1] - 3 * at) / 1000).toFixed(3)
        },mm\n`
      )
  );
  const { session } = await both(
    "session,zeroing,diameter_deg,zone,reading,unit\n" + rows.join(""),
  );
  deepEqual(session.session?.outliers, []);
});

Deno.test("sessionReport() writes no more figures of the way to the target than the radius has", async () => {
  const folder = await withFolder({
    piece: PIECE,
    bench: { ...BENCH, flat: { id: "F", size: "150 mm", flatness: "0.02 mm" } },
    files: { "readings.csv": sets([715], [716], [715]) },
  }, readPieceFolder);
  match(
    words(sessionReport(folder).answer),
    /is 2520 mm \(24\d\d mm to 25\d\d mm\) \(95 % sure\), .*; the target is 2520 mm, which lies within that doubt\./,
  );
});

Deno.test("planSheet() tells which way the feet point as far as that is known", async () => {
  const piece = {
    ...PIECE,
    sphericity_tolerance: { sag: "0.006 mm" },
  };
  const rows = [0, 1, 2, 3].flatMap((k) =>
    ["centre", "30 mm"].map((zone, at) =>
      `S1,${k + 1},${45 * k},${zone},${(715 + k % 2 - at) / 1000},mm`
    )
  );
  const sheetOf = async (foot: string, column: string) => {
    const folder = await withFolder({
      piece,
      bench: { ...BENCH, rings: [{ ...BENCH.rings[0], foot }] },
      files: {
        "readings.csv":
          "session,zeroing,diameter_deg,zone,reading,unit,foot_deg\n" +
          rows.map((row) => `${row},${column}\n`).join(""),
      },
    }, readPieceFolder);
    const report = gaugeReport(folder, { studies: 50 });
    const sheet = planSheet(report);
    ok(sheet && sheet.rows.some(({ offset }) => offset !== 0));
    const off = benchSheetTable(sheet).rows.find((row) =>
      row.includes("30 mm")
    );
    return [sheet.foot.kind, off?.includes("write it here"), sheetCsv(report)];
  };
  const [kind, blank, csv] = await sheetOf("unknown", "");
  deepEqual([kind, blank], ["unknown", true]);
  ok(!/foot out|feet out/.test(`${csv}`));
  deepEqual((await sheetOf("feet out", "")).slice(0, 2), ["feet out", false]);
  deepEqual((await sheetOf("unknown", "feet out")).slice(0, 1), ["feet out"]);
});

Deno.test("planReport() puts doubts about the readings first", async () => {
  const { folder } = await both(sets([715, 716], [715, 28.2], [716, 715]));
  match(planReport(folder).answer[0], /^Check before you trust this: 1 of 6/);
});

Deno.test("creepSentences() does not let a climb within one zeroing pass for scatter, nor scatter for a climb", async () => {
  const climb = await both(sets([712, 714, 716, 718, 720]));
  for (const said of [climb.study.limits, climb.session.cautions]) {
    match(
      words(said),
      /Within zeroing 1 the readings at centre climb one after another, by 8\.0 µm from the first to the last: scatter does not do that/,
    );
  }
  const silent = [
    [[712, 714, 716, 718]],
    [[712, 716, 714, 720, 718]],
    [[712, 713, 713, 713, 713]],
    // One series of five among several does it by chance.
    [[712, 714, 716, 718, 720], [716, 713, 717, 714, 716]],
  ];
  for (const um of silent) {
    const { study } = await both(sets(...um));
    ok(!/Within zeroing/.test(words(study.limits)), JSON.stringify(um));
  }
  const fall = [720, 719, 718, 717, 716, 715].map((um) => ({
    reading: {
      session: "S1",
      zeroing: "S1 / 2",
      ring: "A",
      zone: { label: "edge", distance: millimetres(40) },
    },
    sag: um / 1000,
  }));
  match(creepSentences(fall, 0.001, "mm")[0], /edge fall .*, by 5\.0/);
  deepEqual(creepSentences(fall, 0.01, "mm"), []);
});
