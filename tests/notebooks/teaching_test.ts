import { deepEqual, equal, match, ok } from "node:assert/strict";
import type { Cell } from "sagbook/notebook/document.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { ROOT } from "../tasks/_run_task.ts";

const { notebook } = await readNotebook(
  `${ROOT}notebooks/teaching-the-geometry.ipynb`,
);

const PARTS = [
  "chord",
  "balls",
  "form",
  "error",
  "zero",
  "points",
  "averaging",
  "paraboloid",
  "size",
  "edge",
  "coma",
  "blind",
  "identical",
  "sets",
];

const cell = (id: string): Cell => {
  const found = notebook.cells.find((one) => one.id === id);
  ok(found, `a cell ${id}`);
  return found;
};

/** What a cell shows as text: its Markdown, or else its plain form. */
function shown(id: string): string {
  const found = cell(id);
  if (found.cell_type !== "code") return found.source;
  return found.outputs.map((output) =>
    "data" in output
      ? String(output.data["text/markdown"] ?? output.data["text/plain"])
      : ""
  ).join("\n").replaceAll("\u00a0", " ");
}

/** A table as aligned text: its caption, its head, a rule, its rows. */
function plain(id: string): string {
  const found = cell(id);
  const [output] = found.cell_type === "code" ? found.outputs : [];
  ok(output && "data" in output, id);
  return String(output.data["text/plain"]);
}

Deno.test("teaching-the-geometry.ipynb has fourteen parts: question, picture, why, calculation, exercise", () => {
  const ids = notebook.cells.map(({ id }) => id);
  deepEqual(
    ids.slice(2, -1),
    PARTS.flatMap((part) =>
      ["question", "picture", "why", "calculation", "exercise"].map((kind) =>
        `${part}-${kind}`
      )
    ),
  );
  for (const [index, part] of PARTS.entries()) {
    const question = shown(`${part}-question`);
    ok(question.startsWith(`## ${index + 1}. `), part);
    match(question, /\*\*Question\.\*\* [^]*\?/);
    match(
      shown(`${part}-exercise`),
      /^\*\*Exercise\.\*\* [^]*\n\n<details>\n<summary>Worked answer<\/summary>\n\n[^]+\n\n<\/details>$/,
    );
    const picture = cell(`${part}-picture`);
    ok(
      picture.cell_type === "code" &&
        picture.outputs.some((output) =>
          "data" in output && "image/svg+xml" in output.data
        ),
      `${part} has a picture`,
    );
  }
});

Deno.test("teaching-the-geometry.ipynb writes no number by hand: text holds figures in formulas and headings alone", () => {
  for (const { cell_type, id, source } of notebook.cells) {
    if (cell_type !== "markdown") continue;
    const words = source.replace(/^#+ .*$/gm, "")
      .replace(/\$\$[^]*?\$\$|\$[^$\n]*\$/g, "");
    equal(words.match(/\d/), null, id);
  }
});

Deno.test("teaching-the-geometry.ipynb computes the check values of the handbook formulas", () => {
  const expected: Record<string, readonly (string | RegExp)[]> = {
    "chord-calculation": ["0.6013 mm", "3000.0 mm"],
    "balls-calculation": ["60.127 mm"],
    "balls-exercise": ["625.25 mm", "627.25 mm"],
    "form-calculation": ["0.5988", "59.873"],
    "form-exercise": ["12.7 mm"],
    "error-calculation": ["5.0 mm", "1.0 mm"],
    "points-calculation": ["145, 76, 76", "126, 126, 25", "88.0", "108.6"],
    "averaging-calculation": ["10.800", "0.008"],
    "paraboloid-calculation": ["1.6333 mm", "1.6324 mm", "1.6328 mm"],
    "paraboloid-exercise": ["1.00 mm"],
    "size-calculation": ["586 nm", "588 nm", "is 1."],
    "edge-calculation": ["−0.27 of the depth", "by 0.00 µm"],
  };
  for (const [id, texts] of Object.entries(expected)) {
    const text = shown(id);
    for (const one of texts) {
      ok(
        typeof one === "string" ? text.includes(one) : one.test(text),
        `${id}: ${one} in ${text}`,
      );
    }
  }
});

Deno.test("teaching-the-geometry.ipynb says of astigmatism only what exact contact gives", () => {
  const text = shown("blind-calculation");
  const [, height] = /A saddle (\d+) µm high/.exec(text) ?? [];
  const [, most] = /at most ([\d.]+) nm/.exec(text) ?? [];
  ok(Number(most) < Number(height), text);
  match(text, /less than a thousandth/);
  const rows = plain("coma-calculation").split("\n").slice(3).map((row) =>
    row.replaceAll("−", "-").trim().split(/\s{2,}/).map(Number)
  );
  const [out, outTurned, back, backTurned] = rows;
  // Coma: opposite ends, opposite sign, however turned. Trefoil: by the turn.
  ok(Math.abs(out[2] + back[2]) <= 0.01 && Math.abs(out[2]) > 0.5);
  ok(Math.abs(out[2] - outTurned[2]) <= 0.01);
  ok(Math.abs(out[3] + outTurned[3]) <= 0.01 && Math.abs(out[3]) > 0.2);
  ok(Math.abs(back[3] - out[3]) <= 0.01);
  ok(Math.abs(backTurned[3] - outTurned[3]) <= 0.01);
});

Deno.test("teaching-the-geometry.ipynb shows that identical readings cover less than stated, and that more sets decide", () => {
  const covered = plain("identical-calculation").split("\n").slice(3)
    .map((row) => Number(row.trim().split(/\s+/)[1]));
  equal(covered.length, 4);
  ok(covered.every((one, k) => k === 0 || one > covered[k - 1]));
  ok(covered[0] < 30 && covered[3] > 85, covered.join(", "));
  const sets = plain("sets-calculation").split("\n").slice(3)
    .map((row) => Number(row.trim().split(/\s+/)[1]));
  ok(sets[0] >= 2 && sets[1] > sets[0], sets.join(", "));
  const [, more] = /(\d+) sets:/.exec(shown("sets-exercise")) ?? [];
  ok(Number(more) > 2 * sets[1] && Number(more) < 4 * sets[1], more);
});
