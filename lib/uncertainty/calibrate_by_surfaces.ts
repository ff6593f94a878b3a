/**
 * A ring's foot circle from readings on surfaces of known radius.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import { circleRadiusFromSurface } from "../geometry/ring_from_surface.ts";
import { chiSquareProbability } from "../statistics/chi_square_distribution.ts";
import { millimetres } from "../units/length.ts";
import { calibrationOf } from "./_calibration_of.ts";
import { flatCurvatureLimit } from "./_radius_terms.ts";
import { fitSurfaces } from "./_fit_surfaces.ts";
import { checkedSurfaces, type ReadSurface } from "./_read_surfaces.ts";
import type { BudgetLine } from "./budget.ts";
import type { SurfaceMeasurement } from "./known_surface.ts";
import type { RingCalibration } from "./ring_calibration.ts";

/** A calibration on known surfaces, with what the fit itself says. */
export interface SurfaceCalibration extends RingCalibration {
  /** Reading less fitted sag on each surface, in mm. */
  readonly residuals: readonly {
    /** The surface's name. */
    readonly surface: string;
    /** Mean reading less fitted sag, in mm. */
    readonly residual: number;
    /** Standard uncertainty of the residual's own part, in mm. */
    readonly standardUncertainty: number;
  }[];
  /** Weighted sum of squares, its degrees of freedom, and the chance of more. */
  readonly agreement: {
    /** Weighted sum of squared residuals. */
    readonly chiSquare: number;
    /** Surfaces less fitted quantities. */
    readonly dof: number;
    /** Chance of a larger sum if all is as stated; 1 without surplus. */
    readonly probability: number;
  };
  /** Whether the ball radius was fitted along, and what the surfaces say of it. */
  readonly ball: {
    /** True when the surfaces know the ball better than the micrometer does. */
    readonly freed: boolean;
    /** Ball radius the surfaces alone would give, in mm, where they can. */
    readonly bySurfaces?: number;
    /** Its standard uncertainty in mm. */
    readonly bySurfacesUncertainty?: number;
    /** False when that contradicts the micrometer (95 %). */
    readonly consistent: boolean;
  };
  /**
   * Surfaces that would fit the expected radius if they curved the other way,
   * with the radius they would then give in mm.
   */
  readonly suspectedForm: readonly {
    /** The surface's name. */
    readonly surface: string;
    /** Foot circle radius if it curved the other way, in mm. */
    readonly radiusIfOther: number;
  }[];
}

/**
 * Finds a ring's foot circle from one or several known surfaces.
 *
 * On each surface `r² = 2 s q − s²` with q the radius of the ball centres'
 * sphere. Several are joined by weighted least squares in sag. The ball radius
 * comes from a micrometer; it is fitted along only when the surfaces alone
 * would know it better than the micrometer does, which is rare: at 1 µm of sag
 * a pair knows it to 3.5 mm at R = 3000 and to 0.03 mm at R = 300. What they
 * would give is in `ball` as a check.
 *
 * Errors of the gauge's scale, the flat, the ball and each surface's own
 * radius keep their ids: they do not average out between surfaces. Without a
 * stated repeatability the scatter is pooled over all surfaces.
 *
 * @param measurement Surfaces with readings; gauge, flat and ball.
 * @returns Radius, uncertainty, residuals and checks, in mm.
 * @throws {RangeError} If a radius or a sag is not above 0 (a radius carries
 * no sign here), a sag does not fit its surface, or nothing tells the scatter.
 *
 * @see JCGM 100:2008, 5 and H.3; ISO/TS 28037:2010 on weighted fits (from
 * memory).
 *
 * @example
 * ```ts
 * import { calibrateBySurfaces } from "sagbook/uncertainty/calibrate_by_surfaces.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { circleRadius, ball } = calibrateBySurfaces({
 *   ring: "A",
 *   surfaces: [{
 *     id: "P1", form: "concave", radius: mm(1500), radiusUncertainty: mm(0.5),
 *     sags: [mm(1.2345), mm(1.2345)],
 *   }],
 *   ballRadius: mm(6.35),
 *   ballRadiusUncertainty: mm(0.001),
 *   repeatability: { standardDeviation: 0.0005 },
 * });
 * equal(circleRadius.value.toFixed(6), "60.714890");
 * equal(ball.freed, false);
 * ```
 */
