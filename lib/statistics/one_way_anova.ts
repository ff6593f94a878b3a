/**
 * Analysis of variance of groups of readings.
 *
 * @module
 */
import {
  meanAt,
  momentComponent,
  present,
  testSources,
} from "./_anova_rows.ts";
import { requireAllFinite, requireFinite, requireLength } from "./_guards.ts";
import type { AnovaTable } from "./anova_table.ts";

/** A table of groups, with the two ways of judging the grand mean. */
export interface OneWayAnova extends AnovaTable {
  /** Share of the total sum of squares that lies between groups. */
  readonly rSquared: number | undefined;
  /**
   * Standard error of the grand mean if groups differ, from the mean square
   * between them; for equal groups. Undefined for a single group.
   */
  readonly standardErrorIfGroupsDiffer: number | undefined;
  /** Its degrees of freedom. */
  readonly dofIfGroupsDiffer: number;
  /** Standard error of the grand mean if they do not, all readings pooled. */
  readonly standardErrorIfAlike: number | undefined;
  /** Its degrees of freedom. */
  readonly dofIfAlike: number;
}

/** A group of which only count, mean and standard deviation are known. */
export interface GroupSummary {
  /** Number of readings. */
  readonly count: number;
  /** Their mean. */
  readonly mean: number;
  /** Their standard deviation with divisor n - 1; 0 for a single reading. */
  readonly standardDeviation: number;
}

/**
 * Analyses groups of readings, such as those of several zeroings.
 *
 * Groups may differ in size. The level of the readings is taken off first, so
 * that a small scatter on a large value keeps its digits. The component between
 * groups is (MS between - MS within)/n₀ and may come out negative.
 *
 * @param groups The readings of each group; at least one group, none empty.
 * @returns The table with sources `"between"` and `"within"`.
 * @throws {RangeError} If there is no group, one is empty or a reading is not
 * finite.
 *
 * @see JCGM 100:2008 (GUM), H.5; NIST Statistical Reference Datasets, ANOVA.
 *
 * @example
 * ```ts
 * import { oneWayAnova } from "sagbook/statistics/one_way_anova.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = oneWayAnova([[1, 2], [5, 6], [3, 4]]);
 * equal(table.sources[0].meanSquare, 8);
 * equal(table.components[0].estimate, 3.75); // (8 - 0.5) / 2
 * ```
 */
export function oneWayAnova(
  groups: readonly (readonly number[])[],
): OneWayAnova {
  const action = "analyse groups";
  requireLength(groups.length, 1, action, "groups");
  for (const group of groups) {
    requireLength(group.length, 1, action, "readings in a group");
    requireAllFinite(group, action, "reading");
  }
  const level = groups[0][0];
  let within = 0;
  const reduced = groups.map((group) => {
    const shifted = group.map((value) => value - level);
    const mean = meanAt(shifted, [...shifted.keys()]);
    for (const value of shifted) within += (value - mean) ** 2;
    return { count: group.length, mean };
  });
  return tabulate(reduced, within, level);
}

/**
 * Analyses groups of which only count, mean and standard deviation are known.
 *
 * @param groups The groups, at least one.
 * @returns The table with sources `"between"` and `"within"`.
 * @throws {RangeError} If there is no group, a count is not a whole number of
 * at least 1, or a mean or standard deviation is out of range.
 *
 * @see JCGM 100:2008 (GUM), H.5.
 *
 * @example
 * ```ts
 * import { oneWayAnovaOfSummaries } from "sagbook/statistics/one_way_anova.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = oneWayAnovaOfSummaries([
 *   { count: 2, mean: 1.5, standardDeviation: Math.SQRT1_2 },
 *   { count: 2, mean: 5.5, standardDeviation: Math.SQRT1_2 },
 *   { count: 2, mean: 3.5, standardDeviation: Math.SQRT1_2 },
 * ]);
 * equal(table.sources[0].meanSquare, 8);
 * ```
 */
export function oneWayAnovaOfSummaries(
  groups: readonly GroupSummary[],
): OneWayAnova {
  const action = "analyse groups";
  requireLength(groups.length, 1, action, "groups");
  for (const { count, mean, standardDeviation } of groups) {
    if (!(Number.isInteger(count) && count >= 1)) {
      throw new RangeError(
        `Cannot ${action} as a group's count must be a whole number of at least 1: current value is ${count}`,
      );
    }
    requireFinite(mean, action, "a group's mean");
    if (!(standardDeviation >= 0 && standardDeviation < Infinity)) {
      throw new RangeError(
        `Cannot ${action} as a group's standard deviation must be finite and 0 or more: current value is ${standardDeviation}`,
      );
    }
  }
  const level = groups[0].mean;
  const within = groups.reduce(
    (sum, { count, standardDeviation: sd }) => sum + (count - 1) * sd * sd,
    0,
  );
  const reduced = groups.map(({ count, mean }) => ({
    count,
    mean: mean - level,
  }));
  return tabulate(reduced, within, level);
}

/** The table from counts, means less a level, and the scatter within. */
function tabulate(
  groups: readonly { readonly count: number; readonly mean: number }[],
  within: number,
  level: number,
): OneWayAnova {
  const observations = groups.reduce((sum, { count }) => sum + count, 0);
  const grand = groups.reduce((sum, { count, mean }) => sum + count * mean, 0) /
    observations;
  const between = groups.reduce(
    (sum, { count, mean }) => sum + count * (mean - grand) ** 2,
    0,
  );
  const squared = groups.reduce((sum, { count }) => sum + count * count, 0);
  const [betweenDof, withinDof] = [
    groups.length - 1,
    observations - groups.length,
  ];
  const perGroup = betweenDof > 0
    ? (observations - squared / observations) / betweenDof
    : 0;
  const sources = testSources([
    {
      name: "between",
      dof: betweenDof,
      sumOfSquares: between,
      expected: { within: 1, between: perGroup },
      against: "within",
    },
    {
      name: "within",
      dof: withinDof,
      sumOfSquares: within,
      expected: { within: 1 },
    },
  ]);
  const [outer, inner] = sources;
  const total = between + within;
  const totalDof = observations - 1;
  return {
    observations,
    grandMean: level + grand,
    sources,
    total: { dof: totalDof, sumOfSquares: total },
    components: present([
      perGroup > 0
        ? momentComponent("between", [[1 / perGroup, outer], [
          -1 / perGroup,
          inner,
        ]])
        : undefined,
      momentComponent("within", [[1, inner]]),
    ]),
    rSquared: total > 0 ? between / total : undefined,
    standardErrorIfGroupsDiffer: outer.meanSquare === undefined
      ? undefined
      : Math.sqrt(outer.meanSquare / observations),
    dofIfGroupsDiffer: betweenDof,
    standardErrorIfAlike: totalDof > 0
      ? Math.sqrt(total / totalDof / observations)
      : undefined,
    dofIfAlike: totalDof,
  };
}
