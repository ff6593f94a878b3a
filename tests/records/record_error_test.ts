import { equal, ok } from "node:assert/strict";
import type { Problem } from "sagbook/records/problem.ts";
import { RecordError } from "sagbook/records/record_error.ts";

Deno.test("RecordError() carries every problem and keeps its message short", () => {
  const problems = Array.from({ length: 1_000 }, (_, line): Problem => ({
    severity: "refused",
    code: "wrong-value",
    file: "bench.json",
    line,
    message: "this must be above 0",
  }));
  const error = new RecordError("Cannot use the folder x", problems);
  equal(error.name, "RecordError");
  equal(error.problems.length, 1_000);
  ok(error.message.startsWith("Cannot use the folder x\nrefused: bench.json"));
  ok(error.message.length < 10_000);
});
