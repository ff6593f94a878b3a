import { deepEqual, equal, ok } from "node:assert/strict";
import type { Cell, JsonObject } from "sagbook/notebook/document.ts";
import { notebookParts } from "sagbook/notebook/notebook_parts.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";

const cell = (
  data: JsonObject,
  metadata: JsonObject = {},
  id = crypto.randomUUID(),
): Cell => ({
  cell_type: "code",
  id,
  metadata,
  source: "x;",
  execution_count: 1,
  outputs: [{
    output_type: "execute_result",
    data,
    metadata: {},
    execution_count: 1,
  }],
});
const partsOf = (...cells: Cell[]) => notebookParts({ metadata: {}, cells });

const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><title>Radius &amp; zone</title><desc>Two dots.</desc></svg>';
const TABLE =
  "<table><caption>All zones</caption><tr><td>edge</td></tr></table>";

Deno.test("notebookParts() names a part by its cell, by its title, and counts the same name", () => {
  const parts = partsOf(
    cell({ "image/svg+xml": SVG }, { name: "Differences by Zone/µm" }),
    cell({ "image/svg+xml": SVG }),
    cell({ "text/html": TABLE + TABLE }),
    cell({ "image/svg+xml": SVG }),
    cell({ "text/html": `${TABLE}` }, { name: "../../x" }),
  );
  deepEqual(parts.map(({ kind, name }) => [kind, name]), [
    ["figure", "differences-by-zone-um"],
    ["figure", "radius-zone"],
    ["table", "all-zones"],
    ["table", "all-zones-2"],
    ["figure", "radius-zone-2"],
    ["table", "x"],
  ]);
});

Deno.test("notebookParts() tells title and description, from the picture or from the plain words", () => {
  const [own, html] = partsOf(
    cell({ "image/svg+xml": SVG }),
    cell({
      "text/html": `<div><svg viewBox="0 0 9 9"></svg><span>edge</span></div>`,
      "text/plain": "Two zones. Two dots & a line.",
    }),
  );
  ok(own.kind === "figure" && html.kind === "figure");
  deepEqual([own.title, own.description, own.form], [
    "Radius & zone",
    "Two dots.",
    "svg",
  ]);
  deepEqual([html.title, html.description, html.form], [
    "Two zones",
    "Two dots & a line.",
    "html",
  ]);
});

Deno.test("notebookParts() leaves out what a page leaves out, empty tables and everything that runs", () => {
  const evil = SVG.replace(
    "</svg>",
    '<script>alert(1)</script><image href="http://host.invalid/a.png"></image><g onclick="alert(1)"></g></svg>',
  );
  const parts = partsOf(
    cell({ "image/svg+xml": evil }),
    cell({ "image/svg+xml": SVG }, { tags: ["remove-output"] }),
    cell({ "text/html": TABLE }, { tags: ["remove-cell"] }),
    cell({ "text/html": "<table><tr><th>none</th></tr></table>" }),
    cell({ "text/html": "<p>words</p>", "text/plain": "words" }),
    cell({ "image/svg+xml": "no picture", "text/html": 7 }),
  );
  equal(parts.length, 1);
  ok(
    !/alert|script|host\.invalid/.test(
      JSON.stringify(parts).replaceAll("description", ""),
    ),
  );
});

Deno.test("notebookParts() names every part of the project's report notebooks by words of its own", async () => {
  for (
    const name of [
      ...["session", "repeatability", "measurement-plan"],
      ...["fabrication-history", "radius-to-focal-length"],
    ]
  ) {
    const { notebook } = await readNotebook(`notebooks/${name}.ipynb`);
    const parts = notebookParts(notebook);
    ok(parts.length >= 3, name);
    const named = new Set(
      notebook.cells.flatMap(({ metadata }) =>
        typeof metadata.name === "string"
          ? [metadata.name.replaceAll(" ", "-")]
          : []
      ),
    );
    for (const part of parts) ok(named.has(part.name), part.name);
  }
});
