import { deepEqual, equal, ok } from "node:assert/strict";
import fc from "fast-check";
import {
  type Cell,
  exportHtml,
  formatNotebook,
  type JsonValue,
  type Output,
  parseNotebook,
} from "sagbook/notebook/mod.ts";

const settings = { seed: 20_260_101, numRuns: 200 };
const text = fc.string({ unit: "binary", maxLength: 30 });
const json: fc.Arbitrary<JsonValue> = fc.jsonValue({ maxDepth: 2 })
  .map((value) => JSON.parse(JSON.stringify(value)) as JsonValue);
const object = fc.dictionary(fc.string({ maxLength: 8 }), json, {
  maxKeys: 3,
  noNullPrototype: true,
});
const data = fc.record({
  "text/plain": text,
  "text/html": text,
  "application/json": json,
}, { requiredKeys: [] });
const output: fc.Arbitrary<Output> = fc.oneof(
  fc.record({
    output_type: fc.constant("stream" as const),
    name: fc.constantFrom("stdout", "stderr"),
    text,
  }),
  fc.record({
    output_type: fc.constant("display_data" as const),
    data,
    metadata: object,
  }),
  fc.record({
    output_type: fc.constant("execute_result" as const),
    data,
    metadata: object,
    execution_count: fc.option(fc.nat()),
  }),
  fc.record({
    output_type: fc.constant("error" as const),
    ename: text,
    evalue: text,
    traceback: fc.array(text, { maxLength: 3 }),
  }),
);
const cells: fc.Arbitrary<Cell[]> = fc.uniqueArray(
  fc.oneof(
    fc.record({
      cell_type: fc.constant("code" as const),
      id: fc.stringMatching(/^[a-zA-Z0-9_-]{1,64}$/),
      metadata: object,
      source: text,
      execution_count: fc.option(fc.nat()),
      outputs: fc.array(output, { maxLength: 3 }),
    }),
    fc.record({
      cell_type: fc.constantFrom("markdown" as const, "raw" as const),
      id: fc.stringMatching(/^[a-zA-Z0-9_-]{1,64}$/),
      metadata: object,
      source: text,
    }),
  ),
  { selector: (cell) => cell.id, maxLength: 4 },
).filter((list) => list.every((cell) => !("tags" in cell.metadata)));

Deno.test("formatNotebook() is read back equal, and as the same bytes, for any notebook", async () => {
  await fc.assert(
    fc.asyncProperty(cells, object, async (list, metadata) => {
      const notebook = { metadata, cells: list };
      const file = formatNotebook(notebook);
      const { notebook: back, warnings } = await parseNotebook(file, "n");
      deepEqual(back, notebook);
      deepEqual(warnings, []);
      equal(formatNotebook(back), file);
    }),
    settings,
  );
});

Deno.test("exportHtml() makes a page of any notebook, the same twice", async () => {
  await fc.assert(
    fc.asyncProperty(cells, object, async (list, metadata) => {
      const notebook = { metadata, cells: list };
      const page = await exportHtml(notebook);
      equal(await exportHtml(notebook), page);
      ok(page.endsWith("</main>\n</body>\n</html>\n"));
    }),
    settings,
  );
});

