import { deepEqual, equal, match, ok, throws } from "node:assert/strict";
import { parseHTML } from "linkedom";
import * as Plot from "@observablehq/plot";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { elementFigure } from "sagbook/figures/element_figure.ts";

const { document } = parseHTML(
  "<!doctype html><html><body></body></html>",
) as unknown as { document: never };
/** The cell of the case, run as it stands but for its import and exports. */
const cell = await Deno.readTextFile(
  new URL("../cases/E01-legend-figure.cell.txt", import.meta.url),
);
const body = cell.replace(/^import .*$/m, "").replaceAll("export ", "");
const made = new Function(
  "Plot",
  "document",
  `${body}\nreturn { bare, legend, caption };`,
)(Plot, document) as Record<"bare" | "legend" | "caption", unknown>;

const labels = { title: "Two zones", description: "Two dots." };
const formsOf = async (element: unknown) =>
  await elementFigure(element, labels)[jupyterDisplay]();

Deno.test("elementFigure() calls a bare plot an image", async () => {
  const forms = await formsOf(made.bare);
  deepEqual(Object.keys(forms), ["image/svg+xml", "text/plain"]);
  match(String(forms["image/svg+xml"]), /^<svg .*<\/svg>$/s);
  equal(forms["text/plain"], "Two zones. Two dots.");
});

Deno.test("elementFigure() keeps the legend of a plot, as HTML", async () => {
  const forms = await formsOf(made.legend);
  deepEqual(Object.keys(forms), ["text/html", "text/plain"]);
  const html = String(forms["text/html"]);
  equal(
    html.match(/<rect [^>]*><\/rect>/g)!.length,
    3,
    "two swatches, one clip",
  );
  ok(
    html.includes("</svg>centre</span>") && html.includes("</svg>edge</span>"),
  );
});

Deno.test("elementFigure() keeps the caption of a plot, escaped", async () => {
  const forms = await formsOf(made.caption);
  ok(String(forms["text/html"]).includes("<figcaption>a &lt; b</figcaption>"));
  ok(!("image/svg+xml" in forms));
});

Deno.test("elementFigure() gives ids of their own to two plots that share one", () => {
  const [first, second] = [1, 2].map((set) => {
    const shown = elementFigure(
      Plot.plot({
        document,
        marks: [
          Plot.dot([{ set, sag: 0.7 }], { x: "set", y: "sag", clip: true }),
        ],
      }),
      { title: `Set ${set}`, description: "One dot." },
    );
    return "svg" in shown ? shown.svg : "";
  });
  const ids = (svg: string) =>
    [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
  const clips = [first, second].map((svg) => {
    const [, clip] = /clip-path="url\(#([^)]+)\)"/.exec(svg)!;
    ok(ids(svg).includes(clip), "a clip points inside its own picture");
    return clip;
  });
  equal(new Set([...ids(first), ...ids(second)]).size, ids(first).length * 2);
  ok(clips[0] !== clips[1]);
});

Deno.test("elementFigure() refuses what is no element", () => {
  throws(() => elementFigure("<svg></svg>", labels), {
    name: "TypeError",
    message:
      'Cannot show a picture as it must be an element of a DOM: current value is "<svg></svg>"',
  });
});

Deno.test("elementFigure() takes no share of a page for a size, and draws plots of nothing", () => {
  const sized = (attributes: string) => {
    const page = parseHTML(
      `<html><body><svg ${attributes}><path d="M0 0"/></svg></body></html>`,
    ) as unknown as {
      document: { querySelector(name: string): unknown };
    };
    const shown = elementFigure(page.document.querySelector("svg"), labels);
    return "svg" in shown ? [shown.width, shown.height] : [];
  };
  deepEqual(sized('width="100%" height="2em"'), [300, 300]);
  deepEqual(sized('width="100%" viewBox="0 0 640 400"'), [640, 400]);
  deepEqual(sized('width="320px" height="200"'), [320, 200]);
  deepEqual(sized('width="0" height="0" viewBox="0 0 0 0"'), [300, 300]);
  for (
    const marks of [
      [],
      [Plot.dot([], { x: "set", y: "sag" })],
      [Plot.lineY([NaN, NaN])],
      [Plot.dot([{ x: 1, y: Infinity }, { x: 2, y: 1 }], { x: "x", y: "y" })],
      [Plot.lineY([1])],
    ]
  ) {
    const shown = elementFigure(Plot.plot({ document, marks }), labels);
    ok("svg" in shown && !/NaN|undefined|Infinity/.test(shown.svg));
  }
});
