import { deepEqual, equal, ok } from "node:assert/strict";
import { placeAt } from "sagbook/cells/cell_diagnostic.ts";
import { parseCell } from "sagbook/cells/parse_cell.ts";
import { rewriteCell, type RunnableCell } from "sagbook/cells/rewrite_cell.ts";

/** Runs cells one after the other in one scope, as a kernel does. */
function session() {
  const scope: Record<string, unknown> = {};
  const marked: string[] = [];
  const global = new Proxy(scope, {
    has: (_, name) =>
      name !== "__cell" && typeof name === "string" &&
      (name in scope || !(name in globalThis)),
    get: (target, name) => target[name as string],
  });
  const cell = {
    keep: (names: object) => {
      Object.assign(scope, names);
      marked.push(...Object.keys(names));
    },
    declare: (names: string[]) => {
      for (const name of names) if (!(name in scope)) scope[name] = undefined;
    },
    mark: (...names: string[]) => marked.push(...names),
    wait: (value: unknown) => value,
    each: (value: unknown) => value,
    load: (name: string) => import(name),
    meta: { url: "file:///notebook/" },
  };
  return {
    scope,
    marked,
    run(source: string): Promise<unknown> {
      const parsed = parseCell(source);
      deepEqual(parsed.problems, []);
      const { code } = rewriteCell(parsed);
      // Sloppy, since strict code has no `with`; the cell itself is strict.
      const make = new Function("scope", `with (scope) { return (${code}); }`);
      return make(global)(cell);
    },
  };
}

Deno.test("rewriteCell() gives the last expression's value, and none after a statement", async () => {
  const { run } = session();
  equal(await run("1 + 1"), 2);
  equal(await run("1 + 1;"), 2);
  deepEqual(await run("({ a: 1 })"), { a: 1 });
  equal(await run("await Promise.resolve(3)"), 3);
  equal(await run("const x = 4;"), undefined);
  equal(await run("if (true) { 5 }"), undefined);
  equal(await run("'use strict'"), "use strict");
  equal(await run("1, 2 // note"), 2);
  equal(await run(""), undefined);
  equal(await run("// nothing"), undefined);
  equal(await run("x satisfies number as unknown"), 4);
  equal(await run("x!"), 4);
});

Deno.test("rewriteCell() hands every kind of name on to later cells", async () => {
  const { run } = session();
  await run(`
    const a: number = 1, { b, c: [d] } = { b: 2, c: [3] };
    let e: number = 4, f, { g }: { g: number } = { g: 5 };
    var h = 6;
    function i() { return a + h }
    class J { k = 7 }
    enum L { M = 8 }
    namespace N { export const o = 9 }
    import { basename as p } from "node:path";
    import * as q from "node:path";
    import r from "node:path";
    type T = number; interface U {}
  `);
  deepEqual(
    await run(
      `[a, b, d, e, f, g, h, i(), new J().k, L.M, N.o, p("x/y"), q.sep, r.sep]`,
    ),
    [1, 2, 3, 4, undefined, 5, 6, 7, 7, 8, 9, "y", "/", "/"],
  );
});

Deno.test("rewriteCell() lets any name be declared anew", async () => {
  const { run } = session();
  for (const value of ["const", "let", "var"]) {
    await run(`${value} x = "${value}"`);
    equal(await run("x"), value);
  }
  await run("function x() { return 1 }");
  equal(await run("x()"), 1);
  await run("class x { static y = 2 }");
  equal(await run("x.y"), 2);
  await run("enum x { y = 3 }");
  equal(await run("x.y"), 3);
});

Deno.test("rewriteCell() shares let and var with later cells, both ways", async () => {
  const { run } = session();
  await run("let count = 0; var step = 2; function inc() { count += step }");
  await run("inc(); step = 5; inc();");
  equal(await run("count"), 7);
  await run("var step;");
  equal(await run("step"), 5);
  await run("let count;");
  equal(await run("count"), undefined);
});

Deno.test("rewriteCell() lets a function keep the constants of its own cell", async () => {
  const { run } = session();
  await run("const k = 2; const twice = (x: number) => k * x;");
  await run("const k = 'other';");
  equal(await run("twice(3)"), 6);
});

