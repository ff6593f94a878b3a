import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  componentsTable,
  drawCanTellApart,
  drawComponentIntervals,
  drawComponents,
  drawPower,
  drawZeroChart,
  gaugeAnswer,
  gaugeLimits,
  gaugeReasons,
  type GaugeReport,
  gaugeReport,
  gaugeResults,
  nameSources,
  openGaugeStudy,
  planFor,
  planSheet,
  sheetCsv,
  sheetTable,
  showGaugeAnswer,
} from "sagbook/narrative/mod.ts";
import { inventStudy } from "sagbook/repeatability/invented_study.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { bench, piece, reading, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const QUICK = { studies: 60 } as const;

function study(
  readings: readonly Reading[],
  changes: Parameters<typeof piece>[0] = {},
): GaugeReport {
  return gaugeReport(
    {
      path: "invented",
      piece: piece(changes),
      bench: bench(),
      readings,
      lines: { read: readings.length, used: readings.length, reported: 0 },
      problems: [],
    } as unknown as GaugeReport["folder"],
    QUICK,
  );
}

const all = (report: GaugeReport): string =>
  plain([...report.answer, ...report.reasons, ...report.limits].join(" "));

Deno.test("openGaugeStudy() finds the warm hands of one person and what a plan needs", async () => {
  const report = await openGaugeStudy("data/gauge-study", {
    ...QUICK,
    change: mm(0.012),
  });
  const text = plain(report.answer.join(" "));
  match(
    text,
    /^One reading on a fresh zero scatters by a standard deviation of \d\.\d µm \(95 %: /,
  );
  match(
    text,
    /creeps within a set in the hands of one person — C's by \d\.\d µm/,
  );
  match(
    text,
    /zero \d+ times, reading the centre once each time: about \d+ minutes/,
  );
  match(
    plain(report.reasons.join(" ")),
    /Six times the scatter of one reading is \d+(\.\d times| % of) what one stretch of work changes;/,
  );
  match(
    plain(report.reasons.join(" ")),
    /could tell apart is not said, since only one was read/,
  );
});

Deno.test("openGaugeStudy() no longer finds warm hands after the cure", async () => {
  const report = await openGaugeStudy("data/gauge-study-cured", QUICK);
  ok(!/creeps/.test(report.answer.join(" ")));
});

Deno.test("gaugeReport() holds the truth of the invented study within its intervals", () => {
  const { readings, piece, bench, truth } = inventStudy({
    seed: 77,
    cured: true,
  });
  const { main } = gaugeReport(
    {
      piece,
      bench,
      readings,
      problems: [] as unknown,
    } as GaugeReport["folder"],
    QUICK,
  );
  for (const source of ["repeat", "zeroing"] as const) {
    const figure = main!.figures.find(({ sources }) =>
      sources.join() === source
    )!;
    const { low, high } = figure.sag.interval!;
    ok(
      low <= truth[source] && truth[source] <= high,
      `${source}: ${low} ${high}`,
    );
  }
});

Deno.test("gaugeReport() names what cannot be told apart and what would tell it", () => {
  const rows = ["S1", "S2", "S3", "S4"].map((name, k) =>
    reading({
      sag: mm([0.713, 0.716, 0.714, 0.717][k]),
      session: name,
      zeroing: `${name} / 1`,
      order: k,
    })
  );
  const text = all(study(rows));
  match(text, /cannot tell apart/);
  match(text, /What would: 2 or more readings of one place in each zeroing/);
  ok(!/NaN|undefined/.test(text), text);
});

Deno.test("gaugeReport() calls equal readings limited by the display, without percentages", () => {
  const same = session(Array.from({ length: 3 }, () => [715]));
  const doubled = same.flatMap((one) => [one, { ...one }]);
  const text = plain(study(doubled).answer.join(" "));
  match(
    text,
    /all equal: they are limited by the display \(step 1 µm\), which hides at least 0\.41 µm/,
  );
  ok(!/ %/.test(text.split("To decide")[0]), text);
});

Deno.test("gaugeReport() calls a plan made from equal readings the least it takes", () => {
  const same = session(Array.from({ length: 4 }, () => [715, 715, 715]));
  const asked = { sphericity: { statedAs: "sag", amount: mm(0.003) } } as const;
  const found = study(same, asked);
  equal(found.main!.status, "limited by the display");
  const isPlanned = found.plans.some(({ answer }) => answer.kind === "plan");
  ok(isPlanned);
  match(plain(found.answer.at(-1)!), /^That is the least it takes: /);
  // Readings that scatter are simulated as they scatter.
  const um = [[714, 716, 715], [716, 714, 719], [713, 717, 711], [
    718,
    712,
    716,
  ]];
  ok(!/the least it takes/.test(study(session(um), asked).answer.join(" ")));
});

Deno.test("gaugeReport() reports an estimate below zero and counts it as none", () => {
  // By hand in µm²: mean squares 0.75 between and 1.75 within zeroings.
  const um = [[714, 716, 715], [716, 714, 715], [715, 713, 717], [
    715,
    716,
    714,
  ]];
  const rows = um.flatMap((set, k) =>
    set.map((value, i) =>
      reading({
        sag: mm(value / 1000),
        zeroing: `S1 / ${k + 1}`,
        order: 3 * k + i,
      })
    )
  );
  const text = all(study(rows));
  match(text, /zeroing again came out below zero/);
  match(text, /setting the gauge down again 1\.3 µm/);
});

Deno.test("gaugeReport() says what to read when there is nothing, or too little", () => {
  match(study([]).answer[0], /nothing to answer yet/);
  match(study([reading({ sag: mm(0.715) })]).answer[0], /Too little was read/);
});

Deno.test("the tables and figures of a gauge are drawn, and left out where there is nothing", async () => {
  const report = await openGaugeStudy("data/gauge-study", QUICK);
  const figures = [
    drawComponents(report),
    drawComponentIntervals(report),
    drawZeroChart(report),
    drawZeroChart(report, "before"),
    drawPower(report),
    drawCanTellApart(report),
  ];
  for (const figure of await Promise.all(figures)) {
    ok(figure?.svg.startsWith("<svg"));
  }
  const empty = study([]);
  equal(await drawComponents(empty), undefined);
  equal(await drawCanTellApart(empty), undefined);
  const { "text/html": html } = await componentsTable(report)[jupyterDisplay]();
  match(String(html), /zeroing again/);
  const sheet = planSheet(report, 4);
  const { "text/plain": text } = await sheetTable(sheet)[jupyterDisplay]();
  match(String(text), /step by step, in an order of chance/);
  equal(planSheet(empty), undefined);
  match(sheetCsv(report, 4)!, /^session,.*reading/);
  equal(sheetCsv(empty), undefined);
});

Deno.test("planFor(), gaugeAnswer(), gaugeReasons() and gaugeLimits() agree with the report", async () => {
  const report = await openGaugeStudy("data/gauge-study", QUICK);
  const { main, capability, folder } = report;
  const plans = planFor(folder, main!, QUICK);
  deepEqual(plans, report.plans);
  const findings = { main: main!, capability: capability!, plans };
  equal(plain(gaugeAnswer(findings, "mm").join()), plain(report.answer.join()));
  equal(
    plain(gaugeReasons(findings, "mm").join()),
    plain(report.reasons.join()),
  );
  equal(plain(gaugeLimits(main!, "mm").join()), plain(report.limits.join()));
  match(
    nameSources(["zeroing", "operator"]),
    /zeroing again and the person together/,
  );
});

Deno.test("showGaugeAnswer() hands over results without null, NaN or infinite numbers", async () => {
  const report = await openGaugeStudy("data/gauge-study", QUICK);
  const results = gaugeResults(report);
  ok(!/null|NaN|Infinity/.test(JSON.stringify(results)));
  const bundle = await showGaugeAnswer(report, results)[jupyterDisplay]();
  match(String(bundle["text/plain"]), /One reading on a fresh zero/);
});
