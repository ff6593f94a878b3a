/**
 * Draws of a model's inputs, block by block.
 *
 * @module
 */
import { cholesky } from "../numerics/matrix.ts";
import type { Random } from "../numerics/random.ts";
import type { Model } from "./_derivatives.ts";
import { standardDeviationOf, type UncertainInput } from "./distribution.ts";

/** Draws worked on at a time: all columns together stay in the cache. */
const ROWS = 2048;

/** Fills a column with standardised errors of one distribution. */
type Filler = (column: Float64Array) => void;

/** Makes a function that fills `results` with the model's values of draws. */
export function sampler(
  model: Model,
  inputs: readonly UncertainInput[],
  random: Random,
  correlation?: readonly (readonly number[])[],
): (results: Float64Array) => void {
  const scales = inputs.map(drawScale);
  const vary = inputs.map((_, i) => i).filter((i) => scales[i] > 0);
  const fillers = vary.map((i) => filler(inputs[i], random.fork(i)));
  const root = correlation && correlatedRoot(inputs, vary, correlation);
  const index = Int32Array.from(vary);
  const centre = Float64Array.from(vary, (i) => inputs[i].value);
  const scale = Float64Array.from(vary, (i) => scales[i]);
  vary.forEach((i, k) => {
    if (inputs[i].distribution.kind !== "rectangular") return;
    centre[k] -= scale[k]; // uniform numbers run from 0, not from -1
    scale[k] *= 2;
  });
  const point = Float64Array.from(inputs, (input) => input.value);
  const columns = new Float64Array(ROWS * vary.length);
  return (results) => {
    for (let start = 0; start < results.length; start += ROWS) {
      const rows = Math.min(ROWS, results.length - start);
      fillers.forEach((fill, k) =>
        fill(columns.subarray(k * ROWS, k * ROWS + rows))
      );
      if (root) mix(columns, rows, root);
      for (let row = 0; row < rows; row++) {
        for (let k = 0, at = row; k < index.length; k++, at += ROWS) {
          point[index[k]] = centre[k] + scale[k] * columns[at];
        }
        results[start + row] = model(point);
      }
    }
  };
}

/** The factor from a standardised draw to the input's unit. */
function drawScale({ distribution }: UncertainInput): number {
  standardDeviationOf(distribution); // refuses negative widths
  return distribution.kind === "normal"
    ? distribution.standardDeviation
    : distribution.kind === "student"
    ? distribution.scale
    : distribution.halfWidth;
}

function filler({ distribution }: UncertainInput, random: Random): Filler {
  switch (distribution.kind) {
    case "normal":
      return (column) => random.fillNormal(column);
    case "rectangular":
      return (column) => random.fillUniform(column);
    case "triangular":
      return (column) => {
        random.fillUniform(column);
        for (let i = 0; i < column.length; i++) {
          const u = column[i];
          column[i] = u < 0.5
            ? Math.sqrt(2 * u) - 1
            : 1 - Math.sqrt(2 * (1 - u));
        }
      };
    case "arcsine":
      return (column) => {
        random.fillUniform(column);
        for (let i = 0; i < column.length; i++) {
          column[i] = Math.sin(2 * Math.PI * column[i]);
        }
      };
    case "student": {
      const { dof } = distribution;
      if (!Number.isFinite(dof)) return (column) => random.fillNormal(column);
      const squares = chiSquares(dof, random);
      const below = new Float64Array(ROWS);
      return (column) => {
        random.fillNormal(column);
        squares(below.subarray(0, column.length));
        for (let i = 0; i < column.length; i++) {
          column[i] *= Math.sqrt(dof / below[i]);
        }
      };
    }
  }
}

/** Most degrees of freedom for which uniforms are multiplied up. */
const FEW = 12;

/**
 * Fills columns from the chi-square distribution.
 *
 * Two degrees of freedom are −2 ln U, one is a normal squared; a few whole
 * ones are their sum, with one logarithm for the product of the uniforms.
 */
function chiSquares(dof: number, random: Random): Filler {
  if (!(dof <= FEW && Number.isInteger(dof))) {
    return (column) => {
      for (let i = 0; i < column.length; i++) {
        column[i] = 2 * gamma(dof / 2, random);
      }
    };
  }
  const factor = new Float64Array(ROWS);
  return (column) => {
    const next = factor.subarray(0, column.length);
    column.fill(1);
    for (let left = dof; left > 1; left -= 2) {
      random.fillUniform(next);
      for (let i = 0; i < column.length; i++) column[i] *= next[i];
    }
    for (let i = 0; i < column.length; i++) {
      column[i] = -2 * Math.log(column[i]);
    }
    if (dof % 2 === 0) return;
    random.fillNormal(next);
    for (let i = 0; i < column.length; i++) column[i] += next[i] * next[i];
  };
}

/**
 * Draws from the gamma distribution of scale 1.
 *
 * @see Marsaglia and Tsang, "A simple method for generating gamma variables",
 * ACM Transactions on Mathematical Software 26(3), 2000.
 */
function gamma(shape: number, random: Random): number {
  if (shape < 1) {
    return gamma(shape + 1, random) * random.uniform() ** (1 / shape);
  }
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = random.normal();
    const t = 1 + c * x;
    if (t <= 0) continue;
    const v = t * t * t;
    const u = random.uniform();
    const square = x * x;
    if (u < 1 - 0.0331 * square * square) return d * v;
    if (Math.log(u) < square / 2 + d * (1 - v + Math.log(v))) return d * v;
  }
}

function correlatedRoot(
  inputs: readonly UncertainInput[],
  vary: readonly number[],
  correlation: readonly (readonly number[])[],
): number[][] {
  const other = vary.find((i) =>
    inputs[i].distribution.kind !== "normal" &&
    vary.some((j) => j !== i && correlation[i][j] !== 0)
  );
  if (other !== undefined) {
    throw new RangeError(
      `Cannot draw correlated inputs as they must be normal: current value of ${
        inputs[other].source
      } is ${inputs[other].distribution.kind}`,
    );
  }
  return cholesky(vary.map((i) => vary.map((j) => correlation[i][j])));
}

/** Turns independent columns into correlated ones, from the last backwards. */
function mix(
  columns: Float64Array,
  rows: number,
  root: readonly (readonly number[])[],
): void {
  for (let row = 0; row < rows; row++) {
    for (let k = root.length - 1; k >= 0; k--) {
      let sum = 0;
      for (let j = 0; j <= k; j++) sum += root[k][j] * columns[j * ROWS + row];
      columns[k * ROWS + row] = sum;
    }
  }
}
