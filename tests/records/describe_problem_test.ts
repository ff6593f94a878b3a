import { equal, match, ok } from "node:assert/strict";
import {
  describeProblem,
  describeProblems,
} from "sagbook/records/describe_problem.ts";
import type { Problem } from "sagbook/records/problem.ts";

const problem: Problem = {
  severity: "refused",
  code: "not-a-number",
  file: "readings.csv",
  line: 4,
  column: "reading",
  value: "n/a",
  message: "this is not a number",
};

Deno.test("describeProblem() says place, fault, value and mend in at most three lines", () => {
  equal(
    describeProblem(problem),
    "refused: readings.csv, line 4, column reading: this is not a number: “n/a”",
  );
  equal(
    describeProblem({
      severity: "note",
      code: "x",
      file: "a.csv",
      message: "m",
      expected: "e",
      mend: "d",
    }),
    "note: a.csv: m\n  expected: e\n  mend: d",
  );
});

Deno.test("describeProblem() shows control codes of the user's text and cuts it", () => {
  const text = describeProblem({
    ...problem,
    value: `\u001b[31m\u202ered\n${"x".repeat(200)}`,
  });
  ok(!text.includes("\u001b") && !text.includes("\u202e"));
  match(text, /\\u001b\[31m\\u202ered⏎x+…/);
  equal(text.split("\n").length, 1);
});

Deno.test("describeProblems() puts refusals first and stays under 10 kB", () => {
  const many = Array.from({ length: 5_000 }, (_, line): Problem => ({
    ...problem,
    severity: line % 2 === 0 ? "note" : "refused",
    line,
    message: "µ".repeat(100),
  }));
  const text = describeProblems(many);
  ok(new TextEncoder().encode(text).length < 10_000);
  ok(text.startsWith("refused: readings.csv, line 1,"));
  match(text, /and besides: \d+ × refused: not-a-number, 2500 × note/);
});

Deno.test("describeProblems() counts the lines that a summary stands for", () => {
  const long = "x".repeat(3_500);
  const text = describeProblems([
    { ...problem, message: long },
    { ...problem, message: long },
    { ...problem, message: long },
    { ...problem, message: long, count: 41 },
  ]);
  match(text, /and besides: 41 × refused: not-a-number|and besides: 42/);
});
