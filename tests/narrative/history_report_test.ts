import {
  deepEqual,
  equal,
  match,
  ok,
  rejects,
  throws,
} from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  chooseNext,
  drawGrades,
  drawProgress,
  drawRates,
  drawZonesOverTime,
  forecastSentences,
  historyAnswer,
  historyCautions,
  historyNotes,
  historyPits,
  historyPoints,
  type HistoryReport,
  historyReport,
  historyResults,
  historyStages,
  historyTable,
  isSphere,
  openHistory,
  pieceRecord,
  progressRun,
  ratesTable,
  settingName,
  showHistoryAnswer,
  workSafety,
  writeMostWork,
  writeRate,
  writeWork,
} from "sagbook/narrative/mod.ts";
import { COMMON_STROKES } from "sagbook/fabrication/next_step.ts";
import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { standardUncertainty } from "sagbook/statistics/estimate_uncertainty.ts";
import { surfaceSag } from "sagbook/geometry/surface_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import {
  BENCH,
  caseBytes,
  type FolderParts,
  PIECE,
  withFolder,
} from "../records/_bench_of_cases.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const words = (list: readonly string[]): string => plain(list.join("\n"));
const HISTORY = "data/history-300";
const BEFORE = "data/history-300-before";

let whole: Promise<HistoryReport> | undefined;
const demo = () => whole ??= openHistory(HISTORY, { earlier: [BEFORE] });

async function historyOf(parts: FolderParts): Promise<HistoryReport> {
  return await withFolder(parts, (path) => openHistory(path));
}

async function show(
  value: { [jupyterDisplay](): unknown } | undefined,
): Promise<Record<string, string>> {
  return await value![jupyterDisplay]() as Record<string, string>;
}

/** Readings of a piece of 210 mm: centre alone, three zeroings a session. */
function readings(
  sessions: readonly (readonly [name: string, date: string, sag: number])[],
): string {
  const lines = sessions.flatMap(([name, date, sag]) =>
    [0.0003, -0.0003, 0].map((more, i) =>
      `${name},${date},${i + 1},${60 * i},centre,${(sag + more).toFixed(4)} mm`
    )
  );
  return ["session,taken_at,zeroing,diameter_deg,zone,reading", ...lines, ""]
    .join("\n");
}

const STEADY = [
  ["S1", "2031-05-01", 0.640],
  ["S2", "2031-05-02", 0.6604],
  ["S3", "2031-05-03", 0.6797],
  ["S4", "2031-05-04", 0.7003],
] as const;
const LOG = `date,grade,wets,minutes,position,session
2031-05-02,F80,10,60,mirror on top,S2
2031-05-03,F80,10,60,mirror on top,S3
2031-05-04,F80,10,60,mirror on top,S4
`;
const files = (
  log: string,
  sessions = STEADY as Parameters<typeof readings>[0],
) => ({
  files: { "readings.csv": readings(sessions), "worklog.csv": log },
});

Deno.test("openHistory() forecasts work, minutes and risk from a steady log", async () => {
  const report = await historyOf(files(LOG));
  ok(report.forecast?.kind === "forecast");
  const { work, interval, most, riskNow } = report.forecast;
  // 0.7152 mm of sag at the ring is the target; 2 µm a wet, 15 µm to go.
  ok(work > 6 && work < 9, `${work}`);
  ok(interval.low < work && work < interval.high!);
  ok(most < work && riskNow < 0.05);
  const text = words(report.answer);
  match(
    text,
    /With F80, mirror on top, one wet changes the sag of the whole surface by \+\d/,
  );
  match(
    text,
    /The target is 7(\.\d)? wets \(about \d+ minutes\) away, most likely/,
  );
  match(
    text,
    /Stop after \d wets and read again: up to there the risk of passing the target stays at 5 % or less\./,
  );
  match(text, /µm of depth at the centre and \d\.\d\d cm³ of glass are left/);
});