Deno.test("rewriteCell() tells which names got a value before a failure", async () => {
  const { run, marked } = session();
  await run(
    `const a = 1; let b = 2; function f() {} throw 1; const c = 3; let d = 4;`,
  )
    .catch(() => {});
  deepEqual(marked, ["f", "a", "b"]);
});

Deno.test("rewriteCell() does not let a line without semicolon run into a rewritten one", async () => {
  const { run } = session();
  equal(
    await run("let o = { a: 1 }\nconst t = o\nlet { a } = t\nlet [z] = [a]\nz"),
    1,
  );
});

Deno.test("rewriteCell() drops export and keeps the value", async () => {
  const { run } = session();
  await run(
    "export const a = 1; export function f() { return 2 } export { a as b }; export type T = 1; export enum E { x = 3 }; export class C {}",
  );
  deepEqual(await run("[a, f(), E.x, typeof C]"), [1, 2, 3, "function"]);
  await run("export default function g() { return 4 }");
  equal(await run("g()"), 4);
  await run("export default class {}");
  await run("export default 5 + 1;");
});

Deno.test("rewriteCell() sends awaits, loops and imports through the cell at any depth", () => {
  const { code } = rewriteCell(parseCell(
    "async function f() { for await (const x of await g()) await import('y') }\nimport.meta.url",
  ));
  ok(code.includes("of __cell.each(await __cell.wait(g())"));
  ok(code.includes("await __cell.wait(__cell.load('y'))"));
  ok(code.includes("__cell.meta.url"));
});

/** Where an error thrown by a cell is found to come from. */
async function thrownAt(source: string): Promise<string> {
  const cell: RunnableCell = rewriteCell(parseCell(source));
  const helpers = {
    keep() {},
    declare: (names: string[]) => {
      for (const name of names) Object.assign(globalThis, { [name]: 0 });
    },
    mark() {},
    wait: (v: unknown) => v,
    each: (v: unknown) => v,
    load: (name: string) => import(name),
  };
  try {
    await (0, eval)(`(${cell.code})\n//# sourceURL=cell-x`)(helpers);
  } catch (error) {
    const [, line, column] = /cell-x(?:, <anonymous>)?:(\d+):(\d+)/.exec(
      (error as Error).stack!,
    )!;
    // The opening parenthesis above stands before the code's first line only.
    const place = placeAt(source, cell.original(+line, +column));
    return `${place.line}:${place.column}`;
  } finally {
    for (const name of cell.names) Reflect.deleteProperty(globalThis, name);
  }
  throw new Error("nothing was thrown");
}

Deno.test("rewriteCell() leads an error back to its line and column", async () => {
  const cells: [string, string][] = [
    ["throw new Error()", "1:7"],
    [
      "const a: number = 1;\nlet b: string = 'x', c;\nthrow new Error(b)",
      "3:7",
    ],
    ["let b: number = (() => { throw new Error() })()", "1:32"],
    ["const a = await 1, b = (() => { throw new Error() })()", "1:39"],
    ["import { join } from 'node:path'; throw new Error(join())", "1:41"],
    ["import {\n  join,\n} from 'node:path';\nthrow new Error(join())", "4:7"],
    ["enum E { A,\n  B }\nlet x: E = E.A; throw new Error(`${x}`)", "3:23"],
    ["null!.x", "1:7"],
    ["await (async () => {\n  await 1; throw new Error() })()", "2:18"],
    [
      "class P { constructor(private x: number) { }\n  go(): void { throw new Error(`${this.x}`) } }\nnew P(1).go()",
      "2:22",
    ],
    [
      "namespace N { export const f = (x: number): number => {\n  throw new Error() } }\nN.f(1)",
      "2:9",
    ],
    ["function f(a: number) {\r\n  throw new Error()\r\n}\r\nf(1)", "2:9"],
  ];
  for (const [source, place] of cells) {
    equal(`${await thrownAt(source)} in ${source}`, `${place} in ${source}`);
  }
});
