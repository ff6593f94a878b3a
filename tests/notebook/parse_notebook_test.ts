import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import {
  type CodeCell,
  type Notebook,
  parseNotebook,
  readNotebook,
} from "sagbook/notebook/mod.ts";
import { formatNotebook } from "sagbook/notebook/format_notebook.ts";
import { casePath } from "./_case.ts";

const file = (cells: unknown, more: Record<string, unknown> = {}) =>
  JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells,
    ...more,
  });
const code = (source: unknown, more: Record<string, unknown> = {}) => ({
  cell_type: "code",
  id: "a",
  metadata: {},
  source,
  outputs: [],
  execution_count: null,
  ...more,
});

Deno.test("parseNotebook() raises a 4.4 file to 4.5 with ids that are always the same", async () => {
  const path = casePath("D05-v44-no-ids.ipynb");
  const first = await readNotebook(path);
  const second = await readNotebook(path);
  deepEqual(first.warnings, []);
  const text = formatNotebook(first.notebook);
  equal(text, formatNotebook(second.notebook));
  const written = JSON.parse(text);
  deepEqual([written.nbformat, written.nbformat_minor], [4, 5]);
  const ids = first.notebook.cells.map((cell) => cell.id);
  ids.forEach((id) => match(id, /^[a-zA-Z0-9_-]{1,64}$/));
  equal(new Set(ids).size, 3);
  const [title, set, shown] = first.notebook.cells as CodeCell[];
  deepEqual([title.source, set.source, shown.source], [
    "# Blank 7",
    "const s = 0.715;",
    "s",
  ]);
  deepEqual([set.execution_count, shown.execution_count], [4, 5]);
  deepEqual(shown.outputs, [{
    output_type: "execute_result",
    execution_count: 5,
    metadata: {},
    data: { "text/plain": "0.715" },
  }]);
});

Deno.test("parseNotebook() keeps a made id when a cell is put before", async () => {
  const bare = (source: string) => ({ cell_type: "raw", source });
  const one = await parseNotebook(file([bare("s")]), "n");
  const two = await parseNotebook(file([bare("r"), bare("s")]), "n");
  equal(one.notebook.cells[0].id, two.notebook.cells[1].id);
});

Deno.test("parseNotebook() mends a shared id with one warning, always alike", async () => {
  const runs = await Promise.all(
    [1, 2].map(() => readNotebook(casePath("D05-duplicate-id.ipynb"))),
  );
  for (const { notebook, warnings } of runs) {
    const [first, second] = notebook.cells;
    equal(first.id, "a1");
    deepEqual(warnings, [
      `the id \`a1\` stands on cells 1 and 2; cell 2 now has the id \`${second.id}\``,
    ]);
  }
  equal(runs[0].notebook.cells[1].id, runs[1].notebook.cells[1].id);
});

Deno.test("parseNotebook() puts lost line ends back and says so; CRLF is kept", async () => {
  const { notebook, warnings } = await readNotebook(
    casePath("D07-lost-line-ends.ipynb"),
  );
  deepEqual(warnings, [
    "cell 1: its 3 lines were stored without line ends; the line ends were put back",
  ]);
  equal(
    notebook.cells[0].source,
    "// sag at the centre\nconst s = 0.715;\nconsole.log(s);",
  );
  equal(
    notebook.cells[1].source,
    "const t = `a\r\nb`;\r\nconsole.log(t.length);",
  );
  equal(
    (await parseNotebook(formatNotebook(notebook), "again")).notebook.cells[1]
      .source,
    notebook.cells[1].source,
  );
});

Deno.test("parseNotebook() warns of lines of which some lack their end, and joins them", async () => {
  const { notebook, warnings } = await parseNotebook(
    file([code(["a\n", "b", "c"])]),
    "n",
  );
  equal(notebook.cells[0].source, "a\nbc");
  deepEqual(warnings, [
    "cell 1: some of its 3 lines are stored without line ends and were joined as they stand",
  ]);
});

Deno.test("parseNotebook() knows the line ends of Python, which cuts there too", async () => {
  const lines = ["a\u2028", "b\f", "c\x85", "d\r", "e"];
  const { notebook, warnings } = await parseNotebook(file([code(lines)]), "n");
  equal(notebook.cells[0].source, lines.join(""));
  deepEqual(warnings, []);
});

