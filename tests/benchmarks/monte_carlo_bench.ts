/**
 * Draws of the radius equation with both intervals, beside NumPy.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { Random } from "sagbook/numerics/random.ts";
import { coverageIntervals } from "sagbook/uncertainty/coverage_interval.ts";
import { monteCarlo } from "sagbook/uncertainty/monte_carlo.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import { radiusModel } from "sagbook/uncertainty/radius_model.ts";
import { benchProgram } from "./_program.ts";
import { RADIUS_CASE } from "./_radius_case.ts";
import { median, sideBySide } from "./_side_by_side.ts";

const { inputs, curvature } = radiusModel(RADIUS_CASE);

function middleOf(runs: number, act: () => unknown): number {
  const times: number[] = [];
  for (let run = 0; run <= runs; run++) {
    const start = performance.now();
    act();
    times.push(performance.now() - start);
  }
  return median(times.slice(1));
}

if (import.meta.main) {
  await benchProgram({
    ours: (draws) => {
      let seed = 0;
      return () => {
        const { mean, standardUncertainty, shortest } = monteCarlo(
          (x) => 1 / curvature(x),
          inputs,
          { random: new Random(++seed), draws },
        );
        // From 2500 mm, so that a relative difference says something.
        return [mean, shortest.lower, shortest.upper].map((x) => x - 2500)
          .concat(standardUncertainty);
      };
    },
    run: async (size) => {
      const isTiny = size === "tiny";
      const { row } = await sideBySide({
        program: import.meta.url,
        what: "10⁶ draws of a radius, 15 inputs, shortest interval",
        grows: "draws",
        sizes: isTiny ? [10_000] : [10_000, 100_000, 1_000_000],
        runs: () => isTiny ? 1 : 7,
        rounds: isTiny ? 1 : 3,
        // Other random numbers: the same within what 10⁴ draws scatter by.
        agree: 0.1,
        peer: {
          name: "NumPy",
          needs: "python3 with numpy",
          env: { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" },
          command: (n, runs) => [
            "python3",
            "-B",
            fileURLToPath(import.meta.resolve("./_peer_radius.py")),
            String(n),
            String(runs),
            JSON.stringify(inputs),
          ],
        },
      });
      const million = new Float64Array(isTiny ? 1000 : 1_000_000);
      const random = new Random(1);
      const runs = isTiny ? 1 : 10;
      return {
        title: "Uncertainty of a radius",
        about:
          "The radius equation with all 15 inputs uncertain, mean, standard uncertainty and the shortest 95 % interval. The peer is the same in vectorised NumPy (`default_rng`), one thread each. The budget is the analytic way to the same uncertainty.",
        rows: [
          row,
          {
            what: "10⁶ normal random numbers",
            ours: middleOf(runs, () => random.fillNormal(million)),
          },
          {
            what: "Both 95 % intervals of 10⁶ numbers",
            ours: middleOf(runs, () => {
              coverageIntervals(million.slice());
            }),
          },
          {
            what: "Budget of a radius, 15 inputs",
            ours: middleOf(20 * runs, () => radiusBudget(RADIUS_CASE)),
          },
        ],
      };
    },
  });
}
