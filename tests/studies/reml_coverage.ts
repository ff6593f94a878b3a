/**
 * Prints how often the intervals of simulated studies hold the truth.
 *
 * `deno run -A tests/studies/reml_coverage.ts [studies]`, 2,000 by default,
 * seeds 1 to 5, fixed before any result was seen.
 *
 * @module
 */
import { designs, remlCoverage } from "./_reml_coverage.ts";

const SEEDS = [1, 2, 3, 4, 5];

if (import.meta.main) {
  const studies = Number(Deno.args[0] ?? 2000);
  const seeds = Deno.args[1] ? [Number(Deno.args[1])] : SEEDS;
  console.log(
    `| design | quantity | truth | ${
      seeds.map((seed) => `seed ${seed}`).join(" | ")
    } | criterion |`,
  );
  console.log(
    `| --- | --- | ---: | ${seeds.map(() => "---:").join(" | ")} | --- |`,
  );
  for (const design of designs) {
    const bySeed = seeds.map((seed) => remlCoverage(design, studies, seed));
    bySeed[0].forEach(({ quantity, truth, allowed }, row) => {
      const shares = bySeed.map((rows) => {
        const percent = 100 * rows[row].covered / rows[row].studies;
        const mark = percent < allowed[0] || percent > allowed[1] ? " !" : "";
        return percent.toFixed(2) + mark;
      });
      console.log(
        `| ${design.name} | ${quantity} | ${truth} | ${shares.join(" | ")} | ${
          allowed[0]
        } to ${allowed[1]} % |`,
      );
    });
  }
}