Deno.test("parseNotebook() gives a notebook or a SyntaxError for any JSON and any text", async () => {
  const mostly = <T>(usual: fc.Arbitrary<T>) =>
    fc.oneof({ arbitrary: usual as fc.Arbitrary<unknown>, weight: 9 }, {
      arbitrary: json as fc.Arbitrary<unknown>,
      weight: 1,
    });
  const nearly = fc.record({
    nbformat: mostly(fc.constant(4)),
    nbformat_minor: fc.constantFrom(4, 5, 6, null),
    metadata: mostly(object),
    cells: mostly(fc.array(
      fc.record({
        cell_type: mostly(fc.constantFrom("code", "markdown")),
        source: mostly(fc.oneof(text, fc.array(text))),
        metadata: mostly(object),
        outputs: mostly(fc.array(output, { maxLength: 2 })),
        id: mostly(fc.constantFrom("a", "b", "a b")),
      }, { requiredKeys: ["cell_type", "source"] }),
      { maxLength: 3 },
    )),
  }, { requiredKeys: ["nbformat", "cells"] }).map((value) =>
    JSON.stringify(value)
  );
  let read = 0;
  await fc.assert(
    fc.asyncProperty(fc.oneof(text, nearly), async (file) => {
      try {
        const { notebook } = await parseNotebook(file, "n.ipynb");
        const ids = notebook.cells.map((cell) => cell.id);
        equal(new Set(ids).size, ids.length);
        ok(ids.every((id) => /^[a-zA-Z0-9_-]{1,64}$/.test(id)));
        await parseNotebook(formatNotebook(notebook), "n.ipynb");
        read++;
      } catch (error) {
        ok(error instanceof SyntaxError, String(error));
        ok(error.message.startsWith("Cannot read n.ipynb as "), error.message);
        ok(!error.message.includes("\n"), error.message);
      }
    }),
    { ...settings, numRuns: 1000 },
  );
  ok(read > 100, `only ${read} were notebooks`);
});

/** Pieces that markup is made of, and that break out of it. */
const pieces = fc.array(
  fc.constantFrom(
    ..."< > / ! -- <!-- --> <![CDATA[ ]]> = \" ' ` & &lt; &#60; ; : \n \0"
      .split(" "),
    ...["svg", "math", "style", "script", "img", "a", "title", "desc", "p"],
    ...["foreignObject", "table", "td", "select", "template", "noscript"],
    ...["textarea", "iframe", "xmp", "plaintext", "details", "pre", "use"],
    ...["<svg>", "</svg>", "<style>", "</style>", "<p>", "<svg><style>"],
    ...["onload", "src", "href", "style", "id", "xlink:href", "srcdoc"],
    ..."<img src=x onerror=alert(1)>|<script>alert(1)</script>|javascript:alert(1)"
      .split("|"),
    ...["url(http://h.invalid)", "url(#a)", "{", "}", "@import", "expression("],
  ),
  { maxLength: 30 },
).map((list) => list.join(""));

Deno.test("exportHtml() leaves no script, handler, foreign address or open tag from any markup", async () => {
  await fc.assert(
    fc.asyncProperty(pieces, async (markup) => {
      const page = await exportHtml({
        metadata: {},
        cells: [{
          cell_type: "code",
          id: "c",
          metadata: { tags: ["remove-input"] },
          source: "x",
          execution_count: 1,
          outputs: ["text/html", "image/svg+xml", "text/markdown"].map((
            type,
          ) => ({
            output_type: "display_data",
            data: { [type]: markup, "text/plain": "-" },
            metadata: {},
          })),
        }],
      });
      const body = page.slice(
        page.indexOf("<main"),
        page.indexOf("</main>") + 7,
      );
      const tags = body.match(/<[^>]*>/g) ?? [];
      for (const tag of tags) {
        const bare = tag.replace(/"[^"]*"/g, '""');
        ok(/^<\/?[a-zA-Z][\w]*(?: [a-zA-Z][\w:-]*(?:="")?)*>$/.test(bare), tag);
        ok(!/ on[a-z]+=/i.test(bare), tag);
        ok(
          !/^<\/?(?:script|iframe|object|embed|link|meta|base|form)\b/i.test(
            tag,
          ),
          tag,
        );
        for (
          const [, value] of tag.matchAll(
            / (?:src|href|xlink:href|style)="([^"]*)"/g,
          )
        ) {
          ok(!/^\s*javascript:|http:\/\/h\.invalid\)/i.test(value), tag);
        }
      }
      equal(body.indexOf("</main>"), body.length - 7);
    }),
    { ...settings, numRuns: 1500 },
  );
});
