import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { CellChecker } from "sagbook/cells/cell_checker.ts";
import { placeAt } from "sagbook/cells/cell_diagnostic.ts";
import { checkCells } from "sagbook/cells/check_cells.ts";
import { parseCell } from "sagbook/cells/parse_cell.ts";

const config = fileURLToPath(new URL("../../deno.json", import.meta.url));
const settings = { folder: import.meta.resolve("./"), config };

/** Checks and commits cells in turn; gives "line:column code" of each. */
async function run(checker: CellChecker, source: string): Promise<string[]> {
  const { diagnostics, module } = await checker.check(parseCell(source));
  if (diagnostics.length === 0) await checker.commit(module);
  else checker.discard(module);
  return diagnostics.map(({ code, start }) => {
    const { line, column } = placeAt(source, start);
    return `${line}:${column} ${code}`;
  });
}

Deno.test("CellChecker() accepts names declared anew, of every kind, and holds to the new type", async () => {
  const checker = new CellChecker(settings);
  const again = [
    "const x = 1; function f(): number { return 1 } class C { a = 1 } type T = number; enum E { A } import { join as j } from 'node:path';",
    "const x = 'now text'; function f(): string { return '' } class C { b = '' } type T = string; enum E { B } import { sep as j } from 'node:path';",
  ];
  for (const source of again) deepEqual(await run(checker, source), []);
  deepEqual(
    await run(
      checker,
      "x.toUpperCase(); f().trim(); new C().b.trim(); const t: T = ''; E.B; j.length;",
    ),
    [],
  );
  deepEqual(await run(checker, "x.toFixed(1);\nnew C().a;\nE.A;\nj('a')"), [
    "1:3 2551",
    "2:9 2339",
    "3:3 2339",
    "4:1 2349",
  ]);
  await checker.stop();
});

Deno.test("CellChecker() knows a variable's type in later cells, and lets it be assigned", async () => {
  const checker = new CellChecker(settings);
  deepEqual(await run(checker, "let sag = 0.7; var n = 1; const R = 1;"), []);
  deepEqual(await run(checker, "sag = 0.8; n += 1;"), []);
  deepEqual(await run(checker, "sag = 'wide';"), ["1:1 2322"]);
  deepEqual(await run(checker, "R = 2;"), ["1:1 2632"]);
  await checker.stop();
});

Deno.test("CellChecker() finds millimetres and inches mixed, with line and column", async () => {
  const checker = new CellChecker(settings);
  deepEqual(
    await run(
      checker,
      `import { inches, inchesToMillimetres, millimetres, type Millimetres } from "sagbook/units/length.ts";
       const double = (sag: Millimetres) => millimetres(2 * sag);`,
    ),
    [],
  );
  deepEqual(
    await run(checker, "// a note\nconst sag = inches(0.02);\n  double(sag)"),
    [
      "3:10 2345",
    ],
  );
  deepEqual(
    await run(checker, "double(inchesToMillimetres(inches(0.02)))"),
    [],
  );
  await checker.stop();
});

Deno.test("CellChecker() names modules and exports that do not exist", async () => {
  const checker = new CellChecker(settings);
  deepEqual(await run(checker, "import a from 'no-such-name';"), [
    "1:15 resolver-error",
  ]);
  deepEqual(await run(checker, "import a from './no_such_file.ts';"), [
    "1:15 no-local",
  ]);
  deepEqual(
    await run(checker, "import { none } from 'sagbook/units/length.ts';"),
    [
      "1:10 2305",
    ],
  );
  await checker.stop();
});

Deno.test("CellChecker() knows Deno, its notebook functions and top-level await, and no browser", async () => {
  const checker = new CellChecker(settings);
  deepEqual(
    await run(
      checker,
      "const t = await Deno.readTextFile('x'); await Deno.jupyter.display({ a: 1 }); Deno.jupyter.md`*${t}*`",
    ),
    [],
  );
  deepEqual(await run(checker, "document.body"), ["1:1 2584"]);
  await checker.stop();
});

Deno.test("CellChecker.complete() knows names of earlier cells, members, keywords, and this cell", async () => {
  const checker = new CellChecker(settings);
  await run(checker, "const sagitta = 0.7; const ringRadius = 60;");
  const names = async (source: string, prefix: string) =>
    (await checker.complete(source, source.length, prefix)).map((c) => c.text);
  ok((await names("sagi", "sagi")).includes("sagitta"));
  ok((await names("ringRadius.toF", "toF")).includes("toFixed"));
  ok((await names("const other = 1; oth", "oth")).includes("other"));
  ok((await names("cons", "cons")).includes("const"));
  ok((await names("Math.FLO", "FLO")).includes("floor"));
  ok(
    !(await names("__cell", "__cell")).some((name) =>
      name.startsWith("__cell")
    ),
  );
  const [item] = await checker.complete("Math.floo", 9, "floo");
  deepEqual(item, { text: "floor", kind: "method" });
  await checker.stop();
});

Deno.test("CellChecker.hover() explains names of earlier cells and of the library", async () => {
  const checker = new CellChecker(settings);
  await run(
    checker,
    "const sagitta = 0.7; import { millimetres } from 'sagbook/units/length.ts';",
  );
  match((await checker.hover("sagitta", 3))!, /const sagitta: 0\.7/);
  const text = await checker.hover("1;\nmillimetres(1)", 5);
  match(text!, /millimetres\(value: number\): Millimetres/);
  match(text!, /Marks a number as millimetres/);
  equal(await checker.hover("   ", 1), undefined);
  equal(await checker.hover("nothing", 1), undefined);
  await checker.stop();
});

Deno.test("CellChecker.reset() forgets every name", async () => {
  const checker = new CellChecker(settings);
  await run(checker, "const a = 1");
  checker.reset();
  deepEqual(await run(checker, "a"), ["1:1 2304"]);
  await checker.stop();
});

Deno.test("CellChecker() starts a new server when the old one has died, and knows all names again", async () => {
  const checker = new CellChecker(settings);
  await run(checker, "const a = 1");
  Deno.kill(checker.pid!, "SIGKILL");
  deepEqual(await run(checker, "a.toFixed(1); a.none"), ["1:17 2339"]);
  await checker.stop();
});

Deno.test("CellChecker() does not send to the server what is no TypeScript", async () => {
  const checker = new CellChecker(settings);
  deepEqual(await run(checker, "%%time\n1 + 1"), ["1:1 0"]);
  await checker.stop();
});

Deno.test("checkCells() reports all cells' errors at once, and no false one after them", async () => {
  const found = await checkCells([
    "const a: number = 'x';",
    "// @ts-nocheck\na.none",
    "a.none",
    "%%time",
    "a.toFixed(1)",
  ], settings);
  deepEqual(found.map((cell) => cell.map(({ code }) => code)), [
    [2322],
    [],
    [2339],
    [0],
    [],
  ]);
});

Deno.test("CellChecker() starts no language server once it was stopped", async () => {
  const checker = new CellChecker(settings);
  const { module } = await checker.check(parseCell("const sag = 0.7;"));
  const { pid } = checker;
  await checker.stop();
  const stopped = { message: "the type checker was stopped" };
  await rejects(checker.commit(module), stopped);
  await rejects(checker.check(parseCell("sag")), stopped);
  await rejects(checker.complete("sa", 2, "sa"), stopped);
  equal(checker.pid, pid);
});
