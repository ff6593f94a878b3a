import { deepEqual, equal, match, ok, throws } from "node:assert/strict";
import * as Plot from "@observablehq/plot";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { figure, svgFigure } from "sagbook/figures/figure.ts";

const data = [
  { set: 1, sag: 0.715, zone: "centre" },
  { set: 1, sag: 0.712, zone: "edge" },
];
const words = { title: "Two zones", description: "Two dots." };

Deno.test("figure() draws legend and caption into one SVG", async () => {
  const drawn = await figure({
    ...words,
    caption: "a < b",
    color: { legend: true },
    symbol: { legend: true },
    marks: [
      Plot.dot(data, { x: "set", y: "sag", stroke: "zone", symbol: "zone" }),
    ],
  });
  const texts = [...drawn.svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)]
    .map(([, text]) => text);
  for (const text of ["Two zones", "centre", "edge", "a &lt; b"]) {
    ok(texts.includes(text), `${text} is missing of ${texts}`);
  }
  deepEqual(Object.keys(drawn[jupyterDisplay]()), [
    "image/svg+xml",
    "text/plain",
  ]);
});

Deno.test("figure() gives a continuous colour scale five steps in its legend", async () => {
  const { svg } = await figure({
    ...words,
    color: { legend: true, domain: [0, 10] },
    marks: [Plot.dot(data, { x: "set", y: "sag", stroke: "sag" })],
  });
  const steps = [...svg.matchAll(/>(\d+ to \d+)</g)].map(([, text]) => text);
  deepEqual(steps, [
    "0 to 2",
    "2 to 4",
    "4 to 6",
    "6 to 8",
    "8 to 10",
  ]);
});

Deno.test("figure() colours up to four classes for light and dark, and leaves the user's colours alone", async () => {
  const marks = [Plot.dot(data, { x: "set", y: "sag", stroke: "zone" })];
  const ours = await figure({ ...words, color: { legend: true }, marks });
  equal(ours.svg.match(/class="s-(first|second)"/g)?.length, 2);
  equal(ours.svg.match(/class="f-(first|second)"/g)?.length, 2, "the key");
  const theirs = await figure({
    ...words,
    color: { legend: true, range: ["#123456", "#654321"] },
    marks,
  });
  ok(!/class="[fs]-(first|second)"/.test(theirs.svg));
  equal(theirs.svg.match(/fill="#123456"/g)?.length, 1);
});

Deno.test("figure() is the same text when drawn twice, and names its parts by its content", async () => {
  const draw = (sag: number) =>
    figure({ ...words, marks: [Plot.dot([[1, sag]], { clip: true })] });
  const [first, again, other] = [await draw(1), await draw(1), await draw(2)];
  equal(first.svg, again.svg);
  const idOf = (svg: string) => / id="([^"]+)"/.exec(svg)![1];
  ok(idOf(first.svg) !== idOf(other.svg));
  const own = await figure({
    ...words,
    idPrefix: "mine",
    marks: [Plot.dot([[1, 1]], { clip: true })],
  });
  const ids = [...own.svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
  ok(ids.every((id) => id === "mine" || id.startsWith("mine-")), `${ids}`);
});

Deno.test("figure() escapes what the user wrote", async () => {
  const { svg } = await figure({
    title: "<script>alert(1)</script>",
    description: "a & b",
    marks: [Plot.text(["</svg>"], { x: [1], y: [1] })],
  });
  ok(!svg.includes("<script"));
  match(svg, /&lt;\/svg&gt;/);
  ok(svg.includes("<desc") && svg.includes("a &amp; b"));
});

Deno.test("svgFigure() refuses a text that is no SVG", () => {
  throws(
    () => svgFigure({ ...words, svg: "<figure>", width: 1, height: 1 }),
    {
      name: "SyntaxError",
      message:
        'Cannot make a figure as its text must start with <svg: current value is "<figure>"',
    },
  );
});
