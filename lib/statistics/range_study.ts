/**
 * Scatter of a gauge by averages and ranges.
 *
 * @module
 */
import { groupPositions } from "./_anova_rows.ts";
import { requireAllFinite, requireLength } from "./_guards.ts";
import type { RandomFactor } from "./mixed_model.ts";
import { rangeMean, rangeMeanOfOne } from "./range_constants.ts";

/** Factors that turn mean ranges into standard deviations. */
export interface RangeFactors {
  /** For the mean range of repeats. */
  readonly repeats: number;
  /** For the range of operators' means. */
  readonly operators: number;
  /** For the range of surfaces' means. */
  readonly surfaces: number;
}

/** Standard deviations by averages and ranges. */
export interface RangeStudy {
  /** Mean range of the repeats. */
  readonly meanRange: number;
  /** Range of the operators' means. */
  readonly operatorRange: number;
  /** Range of the surfaces' means. */
  readonly surfaceRange: number;
  /** Scatter of repeats. */
  readonly repeatability: number;
  /** Scatter of operators, less what repeats put into their means. */
  readonly reproducibility: number;
  /** Both together. */
  readonly gauge: number;
  /** Scatter of the surfaces. */
  readonly surface: number;
  /** Gauge and surfaces together. */
  readonly total: number;
}

/**
 * Finds the standard deviations of a gauge study by averages and ranges.
 *
 * The way of the printed forms; it cannot see an interaction, and the analysis
 * of variance uses the readings better.
 *
 * @param response The readings, every surface read as often by every operator.
 * @param surface Surface of each reading.
 * @param operator Operator of each reading.
 * @param factors Printed factors, where a form is to be matched; by default
 * computed from the distribution of the range.
 * @returns The standard deviations.
 * @throws {RangeError} If there are fewer than two surfaces, operators or
 * repeats, cells differ in size or a reading is not finite.
 *
 * @see AIAG, Measurement Systems Analysis Reference Manual, 4th ed. (2010),
 * chapter III.
 *
 * @example
 * ```ts
 * import { rangeStudy } from "sagbook/statistics/range_study.ts";
 * import { equal } from "node:assert/strict";
 *
 * const study = rangeStudy(
 *   [10, 11, 10, 12, 20, 21, 22, 21],
 *   { name: "surface", labels: [1, 1, 1, 1, 2, 2, 2, 2] },
 *   { name: "operator", labels: ["a", "a", "b", "b", "a", "a", "b", "b"] },
 * );
 * equal(study.meanRange, 1.25);
 * ```
 */
export function rangeStudy(
  response: readonly number[],
  surface: RandomFactor,
  operator: RandomFactor,
  factors?: RangeFactors,
): RangeStudy {
  const action = "find a gauge's scatter from ranges";
  requireAllFinite(response, action, "reading");
  const surfaces = groupPositions(surface.labels);
  const operators = groupPositions(operator.labels);
  const cells = groupPositions(
    response.map((_, i) =>
      JSON.stringify([String(surface.labels[i]), String(operator.labels[i])])
    ),
  );
  const [p, o] = [surfaces.size, operators.size];
  const repeats = response.length / (p * o);
  requireLength(p, 2, action, "surfaces");
  requireLength(o, 2, action, "operators");
  for (const positions of cells.values()) {
    if (positions.length !== repeats) {
      throw new RangeError(
        `Cannot ${action} as every cell must have the same number of readings: current values are ${positions.length} and others`,
      );
    }
  }
  requireLength(repeats, 2, action, "repeats");
  const range = (values: readonly number[]) =>
    Math.max(...values) - Math.min(...values);
  const ranges = [...cells.values()].map((positions) =>
    range(positions.map((i) => response[i]))
  );
  const meansOf = (groups: Map<string, number[]>) =>
    [...groups.values()].map((positions) =>
      positions.reduce((sum, i) => sum + response[i], 0) / positions.length
    );
  const meanRange = ranges.reduce((sum, value) => sum + value, 0) /
    ranges.length;
  const operatorRange = range(meansOf(operators));
  const surfaceRange = range(meansOf(surfaces));
  const used = factors ?? {
    repeats: 1 / rangeMean(repeats),
    operators: 1 / rangeMeanOfOne(o),
    surfaces: 1 / rangeMeanOfOne(p),
  };
  const repeatability = meanRange * used.repeats;
  const reproducibility = Math.sqrt(Math.max(
    0,
    (operatorRange * used.operators) ** 2 - repeatability ** 2 / (p * repeats),
  ));
  const gauge = Math.hypot(repeatability, reproducibility);
  const ofSurface = surfaceRange * used.surfaces;
  return {
    meanRange,
    operatorRange,
    surfaceRange,
    repeatability,
    reproducibility,
    gauge,
    surface: ofSurface,
    total: Math.hypot(gauge, ofSurface),
  };
}
