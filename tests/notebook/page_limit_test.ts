import { equal, match, ok } from "node:assert/strict";
import { exportHtml, type Output } from "sagbook/notebook/mod.ts";

const page = (...outputs: Output[]) =>
  exportHtml({
    metadata: {},
    cells: [{
      cell_type: "code",
      id: "c",
      metadata: {},
      source: "1",
      execution_count: 1,
      outputs,
    }],
  });
const shown = (data: Record<string, string>): Output => ({
  output_type: "display_data",
  data,
  metadata: {},
});

Deno.test("exportHtml() shows both ends of 50 MB of text and says what is left out", async () => {
  const lines = 2_800_000;
  const text = `first\n${"0.715 0.716 0.717\n".repeat(lines)}last\n`;
  for (
    const output of [
      { output_type: "stream", name: "stdout", text } as const,
      shown({ "text/plain": text }),
    ]
  ) {
    const html = await page(output);
    ok(html.length < 1_000_000, `${html.length}`);
    match(html, /first\n/);
    match(html, /last\n?<\/pre>/);
    match(html, /\[… 2 799 0\d\d lines left out …\]/);
  }
});

Deno.test("exportHtml() leaves a result of 50 MB out of the page with a line that says so", async () => {
  const table = `<table>${"<tr><td>0.715</td></tr>".repeat(2_200_000)}</table>`;
  const html = await page(
    shown({ "text/html": table, "text/plain": "a table" }),
  );
  ok(html.length < 100_000, `${html.length}`);
  match(
    html,
    /a result of the kind text\/html with 50\.6 million characters is left out of this page/,
  );
  match(html, />a table<\/pre>/);
  const svg = `<svg>${"<g></g>".repeat(2_000_000)}</svg>`;
  const alone = await page(shown({ "image/svg+xml": svg }));
  match(alone, /image\/svg\+xml with 14 million characters/);
  equal(/cannot be shown/.test(alone), false);
});
