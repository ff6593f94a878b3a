import { deepEqual, equal, match, ok } from "node:assert/strict";
import { exportHtml, type PageWord } from "sagbook/notebook/export_html.ts";
import type { Notebook } from "sagbook/notebook/document.ts";

const notebook: Notebook = {
  metadata: {},
  cells: [
    {
      cell_type: "markdown",
      id: "a",
      metadata: {},
      source: "# Blank 7\n\nThe edge & the *rim* of $s$ `codeword`",
    },
    {
      cell_type: "code",
      id: "b",
      metadata: {},
      execution_count: 1,
      source: "hidden(1)",
      outputs: [{
        output_type: "display_data",
        metadata: {},
        data: {
          "image/svg+xml":
            "<svg xmlns='http://www.w3.org/2000/svg'><text>drawn</text></svg>",
        },
      }],
    },
  ],
};

Deno.test("exportHtml() hands the page's words to be found, without code, formulas and pictures", async () => {
  const seen: string[] = [];
  await exportHtml(notebook, {
    words: (text) => {
      seen.push(text);
      return [];
    },
  });
  equal(seen.length, 1);
  match(seen[0], /The edge & the rim of/);
  for (
    const word of ["codeword", "hidden", "drawn", "computed", "<", "&amp;"]
  ) {
    ok(!seen[0].includes(word), word);
  }
});

Deno.test("exportHtml() explains the words found in a fold at the end, as text", async () => {
  const words: PageWord[] = [
    { term: "rim", unit: "in <mm>", meaning: "The outermost part & no more." },
    { term: "edge", meaning: "Near the <b>rim</b>." },
  ];
  const page = await exportHtml(notebook, { words: () => words });
  const fold =
    /<details class="sb-fold"><summary>Words used on this page<\/summary>([\s\S]*?)<\/details>/
      .exec(page);
  ok(fold);
  deepEqual(
    [...fold[1].matchAll(/<dt>(.*?)<\/dt>\n<dd>(.*?)<\/dd>/g)].map((m) =>
      m.slice(1)
    ),
    [
      [
        "<strong>rim</strong> (in &lt;mm&gt;)",
        "The outermost part &amp; no more.",
      ],
      ["<strong>edge</strong>", "Near the &lt;b&gt;rim&lt;/b&gt;."],
    ],
  );
  ok(page.indexOf("Words used") > page.indexOf("Blank 7"));
});

Deno.test("exportHtml() makes no fold where no word is found or none are looked for", async () => {
  const without = await exportHtml(notebook);
  equal(await exportHtml(notebook, { words: () => [] }), without);
  ok(!without.includes("Words used"));
});