Deno.test("openHistory() gives a target passed its words, and no work in the old direction", async () => {
  const report = await withFolder(
    { files: { "readings.csv": await caseBytes("G10-past-target.csv") } },
    (path) => openHistory(path),
  );
  equal(report.forecast?.kind, "passed");
  equal(report.depth?.change, "lengthen");
  equal((1000 * report.depth!.depth).toFixed(1), "31.4");
  equal(report.depth!.sag.toFixed(5), "2.21983");
  equal(report.depth!.targetSag.toFixed(5), "2.18845");
  const text = words(report.answer);
  match(report.answer[0], /^The target is passed/);
  match(text, /past it/);
  match(
    text,
    /The target is passed: the whole surface is 31 µm too deep at the centre, and the radius must grow longer again\. There is no work left to do in the old direction\./,
  );
  equal(/-\d|−\d/.test(text), false, text);
  equal(/wets|minutes/.test(text), false, text);
  match(words(report.notes), /There is no work log/);
});

Deno.test("openHistory() forecasts nothing from a surface that is not a sphere", async () => {
  const sheet = await caseBytes("G07-not-spherical.csv");
  const report = await withFolder({
    piece: { ...PIECE, sphericity_tolerance: { sag: "0.003 mm" } },
    bench: { ...BENCH, rings: [{ ...BENCH.rings[0], foot: "feet out" }] },
    files: {
      "sheets/S1.csv": sheet,
      "worklog.csv": "date,grade,wets,session\n2031-05-02,F80,10,S1\n",
    },
  }, (path) => openHistory(path));
  // Its centre lies beyond the target of 2520 mm, yet it has no one radius.
  const text = words(report.answer);
  match(text, /Next: bring it to a sphere first/);
  equal(/most likely|Stop after/.test(text), false, text);
  equal(report.points.some(isSphere), false);
});

Deno.test("openHistory() says bring it to a sphere first, and no forecast, before the target", async () => {
  const { forecast, answer } = await openHistory(HISTORY, { upTo: "E2" });
  deepEqual(forecast, { kind: "not a sphere" });
  match(words(answer), /No forecast: bring it to a sphere first/);
});

Deno.test("openHistory() says loudly when the radius goes the wrong way", async () => {
  const { forecast, answer } = await openHistory(HISTORY, { upTo: "E4" });
  equal(forecast?.kind, "wrong way");
  match(answer[0], /^THE WRONG WAY/);
  match(
    words(answer),
    /THE WRONG WAY: this work moves the radius away from its target\. Stop, and turn the position round\./,
  );
  // One order: the rest stands behind it, and no second "Next".
  match(
    answer.at(-1)!.replace(/\s/g, " "),
    /^Then: the radius is longer than wanted — mirror on top, the usual stroke shortens it/,
  );
  equal(answer.some((sentence) => sentence.startsWith("Next:")), false);
  match(
    words((await demo()).notes),
    /F80, tool on top went the wrong way: −10\.9 ± 1\.6 µm of sag for one wet, up to session E4\./,
  );
});

Deno.test("historyNotes() calls no setting the wrong way whose rate may be none, and writes 0 without a sign", async () => {
  const report = await demo();
  const stages = report.stages.map((stage) =>
    stage.fit === undefined ? stage : {
      ...stage,
      fit: {
        ...stage.fit,
        rate: { value: -1e-6, own: 0.0008, dof: 4, common: {} },
      },
    }
  );
  equal(/wrong way/.test(words(historyNotes({ ...report, stages }))), false);
  const tiny = { value: -1e-6, own: 0.0008, dof: Infinity, common: {} };
  match(words([writeRate(tiny, "mm")]), /^0\.0 ± 1\.6 µm/);
});

Deno.test("ratesTable() says so where no rate was found", async () => {
  const shown = ratesTable(await openHistory("data/metric-250"));
  match(
    String((await shown[jupyterDisplay]())["text/plain"]),
    /No rate was found: that takes two sessions of one setting/,
  );
});

