import { deepEqual, equal, match, throws } from "node:assert/strict";
import {
  escapeHtml,
  jupyterDisplay,
  Markup,
  markup,
  table,
} from "sagbook/display/mod.ts";

Deno.test("escapeHtml() leaves none of the five characters that HTML reads", () => {
  equal(
    escapeHtml(`<a href="x" title='y'>&amp;`),
    "&lt;a href=&quot;x&quot; title=&#39;y&#39;&gt;&amp;amp;",
  );
});

Deno.test("markup escapes texts, joins lists, and takes only Markup as it is", () => {
  const note = `"><script>alert(1)</script>`;
  const parts = [1, " < ", new Markup("<b>2</b>"), null, undefined];
  const made = markup`<p title="${note}">${parts}</p>`;
  equal(
    made.html,
    '<p title="&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;">1 &lt; <b>2</b></p>',
  );
  equal(`${made}`, made.html);
});

Deno.test("table() gives text, Markdown and HTML, with the user's words as typed", async () => {
  const rows = [
    { zone: "centre | <b>", "R / mm": 3000.4, n: 5 },
    { zone: "edge", "R / mm": null, n: 12 },
  ];
  deepEqual(await table(rows, { caption: "Zones" })[jupyterDisplay](), {
    "text/plain":
      "Zones\nzone          R / mm  n\n────────────  ──────  ──\ncentre | <b>  3000.4  5\nedge                  12",
    "text/markdown":
      "Zones\n\n| zone | R / mm | n |\n| --- | ---: | ---: |\n| centre \\| \\<b\\> | 3000.4 | 5 |\n| edge |  | 12 |",
    "text/html":
      '<table class="fits"><caption>Zones</caption><thead><tr><th scope="col">zone</th><th scope="col" style="text-align:right">R / mm</th><th scope="col" style="text-align:right">n</th></tr></thead><tbody><tr><td style="white-space:nowrap">centre | &lt;b&gt;</td><td style="text-align:right;white-space:nowrap">3000.4</td><td style="text-align:right;white-space:nowrap">5</td></tr><tr><td style="white-space:nowrap">edge</td><td style="text-align:right;white-space:nowrap"></td><td style="text-align:right;white-space:nowrap">12</td></tr></tbody></table>',
  });
});

Deno.test("table() refuses a number that is not finite, and takes the columns asked for", async () => {
  throws(() => table([{ R: NaN }]), {
    name: "RangeError",
    message:
      'Cannot show a table as its numbers must be finite: current value is NaN in column "R"',
  });
  const { "text/plain": text } = await table([{ a: 1, b: "x" }], {
    columns: ["b"],
  })[jupyterDisplay]();
  equal(text, "b\n─\nx");
  const { "text/plain": none } = await table([])[jupyterDisplay]();
  equal(none, "\n");
});

Deno.test("table() says of a table whether it fits on paper side by side", async () => {
  const html = async (rows: Record<string, string>[]) =>
    String((await table(rows)[jupyterDisplay]())["text/html"]);
  const cells = (count: number, text: string) =>
    Object.fromEntries(
      Array.from({ length: count }, (_, i) => [`c${i}`, text]),
    );
  match(await html([cells(6, "3004.4 ± 7.5")]), /^<table class="fits">/);
  // Too wide for one line, yet whole words and numbers with their units fit.
  match(
    await html([cells(7, "3004.4 mm ± 7.5 mm")]),
    /^<table class="wraps">.*<td style="white-space:nowrap">/,
  );
  match(
    await html([cells(12, "2024-03-02 evening"), { c0: "2024-03-02" }]),
    /^<table>/,
  );
  match(
    await html([{
      date: "2024-03-02",
      ...cells(5, "2024-03-02 evening"),
    }]),
    /^<table class="wraps">.*<td class="whole" style="white-space:nowrap">2024-03-02<.td><td style="white-space:nowrap">2024-03-02 evening/,
  );
  match(await html([cells(9, "word ".repeat(40))]), /^<table>/);
  match(await html([{ ["a".repeat(200)]: "1" }]), /^<table>/);
});

Deno.test("table() without columns is its sentence, and no table that is a word wide", async () => {
  const shown = table([], { caption: "Nothing & nobody." });
  deepEqual(await shown[jupyterDisplay](), {
    "text/plain": "Nothing & nobody.",
    "text/markdown": "Nothing \\& nobody.",
    "text/html": "<p>Nothing &amp; nobody.</p>",
  });
});
