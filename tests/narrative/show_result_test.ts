import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { table } from "sagbook/display/table.ts";
import {
  drawZones,
  openGaugeStudy,
  openPiece,
  openPlan,
  reportResults,
  show,
  showAnswer,
} from "sagbook";

async function shown(result: unknown): Promise<Record<string, unknown>> {
  return { ...await show(result)[jupyterDisplay]() };
}

Deno.test("show() leaves what shows itself as it is: tables, figures, answers", async () => {
  const report = await openPiece("data/metric-250");
  const figure = await drawZones(report);
  ok(figure);
  for (
    const own of [
      table([{ zone: "centre" }]),
      figure,
      showAnswer(report, reportResults(report)),
    ]
  ) equal(show(own), own);
  match(JSON.stringify(await shown(figure)), /<svg/);
  deepEqual(
    Object.keys(await shown(drawZones(report))),
    Object.keys(await shown(figure)),
  );
  match(String((await shown(table([{ a: 1 }])))["text/markdown"]), /^\| a \|/);
});

Deno.test("show() gives a report of a session, of the gauge or a plan by its answer, without results", async () => {
  const reports = [
    await openPiece("data/metric-250"),
    await openGaugeStudy("data/gauge-study"),
    await openPlan("data/gauge-study", { studies: 60 }),
  ];
  for (const report of reports) {
    const bundle = await shown(report);
    deepEqual(Object.keys(bundle).sort(), ["text/html", "text/plain"]);
    const lines = String(bundle["text/plain"]).split("\n");
    deepEqual(lines.slice(0, -1), report.answer);
    match(lines.at(-1)!, /^Invented demonstration data/);
  }
});

Deno.test("show() makes a table of plain objects, with every column and every value", async () => {
  const bundle = await shown([
    { zone: "centre", sag: 0.715, kept: true },
    { zone: "edge", dof: Infinity, why: ["heat", "stem"] },
    { zone: "<b>70 %</b>", sag: NaN, dof: -Infinity },
  ]);
  equal(
    bundle["text/plain"],
    `zone         sag    kept  dof  why
───────────  ─────  ────  ───  ──────────────────
centre       0.715  true
edge                      ∞    [ "heat", "stem" ]
<b>70 %</b>  NaN          −∞`,
  );
  match(String(bundle["text/html"]), /&lt;b&gt;70 %/);
  match(String(bundle["text/markdown"]), /^\| zone \| sag \| kept \|/);
});

Deno.test("show() makes a table of two columns of one plain object, such as a verdict", async () => {
  const { session } = await openPiece("data/metric-250");
  const verdict = session?.sphericity;
  ok(verdict);
  const text = String((await shown(verdict))["text/plain"]);
  match(text, /^name +value\n─+ {2}─+\n/);
  match(text, new RegExp(`^verdict +${verdict.verdict}$`, "m"));
});

Deno.test("show() gives anything else as text, escaped for a page", async () => {
  deepEqual(await shown("R < 3 m"), {
    "text/plain": "R < 3 m",
    "text/html": "<pre>R &lt; 3 m</pre>",
  });
  const plain = async (value: unknown) => (await shown(value))["text/plain"];
  equal(await plain([0.715, 0.716]), "[ 0.715, 0.716 ]");
  equal(await plain([]), "[]");
  equal(await plain({}), "{}");
  equal(await plain([{}]), "[ {} ]");
  equal(await plain(undefined), "undefined");
  equal(await plain(NaN), "NaN");
  equal(await plain(new Map([["ring", 60]])), 'Map(1) { "ring" => 60 }');
});
