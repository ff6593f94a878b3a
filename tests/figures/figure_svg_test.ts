import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import * as Plot from "@observablehq/plot";
import { parseHTML } from "linkedom";
import {
  elementFigure,
  type HtmlFigure,
} from "sagbook/figures/element_figure.ts";
import { type Figure, svgFigure } from "sagbook/figures/figure.ts";
import { figureSvg } from "sagbook/figures/figure_svg.ts";
import { ROLES } from "sagbook/display/colour_roles.ts";
import { testWith } from "../browser/_needs.ts";
import { TestBrowser } from "../browser/_page.ts";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";
import { samples } from "./_samples.ts";

const { document } = parseHTML(
  "<!doctype html><html><body></body></html>",
) as unknown as { document: never };

/** A plot that comes back as HTML with two legends, a title and a caption. */
function withLegend(): HtmlFigure {
  const rows = [{ x: 1, y: 2, z: "centre" }, { x: 2, y: 3, z: "edge & <b>" }];
  const plot = Plot.plot({
    document,
    title: "A title",
    caption: "a < b",
    color: { legend: true },
    symbol: { legend: true },
    marks: [Plot.dot(rows, { x: "x", y: "y", stroke: "z", symbol: "z" })],
  });
  const made = elementFigure(plot, {
    title: "Zones",
    description: "Two dots.",
  });
  ok("html" in made);
  return made;
}

const bare = (inside: string, root = ""): Figure =>
  svgFigure({
    title: "T",
    description: "D",
    svg:
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"${root}>${inside}</svg>`,
    width: 9,
    height: 9,
  });

Deno.test("figureSvg() of every sample stands alone: title, description, fixed colours, nothing from outside", async () => {
  for (const theme of ["light", "dark"] as const) {
    const side = theme === "light" ? 0 : 1;
    const colours = new Set(Object.values(ROLES).map((pair) => pair[1 - side]));
    for (const { name, draw } of samples) {
      const drawn = await draw();
      const svg = await figureSvg(drawn, { theme });
      match(
        svg,
        /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="\d+" height="\d+"/,
      );
      match(
        svg,
        /<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]+<\/desc>/,
      );
      ok(
        !/var\(|<style|class="|currentColor|prefers-color|system-ui/.test(svg),
        name,
      );
      ok(!/(?:href|src)=|url\((?!#)|@import|<script|\son\w+=/.test(svg), name);
      for (
        const [, colour] of svg.matchAll(/(?:fill|stroke)="(#[0-9a-f]{6})"/g)
      ) {
        const isOther = colours.has(colour as never) &&
          !Object.values(ROLES).some((pair) => pair[side] === colour);
        ok(!isOther, `${name}: ${colour} is for the other page`);
      }
      const words = (text: string) =>
        [...text.matchAll(/<text[^>]*>([\s\S]*?)<\/text>/g)].map((m) => m[1]);
      deepEqual(words(svg), words(drawn.svg), "no word is lost");
    }
  }
});

Deno.test("figureSvg() makes one drawing of a plot with legends, title and caption", async () => {
  const svg = await figureSvg(withLegend());
  for (
    const text of ["A title", "centre", "edge &amp; &lt;b&gt;", "a &lt; b"]
  ) {
    ok(svg.includes(`>${text}</text>`), text);
  }
  match(svg, /<title[^>]*>Zones<\/title><desc[^>]*>Two dots\.<\/desc>/);
  equal(svg.match(/<svg /g)!.length, 6, "four entries, the plot, the root");
  ok(!/<(?:div|span|figure|figcaption|h2|style)\b/.test(svg));
});

Deno.test("figureSvg() scales without a change of the drawing", async () => {
  const figure = bare("<path d='M0,0'></path>".replaceAll("'", '"'));
  const wide = await figureSvg(figure, { width: 900 });
  match(wide, / width="900" height="900" .*viewBox="0 0 9 9"/);
  equal(
    wide.replace(/ (?:width|height)="900"/g, ""),
    (await figureSvg(figure)).replace(/ (?:width|height)="9"/g, ""),
  );
});

Deno.test("figureSvg() takes out what runs, and refuses what would load", async () => {
  const svg = await figureSvg(bare(
    '<script>alert(1)</script><a href="https://host.invalid/"><text onclick="alert(1)">t\u0007\ud800</text></a><foreignObject><p>x</p></foreignObject>',
    ' onload="alert(1)"',
  ));
  ok(!/script|alert|host\.invalid|foreignObject/.test(svg), svg);
  ok(svg.isWellFormed() && !svg.includes("\u0007"));
  for (
    const inside of [
      '<image href="https://host.invalid/a.png"></image>',
      '<rect fill="url(https://host.invalid/a.svg#b)"></rect>',
      "<style>@import 'https://host.invalid/a.css';</style>",
      '<use xlink:href="other.svg#a"></use>',
    ]
  ) {
    await rejects(figureSvg(bare(inside)), {
      name: "TypeError",
      message:
        /^Cannot write a figure as a file as it must not load anything from outside: current value is .*(?:host\.invalid|other\.svg)/,
    });
  }
});

Deno.test("figureSvg() refuses a width that no program opens", async () => {
  for (const width of [49, 10_001, NaN, Infinity]) {
    await rejects(figureSvg(bare(""), { width }), {
      name: "RangeError",
      message:
        `Cannot write a figure as its width must be 50 to 10000 px: current value is ${width} px`,
    });
  }
});

testWith(
  "chromium",
  "figureSvg() opens in a browser as a picture, well-formed, without a request",
  async () => {
    await using browser = await TestBrowser.start();
    const folder = await Deno.makeTempDir({ prefix: "figure-" });
    try {
      const list = [
        ...await Promise.all(samples.map(({ draw }) => draw())),
        withLegend(),
      ];
      let html = "";
      for (const [i, figure] of list.entries()) {
        const svg = await figureSvg(figure, {
          theme: i % 2 ? "dark" : "light",
        });
        html += `<img alt="" src="data:image/svg+xml,${
          encodeURIComponent(svg)
        }">`;
      }
      const { page, requests } = await browser.open(`<!doctype html>${html}`);
      const widths = await page.evaluate(
        "Promise.all([...document.images].map((one) => one.decode().then(() => one.naturalWidth)))",
      ) as number[];
      equal(widths.length, list.length);
      ok(widths.every((width) => width >= 300), String(widths));
      deepEqual(requests, []);
      const file = `${folder}/zones.svg`;
      const zones = await zonesFigure({
        reference: { label: "centre", distance: 0 },
        zones: [{ label: "edge & <i>", distance: 88, difference: -0.0012 }],
      });
      await Deno.writeTextFile(file, await figureSvg(zones));
      const opened = await browser.openFile(file);
      equal(
        await opened.page.evaluate("document.documentElement.localName"),
        "svg",
      );
      deepEqual([opened.complaints, opened.requests], [[], []]);
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  },
);

Deno.test("figureSvg() keeps of a sheet's rules for dark pages those of its own theme", async () => {
  const own = svgFigure({
    title: "T",
    description: "d",
    svg:
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" width="9" height="9"><style>.a{fill:red}@media (prefers-color-scheme: dark){.a{fill:blue}}</style><g class="a"></g></svg>',
    width: 9,
    height: 9,
  });
  const [light, dark] = [
    await figureSvg(own),
    await figureSvg(own, { theme: "dark" }),
  ];
  match(light, /<style>\.a\{fill:red\}<\/style>/);
  match(dark, /<style>\.a\{fill:red\}\.a\{fill:blue\}<\/style>/);
});
