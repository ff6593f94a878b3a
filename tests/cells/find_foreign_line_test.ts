import { deepEqual, equal, match } from "node:assert/strict";
import { findForeignLine } from "sagbook/cells/find_foreign_line.ts";

Deno.test("findForeignLine() knows magics and shell commands on the first line", () => {
  const found = [
    ["\n  %%html\n<b>", "line 2: cell magics", 3],
    ["%matplotlib inline", "line 1: line magics", 0],
    ["!pip install x", "line 1: shell commands", 0],
    ["!ls ~/data", "line 1: shell commands", 0],
  ] as const;
  for (const [source, words, start] of found) {
    const diagnostic = findForeignLine(source);
    match(diagnostic!.message, new RegExp(`${words} are not TypeScript`));
    deepEqual([diagnostic!.kind, diagnostic!.start], ["syntax", start]);
  }
});

Deno.test("findForeignLine() leaves TypeScript alone", () => {
  const own = [
    "!done",
    "!done && go()",
    "!a.b",
    "!f()",
    "1\n%%time",
    "",
    "a % b",
  ];
  for (const source of own) equal(findForeignLine(source), undefined, source);
});
