import { ok } from "node:assert/strict";
import { designs, remlCoverage } from "./_reml_coverage.ts";

for (const design of designs) {
  Deno.test(`intervals hold the truth as often as stated, within chance: ${design.name}`, () => {
    const studies = 150;
    for (const row of remlCoverage(design, studies, 1)) {
      // Four standard deviations of a count about 93 % leave chance no say.
      const slack = 4 * Math.sqrt(0.93 * 0.07 * studies);
      const least = 0.93 * studies - slack;
      ok(
        row.covered >= least,
        `${row.quantity}: ${row.covered} of ${studies} hold ${row.truth}`,
      );
    }
  });
}
