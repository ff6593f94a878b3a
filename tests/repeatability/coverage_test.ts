import { ok } from "node:assert/strict";
import { coverageOf, DESIGNS } from "../studies/_repeatability_coverage.ts";

/** Enough to see an interval that is wrong, not to prove one right. */
const STUDIES = 200;

Deno.test("estimateComponents() gives intervals that hold the truth about as often as they say, balanced and not", () => {
  const small = DESIGNS.filter(({ name }) =>
    /^[48] zeroings|^6 zeroings, a diameter/.test(name)
  );
  ok(small.length === 3);
  for (const design of small) {
    for (const { sources, held } of coverageOf(design, STUDIES, 1)) {
      // Four standard errors of 95 % at 200 studies are 6.2 %.
      ok(held > 0.885, `${design.name}, ${sources}: ${held}`);
    }
  }
});
