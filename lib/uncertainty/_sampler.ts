/**
 * Draws of a model's inputs, block by block.
 *
 * @module
 */
import { cholesky } from "../numerics/matrix.ts";
import type { Random } from "../numerics/random.ts";
import type { Model } from "./_derivatives.ts";
import { standardDeviationOf, type UncertainInput } from "./distribution.ts";

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
  const point = Float64Array.from(inputs, (input) => input.value);
  let columns = new Float64Array(0);
  return (results) => {
    const rows = results.length;
    if (columns.length !== rows * vary.length) {
      columns = new Float64Array(rows * vary.length);
    }
    fillers.forEach((fill, k) =>
      fill(columns.subarray(k * rows, (k + 1) * rows))
    );
    if (root) mix(columns, rows, root);
    for (let row = 0; row < rows; row++) {
      for (let k = 0, at = row; k < index.length; k++, at += rows) {
        point[index[k]] = centre[k] + scale[k] * columns[at];
      }
      results[row] = model(point);
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
      return (column) => {
        random.fillUniform(column);
        for (let i = 0; i < column.length; i++) column[i] = 2 * column[i] - 1;
      };
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
      return (column) => {
        random.fillNormal(column);
        for (let i = 0; i < column.length; i++) {
          column[i] *= Math.sqrt(dof / (2 * gamma(dof / 2, random)));
        }
      };
    }
  }
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
      for (let j = 0; j <= k; j++) sum += root[k][j] * columns[j * rows + row];
      columns[k * rows + row] = sum;
    }
  }
}