export function calibrateBySurfaces(
  measurement: SurfaceMeasurement,
): SurfaceCalibration {
  const { ring, gauge, flat, ballRadiusUncertainty } = measurement;
  const { surfaces, scatterDof } = checkedSurfaces(measurement);
  const alone = fitSurfaces(surfaces, measurement.ballRadius, "free");
  const freed = alone !== undefined && ballRadiusUncertainty > 0 &&
    alone.ballUncertainty < ballRadiusUncertainty;
  const joined = fitSurfaces(
    surfaces,
    measurement.ballRadius,
    freed ? ballRadiusUncertainty : "held",
  );
  if (joined === undefined) {
    throw new RangeError(
      "Cannot calibrate a ring as the surfaces must determine its circle: current value is an undetermined fit",
    );
  }
  const { circle, gain } = joined;
  const part = (
    source: string,
    unit: string,
    standardUncertainty: number,
    sensitivity: number,
    more: { dof?: number; common?: string; rectangular?: boolean } = {},
  ): Omit<BudgetLine, "share"> => ({
    source,
    unit,
    value: 0,
    distribution: more.rectangular ? "rectangular" : "normal",
    standardUncertainty,
    dof: more.dof ?? Infinity,
    sensitivity,
    contribution: sensitivity * standardUncertainty,
    ...(more.common === undefined ? {} : { common: more.common }),
  });
  const along = (effect: (surface: ReadSurface) => number): number =>
    surfaces.reduce((sum, surface, i) => sum + gain[i] * effect(surface), 0);
  const parts: Omit<BudgetLine, "share">[] = [];
  surfaces.forEach((surface, i) => {
    const { id, scatter, rounding } = surface;
    const more = { dof: scatterDof };
    parts.push(part(`readings on ${id}`, "mm", scatter, gain[i], more));
    if (rounding > 0) {
      const flatTop = { rectangular: true };
      parts.push(part(`display on ${id}`, "mm", rounding, gain[i], flatTop));
    }
    const common = `plate ${id} radius`;
    const perRadius = -gain[i] * surface.sagPerRadius(circle);
    const u = surface.radiusUncertainty;
    parts.push(part(`radius of ${id}`, "mm", u, perRadius, { common }));
  });
  if (gauge) {
    const common = `gauge ${gauge.id} scale`;
    const effect = along((surface) => surface.sag);
    parts.push(
      part("gauge scale", "", gauge.scaleUncertainty, effect, { common }),
    );
  }
  const limit = flatCurvatureLimit(flat, circle);
  if (flat !== undefined && limit !== undefined) {
    const effect = along(({ sign }) => sign * circle * circle / 2);
    parts.push(
      part("reference flat", "1/mm", limit / Math.sqrt(3), effect, {
        common: `flat ${flat.id} curvature`,
        rectangular: true,
      }),
    );
  }
  const common = `ring ${ring} ball`;
  parts.push(
    part("ball radius", "mm", ballRadiusUncertainty, joined.perBall, {
      common,
    }),
  );
  const { ball, ballUncertainty, residuals } = joined;
  const fromPrior = freed
    ? ((ball - measurement.ballRadius) / ballRadiusUncertainty) ** 2
    : 0;
  const chiSquare = residuals.reduce(
    (sum, { residual, total }) => sum + (residual / total) ** 2,
    fromPrior,
  );
  const dof = surfaces.length - 1; // a freed ball brings its prior along
  return {
    ...calibrationOf(
      {
        ring,
        method: "surfaces",
        ballRadius: ball,
        ballRadiusUncertainty: freed ? ballUncertainty : ballRadiusUncertainty,
      },
      circle,
      parts.filter((line) => line.contribution !== 0),
    ),
    residuals: residuals.map(({ residual, own }, i) => ({
      surface: surfaces[i].id,
      residual,
      standardUncertainty: own,
    })),
    agreement: {
      chiSquare,
      dof,
      probability: dof < 1 ? 1 : chiSquareProbability(chiSquare, dof, "upper"),
    },
    ball: {
      freed,
      ...(alone === undefined ? {} : {
        bySurfaces: alone.ball,
        bySurfacesUncertainty: alone.ballUncertainty,
      }),
      consistent: alone === undefined ||
        Math.abs(alone.ball - measurement.ballRadius) <=
          1.96 * Math.hypot(alone.ballUncertainty, ballRadiusUncertainty),
    },
    suspectedForm: suspects(measurement, surfaces),
  };
}

function suspects(
  { expectedRadius, ballRadius }: SurfaceMeasurement,
  surfaces: readonly ReadSurface[],
): { surface: string; radiusIfOther: number }[] {
  if (expectedRadius === undefined) return [];
  const { value, standardUncertainty } = expectedRadius;
  return surfaces.flatMap((surface) => {
    const { id, sag, radius, form, radiusUncertainty } = surface;
    const other: SurfaceForm = form === "concave" ? "convex" : "concave";
    const asStated = surface.circle(ballRadius);
    const radiusIfOther = circleRadiusFromSurface(
      millimetres(sag),
      millimetres(radius),
      ballRadius,
      other,
    );
    const perSag = 1 / surface.sagPerCircle(asStated, ballRadius);
    const allowed = 2 * Math.hypot(
      standardUncertainty,
      perSag * Math.hypot(surface.scatter, surface.rounding),
      perSag * surface.sagPerRadius(asStated) * radiusUncertainty,
    );
    const fits = Math.abs(radiusIfOther - value) <= allowed;
    return fits && Math.abs(asStated - value) > allowed
      ? [{ surface: id, radiusIfOther }]
      : [];
  });
}
