/**
 * Analysis of variance of a balanced nested design.
 *
 * @module
 */
import {
  groupPositions,
  lessFirst,
  meanAt,
  momentComponent,
  type PlainSource,
  present,
  testSources,
} from "./_anova_rows.ts";
import { requireAllFinite, requireLength } from "./_guards.ts";
import type { AnovaTable } from "./anova_table.ts";
import type { RandomFactor } from "./mixed_model.ts";

/** A table of a nested design. */
export interface NestedAnova extends AnovaTable {
  /**
   * Standard error of the grand mean, from the outermost mean square; undefined
   * where the outermost factor has one level.
   */
  readonly grandMeanStandardError: number | undefined;
}

/**
 * Analyses readings in groups within groups, each as large as its fellows, such
 * as readings within zeroings within sessions.
 *
 * A level belongs to the outer levels it stands under: zeroing 1 of one session
 * is not zeroing 1 of another, though both are labelled 1.
 *
 * @param response The readings.
 * @param factors The factors from the outermost to the innermost.
 * @returns The table; the last source, `"residual"`, is the scatter within the
 * innermost groups.
 * @throws {RangeError} If there is no reading, lengths differ, a reading is not
 * finite or groups of one kind differ in size.
 *
 * @see D. C. Montgomery, Design and Analysis of Experiments, two-stage nested
 * design.
 *
 * @example Two readings after each of two zeroings in each of two sessions
 * ```ts
 * import { nestedAnova } from "sagbook/statistics/nested_anova.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = nestedAnova([12, 13, 17, 16, 16, 17, 13, 12], [
 *   { name: "session", labels: [1, 1, 1, 1, 2, 2, 2, 2] },
 *   { name: "zeroing", labels: [1, 1, 2, 2, 1, 1, 2, 2] },
 * ]);
 * equal(table.components[0].estimate, -4); // session: none to be seen
 * equal(table.components[1].estimate, 7.75); // zeroing
 * ```
 */
export function nestedAnova(
  response: readonly number[],
  factors: readonly RandomFactor[],
): NestedAnova {
  const action = "analyse a nested design";
  requireLength(response.length, 1, action, "readings");
  requireLength(factors.length, 1, action, "factors");
  requireAllFinite(response, action, "reading");
  const n = response.length;
  const shifted = lessFirst(response);
  let paths: string[] = new Array(n).fill("");
  let means: Float64Array = new Float64Array(n)
    .fill(meanAt(shifted, [...shifted.keys()]));
  const grand = means[0];
  let groupsBefore = 1;
  const levels: { name: string; dof: number; sum: number; size: number }[] = [];
  for (const { name, labels } of factors) {
    if (labels.length !== n) {
      throw new RangeError(
        `Cannot ${action} as factor ${name} must have one label for each of ${n} readings: current value is ${labels.length}`,
      );
    }
    paths = paths.map((path, i) => JSON.stringify([path, String(labels[i])]));
    const groups = groupPositions(paths);
    const size = n / groups.size;
    const inner = new Float64Array(n);
    for (const positions of groups.values()) {
      if (positions.length !== size) {
        throw new RangeError(
          `Cannot ${action} as every group of ${name} must have the same number of readings: current values are ${positions.length} and others`,
        );
      }
      const mean = meanAt(shifted, positions);
      for (const i of positions) inner[i] = mean;
    }
    let sum = 0;
    for (let i = 0; i < n; i++) sum += (inner[i] - means[i]) ** 2;
    levels.push({ name, dof: groups.size - groupsBefore, sum, size });
    [means, groupsBefore] = [inner, groups.size];
  }
  let residual = 0;
  for (let i = 0; i < n; i++) residual += (shifted[i] - means[i]) ** 2;
  levels.push({
    name: "residual",
    dof: n - groupsBefore,
    sum: residual,
    size: 1,
  });
  const plain = levels.map(({ name, dof, sum }, at): PlainSource => ({
    name,
    dof,
    sumOfSquares: sum,
    expected: Object.fromEntries(
      levels.slice(at).map((level) => [level.name, level.size]),
    ),
    against: levels[at + 1]?.name,
  }));
  const sources = testSources(plain);
  const components = sources.map((source, at) => {
    const { name, size } = levels[at];
    const below = sources[at + 1];
    return momentComponent(
      name,
      below ? [[1 / size, source], [-1 / size, below]] : [[1, source]],
    );
  });
  const top = sources[0].meanSquare;
  return {
    observations: n,
    grandMean: response[0] + grand,
    sources,
    total: {
      dof: n - 1,
      sumOfSquares: levels.reduce((sum, level) => sum + level.sum, 0),
    },
    components: present(components),
    grandMeanStandardError: top === undefined ? undefined : Math.sqrt(top / n),
  };
}
