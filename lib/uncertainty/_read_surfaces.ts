/**
 * Known surfaces, checked and made ready for a fit.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { circleRadiusFromSurface } from "../geometry/ring_from_surface.ts";
import { millimetres } from "../units/length.ts";
import type { KnownSurface, SurfaceMeasurement } from "./known_surface.ts";

/** One surface as the fit needs it; lengths in mm. */
export interface ReadSurface {
  readonly id: string;
  readonly form: SurfaceForm;
  /** 1 on concave, −1 on convex. */
  readonly sign: 1 | -1;
  readonly radius: number;
  readonly radiusUncertainty: number;
  /** Mean sag. */
  readonly sag: number;
  /** Standard error of the mean sag from scatter. */
  readonly scatter: number;
  /** Standard uncertainty from rounding, of reading and zero together. */
  readonly rounding: number;
  /** Foot circle that this surface alone gives. */
  circle(ball: number): number;
  sagOf(circle: number, ball: number): number;
  sagPerCircle(circle: number, ball: number): number;
  sagPerBall(circle: number, ball: number): number;
  sagPerRadius(circle: number): number;
}

/** Refuses what cannot be, pools the scatter, prepares each surface. */
export function checkedSurfaces(
  measurement: SurfaceMeasurement,
): { surfaces: readonly ReadSurface[]; scatterDof: number } {
  const { surfaces, repeatability, step = 0, roundingShare = 1 } = measurement;
  if (surfaces.length === 0) {
    throw new RangeError(
      "Cannot calibrate a ring as there must be at least one known surface: current value is 0",
    );
  }
  surfaces.forEach(refuse);
  const { deviation, dof } = repeatability === undefined ? pooled(surfaces) : {
    deviation: repeatability.standardDeviation,
    dof: repeatability.dof ?? Infinity,
  };
  if (!(deviation >= 0) || !(dof > 0)) {
    throw new RangeError(
      "Cannot calibrate a ring as its scatter must be known, from a surface read twice or a stated repeatability: current value is one reading a surface",
    );
  }
  const rounding = step * roundingShare / Math.sqrt(6);
  return {
    surfaces: surfaces.map((surface) =>
      prepared(surface, deviation, rounding, measurement.ballRadius)
    ),
    scatterDof: dof,
  };
}

function refuse({ id, radius, sags, radiusUncertainty }: KnownSurface): void {
  if (!(radius > 0)) {
    throw new RangeError(
      `Cannot calibrate a ring as the radius of surface ${id} must be above 0 mm, its form saying concave or convex: current value is ${radius} mm`,
    );
  }
  if (!(radiusUncertainty >= 0)) {
    throw new RangeError(
      `Cannot calibrate a ring as the uncertainty of surface ${id} must be at least 0 mm: current value is ${radiusUncertainty} mm`,
    );
  }
  if (sags.length === 0) {
    throw new RangeError(
      `Cannot calibrate a ring as surface ${id} must have at least one reading: current value is 0`,
    );
  }
  for (const sag of sags) {
    if (!(sag > 0)) {
      throw new RangeError(
        `Cannot calibrate a ring as every sag on surface ${id} must be above 0 mm, counted for its form: current value is ${sag} mm`,
      );
    }
  }
}

function pooled(
  surfaces: readonly KnownSurface[],
): { deviation: number; dof: number } {
  let [squares, dof] = [0, 0];
  for (const { sags } of surfaces) {
    const mean = average(sags);
    for (const sag of sags) squares += (sag - mean) ** 2;
    dof += sags.length - 1;
  }
  return { deviation: Math.sqrt(squares / dof), dof };
}

const average = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function prepared(
  surface: KnownSurface,
  deviation: number,
  rounding: number,
  ballRadius: number,
): ReadSurface {
  const { id, form, radius, radiusUncertainty, sags } = surface;
  const sign = form === "concave" ? 1 : -1;
  const sag = average(sags);
  const sphere = (ball: number) => radius - sign * ball;
  const sagOf = (circle: number, ball: number): number => {
    const q = sphere(ball);
    return circle * circle / (q + Math.sqrt((q - circle) * (q + circle)));
  };
  // From s (2q − s) = r²: ds/dr = r/(q − s), ds/dq = −s/(q − s).
  const perSphere = (circle: number, ball: number): number => {
    const s = sagOf(circle, ball);
    return -s / (sphere(ball) - s);
  };
  return {
    id,
    form,
    sign,
    radius,
    radiusUncertainty,
    sag,
    scatter: deviation / Math.sqrt(sags.length),
    rounding,
    circle: (ball) =>
      circleRadiusFromSurface(
        millimetres(sag),
        radius,
        millimetres(ball),
        form,
      ),
    sagOf,
    sagPerCircle: (circle, ball) =>
      circle / (sphere(ball) - sagOf(circle, ball)),
    sagPerBall: (circle, ball) => -sign * perSphere(circle, ball),
    sagPerRadius: (circle) => perSphere(circle, ballRadius),
  };
}
