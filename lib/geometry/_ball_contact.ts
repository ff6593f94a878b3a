import type { ContactSurface } from "./contact_surface.ts";

/** A ball that touches a surface from above. */
export interface BallContact {
  /** Where it touches, in mm. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Height of its centre in mm. */
  readonly centreHeight: number;
  /** Slopes of the surface there, which are those of the centre's height too. */
  readonly slopeX: number;
  readonly slopeY: number;
  /** How far the touching point misses the ball's own sideways place, in mm. */
  readonly miss: number;
}

/** More than enough where the surface curves half as sharply as the ball. */
const MOST_STEPS = 100;

/**
 * Lets a ball down on a surface, its centre held over (x, y).
 *
 * The touching point P and the centre C share a normal: C = P + b n(P). Solved
 * for P by substitution, which gains a factor b·curvature (0.002 for a 6 mm
 * ball at 3000 mm) in each step.
 */
export function ballContact(
  surface: ContactSurface,
  x: number,
  y: number,
  ballRadius: number,
): BallContact {
  let [px, py] = [x, y];
  const settled = 2e-15 * (1 + Math.abs(x) + Math.abs(y));
  for (let step = 0; step < MOST_STEPS; step++) {
    const { height, slopeX, slopeY } = surface(px, py);
    const lift = ballRadius / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
    const nextX = x + lift * slopeX;
    const nextY = y + lift * slopeY;
    const miss = Math.max(Math.abs(nextX - px), Math.abs(nextY - py));
    if (miss <= settled) {
      return {
        x: px,
        y: py,
        z: height,
        centreHeight: height + lift,
        slopeX,
        slopeY,
        miss,
      };
    }
    px = nextX;
    py = nextY;
  }
  throw new RangeError(
    `Cannot let a ball down on a surface as the surface must be there and curve less sharply than the ball of ${ballRadius} mm: current value is the place (${x}, ${y}) mm`,
  );
}
