import { deepEqual, equal } from "node:assert/strict";
import { parseCell } from "sagbook/cells/parse_cell.ts";

const names = (source: string) =>
  parseCell(source).names.map(({ name, kind, typeOnly }) =>
    `${kind} ${name}${typeOnly ? " (type)" : ""}`
  );

Deno.test("parseCell() finds every way to declare a name, once each", () => {
  deepEqual(
    names(`
      import a, { b as c, type D } from "x"; import * as e from "y";
      import type F from "z"; import { type G } from "z"; import "w";
      const g = 1, { h, i: [j, ...k] } = q; let l; var m = 2;
      function n() {} async function* o() {} class P {} enum Q { A }
      namespace R { export const x = 1 } namespace S { export type X = 1 }
      interface T {} type U = 1; declare const v: number;
      function n(): void; { const inner = 1; } for (const w of []) {}
    `),
    [
      ...["import a", "import c", "import D (type)", "import e"],
      ...["import F (type)", "import G (type)", "const g", "const h"],
      ...["const j", "const k", "let l", "var m", "function n", "function o"],
      ...["class P", "enum Q", "namespace R", "namespace S (type)"],
      ...["type T (type)", "type U (type)", "const v (type)"],
    ],
  );
});

Deno.test("parseCell() takes the value where a type has the same name", () => {
  deepEqual(names("interface Ring {} const Ring = 1;"), ["const Ring"]);
  deepEqual(names("const Ring = 1; type Ring = 1;"), ["const Ring"]);
});

Deno.test("parseCell() leaves out names that end with their cell", () => {
  deepEqual(names("using file = open(); await using other = open();"), []);
});

Deno.test("parseCell() lets await stand at the top level and in loops", () => {
  for (
    const source of ["await x", "for await (const a of b) {}", "(await x).y"]
  ) {
    deepEqual(parseCell(source).problems, [], source);
  }
});

Deno.test("parseCell() reports text that is no TypeScript, with its place", () => {
  const [problem] = parseCell("1;\nlet = = 2;").problems;
  deepEqual([problem.kind, problem.start], ["syntax", 9]);
});

Deno.test("parseCell() knows which names the cell exports itself", () => {
  const { exported, names } = parseCell(
    "export const a = 1; const b = 2; export { b as c }; export default b;",
  );
  deepEqual([...exported], ["a", "c"]);
  deepEqual(names.map(({ name }) => name), ["a", "b"]);
});

Deno.test("parseCell() sees the wish not to be checked on top of the cell only", () => {
  equal(parseCell("// @ts-nocheck\n1").unchecked, true);
  equal(parseCell("// first\n// @ts-nocheck because\n1").unchecked, true);
  equal(parseCell("1; // @ts-nocheck").unchecked, false);
  equal(parseCell("'// @ts-nocheck'").unchecked, false);
});

Deno.test("parseCell() lists what the text mentions", () => {
  const { mentioned } = parseCell("radius(sag).toFixed(digits)");
  deepEqual([...mentioned].sort(), ["digits", "radius", "sag", "toFixed"]);
});

Deno.test("parseCell() names a cell magic as such, and not what the compiler says", () => {
  const { problems } = parseCell("%%time\n1 + 1");
  equal(problems.length, 1);
  equal(
    problems[0].message,
    'Cannot read "%%time" on line 1: cell magics are not TypeScript. Remove the line, or choose the kernel it was written for.',
  );
});
