import { deepEqual, equal, match, ok } from "node:assert/strict";
import {
  describeProblem,
  describeProblems,
} from "sagbook/records/describe_problem.ts";
import { groupProblems } from "sagbook/records/group_problems.ts";
import { printable } from "sagbook/records/printable.ts";
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
    message: `${"µ".repeat(100)} ${line}`,
  }));
  const text = describeProblems(many);
  ok(new TextEncoder().encode(text).length < 10_000);
  ok(text.startsWith("refused: readings.csv, line 1,"));
  match(text, /and besides: \d+ × refused: not-a-number, 2500 × note/);
});

Deno.test("describeProblems() counts the lines that a summary stands for", () => {
  const long = "x".repeat(3_500);
  const text = describeProblems([
    { ...problem, message: `a${long}` },
    { ...problem, message: `b${long}` },
    { ...problem, message: `c${long}` },
    { ...problem, message: `d${long}`, count: 41 },
  ]);
  match(text, /and besides: 41 × refused: not-a-number|and besides: 42/);
});

Deno.test("describeProblems() says once what several lines have in common, with those lines", () => {
  const at = (line: number, value = "n/a"): Problem => ({
    ...problem,
    line,
    value,
  });
  equal(
    describeProblems([at(4), at(7), at(7), at(9)]),
    "refused: readings.csv, line 4, column reading: this is not a number: “n/a”\n" +
      "  the same in lines 7, 9",
  );
  equal(
    describeProblems([at(4), { ...at(5), code: "other" }, at(9, "x")]),
    "refused: readings.csv, line 4, column reading: this is not a number: “n/a”\n" +
      "  the same in line 9 (“x”)\n" +
      "refused: readings.csv, line 5, column reading: this is not a number: “n/a”",
  );
  match(
    describeProblems(Array.from({ length: 20 }, (_, i) => at(i + 2))),
    /the same in lines 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14 and 7 more$/,
  );
});

Deno.test("groupProblems() keeps a count that stands for lines of its own", () => {
  const counted = { ...problem, count: 3 };
  const [{ first, others }] = groupProblems([counted, counted, counted]);
  deepEqual([first, ...others].map(({ count }) => count), [3, 3, 3]);
});

Deno.test("describeProblem() lets no code of a file through in any of its words", () => {
  const evil = "S1\u001b]0;x\u0007\u202e\u2066\u009b2J\r\n\t\u{e0041}";
  const text = describeProblem({
    severity: "warning",
    code: "x",
    file: evil,
    column: evil,
    value: evil,
    message: `session ${evil} reads like inches`,
    expected: evil,
    mend: evil,
  });
  equal(text.split("\n").length, 3);
  ok(/^[\n\x20-\x7e“”⏎]*$/.test(text), text);
});

Deno.test("printable() leaves every letter that is seen, and line ends", () => {
  const seen = "R 2520 mm\u00a0±\u202f3, µ ″ ½ 😀\nzwei";
  equal(printable(seen), seen);
  const json = JSON.stringify("\u{e0001}\u202e\u0007\u009b");
  equal(JSON.parse(printable(json)), JSON.parse(json));
  equal(printable("a\u{e0001}b\u00adc"), "a\\udb40\\udc01b\\u00adc");
});
