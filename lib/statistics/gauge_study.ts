/**
 * Variances of a gauge study with surfaces, operators and repeats crossed.
 *
 * @module
 */
import type { MeanSquareTerm } from "./anova_table.ts";
import type { CrossedAnova } from "./crossed_anova.ts";

/** Variances of a gauge study, each 0 or more. */
export interface GaugeVariances {
  /** Scatter of repeats. */
  readonly repeatability: number;
  /** Scatter of operators. */
  readonly operator: number;
  /** Scatter of operators that depends on the surface. */
  readonly interaction: number;
  /** Operators and interaction together. */
  readonly reproducibility: number;
  /** Repeatability and reproducibility together: the gauge. */
  readonly gauge: number;
  /** Scatter of the surfaces themselves. */
  readonly surface: number;
  /** Gauge and surfaces together. */
  readonly total: number;
}

/**
 * Adds up the components of a crossed table into those of a gauge study.
 *
 * Negative estimates count as 0 in sums.
 *
 * @param table A table whose first factor is the surfaces and whose second is
 * the operators.
 * @returns The variances; undefined where a factor has one level.
 *
 * @see D. C. Montgomery, G. C. Runger (1993), Quality Engineering 6, 115-135.
 *
 * @example
 * ```ts
 * import { crossedAnova } from "sagbook/statistics/crossed_anova.ts";
 * import { gaugeVariances } from "sagbook/statistics/gauge_study.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = crossedAnova(
 *   [10, 11, 10, 11, 20, 21, 20, 21],
 *   { name: "surface", labels: [1, 1, 1, 1, 2, 2, 2, 2] },
 *   { name: "operator", labels: ["a", "a", "b", "b", "a", "a", "b", "b"] },
 *   "pooled",
 * );
 * equal(gaugeVariances(table)?.operator, 0);
 * ```
 */
export function gaugeVariances(
  table: CrossedAnova,
): GaugeVariances | undefined {
  const [surface, operator] = table.sources;
  const varianceOf = (name: string) =>
    table.components.find((component) => component.name === name)?.variance;
  const repeatability = varianceOf("residual");
  const ofOperator = varianceOf(operator.name);
  const ofSurface = varianceOf(surface.name);
  if (
    repeatability === undefined || ofOperator === undefined ||
    ofSurface === undefined
  ) return undefined;
  const interaction = varianceOf("interaction") ?? 0;
  const reproducibility = ofOperator + interaction;
  const gauge = repeatability + reproducibility;
  return {
    repeatability,
    operator: ofOperator,
    interaction,
    reproducibility,
    gauge,
    surface: ofSurface,
    total: gauge + ofSurface,
  };
}

/**
 * Finds the mean squares that make up the gauge's variance and the total.
 *
 * Negative components are left as they are, so that intervals hold.
 *
 * @param table A table whose first factor is the surfaces and whose second is
 * the operators.
 * @returns Terms for `varianceInterval`; undefined where a factor has one level.
 *
 * @see R. K. Burdick, C. M. Borror, D. C. Montgomery, Design and Analysis of
 * Gauge R&R Studies (2005).
 *
 * @example
 * ```ts
 * import { crossedAnova } from "sagbook/statistics/crossed_anova.ts";
 * import { gaugeTerms } from "sagbook/statistics/gauge_study.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = crossedAnova(
 *   [10, 11, 10, 12, 20, 21, 22, 21],
 *   { name: "surface", labels: [1, 1, 1, 1, 2, 2, 2, 2] },
 *   { name: "operator", labels: ["a", "a", "b", "b", "a", "a", "b", "b"] },
 *   "separate",
 * );
 * equal(gaugeTerms(table)?.gauge.length, 3);
 * ```
 */
export function gaugeTerms(
  table: CrossedAnova,
):
  | {
    readonly gauge: readonly MeanSquareTerm[];
    readonly total: readonly MeanSquareTerm[];
  }
  | undefined {
  const { firstLevels: p, secondLevels: o, repeats: r, sources } = table;
  const residual = sources[sources.length - 1];
  const base = table.interaction ? 1 / r : 0;
  const shares = (ofSurface: number): MeanSquareTerm[] | undefined => {
    const coefficients = [
      ofSurface / (o * r),
      1 / (p * r),
      ...(table.interaction ? [base - 1 / (p * r) - ofSurface / (o * r)] : []),
      table.interaction ? 1 - 1 / r : 1 - 1 / (p * r) - ofSurface / (o * r),
    ];
    const terms: MeanSquareTerm[] = [];
    const used = [...sources.slice(0, -1), residual];
    for (const [at, { meanSquare, dof }] of used.entries()) {
      if (Math.abs(coefficients[at]) < 1e-15) continue;
      if (meanSquare === undefined) return undefined;
      terms.push({ coefficient: coefficients[at], meanSquare, dof });
    }
    return terms;
  };
  const [gauge, total] = [shares(0), shares(1)];
  return gauge && total ? { gauge, total } : undefined;
}
