import { deepEqual, doesNotMatch, equal, match, ok } from "node:assert/strict";
import {
  type CodeCell,
  exportHtml,
  formatNotebook,
  type JsonObject,
  type Notebook,
  readNotebook,
  type TextCell,
} from "sagbook/notebook/mod.ts";
import { casePath } from "./_case.ts";

const markdown = (source: string): Notebook => ({
  metadata: {},
  cells: [{ cell_type: "markdown", id: "m", metadata: {}, source }],
});
const shown = (data: JsonObject, metadata: JsonObject = {}): Notebook => ({
  metadata: {},
  cells: [{
    cell_type: "code",
    id: "c",
    metadata: {},
    source: "figure",
    execution_count: 1,
    outputs: [{ output_type: "display_data", data, metadata }],
  }],
});
const body = async (notebook: Notebook) => {
  const page = await exportHtml(notebook);
  return page.slice(page.indexOf("<main"), page.indexOf("</main>"));
};

Deno.test("exportHtml() keeps the ids of two figures apart, and all that points at them", async () => {
  const { notebook } = await readNotebook(casePath("D09-same-ids.ipynb"));
  const before = formatNotebook(notebook);
  const page = await exportHtml(notebook);
  equal(await exportHtml(notebook), page);
  equal(formatNotebook(notebook), before);
  const ids = Array.from(page.matchAll(/ id="([^"]*)"/g), (found) => found[1]);
  equal(new Set(ids).size, ids.length);
  const second = page.slice(page.indexOf("width 300"));
  match(second, /<clipPath id="c2-1-plot-clip-1"><rect width="290"/);
  match(second, /clip-path="url\(#c2-1-plot-clip-1\)"/);
  match(second, /fill="url\((?:&#39;|')#c2-1-g1(?:&#39;|')\)"/);
  match(second, /<use href="#c2-1-p1">/);
  match(second, /<style>:where\(#c2-1\) #c2-1-p1\{stroke:red\}<\/style>/);
  match(page, /aria-labelledby="c2-1-t1"[^>]*><title id="c2-1-t1">width 300/);
});

Deno.test("exportHtml() shows terminal text as a terminal would, markup as typed", async () => {
  const { notebook } = await readNotebook(casePath("D11-ansi.ipynb"));
  const page = await exportHtml(notebook);
  equal(page.includes("\u001b"), false);
  doesNotMatch(page, /\[3[19]m/);
  match(page, /sag &lt;b&gt;0\.000&lt;\/b&gt; &amp; R → ∞/);
  match(
    page,
    /\| <span class="t-red"> &lt;b&gt;edge&lt;\/b&gt; <\/span> \|\n100%/,
  );
  doesNotMatch(page, /50%/);
});

Deno.test("exportHtml() obeys remove-cell, remove-input and remove-output", async () => {
  const cell = (tag: string): CodeCell => ({
    cell_type: "code",
    id: tag,
    metadata: { tags: [tag] },
    source: `source_${tag.replace("-", "_")}`,
    execution_count: 1,
    outputs: [{ output_type: "stream", name: "stdout", text: `out ${tag}` }],
  });
  const tags = ["remove-cell", "remove-input", "remove-output", "other"];
  const text = await body({ metadata: {}, cells: tags.map(cell) });
  const found = (part: string) => text.includes(part);
  deepEqual(
    tags.map((tag) => [
      found(`source_${tag.replace("-", "_")}`),
      found(`out ${tag}`),
    ]),
    [[false, false], [false, true], [true, false], [true, true]],
  );
});

Deno.test("exportHtml() folds the code of a part below its results for a reader", async () => {
  const cell = (source: string, text: string): CodeCell => ({
    cell_type: "code",
    id: source,
    metadata: {},
    source,
    execution_count: 1,
    outputs: text === ""
      ? []
      : [{ output_type: "stream", name: "stdout", text }],
  });
  const text = (source: string): TextCell => ({
    cell_type: "markdown",
    id: source.slice(3),
    metadata: {},
    source,
  });
  const page = await exportHtml({
    metadata: {},
    cells: [
      cell("step1", ""),
      cell("step2", "the answer"),
      cell("step3", "a second one"),
      text("## More"),
      cell("step4", "a third one"),
    ],
  }, { layout: "reader" });
  const parts = [
    ["the answer", "a second one", "How this was computed"],
    ["step1", "step2", "step3", ">More<", "a third one", "step4"],
  ].flat();
  const order = parts.map((part) => page.indexOf(part));
  ok(order.every((at) => at > 0), `${order}`);
  deepEqual(order, order.toSorted((a, b) => a - b));
  equal(page.match(/<details/g)!.length, 2);
});

Deno.test("exportHtml() takes the title from the first heading, once, and jumps no level", async () => {
  const page = await exportHtml(
    markdown("# Blank `7`\n\n#### Zones\n\n# Later\n\n## Zones"),
  );
  match(page, /<title>Blank 7<\/title>/);
  deepEqual(
    Array.from(page.matchAll(/<h(\d)[^>]*>([^<]*)/g), ([, h, t]) => [h, t]),
    [["1", "Blank 7"], ["2", "Zones"], ["2", "Later"], ["2", "Zones"]],
  );
  match(page, /id="h-zones-2"/);
  match(await exportHtml(markdown("text")), /<title>Notebook<\/title>/);
});

Deno.test("exportHtml() warns at the top of a failed or incomplete run", async () => {
  const failed = (tags: string[]): Notebook => ({
    metadata: {},
    cells: [{
      cell_type: "code",
      id: "c",
      metadata: { tags },
      source: "x",
      execution_count: 1,
      outputs: [{
        output_type: "error",
        ename: "RangeError",
        evalue: "below <0>",
        traceback: [],
      }],
    }],
  });
  const text = await body(failed([]));
  match(text, /^<main[^>]*>\s*<div class="sb-banner" role="note">/);
  match(text, /cell 1 of the notebook stopped with an error/);
  match(text, /This cell stopped with RangeError\..*below &lt;0&gt;/);
  doesNotMatch(await body(failed(["raises-exception"])), /sb-banner/);
  match(
    await exportHtml(markdown("a"), { incomplete: "cell 2 ran <too> long" }),
    /incomplete:<\/strong> cell 2 ran &lt;too&gt; long/,
  );
});

Deno.test("exportHtml() shows the best form that a bundle has", async () => {
  const all: JsonObject = {
    "text/plain": "plain",
    "text/latex": "$x$",
    "text/markdown": "*mark*",
    "image/png": "aGk=",
    "image/svg+xml": "<svg><rect/></svg>",
    "text/html": "<i>html</i>",
  };
  const expected: [string, RegExp][] = [
    ["text/html", /<i>html<\/i>/],
    [
      "image/svg+xml",
      /<svg role="img" aria-label="plain"><rect><\/rect><\/svg>/,
    ],
    ["image/png", /<img src="data:image\/png;base64,aGk=" alt="plain">/],
    ["text/markdown", /<em>mark<\/em>/],
    ["text/latex", /<math[^>]*display="block"/],
    ["text/plain", /<pre[^>]*>plain<\/pre>/],
  ];
  const left = { ...all };
  for (const [type, look] of expected) {
    match(await body(shown(left)), look);
    Reflect.deleteProperty(left, type);
  }
  match(
    await body(shown({ "application/json": { a: [1] } })),
    /&quot;a&quot;: \[/,
  );
  match(
    await body(shown({ "application/x-shape": "?" })),
    /a result of the kind application\/x-shape cannot be shown here/,
  );
  match(
    await body(shown({ "text/html": "<script>1</script>", "text/plain": "p" })),
    />p</,
  );
  match(
    await body(
      shown({ "image/png": "aGk=" }, {
        "image/png": { width: 30, height: 20 },
      }),
    ),
    /alt="Figure, cell 1" width="30" height="20"/,
  );
});

Deno.test("exportHtml() sets formulas as MathML and leaves prices alone", async () => {
  const text = await body(markdown(
    "Sag $s_1$ costs $5 or $6, $a $ b, $a$5.\n\nTyped: \\$x$ and `$y$`.\n\n$$\nR = \\frac{r^2}{2s}\n$$\n\nBad: $\\frac{1}$ and $\\href{javascript:alert(1)}{x}$.",
  ));
  // The forbidden command is set as its own name.
  equal(text.match(/<math /g)!.length, 3);
  match(
    text,
    /costs \$5 or \$6, \$a \$ b, \$a\$5\.<\/p>\n<p>Typed: \$x\$ and <code>\$y\$<\/code>/,
  );
  match(text, /\n<div class="sb-math"[^>]*><math[^>]*display="block"/);
  match(text, /<code class="sb-fault"[^>]*>\\frac\{1\}<\/code>/);
  doesNotMatch(text, /href=/);
});

Deno.test("exportHtml() sets a formula of its own also over a blank line, and one within a paragraph as no block", async () => {
  const alone = await body(markdown("$$\nR\n\n= 2\n$$"));
  match(alone, /<div class="sb-math"[^>]*><math/);
  doesNotMatch(alone, /<p>/);
  const within = await body(markdown("$$R$$ is the radius, $$s$$ the sag"));
  match(
    within,
    /<p><span class="sb-math"[^>]*><math[^>]*display="block"[^]*<\/math><\/span> is the radius, <span/,
  );
  doesNotMatch(within, /sb-fault|<div class="sb-math"/);
  match(await body(markdown("$$R and no end\n\nnext")), /\$\$R and no end/);
});

Deno.test("exportHtml() is one file that forbids scripts and requests", async () => {
  const page = await exportHtml(markdown("a"), {
    title: "<T>",
    subtitle: "&",
    footer: '"',
    language: "de-CH",
  });
  match(page, /^<!doctype html>\n<html lang="de-CH">/);
  match(
    page,
    /Content-Security-Policy" content="default-src 'none'; style-src/,
  );
  match(page, /<h1>&lt;T&gt;<\/h1>\n<p>&amp;<\/p>/);
  match(page, /<footer[^>]*>&quot;<\/footer>/);
  doesNotMatch(page, /<script|(?:src|href)="(?:http|\/\/|\.)/);
});

Deno.test("exportHtml() lets a figure keep its own dark colours, and no other rule of a medium", async () => {
  const svg = (css: string) =>
    `<svg id="f" xmlns="http://www.w3.org/2000/svg"><style>${css}</style><rect class="k"/></svg>`;
  const dark = await body(shown({
    "image/svg+xml": svg(
      "#f .k{fill:#111}@media screen and (prefers-color-scheme:dark){#f .k{fill:#eee}body{color:red}}@import 'x';@font-face{src:url(x)}@supports (color:red){.k{fill:red}}",
    ),
  }));
  match(
    dark,
    /<style>:where\(#c1-1\) #c1-1-f \.k\{fill:#111\}\n@media screen and \(prefers-color-scheme:dark\)\{:where\(#c1-1\) #c1-1-f \.k\{fill:#eee\}\n:where\(#c1-1\) body\{color:red\}\}<\/style>/,
  );
  match(dark, /class="sb-figure"/);
  match(
    await body(shown({ "image/svg+xml": svg(".k{fill:#111}") })),
    /class="sb-figure sb-card"/,
  );
});

Deno.test("exportHtml() keeps the rules of a style to its output and to harmless looks", async () => {
  const rules = async (css: string) => {
    const text = await body(
      shown({ "text/html": `<style>${css}</style><p>p</p>` }),
    );
    return /<style>([\s\S]*?)<\/style>/.exec(text)?.[1] ?? "";
  };
  equal(
    await rules("a,b > c{color:red}"),
    ":where(#c1-1) a,:where(#c1-1) b > c{color:red}",
  );
  for (
    const css of [
      "~ *{color:red}",
      "&{color:red}",
      "body:has(&){color:red}",
      "p{position:fixed}",
      "p{background:url(http://host.invalid/)}",
      "p{background:u\\72l(http://host.invalid/)}",
      "p{color:red;}}body{",
      "@media screen{{p{color:red}}",
      "p{content:'</style><script>'}",
    ]
  ) {
    const kept = await rules(css);
    equal(/fixed|url|has|&|^~|host|script/.test(kept), false, css);
    ok(
      kept === "" ||
        kept.split("\n").every((rule) =>
          rule.startsWith(":where(#c1-1) ") || rule.startsWith("@media")
        ),
      kept,
    );
  }
});

Deno.test("exportHtml() shows pictures kept in a Markdown cell, and no others", async () => {
  const cell = (source: string): Notebook => ({
    metadata: {},
    cells: [{
      cell_type: "markdown",
      id: "m",
      metadata: {},
      source,
      attachments: { "a b.png": { "image/png": "aGk=\n" } },
    }],
  });
  match(
    await body(cell("![dish](attachment:a%20b.png)")),
    /<img src="data:image\/png;base64,aGk=" alt="dish">/,
  );
  for (
    const source of [
      "attachment:none.png",
      "attachment:%zz",
      "http://h.invalid/a.png",
      "a.png",
    ]
  ) {
    const text = await body(cell(`![dish](${source})`));
    doesNotMatch(text, /<img/);
    match(text, /\[picture outside this page, not shown: dish\]|!\[dish\]/);
  }
});
