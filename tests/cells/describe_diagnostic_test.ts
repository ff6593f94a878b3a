import { deepEqual, equal } from "node:assert/strict";
import { placeAt } from "sagbook/cells/cell_diagnostic.ts";
import {
  describeDiagnostic,
  excerpt,
  explain,
} from "sagbook/cells/describe_diagnostic.ts";

const diagnostic = {
  code: 2345,
  message: "Argument of type 'Inches'…\n  Type 'Inches'…",
  start: 4,
  end: 7,
  kind: "type",
} as const;

Deno.test("describeDiagnostic() puts an explainer's sentence before the compiler's", () => {
  const explainers = [
    () => undefined,
    ({ code }: { code: number }) => code === 2345 ? "inches here" : undefined,
    () => "too late",
  ];
  deepEqual(describeDiagnostic(diagnostic, "sag(abc)", "cell 2", explainers), [
    "cell 2, line 1, column 5 (TS2345)",
    "  1 | sag(abc)",
    "    |     ~~~",
    "inches here",
    "Argument of type 'Inches'…",
    "  Type 'Inches'…",
  ]);
  equal(explain({ ...diagnostic, code: "no-local" }, explainers), "too late");
});

Deno.test("excerpt() keeps the mark inside the line and under tabs", () => {
  deepEqual(excerpt("\ta", { line: 1, column: 2 }, 50), [
    "  1 |  a",
    "    |  ~",
  ]);
  deepEqual(excerpt("a", { line: 1, column: 2 }, 0), ["  1 | a", "    |  ~"]);
  deepEqual(excerpt("a", { line: 5, column: 1 }, 1), []);
});

Deno.test("placeAt() counts lines of every kind from 1", () => {
  deepEqual(placeAt("a\r\nb\rc\nd", 7), { line: 4, column: 1 });
  deepEqual(placeAt("", 0), { line: 1, column: 1 });
});
