import { deepEqual, equal } from "node:assert/strict";
import { parseNumber } from "sagbook/units/parse_number.ts";

const caseRows = (name: string, separator: string): string[][] =>
  Deno.readTextFileSync(new URL(`../cases/${name}`, import.meta.url))
    .trimEnd().split(/\r?\n/).slice(1).map((line) => line.split(separator));

const value = (text: string, decimal: "." | "," | "either" = "."): unknown => {
  const read = parseNumber(text, { decimal });
  return read.kind === "number" ? read.value : read.kind;
};

Deno.test("parseNumber() reads thousands with a decimal comma, and refuses to guess one (case A04)", () => {
  const read = caseRows("A04-thousands.csv", ";").map((row) =>
    parseNumber(row[5], { decimal: "," })
  );
  deepEqual(read, [
    { kind: "number", value: 1430.2, decimals: 1 },
    { kind: "number", value: 1430, decimals: 1 },
    { kind: "number", value: 1431, decimals: 0 },
    { kind: "number", value: 1430.5, decimals: 1 },
    { kind: "ambiguous", readings: [1.43, 1430] },
  ]);
});

Deno.test("parseNumber() takes the true minus, a dash and a spaced hyphen for minus (case A05)", () => {
  const read = caseRows("A05-unicode-minus.csv", ",").map((row) =>
    value(row[5])
  );
  deepEqual(read, [-0.715, -0.716, -0.714]);
  for (const dash of "-‐‑‒–—―−﹘﹣-") equal(value(`${dash}1.5`), -1.5);
});

Deno.test("parseNumber() makes no number of what is none (case F02)", () => {
  const read = caseRows("F02-not-numbers.csv", ",").map((row) =>
    parseNumber(row[5], { decimal: "." })
  );
  deepEqual(read, [
    { kind: "blank" },
    { kind: "blank" },
    { kind: "refused", reason: "hexadecimal is not read as a number" },
    { kind: "number", value: 0.715, decimals: 3 },
    { kind: "refused", reason: "NaN stands for no number" },
    { kind: "refused", reason: "it is not finite" },
    { kind: "refused", reason: "it is not a number" },
    { kind: "refused", reason: "it is a sign without a number" },
    { kind: "refused", reason: "it is not a number" },
    { kind: "number", value: 0.715, decimals: 3 },
  ]);
});

Deno.test("parseNumber() reads every spelling that has one reading only", () => {
  const cases: [string, "." | "," | "either", unknown][] = [
    ["0.715", ".", 0.715],
    ["0.715", ",", 0.715], // a group never starts with 0
    ["0,715", ".", 0.715],
    ["12,5", ".", 12.5],
    ["1,23456", ".", 1.23456],
    ["1,234", ",", 1.234],
    ["1.234", ".", 1.234],
    ["1.234", "either", 1.234],
    ["1,234,567", ".", 1234567],
    ["1.234.567", ",", 1234567],
    ["1,234.5", ",", 1234.5],
    ["1.234,5", ".", 1234.5],
    ["1 234,567", ".", 1234.567], // groups are set off by spaces already
    ["1'234.5", ".", 1234.5],
    ["1’234.5", ".", 1234.5],
    ["1 234 567", ".", 1234567],
    ["0.714 285 7", ".", 0.7142857],
    [".5", ".", 0.5],
    ["5.", ".", 5],
    ["+2", ".", 2],
    ["007", ".", 7],
    ["7,15e-1", ",", 0.715],
    ["7.15E−1", ".", 0.715],
    ["715e-3", ".", 0.715],
    ["\ufeff0.5\u00a0", ".", 0.5],
  ];
  for (const [text, decimal, expected] of cases) {
    equal(value(text, decimal), expected, `${text} in ${decimal}`);
  }
});

Deno.test("parseNumber() gives both readings where a text has two", () => {
  const cases: [string, "." | "," | "either", [number, number]][] = [
    ["1,234", ".", [1.234, 1234]],
    ["1,234", "either", [1.234, 1234]],
    ["-12,345", ".", [-12.345, -12345]],
    ["123.456", ",", [123.456, 123456]],
    ["1,234e-3", ".", [0.001234, 1.234]],
  ];
  for (const [text, decimal, readings] of cases) {
    deepEqual(parseNumber(text, { decimal }), { kind: "ambiguous", readings });
  }
});

Deno.test("parseNumber() refuses with a reason that fits", () => {
  const cases: [string, string][] = [
    ["--1", "it has more than one sign"],
    ["1 2", "its separators do not stand where a number's stand"],
    ["1,23,456", "its separators do not stand where a number's stand"],
    ["1.2.3", "its separators do not stand where a number's stand"],
    ["1,2.3,4", "its separators do not stand where a number's stand"],
    ["0.715-0.716", "it holds more than one number"],
    ["1/2", "it holds more than one number"],
    ["0.715 mm", "something follows the number"],
    ["about 3", "it is not a number"],
    ["٣", "it is not a number"],
    ["1e999", "it is too large for a number"],
    ["null", "it is not a number"],
    ["[]", "it is not a number"],
    [".", "it is not a number"],
  ];
  for (const [text, reason] of cases) {
    deepEqual(parseNumber(text, { decimal: "." }), { kind: "refused", reason });
  }
});

Deno.test("parseNumber() counts decimals, takes −0 for 0, and defaults to either mark", () => {
  const cases: [string, number][] = [
    ["0.7150", 4],
    ["715", 0],
    ["7.15e-1", 3],
    ["7.15e1", 1],
    ["7e2", 0],
    ["0.714 285", 6],
  ];
  for (const [text, decimals] of cases) {
    const read = parseNumber(text);
    equal(read.kind === "number" && read.decimals, decimals, text);
  }
  const zero = parseNumber("-0.000");
  equal(zero.kind === "number" && Object.is(zero.value, 0), true);
});

Deno.test("parseNumber() is quick with long garbage", () => {
  for (
    const text of ["1 ".repeat(50_000), "1,".repeat(50_000), "-".repeat(1e5)]
  ) {
    equal(parseNumber(text, { decimal: "." }).kind, "refused");
  }
});
