/**
 * Small algebra of the shape of a surface.
 *
 * @module
 */

/** Takes the sphere that fits best over the area off heights on even nodes. */
export function leastSphere(
  nodes: number,
): (heights: ArrayLike<number>) => Float64Array {
  const u = Float64Array.from({ length: nodes }, (_, k) => k / (nodes - 1));
  // Weight of a ring: its area; the outermost node has but half a ring.
  const area = u.map((one, k) => k === nodes - 1 ? one / 2 : one);
  const mean = (values: (k: number) => number): number => {
    let [sum, all] = [0, 0];
    area.forEach((weight, k) => {
      sum += weight * values(k);
      all += weight;
    });
    return sum / all;
  };
  const middle = mean((k) => u[k] ** 2);
  const spread = mean((k) => (u[k] ** 2 - middle) ** 2);
  return (heights) => {
    const level = mean((k) => heights[k]);
    const slope = mean((k) => heights[k] * (u[k] ** 2 - middle)) / spread;
    return u.map((one, k) => heights[k] - level - slope * (one ** 2 - middle));
  };
}

/** Cholesky's factor of a matrix that is positive, noise being in it. */
export function lowerFactor(
  matrix: readonly ArrayLike<number>[],
): Float64Array[] {
  const size = matrix.length;
  const factor = matrix.map(() => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i][j];
      for (let k = 0; k < j; k++) rest -= factor[i][k] * factor[j][k];
      factor[i][j] = i === j
        ? Math.sqrt(Math.max(rest, 1e-14 * matrix[i][i]))
        : rest / factor[j][j];
    }
  }
  return factor;
}

/** Solves L x = b. */
export function solveLower(
  factor: readonly Float64Array[],
  right: ArrayLike<number>,
): Float64Array {
  const x = new Float64Array(factor.length);
  for (let i = 0; i < x.length; i++) {
    let rest = right[i];
    for (let k = 0; k < i; k++) rest -= factor[i][k] * x[k];
    x[i] = rest / factor[i][i];
  }
  return x;
}
