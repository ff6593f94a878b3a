import { deepEqual, equal } from "node:assert/strict";
import { CellChain } from "sagbook/cells/cell_chain.ts";
import { parseCell } from "sagbook/cells/parse_cell.ts";

Deno.test("CellChain() imports what a cell mentions: values, types, variables", () => {
  const chain = new CellChain("file:///n/");
  const first = chain.compose(
    parseCell(
      "const a = 1; let b = 2; type C = 3; class D {} const unused = 1;",
    ),
  );
  equal(first.text.split("\n").at(-1), "export { a, b, type C, D, unused };");
  chain.commit(first);
  const uri = "file:///n/__cell_1.ts";
  const { text, uses } = chain.compose(parseCell("b = a; let x: C | D"));
  equal(
    text.split("\n")[0],
    `import { a } from "${uri}"; declare let b: typeof import("${uri}").b; import type { C } from "${uri}"; import { D } from "${uri}";`,
  );
  equal(text.split("\n")[1], "b = a; let x: C | D");
  deepEqual(uses, [uri]);
  equal(chain.compose(parseCell("1"), true).text.includes("unused"), true);
});

Deno.test("CellChain() shows names without a value only as types, and own names not at all", () => {
  const chain = new CellChain("file:///n/");
  const module = chain.compose(
    parseCell("const a = 1; const b = f(); type T = 1;"),
  );
  chain.commit(module, new Set(["a"]));
  deepEqual(chain.names, ["a", "T"]);
  equal(chain.compose(parseCell("const a = 2; a")).text.split("\n")[0], "");
});

Deno.test("CellChain.commit() gives up modules that nothing leads to any longer", () => {
  const chain = new CellChain("file:///n/");
  const run = (source: string) => {
    const module = chain.compose(parseCell(source));
    return [module.uri, chain.commit(module)] as const;
  };
  const [first] = run("const a = 1");
  const [, none] = run("const b = a");
  deepEqual(none, []);
  deepEqual(run("const a = 2")[1], []); // b's type still leads to the first a
  deepEqual(run("const b = 3")[1].includes(first), true);
  equal(chain.modules.length, 2);
  deepEqual(run("1 + 1")[1].length, 1);
  equal(chain.reset().length, 2);
  deepEqual(chain.names, []);
});

Deno.test("CellChain() never uses a URI twice", () => {
  const chain = new CellChain("file:///n/");
  const cell = parseCell("1");
  const uris = new Set([1, 2, 3].map(() => chain.compose(cell).uri));
  chain.reset();
  uris.add(chain.compose(cell).uri);
  equal(uris.size, 4);
});
