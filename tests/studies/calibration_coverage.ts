/**
 * Prints how often calibration intervals hold the simulated ring, seeds 1 to 5.
 *
 *     deno run -A tests/studies/calibration_coverage.ts
 */
import { Random } from "sagbook/numerics/random.ts";
import { calibrationCoverage } from "./_calibration_coverage.ts";

const RUNS = 2000;
for (const design of ["spacings", "one plate", "three plates"] as const) {
  const shares = [1, 2, 3, 4, 5].map((seed) => {
    const { covered, runs } = calibrationCoverage(
      design,
      RUNS,
      new Random(seed),
    );
    return `${(100 * covered / runs).toFixed(1)} %`;
  });
  console.log(`${design.padEnd(13)} ${shares.join("  ")}`);
}
