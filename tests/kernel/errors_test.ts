import { deepEqual, equal, match, ok } from "node:assert/strict";
import { Session } from "./_session.ts";

Deno.test("Kernel() shows the line and column of an error in the cell's own text", async () => {
  await using session = await Session.start();
  const cells = [
    ["const a: number = 1;\nlet b = a;\nthrow new RangeError('sag')", 3, 7],
    ["enum E { A, B }\nlet c: E = E.A;\nthrow new RangeError('sag')", 3, 7],
    [
      "import { join } from 'node:path';\n\nconst d = await (async () => {\n  throw new RangeError('sag') })()",
      4,
      9,
    ],
    [
      "class P { constructor(private r: number) {}\n  go(): void {\n    throw new RangeError('sag') } }\nnew P(1).go()",
      3,
      11,
    ],
  ] as const;
  for (const [at, [code, line, column]] of cells.entries()) {
    const { error } = await session.run(code);
    equal(error?.ename, "RangeError");
    equal(error?.evalue, "sag");
    const place = `cell ${at + 1}, line ${line}, column ${column}`;
    equal(error?.traceback[1], place, code);
    equal(error?.traceback[2], `  ${line} | ${code.split("\n")[line - 1]}`);
    equal(error?.traceback[3], `    | ${" ".repeat(column - 1)}~`);
  }
});

Deno.test("Kernel() leads through the functions of earlier cells, without frames of its own", async () => {
  await using session = await Session.start();
  await session.run(
    "function inner(x: number) {\n  throw new Error(`${x}`)\n}",
  );
  await session.run("const outer = (x: number) => inner(x);");
  const { error } = await session.run("1;\nouter(5)");
  deepEqual(error?.traceback, [
    "Error: 5",
    "cell 1, line 2, column 9",
    "  2 |   throw new Error(`${x}`)",
    "    |         ~",
    "    at inner (cell 1, line 2, column 9)",
    "    at outer (cell 2, line 1, column 30)",
    "    at cell 3, line 2, column 1",
  ]);
});

Deno.test("Kernel() tells causes, parts, and what is thrown without being an error", async () => {
  await using session = await Session.start();
  const thrown = async (code: string) => (await session.run(code)).error!;
  const caused = await thrown(
    "throw new Error('outer', { cause: new TypeError('inner') })",
  );
  match(caused.traceback.join("\n"), /Caused by: TypeError: inner/);
  const several = await thrown(
    "throw new AggregateError([new Error('one'), 'two'], 'both')",
  );
  match(
    several.traceback.join("\n"),
    /Of several: Error: one[^]*Of several: "two"/,
  );
  const text = await thrown("throw 'only text'");
  deepEqual([text.ename, text.evalue], ["string", "only text"]);
  const object = await thrown("throw { code: 3 }");
  deepEqual([object.ename, object.evalue], ["Object", "{ code: 3 }"]);
  equal((await thrown("throw undefined")).ename, "undefined");
  const own = await thrown(
    "class Ring extends Error { override name = 'RingError' } throw new Ring('x')",
  );
  equal(own.ename, "RingError");
});

Deno.test("Kernel() quotes a cell magic and says what it is", async () => {
  await using session = await Session.start();
  const { error, outputs } = await session.run("%%time\n1 + 1");
  equal(error?.ename, "SyntaxError");
  equal(
    error?.evalue,
    'cell 1, line 1, column 1: Cannot read "%%time" on line 1: cell magics are not TypeScript. Remove the line, or choose the kernel it was written for.',
  );
  equal(outputs[0].output_type, "error");
});

Deno.test("Kernel() gives a syntax error on both channels, with its place", async () => {
  await using session = await Session.start();
  const { error, outputs } = await session.run("const ok = 1;\nconst x = ;");
  equal(error?.evalue, "cell 1, line 2, column 11: Expression expected.");
  deepEqual(outputs.map((o) => o.output_type), ["error"]);
  ok(error?.traceback.includes("Nothing in this cell was run."));
});

Deno.test("Kernel() does not let a failed declaration spoil its name", async () => {
  await using session = await Session.start();
  await session.run("const r = 60;");
  equal((await session.run("const r = 61;\nr")).value, "61");
  equal(
    (await session.run('let q = JSON.parse("{");')).error?.ename,
    "SyntaxError",
  );
  equal((await session.run("let q = 1;\nq")).value, "1");
});

Deno.test("Kernel() leads the stack of an error that a cell prints, shows or keeps to its own lines", async () => {
  await using session = await Session.start();
  await session.run(
    "function measure(): never {\n\n  throw new RangeError('x');\n}",
  );
  const ran = await session.run(
    "try {\n  measure();\n} catch (error) {\n  console.log(error);\n  console.log([{ error }, 5]);\n}\nnew Error('kept')",
  );
  const stack = (margin: string) =>
    `${margin}at measure (cell 1, line 3, column 9)\n${margin}at cell 2, line 2, column 3\n`;
  equal(
    ran.printed,
    `RangeError: x\n${stack("    ")}[\n  {\n    error: RangeError: x\n${
      stack("        ")
    }  },\n  5\n]\n`,
  );
  equal(ran.value, "Error: kept\n    at cell 2, line 7, column 1");
  const { printed } = await session.run(
    "console.log('at cell-2, <anonymous>:3:4');",
  );
  equal(printed, "at cell-2, <anonymous>:3:4\n");
});
