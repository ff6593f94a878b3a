/**
 * What a calibration says of a ring, and how two of them compare.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { subtractEstimates } from "../statistics/estimate_arithmetic.ts";
import { expandUncertainty } from "../statistics/estimate_uncertainty.ts";
import type { BudgetLine } from "./budget.ts";

/** A ring's foot circle and ball as measured. */
export interface RingCalibration {
  /** The ring's id. */
  readonly ring: string;
  /** How it was measured. */
  readonly method: "spacings" | "surfaces";
  /** Radius of the foot circle in mm, shared parts by id. */
  readonly circleRadius: Estimate;
  /** Combined standard uncertainty of it in mm. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; `Infinity` where all is known. */
  readonly dof: number;
  /** Coverage factor at 95 %. */
  readonly factor: number;
  /** Expanded uncertainty of the radius in mm, 95 %. */
  readonly expanded: number;
  /** Where the uncertainty comes from, in mm of foot circle radius. */
  readonly lines: readonly BudgetLine[];
  /** Radius of the balls in mm that goes with it. */
  readonly ballRadius: number;
  /** Its standard uncertainty in mm. */
  readonly ballRadiusUncertainty: number;
}

/** How two calibrations of one ring, or of a ring and its twin, differ. */
export interface CalibrationComparison {
  /** First radius less second, in mm. */
  readonly difference: number;
  /** Expanded uncertainty of the difference in mm, 95 %. */
  readonly expanded: number;
  /** Size of the difference over its expanded uncertainty. */
  readonly normalisedError: number;
  /** Whether that is at most 1. */
  readonly agree: boolean;
  /** Change of a radius of curvature for this difference, as a fraction. */
  readonly relativeChangeOfR: number;
  /** Ids of the sources both share, taken off before squaring. */
  readonly shared: readonly string[];
}

/**
 * Compares two calibrations: a ring before and after, or a ring and its twin.
 *
 * E_n with what both share (the caliper's scale, a test plate) taken off by
 * its sign first.
 *
 * @param first A calibration.
 * @param second Another one.
 * @returns The difference, E_n, and what it would do to R (2 Δr/r).
 * @throws {RangeError} If neither carries an uncertainty of its own.
 *
 * @see ISO 13528:2022, 9.7 (E_n scores); JCGM 100:2008, 5.2.2.
 *
 * @example A ring and its twin, both against one plate
 * ```ts
 * import { compareCalibrations } from "sagbook/uncertainty/ring_calibration.ts";
 * import { equal } from "node:assert/strict";
 *
 * const twin = (value: number) => ({
 *   circleRadius: { value, own: 0.003, dof: Infinity, common: { plate: 0.02 } },
 * });
 * const found = compareCalibrations(twin(60.011), twin(60.001));
 * equal(found.agree, false);
 * equal(found.normalisedError.toFixed(2), "1.20");
 * ```
 */
export function compareCalibrations(
  first: Pick<RingCalibration, "circleRadius">,
  second: Pick<RingCalibration, "circleRadius">,
): CalibrationComparison {
  const [a, b] = [first.circleRadius, second.circleRadius];
  const apart = subtractEstimates(a, b);
  const { expanded } = expandUncertainty(apart);
  if (!(expanded > 0)) {
    throw new RangeError(
      `Cannot compare calibrations as their difference must have an uncertainty above 0 mm: current value is ${expanded} mm`,
    );
  }
  const normalisedError = Math.abs(apart.value) / expanded;
  return {
    difference: apart.value,
    expanded,
    normalisedError,
    agree: normalisedError <= 1,
    relativeChangeOfR: 2 * apart.value / b.value,
    shared: Object.keys(a.common).filter((id) =>
      a.common[id] !== 0 && (b.common[id] ?? 0) !== 0
    ),
  };
}

/**
 * How a stated foot circle radius compares with a measured one.
 *
 * `diameter for radius` and `spacing for radius`: the stated figure is twice
 * or √3 times the measured one, within 2 %.
 */
export type StatedRadiusVerdict =
  | "agrees"
  | "differs"
  | "diameter for radius"
  | "spacing for radius";

/**
 * Judges the foot circle radius in the bench file by a calibration.
 *
 * @param stated Radius stated, in mm.
 * @param statedUncertainty Its standard uncertainty in mm, at least 0.
 * @param calibration The calibration.
 * @returns Whether they agree within both uncertainties (95 %), or the usual
 * slip that explains why not.
 *
 * @example
 * ```ts
 * import { judgeStatedRadius } from "sagbook/uncertainty/ring_calibration.ts";
 * import { equal } from "node:assert/strict";
 *
 * const circleRadius = { value: 60.01, own: 0.02, dof: Infinity, common: {} };
 * equal(judgeStatedRadius(120, 0.05, { circleRadius }), "diameter for radius");
 * equal(judgeStatedRadius(60, 0.05, { circleRadius }), "agrees");
 * ```
 */
export function judgeStatedRadius(
  stated: number,
  statedUncertainty: number,
  calibration: Pick<RingCalibration, "circleRadius">,
): StatedRadiusVerdict {
  const { value } = calibration.circleRadius;
  const ratio = stated / value;
  if (Math.abs(ratio / 2 - 1) < 0.02) return "diameter for radius";
  if (Math.abs(ratio / Math.sqrt(3) - 1) < 0.02) return "spacing for radius";
  const { expanded } = expandUncertainty(
    subtractEstimates(
      { value: stated, own: statedUncertainty, dof: Infinity, common: {} },
      calibration.circleRadius,
    ),
  );
  return Math.abs(stated - value) <= expanded ? "agrees" : "differs";
}
