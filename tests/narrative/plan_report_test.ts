import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  budgetTable,
  drawBudget,
  drawDensity,
  drawRingChoice,
  measurementOf,
  openPlan,
  planAnswer,
  planReasons,
  type PlanReport,
  planReport,
  ringsTable,
  showPlanAnswer,
  twoFigures,
  whyNone,
  writeDetectable,
} from "sagbook/narrative/mod.ts";
import { chooseRing } from "sagbook/uncertainty/choose_ring.ts";
import type { HalfWidthRule } from "sagbook/uncertainty/detection.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { PLANNED_RULE } from "../studies/_ring_choice_power.ts";
import { bench, piece, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const QUICK = { studies: 60 } as const;

Deno.test("openPlan() says how sure the radius is, from what, and names a ring for each question", async () => {
  const report = await openPlan("data/gauge-study", QUICK);
  const text = plain(report.answer.join(" "));
  match(
    text,
    /^The radius is 300\d ± \d\d mm; most of that doubt is repetition \(.*\), and since people differ, more people make it smaller/,
  );
  match(
    text,
    /Take invented ring 60 for the radius itself .* and for how far it is from a sphere .*, invented ring 35 for a turned edge/,
  );
  match(plain(report.reasons.join(" ")), /Three feet show no astigmatism/);
});

Deno.test("openPlan() takes half the half diameter for asphericity, and for the radius the largest ring that the flat carries", async () => {
  const { choices } = await openPlan("data/gauge-study", QUICK);
  const conic = choices.find(({ question }) => question === "conic")!;
  // Usable half diameter 148 mm: half of it, to the grid of the search.
  ok(
    Math.abs(conic.best!.circleRadius - 74) < 3,
    `${conic.best!.circleRadius}`,
  );
  const radius = choices.find(({ question }) => question === "radius")!;
  // 200 mm across on a flat of 150 mm cannot be zeroed.
  equal(radius.recommended, "invented ring 60");
  equal(radius.rings[2].reason, "does not fit the flat");
});

Deno.test("planReport() plans before anything was read, and says what it assumed", () => {
  const report = planReport(
    {
      piece: piece(),
      bench: bench(),
      readings: [],
      problems: [],
      lines: { read: 0, used: 0, reported: 0 },
    } as unknown as PlanReport["folder"],
    QUICK,
  );
  match(report.answer[0], /Nothing has been read yet/);
  match(
    report.answer[1],
    /^The bench has one ring: ring 60 for the radius itself \(it shows a radius off by .*, for how far .* and for a turned edge/,
  );
  equal(report.distribution, undefined);
});

Deno.test("planReport() says when rings cannot be compared", () => {
  const report = planReport(
    {
      piece: piece({ target: undefined }),
      bench: bench(),
      readings: [],
      problems: [],
      lines: { read: 0, used: 0, reported: 0 },
    } as unknown as PlanReport["folder"],
    QUICK,
  );
  match(report.answer.join(" "), /No radius is known, not even a target/);
});

Deno.test("planAnswer(), planReasons() and measurementOf() agree with the report", () => {
  const readings = session([[715, 715, 715], [716, 716, 715], [714, 714, 714]]);
  const report = planReport(
    {
      piece: piece(),
      bench: bench(),
      readings,
      problems: [],
      lines: { read: 9, used: 9, reported: 0 },
    } as unknown as PlanReport["folder"],
    QUICK,
  );
  equal(plain(planAnswer(report, "mm").join()), plain(report.answer.join()));
  equal(plain(planReasons(report, "mm").join()), plain(report.reasons.join()));
  const { session: main } = report.session;
  const again = radiusBudget(measurementOf(main!, piece(), bench(), "centre"));
  deepEqual(again.expanded, report.budget!.expanded);
  match(
    plain(report.reasons[0]),
    /Drawing every source at random .* gives 95 % between/,
  );
});

Deno.test("the figures and tables of a plan are drawn, and left out where there is nothing", async () => {
  const report = await openPlan("data/gauge-study", QUICK);
  for (const draw of [drawBudget, drawRingChoice]) {
    ok((await draw(report))?.svg.startsWith("<svg"), draw.name);
  }
  // Three people on two degrees of freedom: R has no deviation to draw.
  equal(report.distribution?.histogramOf, "curvature");
  equal(await drawDensity(report), undefined);
  const plain250 = await openPlan("data/metric-250", QUICK);
  ok((await drawDensity(plain250))?.svg.startsWith("<svg"));
  const html = async (shown: { [jupyterDisplay](): unknown }) =>
    plain(
      String(
        (await shown[jupyterDisplay]() as Record<string, string>)["text/html"],
      ),
    );
  match(await html(ringsTable(report)), /a radius off by .* ← best/);
  match(await html(budgetTable(report)), /ring radius/);
  match(await html(budgetTable(report)), /by more people/);
  ok(!/3e-16/.test(await html(budgetTable(report))));
  const bundle = await showPlanAnswer(report)[jupyterDisplay]();
  ok(!/null|NaN|Infinity/.test(JSON.stringify(bundle)));
});

Deno.test("budgetTable() marks what is assumed, and never promises that readings average out a display's step", async () => {
  const known = bench();
  const readings = session([[715], [715], [715]]);
  const report = planReport(
    {
      piece: piece(),
      bench: {
        ...known,
        rings: known.rings.map((ring) => ({
          ...ring,
          radiusUncertaintyAssumed: true,
        })),
      },
      readings,
      problems: [],
      lines: { read: 3, used: 3, reported: 0 },
    } as unknown as PlanReport["folder"],
    QUICK,
  );
  const shown = await budgetTable(report)[jupyterDisplay]();
  const text = plain(String(shown["text/plain"]));
  match(text, /ring radius \(assumed\) .* no\s/);
  match(text, /display step of the zero .* no\s/);
  match(plain(report.reasons.join(" ")), /Assumed, .*: ring radius/);
  match(plain(report.ringWords.join(" ")), /marked as assumed/);
});

Deno.test("budgetTable() speaks the piece's unit, and planReport() counts both steps of the display as one source", async () => {
  const { rings: [ring] } = bench();
  const folder = (
    unit: string,
    radiusUncertainty = ring.radiusUncertainty,
  ) => ({
    piece: { ...piece(), unit },
    bench: { ...bench(), rings: [{ ...ring, radiusUncertainty }] },
    readings: session([[715], [715], [715]]),
    problems: [],
    lines: { read: 3, used: 3, reported: 0 },
  } as unknown as PlanReport["folder"]);
  const rowsOf = async (unit: string) => {
    const report = planReport(folder(unit), QUICK);
    const shown = await budgetTable(report)[jupyterDisplay]();
    const text = plain(String(shown["text/plain"]));
    return { line: text.match(/^ring radius.*$/m)![0], text };
  };
  const metric = await rowsOf("mm");
  const inch = await rowsOf("in");
  const numbers = (line: string, unit: string) =>
    [...line.matchAll(/([\d.]+)(?: (mm|in)\b)?/g)]
      .filter(([, , named]) => named === unit).map(([, n]) => Number(n));
  const [of, moves] = numbers(metric.line, "mm");
  const [ofInch, movesInch] = numbers(inch.line, "in");
  ok(Math.abs(ofInch * 25.4 / of - 1) < 0.01, inch.line);
  ok(Math.abs(movesInch * 25.4 / moves - 1) < 0.01, inch.line);
  ok(!/\dmm|\d mm|1\/mm/.test(inch.text), inch.text);
  const fine = planReport(folder("mm", mm(1e-4)), QUICK);
  match(
    plain(fine.answer[0]),
    /is display step \(\d+ % of the variance\), and reading more sets does not make it smaller, a finer display would/,
  );
});

Deno.test("writeDetectable(), whyNone() and twoFigures() speak the question's words", () => {
  equal(
    plain(writeDetectable("mm of radius", 9.123, "mm")),
    "a radius off by 9.1 mm",
  );
  equal(
    plain(writeDetectable("mm of depth", 0.0041, "in")),
    "a depth of 0.16 thou",
  );
  equal(
    plain(writeDetectable("mm of radius", 8795, "mm")),
    "a radius off by 8800 mm",
  );
  const conic = (value: number) =>
    plain(writeDetectable("conic constant", value, "mm"));
  equal(conic(0.029), "a conic constant of 0.029");
  equal(conic(6.4e5), "a conic constant of 640 000");
  equal(conic(604), "a conic constant of 600");
  match(whyNone("three feet cannot see it"), /three feet/);
  equal(plain(twoFigures(0, "mm")), "0 mm");
});

Deno.test("planReport() compares rings by the interval that the session report itself would draw", () => {
  const report = planReport(
    {
      piece: piece(),
      bench: bench(),
      readings: [],
      problems: [],
      lines: { read: 0, used: 0, reported: 0 },
    } as unknown as PlanReport["folder"],
    QUICK,
  );
  const conic = (halfWidth?: HalfWidthRule) =>
    chooseRing(bench().rings, {
      work: {
        form: "concave",
        radius: mm(2520),
        diameter: mm(210),
        margin: mm(2),
      },
      scatter: { repeat: 0.001, zeroing: 0.001 },
      step: mm(0.001),
      sets: 5,
      ...(halfWidth ? { halfWidth } : {}),
    })[1].rings[0].detectable!;
  // The rule of the study that checks the promise by whole analyses.
  const { detectable = 0 } = report.choices[1].rings[0];
  ok(Math.abs(detectable / conic(PLANNED_RULE) - 1) < 1e-9);
  ok(Math.abs(detectable / conic() - 1) > 1e-4);
});
