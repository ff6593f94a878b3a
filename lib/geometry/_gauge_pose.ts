/** A vector in the gauge's axes, or turned into the work's. */
export type Vector = readonly [number, number, number];

/** A vector in the work's axes with its change per unit of either tilt. */
export interface TiltedVector {
  readonly at: Vector;
  readonly perTiltX: Vector;
  readonly perTiltY: Vector;
}

/**
 * Tilts a vector by the shortest turn that takes the upright axis to
 * (p, q, √(1 − p² − q²)), and finds the change with p and with q.
 */
export function tilted(vector: Vector, p: number, q: number): TiltedVector {
  const [x, y, z] = vector;
  const m = Math.sqrt(1 - p * p - q * q);
  const k = 1 / (1 + m);
  const kp = p / m * k * k;
  const kq = q / m * k * k;
  const along = p * x + q * y;
  return {
    at: [x - p * along * k + p * z, y - q * along * k + q * z, m * z - along],
    perTiltX: [
      z - along * k - p * x * k - p * along * kp,
      -q * x * k - q * along * kp,
      -x - p / m * z,
    ],
    perTiltY: [
      -p * y * k - p * along * kq,
      z - along * k - q * y * k - q * along * kq,
      -y - q / m * z,
    ],
  };
}

/** Solves three linear equations by Cramer's rule; rows as given. */
export function solveThree(
  rows: readonly [Vector, Vector, Vector],
  right: Vector,
): Vector {
  const [a, b, c] = rows;
  const cross = (u: Vector, v: Vector): Vector => [
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  ];
  const [bc, ca, ab] = [cross(b, c), cross(c, a), cross(a, b)];
  const determinant = a[0] * bc[0] + a[1] * bc[1] + a[2] * bc[2];
  const part = (i: 0 | 1 | 2) =>
    (right[0] * bc[i] + right[1] * ca[i] + right[2] * ab[i]) / determinant;
  return [part(0), part(1), part(2)];
}
