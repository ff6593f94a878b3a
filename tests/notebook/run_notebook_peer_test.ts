import { deepEqual, equal } from "node:assert/strict";
import {
  type Cell,
  readNotebook,
  runNotebook,
  writeNotebook,
} from "sagbook/notebook/mod.ts";
import { testWith } from "../browser/_needs.ts";
import { codeNotebook, outputsOf } from "./_notebook.ts";
import { writeRuntimeKernel } from "../jupyter/_runtime_kernel.ts";

// deno-lint-ignore no-control-regex
const COLOUR = /\x1b\[[\d;]*m/g;

/** Outputs without what is known to differ: colours, and lines of the print. */
function comparable(cell: Cell): unknown[] {
  return outputsOf(cell).map((output) => {
    if (output.output_type === "error") {
      return [output.ename, output.evalue];
    }
    return JSON.parse(
      JSON.stringify(output).replaceAll("\\u001b", "\x1b").replace(COLOUR, ""),
    );
  });
}

/**
 * True if `part` is `whole` with a piece missing. Deno's kernel sends outputs
 * after it has said that the cell is done, and nbconvert then drops them; what
 * nbconvert has must agree all the same.
 */
function isPartOf(part: Cell, whole: Cell): boolean {
  const rest = comparable(whole).map((output) => JSON.stringify(output));
  return comparable(part).every((output) => {
    const text = JSON.stringify(output);
    const at = rest.findIndex((own) =>
      own === text || (text.includes('"stream"') &&
        own.startsWith(text.slice(0, text.lastIndexOf('"}'))))
    );
    rest.splice(0, at + 1);
    return at >= 0;
  });
}

testWith(
  "jupyter",
  "runNotebook() gives the outputs that jupyter nbconvert gives with the same kernel, and none is lost",
  async () => {
    const notebook = {
      ...codeNotebook(
        "const r = 60;\nconst s: number = 0.72;\nconsole.log(r, { s });\nconsole.error('care');\nawait new Promise((done) => setTimeout(done, 100));\n(r * r + s * s) / (2 * s)",
        "import { basename } from 'node:path';\nawait Deno.jupyter.display({ 'text/html': '<b>R</b>', 'text/plain': 'R' }, { raw: true });\n({ name: basename('/a/b'), list: [1, 'two', null] })",
        ["JSON.parse('{')", "raises-exception"],
        "Deno.jupyter.svg`<svg xmlns='http://www.w3.org/2000/svg'></svg>`",
        "const r = 61;\nr",
        "for (let i = 0; i < 50; i++) console.log(i);\nawait new Promise((done) => setTimeout(done, 200));",
        ["Deno.exit(1)", "skip-execution"],
        "",
      ),
      metadata: {
        kernelspec: {
          name: "deno",
          display_name: "Deno",
          language: "typescript",
        },
      },
    };
    const folder = await Deno.makeTempDir();
    await writeRuntimeKernel(folder);
    await writeNotebook(`${folder}/given.ipynb`, notebook);
    const ours = await runNotebook(notebook);
    equal(ours.status, "complete");
    const pending = new Set(ours.notebook.cells.keys());
    for (let run = 1; run <= 10 && pending.size > 0; run++) {
      const { success, stderr } = await new Deno.Command("jupyter", {
        args: [
          "nbconvert",
          "--to",
          "notebook",
          "--execute",
          "--output",
          "theirs.ipynb",
          `${folder}/given.ipynb`,
        ],
        env: { JUPYTER_PATH: folder },
        stdout: "null",
        stderr: "piped",
      }).output();
      equal(success, true, new TextDecoder().decode(stderr));
      const { cells } = (await readNotebook(`${folder}/theirs.ipynb`)).notebook;
      for (const [index, own] of ours.notebook.cells.entries()) {
        const their = cells[index];
        equal(
          "execution_count" in own && own.execution_count,
          "execution_count" in their && their.execution_count,
        );
        if (!isPartOf(their, own)) {
          deepEqual(comparable(own), comparable(their));
        }
        if (
          JSON.stringify(comparable(their)) === JSON.stringify(comparable(own))
        ) {
          pending.delete(index);
        }
      }
    }
    deepEqual([...pending], [], "cells that no run of nbconvert gave whole");
    await Deno.remove(folder, { recursive: true });
  },
);

/** What Jupyter's own library writes after reading and validating a file. */
async function rewritten(path: string): Promise<string> {
  const script = `import nbformat, sys
notebook = nbformat.read(sys.argv[1], 4)
nbformat.validate(notebook)
nbformat.write(notebook, sys.argv[1] + ".out")`;
  const { success, stderr } = await new Deno.Command("/usr/bin/python3", {
    args: ["-c", script, path],
    stderr: "piped",
  }).output();
  equal(success, true, new TextDecoder().decode(stderr));
  return await Deno.readTextFile(`${path}.out`);
}

testWith(
  "jupyter",
  "writeNotebook() writes the bytes that Jupyter's own library writes",
  async () => {
    const folder = await Deno.makeTempDir();
    const path = `${folder}/a.ipynb`;
    const { notebook } = await runNotebook(codeNotebook(
      "console.log('a\\nb é 😀 \\\\ \\\"');\n({ a: 1 })",
      ["throw new Error('x')", "raises-exception"],
      "",
    ));
    await writeNotebook(path, notebook);
    equal(await rewritten(path), await Deno.readTextFile(path));
    // Python also ends a line at a carriage return and at U+2028: other
    // pieces there, the same text.
    await writeNotebook(path, {
      metadata: {},
      cells: [{
        cell_type: "raw",
        id: "r",
        metadata: {},
        source: "a\r\nb\u2028c\rd\f",
      }],
    });
    await Deno.writeTextFile(path, await rewritten(path));
    const { cells: [cell] } = (await readNotebook(path)).notebook;
    equal(cell.source, "a\r\nb\u2028c\rd\f");
    await Deno.remove(folder, { recursive: true });
  },
);
