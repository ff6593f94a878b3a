import { deepEqual, equal, match, rejects } from "node:assert/strict";
import {
  exportHtml,
  formatNotebook,
  parseNotebook,
  readNotebook,
  runNotebook,
} from "sagbook/notebook/mod.ts";
import { codeNotebook, textOf } from "./_notebook.ts";

const EMPTY = '{"nbformat":4,"nbformat_minor":5,"metadata":{"a":1},"cells":[]}';

Deno.test("parseNotebook() says what a file is that is no notebook", async () => {
  const files: [string, RegExp][] = [
    ["\ufeff \n", /the file is empty$/],
    ["<!DOCTYPE html>\n<title>404</title>", /web page or other markup/],
    [
      "version https://files.example/spec/v1\noid sha256:ab12\nsize 1200\n",
      /a pointer to a file that is kept elsewhere/,
    ],
    ["import numpy\n", /it begins with “import numpy”, which is no JSON$/],
    ["\0\0\0\0", /NUL bytes/],
    [EMPTY.replace(":1}", ":NaN}"), /NaN at line 1, column 50 is no JSON$/],
    [
      EMPTY.replace(":1}", ':"NaN \\" None",\n"b": None}'),
      /None at line 2, column 6 is no JSON$/,
    ],
    [EMPTY.replace(":1}", ":-Infinity}"), /-Infinity at line 1, column 50/],
    [EMPTY.slice(0, 40), /it breaks off at line 1, column 41$/],
    [EMPTY + "\ngarbage", /it breaks off at line 2, column 1$/],
  ];
  for (const [text, words] of files) {
    await rejects(async () => await parseNotebook(text, "n.ipynb"), {
      name: "SyntaxError",
      message: words,
    });
  }
});

Deno.test("parseNotebook() refuses values that nest without end, and keeps deep ones", async () => {
  const nested = (depth: number) =>
    EMPTY.replace(":1}", `:${"[".repeat(depth)}${"]".repeat(depth)}}`);
  const { notebook } = await parseNotebook(nested(900), "n");
  equal(
    (await parseNotebook(formatNotebook(notebook), "n")).warnings.length,
    0,
  );
  for (const depth of [1100, 100_000]) {
    await rejects(async () => await parseNotebook(nested(depth), "n.ipynb"), {
      name: "SyntaxError",
      message: /nests its values at most 1000 deep/,
    });
  }
});

Deno.test("readNotebook() knows UTF-16 by its mark", async () => {
  const path = await Deno.makeTempFile({ suffix: ".ipynb" });
  const units = Uint16Array.from(
    [..."\ufeff" + EMPTY],
    (one) => one.charCodeAt(0),
  );
  await Deno.writeFile(path, new Uint8Array(units.buffer));
  await rejects(readNotebook(path), {
    name: "SyntaxError",
    message: /is UTF-16; save it as UTF-8$/,
  });
  await Deno.remove(path);
});

Deno.test("runNotebook() counts a value whose display fails as a failure of its cell", async () => {
  const { status, exitCode, problems, notebook } = await runNotebook(
    codeNotebook(
      "1",
      "const shown = Symbol.for('Jupyter.display');\n({ [shown]() { throw new Error('no picture') } })",
      "2",
    ),
  );
  deepEqual([status, exitCode], ["failed", 1]);
  match(problems[0].message, /^cell 2(, line \d)?: Error: no picture$/);
  equal(textOf(notebook.cells[0]), "1");
  equal(textOf(notebook.cells[2]), "");
});

Deno.test("runNotebook() keeps what was printed before an endless loop, a lost promise and an exit", async () => {
  const ends: [string, number][] = [
    ["while (true) { /* for ever */ }", 4],
    ["await new Promise(() => {})", 4],
    ["Deno.exit(0)", 3],
  ];
  for (const [source, code] of ends) {
    const { exitCode, notebook } = await runNotebook(
      codeNotebook("1", `console.log('before');\n${source}`),
      { timeLimit: 3 },
    );
    equal(exitCode, code, source);
    match(textOf(notebook.cells[1]), /^before\n/, source);
  }
});

const shownBy = async (data: Record<string, unknown>) => {
  const { notebook } = await parseNotebook(
    JSON.stringify({
      nbformat: 4,
      nbformat_minor: 5,
      metadata: {},
      cells: [{
        cell_type: "code",
        id: "a",
        metadata: {},
        source: "1",
        execution_count: 1,
        outputs: [{ output_type: "display_data", data, metadata: {} }],
      }],
    }),
    "n",
  );
  return await exportHtml(notebook);
};

Deno.test("exportHtml() shows the plain form of what it cannot show, or says that it left it out", async () => {
  const view = "application/vnd.jupyter.widget-view+json";
  match(
    await shownBy({ [view]: { model_id: "x" }, "text/plain": "a slider" }),
    />a slider</,
  );
  match(
    await shownBy({ "application/javascript": "1", "text/plain": "words" }),
    />words</,
  );
  for (const type of ["application/x-weird", "application/pdf"]) {
    match(
      await shownBy({ [type]: "x" }),
      new RegExp(`\\[a result of the kind ${type}`),
    );
  }
  match(await shownBy({ "image/png": "no <b>base64" }), /kind image\/png/);
  match(await shownBy({ "text/plain": 5 }), /kind text\/plain/);
});
