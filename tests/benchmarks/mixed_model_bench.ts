/**
 * Mixed models by REML, beside lme4.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { BenchRow } from "sagbook/tasks/_benchmark.ts";
import {
  interceptColumn,
  treatmentColumns,
} from "sagbook/statistics/design_columns.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import {
  benchStudy,
  crossedStudy,
  fourFactorStudy,
  type MadeStudy,
  nestedStudy,
} from "./_mixed_data.ts";
import { benchProgram } from "./_program.ts";
import { sideBySide } from "./_side_by_side.ts";

/** The studies by how many readings were planned, seeds fixed. */
const STUDIES: Readonly<Record<number, () => MadeStudy>> = {
  1_000: () => benchStudy("", 11, 50, 20),
  10_000: () => benchStudy("", 11, 500, 20),
  100_000: () => benchStudy("", 11, 5000, 20),
  90_000: () => crossedStudy("90,000 readings, 300 × 300 crossed", 12, 300),
  90_001: () => nestedStudy("90,000 readings, three levels nested", 13, 800),
  40_000: () => fourFactorStudy("40,000 readings, four factors", 14, 40000),
};

/** Writes a study where the peer reads it; gives the peer's arguments. */
async function write(study: MadeStudy, path: string): Promise<string[]> {
  const names = ["y", ...(study.zones ? ["zone"] : []), ...study.random];
  const lines = [names.join(",")];
  for (let i = 0; i < study.response.length; i++) {
    const levels = study.factors.map((codes) => codes[i]);
    const zone = study.zones ? [study.zones[i]] : [];
    lines.push([study.response[i], ...zone, ...levels].join(","));
  }
  await Deno.writeTextFile(path, lines.join("\n") + "\n");
  const fixed = study.zones ? "zone" : "1";
  const random = study.random.map((name) => ` + (1 | ${name})`).join("");
  return [path, `y ~ ${fixed}${random}`, study.random.join(",")];
}

if (import.meta.main) {
  await benchProgram({
    ours: (n) => {
      const { response, zones, random, factors } = STUDIES[n]();
      return () => {
        const { components, fixed } = fitMixedModel({
          response,
          fixed: zones
            ? treatmentColumns("zone", zones, ["centre", "half", "edge"])
            : [interceptColumn(response.length)],
          random: random.map((name, k) => ({ name, labels: factors[k] })),
        });
        const variance = (name: string): number =>
          components.find((one) => one.name === name)?.variance ?? NaN;
        return [
          ...[...random, "residual"].map(variance),
          ...fixed.map(({ estimate }) => estimate ?? NaN),
        ];
      };
    },
    run: async (size) => {
      const isTiny = size === "tiny";
      const folder = await Deno.makeTempDir({ prefix: "mixed-" });
      try {
        const files = new Map<number, string[]>();
        const planned = isTiny ? [1000] : Object.keys(STUDIES).map(Number);
        for (const n of planned) {
          files.set(n, await write(STUDIES[n](), `${folder}/${n}.csv`));
        }
        const compare = (what: string, sizes: readonly number[]) =>
          sideBySide({
            program: import.meta.url,
            what: `Mixed model, ${what}`,
            grows: "readings",
            sizes,
            runs: (n) => isTiny ? 1 : n > 10_000 ? 2 : 5,
            rounds: isTiny ? 1 : 2,
            agree: 1e-4,
            peer: {
              name: "lme4",
              needs: "Rscript with lme4",
              command: (n, runs) => {
                const [path, formula, order] = files.get(n)!;
                const script = import.meta.resolve("./_peer_mixed.R");
                const given = [path, formula, String(runs), order];
                return ["Rscript", fileURLToPath(script), ...given];
              },
            },
          });
        const all = [
          await compare(
            "10⁵ readings, zeroings and diameters crossed",
            isTiny ? planned : [1_000, 10_000, 100_000],
          ),
        ];
        for (const n of isTiny ? [] : [90_000, 90_001, 40_000]) {
          all.push(await compare(STUDIES[n]().name, [n]));
        }
        const apart = Math.max(...all.map(({ apart }) => apart ?? 0));
        const [first, ...others] = all.map(({ row }) => row);
        return {
          title: "Components of scatter",
          about:
            "From labels and readings to variances and means, as a user would call it. The largest study has 5,000 zeroings of about 20 readings on 20 diameters; one reading in twenty is missing. lme4 runs with its defaults; what it finds is taken from a second, untimed fit with tighter settings, since its defaults stop a little early.",
          rows: [
            first,
            ...others.map(({ growth: _, ...row }): BenchRow => row),
          ],
          ...(apart > 0
            ? {
              details: `Variances and means differ from lme4's by at most ${
                apart.toExponential(0)
              }, relative to 1 or to themselves where larger.`,
            }
            : {}),
        };
      } finally {
        await Deno.remove(folder, { recursive: true });
      }
    },
  });
}
