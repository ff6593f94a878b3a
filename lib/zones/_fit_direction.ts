/**
 * Least squares for a slope that depends on direction.
 *
 * @module
 */

/** The slope found along one direction. */
export interface Direction {
  /** The slope. */
  readonly slope: number;
  /** How much later in the set the plus end was read, as a slope. */
  readonly lag: number;
  /** Weight, the inverse of its variance but for a factor common to all. */
  readonly weight: number;
  /** The direction in radians. */
  readonly radians: number;
}

/** `slope = a cos θ + b sin θ`, or along one line only. */
export interface DirectionFit {
  /** 1 when all directions lie on one line, else 2. */
  readonly parameters: 1 | 2;
  readonly a: number;
  readonly b: number;
  /** Weighted sum of squared residuals. */
  readonly residual: number;
  /** Variance factor of the slope in its own direction. */
  readonly along: number;
  /** The largest variance factor over all directions. */
  readonly worst: number;
}

/** Directions as good as parallel below this. */
const PARALLEL = 1e-9;

/** Fits the slopes by weighted least squares. */
export function fitDirection(looks: readonly Direction[]): DirectionFit {
  let [xx, xy, yy, xe, ye] = [0, 0, 0, 0, 0];
  for (const { slope, weight, radians } of looks) {
    const [x, y] = [Math.cos(radians), Math.sin(radians)];
    xx += weight * x * x;
    xy += weight * x * y;
    yy += weight * y * y;
    xe += weight * x * slope;
    ye += weight * y * slope;
  }
  const total = xx + yy;
  const determinant = xx * yy - xy * xy;
  const parameters = determinant > PARALLEL * total * total ? 2 : 1;
  let [a, b, along, worst] = [0, 0, 1 / total, 1 / total];
  if (parameters === 2) {
    a = (yy * xe - xy * ye) / determinant;
    b = (xx * ye - xy * xe) / determinant;
    // Largest eigenvalue of the inverse: the inverse of the smallest.
    const spread = Math.hypot(xx - yy, 2 * xy);
    worst = (total + spread) / 2 / determinant;
    const square = a * a + b * b;
    along = square === 0
      ? worst
      : (a * a * yy - 2 * a * b * xy + b * b * xx) / determinant / square;
  } else {
    const { radians } = looks[0];
    const [x, y] = [Math.cos(radians), Math.sin(radians)];
    const slope = (xe * x + ye * y) / total;
    [a, b] = [slope * x, slope * y];
  }
  let residual = 0;
  for (const { slope, weight, radians } of looks) {
    const fitted = a * Math.cos(radians) + b * Math.sin(radians);
    residual += weight * (slope - fitted) ** 2;
  }
  return { parameters, a, b, residual, along, worst };
}
