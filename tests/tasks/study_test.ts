import { equal, match, ok, throws } from "node:assert/strict";
import {
  readSections,
  section,
  writeResults,
} from "sagbook/tasks/_study_results.ts";
import { holds, pooled, type Study, type StudyRow } from "../studies/_study.ts";

const row = (changes: Partial<StudyRow>): StudyRow => ({
  case: "three sets",
  measure: "coverage",
  value: 0.95,
  runs: 100,
  ...changes,
});
const made = { date: "2024-01-02", versions: "test" };
const study: Study = { title: "Intervals cover", run: () => [row({})] };

Deno.test("holds() allows two simulation errors at the bound and no more", () => {
  // By hand: sqrt(0.95 · 0.05 / 100) = 0.0218, so 0.9064 is the edge.
  ok(holds(row({ value: 0.907, atLeast: 0.95 })));
  ok(!holds(row({ value: 0.906, atLeast: 0.95 })));
  ok(holds(row({ value: 0.093, atMost: 0.05 })));
  ok(!holds(row({ value: 0.094, atMost: 0.05 })));
  ok(!holds(row({ value: 1.01, runs: undefined, as: "number", atMost: 1 })));
});

Deno.test("pooled() weighs seeds by their repetitions and refuses rows that differ", () => {
  const [all] = pooled([[row({ value: 1, runs: 100 })], [
    row({ value: 0, runs: 300 }),
  ]]);
  equal(all.value, 0.25);
  // A bound allows for the error of one seed: 200 repetitions on average.
  equal(all.runs, 200);
  throws(() => pooled([[row({})], [row({ case: "five sets" })]]), {
    name: "TypeError",
    message:
      "Cannot pool seeds as their rows must be the same: current value is five sets, coverage",
  });
});

Deno.test("section() marks what breaks its bound and counts it", () => {
  const good = [row({ value: 0.9, atLeast: 0.9 })];
  const bad = [row({ value: 0.5, atLeast: 0.9 })];
  equal(section(study, [1], [good], made).broken, 0);
  const { text, broken } = section(study, [1, 2], [good, bad], made);
  equal(broken, 1);
  match(text, /\| 70\.0 ✗ \| 90\.0 \| 50\.0 · \|/);
});

Deno.test("readSections() reads back what writeResults() wrote, one study at a time", () => {
  const sections = new Map([["b", "## B\n\ntext"], ["a", "## A"]]);
  const text = writeResults(sections);
  const back = readSections(text, ["a", "b"]);
  equal(back.get("b"), "## B\n\ntext");
  equal(writeResults(back), text);
  equal(readSections(text, ["a"]).has("b"), false);
});
