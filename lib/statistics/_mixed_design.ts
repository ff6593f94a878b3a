/**
 * The sums of products that a mixed model needs of its readings.
 *
 * @module
 */
import {
  copyOf,
  dot,
  type FixedPart,
  orthonormalise,
  solveUpper,
} from "./_fixed_part.ts";
import {
  type CodedFactor,
  codeLevels,
  countMeetings,
  type Meetings,
} from "./_random_part.ts";
import { requireAllFinite } from "./_guards.ts";
import type { MixedModel } from "./mixed_model.ts";

/** Everything about a model that does not depend on its variances. */
export interface MixedDesign {
  /** Number of readings. */
  readonly observations: number;
  /** The fixed columns, made orthonormal. */
  readonly fixed: FixedPart;
  /** Coefficients of plain least squares on the independent columns. */
  readonly plainCoefficients: readonly number[];
  /** Random factors with coded levels. */
  readonly factors: readonly CodedFactor[];
  /** First node of each factor. */
  readonly offsets: readonly number[];
  /** Number of levels of all factors together. */
  readonly nodes: number;
  /** Readings of each node. */
  readonly readings: Float64Array;
  /** How often nodes of different factors meet. */
  readonly meetings: Meetings;
  /** Sum of each basis column over each node, node by node. */
  readonly basisSums: Float64Array;
  /** Sum of plain residuals over each node. */
  readonly residualSums: Float64Array;
  /** Products of basis columns and plain residuals, near 0. */
  readonly basisResiduals: Float64Array;
  /** Sum of squared plain residuals; exactly 0 if rounding explains them. */
  readonly residualSquares: number;
}

/** Checks a model and reduces its readings to sums of products. */
export function reduceModel(model: MixedModel): MixedDesign {
  const { response, fixed: columns, random } = model;
  const n = response.length;
  checkModel(model);
  const fixed = orthonormalise(columns);
  const rank = fixed.basis.length;
  const residuals = copyOf(response);
  const inBasis = new Array(rank).fill(0);
  for (let pass = 0; pass < 2; pass++) {
    fixed.basis.forEach((unit, c) => {
      const part = dot(unit, residuals);
      inBasis[c] += part;
      for (let i = 0; i < n; i++) residuals[i] -= part * unit[i];
    });
  }
  let largest = 0;
  for (let i = 0; i < n; i++) {
    largest = Math.max(largest, Math.abs(response[i]));
  }
  const squares = dot(residuals, residuals);
  const rounding = 16 * Number.EPSILON * largest;
  const factors = random.map(codeLevels);
  const offsets: number[] = [];
  let nodes = 0;
  for (const factor of factors) {
    offsets.push(nodes);
    nodes += factor.labels.length;
  }
  const readings = new Float64Array(nodes);
  const residualSums = new Float64Array(nodes);
  const basisSums = new Float64Array(nodes * rank);
  factors.forEach(({ codes }, k) => {
    const offset = offsets[k];
    for (let i = 0; i < n; i++) {
      readings[offset + codes[i]]++;
      residualSums[offset + codes[i]] += residuals[i];
    }
    fixed.basis.forEach((unit, c) => {
      for (let i = 0; i < n; i++) {
        basisSums[(offset + codes[i]) * rank + c] += unit[i];
      }
    });
  });
  return {
    observations: n,
    fixed,
    plainCoefficients: solveUpper(fixed.upper, inBasis),
    factors,
    offsets,
    nodes,
    readings,
    meetings: countMeetings(factors, offsets, nodes),
    basisSums,
    residualSums,
    basisResiduals: Float64Array.from(
      fixed.basis,
      (unit) => dot(unit, residuals),
    ),
    residualSquares: squares <= n * rounding * rounding ? 0 : squares,
  };
}

/** Refuses lists of unequal length, values that are no numbers, equal names. */
function checkModel({ response, fixed, random }: MixedModel): void {
  const action = "fit a mixed model";
  const n = response.length;
  if (n === 0) {
    throw new RangeError(
      `Cannot ${action} as there must be at least one reading: current value is 0`,
    );
  }
  requireAllFinite(response, action, "reading");
  for (const { name, values } of fixed) {
    if (values.length !== n) {
      throw new RangeError(
        `Cannot ${action} as column ${name} must have one value for each of ${n} readings: current value is ${values.length}`,
      );
    }
    requireAllFinite(values, action, `value of column ${name}`);
  }
  for (const { name, labels } of random) {
    if (labels.length !== n) {
      throw new RangeError(
        `Cannot ${action} as factor ${name} must have one label for each of ${n} readings: current value is ${labels.length}`,
      );
    }
  }
  const names = [...random.map(({ name }) => name), "residual"];
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i) {
      throw new RangeError(
        `Cannot ${action} as every factor must have a name of its own other than residual: current value is "${name}"`,
      );
    }
  });
}
