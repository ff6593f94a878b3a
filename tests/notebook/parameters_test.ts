import { deepEqual, equal, throws } from "node:assert/strict";
import {
  cellNumbers,
  type JsonValue,
  withParameters,
} from "sagbook/notebook/mod.ts";
import { codeNotebook } from "./_notebook.ts";

const given = codeNotebook(
  "0",
  [
    "// defaults\nexport const folder: string = 'demo';\nlet rings = [1, 2]; var n=3\nconst deep = { a: 1 };",
    "parameters",
  ],
  "n",
);

Deno.test("withParameters() declares each value as the tagged cell does", () => {
  const values: Record<string, JsonValue> = {
    folder: "a'b",
    rings: [3],
    deep: { a: null },
  };
  const { cells } = withParameters(given, values);
  equal(
    cells[2].source,
    '// Set for this run.\nconst folder: string = "a\'b";\nlet rings = [\n  3\n];\nconst deep = {\n  "a": null\n};',
  );
  deepEqual(cells[2].metadata, { tags: ["parameters-of-this-run"] });
  deepEqual(cells.map((cell) => cell.id).toSpliced(2, 1), ["c1", "c2", "c3"]);
  deepEqual(cellNumbers(cells), [1, 2, 2, 3]);
});

Deno.test("withParameters() replaces the cell of an earlier run", () => {
  const once = withParameters(given, { folder: "a" });
  const twice = withParameters(once, { folder: "b" });
  equal(twice.cells.length, 4);
  equal(twice.cells[2].id, once.cells[2].id);
  equal(twice.cells[2].source.includes('"b"'), true);
});

Deno.test("withParameters() refuses a name that is not declared, and numbers JSON cannot hold", () => {
  throws(() => withParameters(given, { foldr: "a" }), {
    name: "RangeError",
    message:
      "Cannot set parameter foldr as the cell tagged `parameters` must declare it: it declares folder, rings, deep",
  });
  throws(() => withParameters(codeNotebook("1"), { a: 1 }), {
    name: "RangeError",
    message:
      "Cannot set parameters as a code cell must be tagged `parameters`: the notebook has none",
  });
  throws(() => withParameters(given, { rings: [Infinity] }), {
    name: "RangeError",
    message:
      "Cannot set parameter rings as numbers must be finite: current value is Infinity",
  });
});
