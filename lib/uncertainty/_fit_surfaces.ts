/**
 * Least squares for a foot circle, and a ball, on known surfaces.
 *
 * @module
 */
import { leastSquares } from "../numerics/least_squares.ts";
import type { ReadSurface } from "./_read_surfaces.ts";

/** Circle and ball that fit the surfaces best, and what moves them. */
export interface SurfaceFit {
  readonly circle: number;
  readonly ball: number;
  readonly ballUncertainty: number;
  /** Change of the circle per unit of each surface's mean sag. */
  readonly gain: readonly number[];
  /** Change of the circle per unit of the ball radius put in. */
  readonly perBall: number;
  readonly residuals: readonly {
    residual: number;
    own: number;
    total: number;
  }[];
}

/**
 * Gauss and Newton on circle and ball: the ball held, free, or drawn to its
 * prior of the given uncertainty. Undefined when the two cannot be told apart.
 */
export function fitSurfaces(
  surfaces: readonly ReadSurface[],
  prior: number,
  ballIs: "held" | "free" | number,
): SurfaceFit | undefined {
  if (ballIs === "free" && surfaces.length < 2) return undefined;
  const held = ballIs === "held";
  let circle = surfaces[0].circle(prior);
  let ball = prior;
  for (let round = 0;; round++) {
    const totals = surfaces.map((
      { scatter, rounding, radiusUncertainty, ...s },
    ) =>
      Math.hypot(scatter, rounding, s.sagPerRadius(circle) * radiusUncertainty)
    );
    const residual = surfaces.map((surface) =>
      surface.sag - surface.sagOf(circle, ball)
    );
    const design = surfaces.map((surface, i) => {
      const perCircle = surface.sagPerCircle(circle, ball) / totals[i];
      const perBall = surface.sagPerBall(circle, ball) / totals[i];
      return held ? [perCircle] : [perCircle, perBall];
    });
    const target = residual.map((value, i) => value / totals[i]);
    if (typeof ballIs === "number") {
      design.push([0, 1 / ballIs]);
      target.push((prior - ball) / ballIs);
    }
    let step;
    try {
      step = leastSquares(design, target);
    } catch {
      return undefined; // the surfaces are too much alike to tell the ball
    }
    const [change, ballChange = 0] = step.coefficients;
    circle += change;
    ball += ballChange;
    const done = Math.abs(change) + Math.abs(ballChange) < 1e-12 * circle;
    if (!done && round < 50) continue;
    const inverse = step.inverseNormal;
    const gainOf = (row: readonly number[], scale: number): number =>
      row.reduce((sum, x, k) => sum + inverse[0][k] * x, 0) * scale;
    const gain = surfaces.map((_, i) => gainOf(design[i], 1 / totals[i]));
    const perBall = held
      ? -surfaces.reduce(
        (sum, surface, i) => sum + gain[i] * surface.sagPerBall(circle, ball),
        0,
      )
      : typeof ballIs === "number"
      ? gainOf([0, 1 / ballIs], 1 / ballIs)
      : 0;
    return {
      circle,
      ball,
      ballUncertainty: held ? 0 : Math.sqrt(inverse[1][1]),
      gain,
      perBall,
      residuals: surfaces.map(({ scatter, rounding }, i) => ({
        residual: residual[i],
        own: Math.hypot(scatter, rounding),
        total: totals[i],
      })),
    };
  }
}