Deno.test("openHistory() plans the last grades from what an earlier piece taught", async () => {
  const report = await openHistory(HISTORY, { upTo: "E9", earlier: [BEFORE] });
  equal(report.plan?.advice, "go on");
  ok(report.plan!.grades.some(({ grade }) => grade === "F220"));
  const known = new Set([
    ...report.plan!.grades.map(({ grade }) => grade),
    ...report.unknownAhead,
  ]);
  deepEqual([...known].sort(), ["F220", "F320", "F500"]);
  match(
    words(report.answer),
    /The grades to come \(F220 \d+ wets.* in the shop's earlier pieces\) usually change the sag by .* leave F120 at about 30\d\d mm, \d/,
  );
  match(words(report.answer), /With this setting alone the target would be/);
});

Deno.test("openHistory() compares rates with the earlier piece of the same diameter alone", async () => {
  const report = await demo();
  const compared = report.stages.filter(({ comparison }) => comparison);
  ok(compared.length >= 4);
  const { learned } = report;
  const other = await historyOf(files(LOG));
  const small = historyReport(other.folder, other.log, {
    expectations: learned,
  });
  equal(small.stages.some(({ comparison }) => comparison), false);
});

Deno.test("historyReport() answers bad logs in words, each kind of its own", async () => {
  const cases: [FolderParts, RegExp, string | undefined][] = [
    // Dates out of order.
    [
      files(
        LOG.replace("2031-05-02,F80", "2031-05-09,F80"),
      ),
      /dated before the line above; .* Check the dates\./,
      undefined,
    ],
    // A session that no line names, with a date.
    [
      files(LOG.replace(",S3", ",")),
      /Session S3 is named by no line of the work log; it was placed by its date\./,
      "forecast",
    ],
    // Work whose session has no readings.
    [
      files(LOG.replace(",S3", ",S9")),
      /Line 3 of the work log names session S9, which has no readings; its work counts toward the next session\./,
      undefined,
    ],
    // One session only.
    [
      files("date,grade,wets,session\n", [["S1", "2031-05-01", 0.64]]),
      /There is no work log/,
      "no work",
    ],
    // A rate not different from zero.
    [
      files(
        LOG,
        STEADY.map(([name, date], i) =>
          [name, date, 0.64 + (i % 2) * 0.0008] as const
        ),
      ),
      /.?/,
      "rate unclear",
    ],
    // Work log without amounts.
    [
      files(LOG.replaceAll(",10,60,", ",,,")),
      /gives no wets or minutes/,
      "no work",
    ],
    // Grade changed between two sessions.
    [
      files(
        LOG +
          "2031-05-05,F80,4,20,mirror on top,\n2031-05-05,F120,4,20,mirror on top,S5\n",
        [...STEADY, ["S5", "2031-05-05", 0.706]],
      ),
      /Between sessions S4 and S5 grade or position changed; that stretch counts for no rate\./,
      "no work",
    ],
  ];
  for (const [parts, note, kind] of cases) {
    const report = await historyOf(parts);
    match(words([...report.notes, ...report.cautions]), note);
    if (kind !== undefined) {
      equal(report.forecast?.kind, kind, words(report.answer));
    }
    if (kind === "rate unclear") {
      match(
        words(report.answer),
        /No forecast: the rate cannot be told from none at all \(chance \d+ %\)/,
      );
    }
    if (kind === "no work") {
      match(words(report.answer), /No forecast: the log has no work/);
    }
    if (kind === "not enough") match(words(report.answer), /No forecast yet/);
  }
});

Deno.test("historyReport() asks for a fourth session, and tells of work since the last one", async () => {
  const three = await historyOf(
    files(LOG.split("\n").slice(0, 3).join("\n") + "\n", STEADY.slice(0, 3)),
  );
  equal(three.forecast?.kind, "too few sessions");
  match(
    words(three.answer),
    /No forecast yet: 3 sessions of this setting do not show how its work scatters; 1 more will\./,
  );
  const later = await historyOf(
    files(LOG + "2031-05-06,F80,3,18,mirror on top,\n"),
  );
  match(
    words(later.answer),
    /3 wets were done after the last readings and count toward that: read before going on\./,
  );
});

Deno.test("historyReport() without a target, without readings, and refused lines", async () => {
  const { target: _, ...aimless } = PIECE;
  const free = await historyOf({ piece: aimless, ...files(LOG) });
  equal(free.forecast, undefined);
  match(
    words(free.notes),
    /No target is given in piece\.json, so nothing is forecast\./,
  );
  const empty = await historyOf({ files: { "worklog.csv": LOG } });
  match(words(empty.answer), /There is no history yet/);
  equal(await drawProgress(empty), undefined);
  const refused = await historyOf(files(LOG + "2031-05-06,F80,many,,,\n"));
  match(
    words(refused.notes),
    /1 of 4 lines of the work log were refused: line 5/,
  );
});

Deno.test("historyReport() refuses to look back to a session that is none", async () => {
  await rejects(() => openHistory(HISTORY, { upTo: "E99" }), {
    name: "RangeError",
    message:
      "Cannot look back to a session as it must be one of the history: current value is E99",
  });
});

Deno.test("historyPoints() gives the sag of the whole surface with the ring's error by id", async () => {
  const folder = await readPieceFolder(HISTORY);
  const points = historyPoints(folder);
  equal(points.length, 20);
  const last = points.at(-1)!;
  const { radius } = last.centre!;
  const half = mm(150);
  ok(
    Math.abs(last.sag!.value - surfaceSag(radius, half)) <
      1e-9 * last.sag!.value,
  );
  // dS/dR by differences carries the radius's uncertainty over.
  const slope = (surfaceSag(mm(radius + 1), half) -
    surfaceSag(mm(radius - 1), half)) / 2;
  const wanted = Math.abs(slope) * last.centre!.budget.standardUncertainty!;
  ok(Math.abs(standardUncertainty(last.sag!) - wanted) < 1e-3 * wanted);
  // 2 u(r)/r of the ball-centre sphere's sag: 2 · 0.005/59.996.
  const part = last.sag!.common["ring ring 120 radius"] / last.sag!.value;
  ok(Math.abs(Math.abs(part) - 2 * 0.005 / 59.996) < 1e-6, `${part}`);
});

Deno.test("progressRun() leaves out sessions that are no spheres; historyStages() fits the rest", async () => {
  const { points, timeline } = await demo();
  const byName = new Map(points.map((one) => [one.session.session, one]));
  const all = timeline.sessions;
  const run = progressRun(all, byName);
  deepEqual(
    all.map(({ session }) => session).filter((name) =>
      !run.some(({ session }) => session === name)
    ),
    ["E1", "E2"],
  );
  equal(run[0].zeroings, 4);
  equal(run[0].gauge, "ring 120");
  const stages = historyStages(timeline, byName, []);
  const f120 = stages.find(({ grade }) => grade === "F120")!;
  // The truth of the simulation: 6 µm a wet.
  const { value, own } = f120.fit!.rate;
  ok(Math.abs(value - 0.006) < 0.0012, `${value} ± ${own}`);
});

Deno.test("historyPits() reads allowance, thickness and the loupe, and never clears from sag", async () => {
  const { timeline } = await openHistory(HISTORY, { upTo: "E17" });
  const found = historyPits(timeline, "mm")!;
  equal(found.grade, "F320");
  equal(found.before, "F220");
  equal(found.state.loupe, "none");
  // F220 is no microgrit of the table, so no depth is reckoned.
  equal(found.state.wanted, undefined);
  const text = words(found.sentences);
  match(text, /the table of loose grits begins at F230/);
  match(text, /By the thickness \d+ ± \d+ µm went off in this grade/);
  match(text, /The loupe's last word, as entered: no pits of the grade before/);
  equal(/clear/i.test(text), false);
  const last = historyPits((await demo()).timeline, "mm", {
    pitFactor: 2,
  })!;
  equal(last.grade, "polishing");
  equal(last.state.wanted!.from, "the user");
  match(
    words(last.sentences),
    /For the pits of F500, polishing should take 26 µm off everywhere: your own/,
  );
  equal(historyPits({ ...timeline, entries: [] }, "mm"), undefined);
  const bare = (await openHistory(HISTORY, { upTo: "E16" })).timeline;
  const rate = { value: 0.004, own: 0.0002, dof: Infinity, common: {} };
  match(
    words(historyPits(bare, "mm", { removalRate: rate })!.sentences),
    /By your own rate of removal 28\.0 ± 2\.7 µm went off in this grade/,
  );
});

Deno.test("forecastSentences(), historyAnswer(), historyNotes(), historyCautions() speak of what is there", async () => {
  const report = await openHistory(HISTORY, { upTo: "E13" });
  const last = report.points.at(-1);
  deepEqual(historyAnswer(report, last), report.answer);
  deepEqual(historyNotes(report), report.notes);
  deepEqual(historyCautions(report), report.cautions);
  match(words(forecastSentences(report)), /most likely/);
  match(words(report.cautions), /which no number of sessions averages out/);
  equal(
    chooseNext(last!.session, report.folder.piece, report.radius).kind,
    report.next!.kind,
  );
});

Deno.test("historyReport() warns where several rings were used", async () => {
  const folder = await readPieceFolder(HISTORY);
  const log = await readFolderWorkLog(HISTORY, "mm");
  const [ring] = folder.bench.rings;
  const two = {
    ...folder,
    bench: { ...folder.bench, rings: [ring, { ...ring, id: "twin" }] },
    readings: folder.readings.map((one) =>
      one.session === "E20" ? { ...one, ring: "twin" } : one
    ),
  };
  match(
    words(historyReport(two, log).cautions),
    /Sessions were read with 2 rings; each brings its own error/,
  );
});

Deno.test("drawProgress() and the other figures of a history say what they show", async () => {
  const back = await openHistory(HISTORY, { upTo: "E13" });
  const progress = await drawProgress(back);
  match(
    progress!.description,
    /13 sessions, radius from 33\d\d\.\d mm to 30\d\d\.\d mm, target 3000\.0 mm; up to/,
  );
  match(progress!.svg, /went the wrong way/);
  match((await drawProgress(back, "sag"))!.description, /13 sessions, sag/);
  const report = await demo();
  match(
    (await drawRates(report))!.description,
    /F80 tool −1\d µm \(away from the target\)/,
  );
  match(
    (await drawZonesOverTime(report))!.description,
    /over 20 sessions: 50% from/,
  );
  match(
    (await drawGrades(report))!.description,
    /polishing: 20 May 2024 to 25 May 2024, 540 minutes/,
  );
});

Deno.test("historyTable() keeps everything in order, and marks a change of mind", async () => {
  const { "text/plain": text } = await show(historyTable(await demo()));
  const lines = plain(text).split("\n");
  equal(lines.filter((line) => / session E\d+/.test(line)).length, 20);
  match(
    text,
    /position turned round; the discs were set up the wrong way round/,
  );
  const order = lines.map((line) => line.slice(0, 10)).filter((date) =>
    /^2024/.test(date)
  );
  deepEqual(order, [...order].sort());
  match(text, /polished out/);
});

Deno.test("ratesTable() shows each setting with what was expected", async () => {
  const { "text/plain": text } = await show(ratesTable(await demo()));
  match(
    plain(text),
    /F120, mirror on top\s+15 wets\s+4\s+\+5\.36 ± 0\.42 µm\s+\+6\.59 ± 0\.84 µm/,
  );
  match(text, /for pieces of this diameter/);
});

Deno.test("pieceRecord() is one page with what was measured, how, and what was not seen", async () => {
  const report = await demo();
  const bundle = await show(pieceRecord(report));
  const text = plain(bundle["text/plain"]);
  for (
    const line of [
      /Glass: borosilicate/,
      /Diameter: 300 mm/,
      /Radius of curvature at the end of grinding: 300\d\.\d ± \d\.\d mm/,
      /Focal length of the finished piece: 1499\.6 ± 1\.0 mm, centre of curvature, zone at 105 mm, source moves/,
      /Figured to: paraboloid, centre deepened/,
      /Sphericity at the end of grinding: It is a sphere within 3\.0 µm of sag/,
      /How measured: 12 readings in 4 sets on 4 zeroings with ring 120/,
      /Uncertainty leaves out: temperature/,
      /Three feet cannot see astigmatism/,
      /Invented demonstration data/,
    ]
  ) match(text, line);
  match(bundle["text/html"], /<th scope="row">Glass<\/th>/);
  const bare = await show(pieceRecord(await openHistory(BEFORE)));
  equal(/finished piece/.test(bare["text/plain"]), false);
});

Deno.test("openHistory() knows that grinding is over when the log has come to polishing, and what the piece became", async () => {
  const known = await demo();
  equal(known.finished?.focalLength.toFixed(1), "1499.6");
  const text = words(known.answer);
  match(
    text,
    /Grinding is over, and the piece became a focal length of 1499\.6 ± 1\.0 mm \(centre of curvature, zone at 105 mm, source moves\)\./,
  );
  equal(/No forecast|Next:/.test(text), false, text);
  const none = await openHistory(HISTORY, {
    finished: {
      pieces: [],
      lines: { read: 0, used: 0, reported: 0 },
      problems: [],
    },
  });
  match(
    words(none.answer),
    /Grinding is over: the log goes on with polishing\. Next: measure the focal length of the finished piece/,
  );
  // Looking back to an evening of grinding, nothing of that is known yet.
  const back = await openHistory(HISTORY, { upTo: "E13" });
  match(words(back.answer), /Next: /);
});

Deno.test("showHistoryAnswer() hands over historyResults() as plain JSON", async () => {
  const report = await demo();
  const bundle = await show(showHistoryAnswer(report));
  const results = bundle["application/vnd.sagbook.results+json"];
  deepEqual(results, historyResults(report));
  const { sessions, learned, forecast } = historyResults(report) as {
    sessions: unknown[];
    learned: unknown[];
    forecast: { kind: string };
  };
  equal(sessions.length, 20);
  equal(learned.length, 6);
  equal(forecast.kind, "rate unclear");
  equal(/null|Infinity|NaN/.test(JSON.stringify(results)), false);
});

Deno.test("writeWork(), writeMostWork(), settingName(), writeRate() write plain amounts", () => {
  equal(plain(writeWork(0.42, "wets")), "0.4 wets");
  equal(plain(writeWork(1.04, "minutes")), "1 minute");
  equal(plain(writeMostWork(9.99, "wets")), "9 wets");
  equal(plain(writeMostWork(0.05, "wets")), "0 wets");
  equal(
    settingName({ position: "tool on top" }),
    "a grade without a name, tool on top",
  );
  equal(
    plain(writeRate({ value: -0.00254, own: 0, dof: 2, common: {} }, "in")),
    "−0.1 thou",
  );
});

Deno.test("workSafety() names the cautions that the log calls for", () => {
  const text = (...grades: string[]) =>
    words(workSafety(grades.map((grade, line) => ({ line, grade }))));
  match(text("F80", "F120"), /Wash everything down between grades/);
  match(text("pitch lap"), /Hot pitch burns/);
  match(text("polishing"), /no steel feet on a polished face/);
  match(text(), /local rules or licensed practice/);
  equal(/Wash|pitch/.test(text("F80")), false);
});

Deno.test("historyReport() follows a convex piece, in inches, with the bench's own strokes", async () => {
  const parts = files(LOG);
  const report = await withFolder({
    ...parts,
    piece: { ...PIECE, form: "convex", unit: "in" },
  }, (path) =>
    openHistory(path, {
      strokes: {
        ...COMMON_STROKES,
        shorten: { position: "mirror on top", stroke: "long strokes" },
      },
    }));
  ok(report.forecast?.kind === "forecast");
  const text = words(report.answer);
  match(
    text,
    /thou of depth at the edge and \d\.\d{3} cubic inches of glass are left/,
  );
  equal(report.depth!.where, "edge");
  const own = await withFolder({
    piece: { ...PIECE, sphericity_tolerance: { sag: "0.003 mm" } },
    ...parts,
  }, (path) =>
    openHistory(path, {
      strokes: {
        ...COMMON_STROKES,
        shorten: { position: "mirror on top", stroke: "long strokes" },
      },
    }));
  equal(own.next!.kind, "measure more");
  const back = await openHistory(HISTORY, {
    upTo: "E9",
    strokes: {
      ...COMMON_STROKES,
      shorten: { position: "mirror on top", stroke: "long strokes" },
    },
  });
  match(words(back.answer), /mirror on top, long strokes shortens it/);
});

Deno.test("historyReport() words a convex target passed as too high or too low", async () => {
  const passed = files(LOG, [
    ...STEADY.slice(0, 3),
    ["S4", "2031-05-04", 0.74],
  ]);
  const convex = await historyOf({
    ...passed,
    piece: { ...PIECE, form: "convex" },
  });
  match(
    words(convex.answer),
    /The target is passed.*too high at the centre, and the radius must grow longer again/,
  );
});

Deno.test("historyReport() sends nobody back from a target that is reached, or that the readings leave open", async () => {
  const passed = files(LOG, [
    ...STEADY.slice(0, 3),
    ["S4", "2031-05-04", 0.74],
  ]);
  // R is (3600 + 0.74²)/1.48 + 3 = 2435.8 mm, 84 mm past the target.
  const said = async (tolerance: string) => {
    const report = await historyOf({
      ...passed,
      piece: { ...PIECE, target: { radius: "2520 mm", tolerance } },
    });
    equal(report.forecast?.kind, "passed");
    return report.answer.map((one) => words([one]));
  };
  const back = /must grow longer|too deep/;
  const reached = await said("150 mm");
  match(reached[0], /^The radius of curvature/);
  match(reached.join(" "), /The target is reached: the radius is within its/);
  equal(back.test(reached.join(" ")), false);
  const open = await said("84 mm");
  match(open[0], /^The radius of curvature/);
  match(
    open.join(" "),
    /Whether the target is passed is not decided: .* too deep at the centre.* Measure better before any more work, in either direction\./,
  );
  equal(/must grow longer/.test(open.join(" ")), false);
  match((await said("15 mm"))[0], /^The target is passed.* must grow longer/);
});

Deno.test("historyReport() keeps its refusals of options to their words", async () => {
  const { folder, log } = await historyOf(files(LOG));
  throws(() => historyReport(folder, log, { risk: 2 }), {
    name: "RangeError",
    message:
      "Cannot forecast as risk must be between 0 and 1: current value is 2",
  });
});

Deno.test("forecastSentences() warns of a forecast that mixes two rates", async () => {
  const report = await historyOf(files(LOG));
  const { forecast, current } = report;
  ok(forecast?.kind === "forecast" && current?.fit !== undefined);
  const changed = (after: number) =>
    words(forecastSentences({
      ...report,
      current: {
        ...current,
        change: { kind: "changed", at: "S3", before: 1, after, p: 0.01 },
      },
    }));
  const half = current.fit.rate.value / 2;
  const twice = Math.round(2 * forecast.work);
  match(
    changed(half),
    new RegExp(
      `it mixes the rates before and after S3\\. At the later rate alone the target would be about ${twice} wets away`,
    ),
  );
  match(changed(-half), /since S3 the work has moved away from the target/);
  equal(/mixes/.test(words(forecastSentences(report))), false);
});
