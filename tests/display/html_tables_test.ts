import { deepEqual, equal } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { htmlTables } from "sagbook/display/html_tables.ts";
import { htmlWords } from "sagbook/display/html_words.ts";
import { table } from "sagbook/display/table.ts";

Deno.test("htmlTables() gives back what table() was given, whatever the text", async () => {
  const odd = [
    "<b>x</b>",
    "a & b &amp; c",
    `"quoted" 'so'`,
    "µ − ±",
    "=1+1",
    "</td></table><script>alert(1)</script>",
    "&#60;i&#62; &lt;",
  ];
  const rows = odd.map((text, i) => ({ "name <of> it": text, count: i }));
  const html = String(
    (await table(rows, { caption: "All & sundry" })[jupyterDisplay]())[
      "text/html"
    ],
  );
  deepEqual(htmlTables(html), [{
    caption: "All & sundry",
    columns: ["name <of> it", "count"],
    rows: odd.map((text, i) => [text, String(i)]),
  }]);
});

Deno.test("htmlTables() reads a table without a head, spans, and several tables", () => {
  const html = `<table><tr><th scope="row">Glass</th><td>borosilicate</td></tr>
    <tr><td colspan="3">a<br>b</td></tr></table><p>x</p>
    <table><tr><th>only</th></tr></table><table></table>`;
  deepEqual(htmlTables(html), [
    { columns: [], rows: [["Glass", "borosilicate", ""], ["a b", "", ""]] },
    { columns: ["only"], rows: [] },
    { columns: [], rows: [] },
  ]);
});

Deno.test("htmlWords() reads entities once and refuses numbers that are no character", () => {
  equal(
    htmlWords("&amp;lt; &#x3bc; &#956; &nbsp;&unknown;"),
    "&lt; μ μ \u00a0&unknown;",
  );
  equal(htmlWords("&#xD800; &#x110000; &#0;"), "&#xD800; &#x110000; &#0;");
});
