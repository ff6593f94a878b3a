/**
 * A ring's foot circle from caliper readings.
 *
 * @module
 */
import {
  circleRadiusFromSpacings,
  type Spacings,
  spacingsFromOutside,
} from "../geometry/ring_from_spacings.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { calibrationOf } from "./_calibration_of.ts";
import { budgetOf } from "./budget.ts";
import type { Distribution, UncertainInput } from "./distribution.ts";
import type { RingCalibration } from "./ring_calibration.ts";

/** Three caliper figures and what is known about them. */
export interface SpacingMeasurement {
  /** The ring's id. */
  readonly ring: string;
  /** The three figures in the order 1–2, 2–3, 3–1, each a mean, in mm. */
  readonly figures: Spacings;
  /** What was spanned: ball centres, or the outsides of the balls. */
  readonly over: "centres" | "outsides";
  /** Radius of the balls in mm. */
  readonly ballRadius: Millimetres;
  /** Its standard uncertainty in mm, from a micrometer. */
  readonly ballRadiusUncertainty: Millimetres;
  /** The caliper. */
  readonly caliper: {
    /** Its name. */
    readonly id: string;
    /** Standard uncertainty of one figure (reading and feel), in mm. */
    readonly standardUncertainty: Millimetres;
    /** Degrees of freedom of that; `Infinity` unless stated. */
    readonly dof?: number;
    /** Standard uncertainty of its scale, as a fraction; 0 unless stated. */
    readonly scaleUncertainty?: number;
  };
}

/**
 * Finds a ring's foot circle with its uncertainty from three spacings.
 *
 * Each figure's own error is independent; the caliper's scale and the balls
 * are common to all three, and keep their ids. Figures taken over the
 * outsides lose one ball diameter, which makes the circle depend on the ball:
 * 2/√3 of its error, with the opposite sign.
 *
 * @param measurement The figures and the caliper.
 * @returns Radius, uncertainty and lines, in mm.
 * @throws {RangeError} If the three make no triangle, or a figure is too small
 * for the balls.
 *
 * @see JCGM 100:2008, 5; Euclid, Elements, book IV, proposition 5.
 *
 * @example
 * ```ts
 * import { calibrateBySpacings } from "sagbook/uncertainty/calibrate_by_spacings.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { circleRadius, standardUncertainty } = calibrateBySpacings({
 *   ring: "A",
 *   figures: [mm(103.9), mm(103.95), mm(103.85)],
 *   over: "centres",
 *   ballRadius: mm(6.35),
 *   ballRadiusUncertainty: mm(0.001),
 *   caliper: { id: "C", standardUncertainty: mm(0.02) },
 * });
 * equal(circleRadius.value.toFixed(6), "59.986707");
 * // Each figure acts with 1/(3√3), three of them in quadrature: 1/3.
 * equal(standardUncertainty.toFixed(4), "0.0067");
 * ```
 */
export function calibrateBySpacings(
  measurement: SpacingMeasurement,
): RingCalibration {
  const { ring, figures, over, caliper } = measurement;
  const { ballRadius, ballRadiusUncertainty } = measurement;
  const { scaleUncertainty = 0, dof } = caliper;
  const model = (x: Float64Array): number => {
    const stretched: Spacings = [
      millimetres(x[0] * (1 + x[3])),
      millimetres(x[1] * (1 + x[3])),
      millimetres(x[2] * (1 + x[3])),
    ];
    return circleRadiusFromSpacings(
      over === "centres"
        ? stretched
        : spacingsFromOutside(stretched, millimetres(x[4])),
    );
  };
  const reading: Distribution = {
    kind: "normal",
    standardDeviation: caliper.standardUncertainty,
  };
  const inputs: UncertainInput[] = ["1–2", "2–3", "3–1"].map((pair, i) => ({
    source: `spacing ${pair}`,
    unit: "mm",
    value: figures[i],
    distribution: reading,
    ...(dof === undefined ? {} : { dof }),
  }));
  inputs.push({
    source: "scale of the caliper",
    unit: "",
    value: 0,
    distribution: { kind: "normal", standardDeviation: scaleUncertainty },
    common: `caliper ${caliper.id} scale`,
  }, {
    source: "ball radius",
    unit: "mm",
    value: ballRadius,
    distribution: { kind: "normal", standardDeviation: ballRadiusUncertainty },
    common: `ring ${ring} ball`,
  });
  const budget = budgetOf(model, inputs);
  return calibrationOf(
    { ring, method: "spacings", ballRadius, ballRadiusUncertainty },
    budget.value,
    budget.lines.filter((line) => line.contribution !== 0),
  );
}
