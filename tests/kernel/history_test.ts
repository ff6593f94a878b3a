import { deepEqual } from "node:assert/strict";
import { History } from "sagbook/kernel/history.ts";

function filled(): History {
  const history = new History();
  for (const [at, input] of ["a = 1", "b", "a = 1", "a.c"].entries()) {
    history.add({ line: at + 1, input, output: String(at) });
  }
  return history;
}

const lines = (request: Record<string, unknown>) =>
  filled().find(request).map(([, line]) => line);

Deno.test("History.find() gives the last, a range, and what fits a pattern", () => {
  deepEqual(lines({ hist_access_type: "tail", n: 2 }), [3, 4]);
  for (const n of [undefined, 0, -1, "2"]) {
    deepEqual(lines({ hist_access_type: "tail", n }), [1, 2, 3, 4]);
  }
  deepEqual(
    lines({ hist_access_type: "range", session: 0, start: 2, stop: 4 }),
    [2, 3],
  );
  deepEqual(lines({ hist_access_type: "range", session: 1 }), [1, 2, 3, 4]);
  deepEqual(lines({ hist_access_type: "range", session: -1 }), []);
  deepEqual(lines({ hist_access_type: "search", pattern: "a*" }), [1, 3, 4]);
  deepEqual(lines({ hist_access_type: "search", pattern: "a?c" }), [4]);
  deepEqual(lines({ hist_access_type: "search", pattern: "*", n: 1 }), [4]);
  deepEqual(
    lines({ hist_access_type: "search", pattern: "a*", unique: true }),
    [3, 4],
  );
  deepEqual(lines({ hist_access_type: "other" }), []);
});

Deno.test("History.find() gives values beside the text where asked", () => {
  const history = filled();
  history.add({ line: 5, input: "z" });
  const rows = history.find({ hist_access_type: "tail", n: 2, output: true });
  deepEqual(rows, [[1, 4, ["a.c", "3"]], [1, 5, ["z", null]]]);
});
