/**
 * Analysis of variance of a balanced crossed design.
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

/** A table of a crossed design. */
export interface CrossedAnova extends AnovaTable {
  /** Levels of the first factor. */
  readonly firstLevels: number;
  /** Levels of the second factor. */
  readonly secondLevels: number;
  /** Readings in each cell. */
  readonly repeats: number;
  /** Whether the interaction has a row of its own. */
  readonly interaction: boolean;
}

/**
 * Analyses readings of every level of one random factor at every level of
 * another, such as surfaces read by operators.
 *
 * With an interaction both factors are tested against it; without one, its sum
 * of squares is pooled into the residual, which they are then tested against.
 * With one reading in each cell the interaction cannot be told from the
 * residual and is pooled whatever is asked for.
 *
 * @param response The readings.
 * @param first One factor.
 * @param second The other.
 * @param interaction `"separate"` or `"pooled"` into the residual.
 * @returns The table; sources are the factors, `"interaction"` where it is
 * separate, and `"residual"`.
 * @throws {RangeError} If there is no reading, lengths differ, a reading is not
 * finite, or cells are missing or differ in size.
 *
 * @see D. C. Montgomery, Design and Analysis of Experiments, two-factor random
 * model.
 *
 * @example
 * ```ts
 * import { crossedAnova } from "sagbook/statistics/crossed_anova.ts";
 * import { equal } from "node:assert/strict";
 *
 * const table = crossedAnova(
 *   [1, 2, 3, 4],
 *   { name: "surface", labels: ["a", "a", "b", "b"] },
 *   { name: "operator", labels: [1, 2, 1, 2] },
 *   "separate",
 * );
 * equal(table.interaction, false);
 * equal(table.sources[0].sumOfSquares, 4);
 * ```
 */
export function crossedAnova(
  response: readonly number[],
  first: RandomFactor,
  second: RandomFactor,
  interaction: "separate" | "pooled",
): CrossedAnova {
  const action = "analyse a crossed design";
  requireLength(response.length, 1, action, "readings");
  requireAllFinite(response, action, "reading");
  const n = response.length;
  for (const { name, labels } of [first, second]) {
    if (labels.length !== n) {
      throw new RangeError(
        `Cannot ${action} as factor ${name} must have one label for each of ${n} readings: current value is ${labels.length}`,
      );
    }
  }
  const shifted = lessFirst(response);
  const rows = groupPositions(first.labels);
  const columns = groupPositions(second.labels);
  const cells = groupPositions(
    Array.from(
      shifted,
      (_, i) =>
        JSON.stringify([String(first.labels[i]), String(second.labels[i])]),
    ),
  );
  const [a, b] = [rows.size, columns.size];
  const repeats = n / (a * b);
  for (const [cell, positions] of cells) {
    if (positions.length !== repeats) {
      throw new RangeError(
        `Cannot ${action} as every cell must have the same number of readings: current values are ${positions.length} in ${cell} and others`,
      );
    }
  }
  if (cells.size !== a * b) {
    throw new RangeError(
      `Cannot ${action} as every level of ${first.name} must meet every level of ${second.name}: current value is ${cells.size} of ${
        a * b
      } cells`,
    );
  }
  const grand = meanAt(shifted, [...shifted.keys()]);
  const [ofRow, ofColumn, ofCell] = [rows, columns, cells].map((groups) => {
    const means = new Float64Array(n);
    for (const positions of groups.values()) {
      const mean = meanAt(shifted, positions);
      for (const i of positions) means[i] = mean;
    }
    return means;
  });
  let [rowSum, columnSum, crossSum, residualSum] = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    rowSum += (ofRow[i] - grand) ** 2;
    columnSum += (ofColumn[i] - grand) ** 2;
    crossSum += (ofCell[i] - ofRow[i] - ofColumn[i] + grand) ** 2;
    residualSum += (shifted[i] - ofCell[i]) ** 2;
  }
  const separate = interaction === "separate" && repeats > 1;
  const crossDof = (a - 1) * (b - 1);
  const cross: Record<string, number> = separate
    ? { interaction: repeats }
    : {};
  const against = separate ? "interaction" : "residual";
  const plain: PlainSource[] = [
    {
      name: first.name,
      dof: a - 1,
      sumOfSquares: rowSum,
      expected: { residual: 1, ...cross, [first.name]: b * repeats },
      against,
    },
    {
      name: second.name,
      dof: b - 1,
      sumOfSquares: columnSum,
      expected: { residual: 1, ...cross, [second.name]: a * repeats },
      against,
    },
    ...(separate
      ? [{
        name: "interaction",
        dof: crossDof,
        sumOfSquares: crossSum,
        expected: { residual: 1, ...cross },
        against: "residual",
      }]
      : []),
    {
      name: "residual",
      dof: n - a * b + (separate ? 0 : crossDof),
      sumOfSquares: residualSum + (separate ? 0 : crossSum),
      expected: { residual: 1 },
    },
  ];
  const sources = testSources(plain);
  const base = sources[2];
  const residual = sources[sources.length - 1];
  return {
    observations: n,
    grandMean: response[0] + grand,
    sources,
    total: {
      dof: n - 1,
      sumOfSquares: rowSum + columnSum + crossSum + residualSum,
    },
    components: present([
      momentComponent(first.name, [
        [1 / (b * repeats), sources[0]],
        [-1 / (b * repeats), base],
      ]),
      momentComponent(second.name, [
        [1 / (a * repeats), sources[1]],
        [-1 / (a * repeats), base],
      ]),
      separate
        ? momentComponent("interaction", [
          [1 / repeats, base],
          [-1 / repeats, residual],
        ])
        : undefined,
      momentComponent("residual", [[1, residual]]),
    ]),
    firstLevels: a,
    secondLevels: b,
    repeats,
    interaction: separate,
  };
}