Deno.test("parseNotebook() keeps bare cells and fills what they lack", async () => {
  const { notebook, warnings } = await readNotebook(
    casePath("D08-bare-cells-and-tags.ipynb"),
  );
  equal(notebook.cells.length, 7);
  deepEqual(warnings, []);
  const [bare] = notebook.cells as CodeCell[];
  deepEqual([bare.execution_count, bare.outputs], [null, []]);
  const stored = JSON.parse(formatNotebook(notebook)).cells[0];
  deepEqual([stored.execution_count, stored.outputs], [null, []]);
});

Deno.test("parseNotebook() names the place, the rule and the value of what is wrong", async () => {
  const output = { output_type: "stream", name: "stdout", text: 7 };
  const cases: [string, string][] = [
    ["", "a notebook must hold JSON: the file is empty"],
    [
      '{\n "cells": [1 2]}',
      "a notebook must hold JSON: it breaks off at line 2, column 14",
    ],
    ["[]", "the file must be an object: current value is []"],
    [
      '{"nbformat": 3}',
      "`nbformat` must be 4: current value is 3; open and save it with a current notebook program",
    ],
    [
      file("none"),
      '`cells` must be a list of cells: current value is "none"',
    ],
    [
      file([code("1"), code(5)]),
      "cell 2, `source` must be text or a list of lines: current value is 5",
    ],
    [
      file([code("1", { outputs: [output] })]),
      "cell 1, output 1, `text` must be text or a list of lines: current value is 7",
    ],
    [
      file([{ cell_type: "video", source: "" }]),
      'cell 1, `cell_type` must be one of code, markdown, raw: current value is "video"',
    ],
    [
      file([code("1", { outputs: "x", execution_count: -1 })]),
      "cell 1, `execution_count` must be a whole number of 0 or more, or null: current value is -1 (and 1 more places)",
    ],
    [
      "<<<<<<< ours\n{}\n=======\n{}\n>>>>>>> theirs\n",
      "a notebook must hold JSON: it holds the conflict marks of an unfinished merge; finish the merge first",
    ],
  ];
  for (const [text, rule] of cases) {
    await rejects(() => parseNotebook(text, "b7.ipynb"), {
      name: "SyntaxError",
      message: `Cannot read b7.ipynb as ${rule}`,
    });
  }
});

Deno.test("parseNotebook() tells of ids and keys that the format does not know", async () => {
  const { notebook, warnings } = await parseNotebook(
    "\uFEFF" + file([code("1", { id: "a b", colour: "red" })], {
      nbformat_minor: 6,
    }),
    "n",
  );
  const [{ id }] = notebook.cells;
  deepEqual(warnings, [
    "the file says format 4.6; it was read as 4.5",
    "cell 1: `colour` is not part of the notebook format and was left out",
    `cell 1: its id "a b" is not 1 to 64 of a-z, A-Z, 0-9, - and _; it now has the id \`${id}\``,
  ]);
});

Deno.test("formatNotebook() reads back equal, whatever the texts hold", async () => {
  const notebook: Notebook = {
    metadata: { "2": 1, "10": [], b: { c: null } },
    cells: [
      {
        cell_type: "code",
        id: "c-1",
        metadata: { tags: ["parameters"] },
        source: 'a\n\n"\\ \u2028 😀\r\nlast\n',
        execution_count: 3,
        outputs: [
          { output_type: "stream", name: "stdout", text: "x\ny" },
          {
            output_type: "display_data",
            metadata: { "image/png": { width: 3 } },
            data: {
              "image/png": "aGk=\n",
              "application/json": ["a", { b: 1 }],
              "text/html": "<b>\n</b>",
            },
          },
          { output_type: "error", ename: "E", evalue: "", traceback: [] },
        ],
      },
      { cell_type: "markdown", id: "m", metadata: {}, source: "" },
    ],
  };
  const text = formatNotebook(notebook);
  ok(text.endsWith('"nbformat_minor": 5\n}\n'));
  const { notebook: back, warnings } = await parseNotebook(text, "n");
  deepEqual(back, notebook);
  deepEqual(warnings, []);
  equal(formatNotebook(back), text);
});

Deno.test("readNotebook() says plainly that a file is missing or not text", async () => {
  await rejects(() => readNotebook("/nowhere/b7.ipynb"), {
    name: "Error",
    message: "Cannot read /nowhere/b7.ipynb as there is no such file",
  });
  const path = await Deno.makeTempFile();
  await Deno.writeFile(path, new Uint8Array([0x7b, 0xff, 0xfe]));
  await rejects(() => readNotebook(path), {
    name: "SyntaxError",
    message:
      `Cannot read ${path} as a notebook must be UTF-8 text: it holds other bytes`,
  });
  await Deno.remove(path);
});
