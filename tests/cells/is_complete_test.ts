import { deepEqual, equal } from "node:assert/strict";
import { isComplete } from "sagbook/cells/is_complete.ts";

Deno.test("isComplete() takes whole statements, also empty ones and awaits", () => {
  for (
    const source of [
      "",
      "1",
      "await x",
      "if (a) { b }",
      "const a = `x`;",
      "// c",
    ]
  ) equal(isComplete(source).status, "complete", source);
});

Deno.test("isComplete() waits where the end is missing, and indents by open brackets", () => {
  const open = [
    ["for (const a of b) {", "  "],
    ["f(", "  "],
    ["const a = [\n  {", "    "],
    ["const a =", ""],
    ["`text", ""],
    ["/* note", ""],
    ["/* note\nmore", ""],
    ["/pattern", ""],
    ["class A {\n  f() {\n", "    "],
  ];
  for (const [source, indent] of open) {
    deepEqual(isComplete(source), { status: "incomplete", indent }, source);
  }
});

Deno.test("isComplete() calls wrong what no further line can mend", () => {
  for (const source of ["const = 5", "a b c", "}", "%%time\n1", "/a\n1"]) {
    equal(isComplete(source).status, "invalid", source);
  }
});
