/**
 * The fourth-order departure from a sphere, as surface error, as conic and as
 * a difference of sag.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * Finds the coefficient a4 of ρ⁴ that a conic has against its vertex sphere.
 *
 * `a4 = K/(8R³)`, the leading term: what is left out is of order K ρ⁶/R⁵.
 *
 * @param conic Conic constant K.
 * @param vertexRadius Vertex radius in mm, above 0.
 * @returns a4 in 1/mm³.
 *
 * @example
 * ```ts
 * import { quarticFromConic } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(quarticFromConic(-1, mm(5)), -0.001);
 * ```
 */
export function quarticFromConic(
  conic: number,
  vertexRadius: Millimetres,
): number {
  return conic / (8 * vertexRadius ** 3);
}

/**
 * Finds the conic constant whose leading term is a4 ρ⁴, `K = 8 R³ a4`.
 *
 * @param quartic a4 in 1/mm³, against the sphere of the same vertex radius.
 * @param vertexRadius Vertex radius in mm, above 0.
 * @returns The conic constant K.
 *
 * @example
 * ```ts
 * import { conicFromQuartic } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conicFromQuartic(-0.001, mm(5)), -1);
 * ```
 */
export function conicFromQuartic(
  quartic: number,
  vertexRadius: Millimetres,
): number {
  return 8 * vertexRadius ** 3 * quartic;
}

/**
 * Finds a4 from the difference of sag between an offset and the centre.
 *
 * A surface with δ = a4 ρ⁴ shows `4 a4 c² r²` more sag at offset c than at the
 * centre, whatever the direction of the feet.
 *
 * @param sagDifference Sag at the offset less sag at the centre, in mm.
 * @param offset Offset of the gauge's axis in mm, not 0.
 * @param circleRadius Foot circle radius in mm, above 0.
 * @returns a4 in 1/mm³.
 * @throws {RangeError} If the offset or the circle is 0.
 *
 * @example
 * ```ts
 * import { quarticFromSagDifference } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(quarticFromSagDifference(mm(0.0016), mm(2), mm(10)), 1e-6);
 * ```
 */
export function quarticFromSagDifference(
  sagDifference: Millimetres,
  offset: Millimetres,
  circleRadius: Millimetres,
): number {
  const lever = 4 * (offset * circleRadius) ** 2;
  if (!(lever > 0)) {
    throw new RangeError(
      `Cannot find a fourth-order term as offset and foot circle must not be 0 mm: current value is ${offset} mm and ${circleRadius} mm`,
    );
  }
  return sagDifference / lever;
}

/**
 * Finds the peak-to-valley surface error of a4 ρ⁴ against its best sphere.
 *
 * Over a disc of half diameter a the sphere that leaves the least touches the
 * centre and the rim: what remains is a4 ρ² (ρ² − a²), deepest at a/√2, and
 * `a4 a⁴/4` high.
 *
 * @param quartic a4 in 1/mm³.
 * @param halfDiameter Half the clear diameter a in mm.
 * @returns Peak to valley in mm, with the sign of a4.
 *
 * @example
 * ```ts
 * import { peakToValley } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(peakToValley(-0.001, mm(10)), -2.5);
 * ```
 */
export function peakToValley(
  quartic: number,
  halfDiameter: Millimetres,
): Millimetres {
  return millimetres(quartic * halfDiameter ** 4 / 4);
}

/**
 * Finds the factor from a difference of sag to a peak-to-valley surface error.
 *
 * `a⁴/(16 c² r²)` for the shape a4 ρ⁴; another shape has another factor. It is
 * 1 when the foot circle and the offset are both half of a.
 *
 * @param halfDiameter Half the clear diameter a in mm.
 * @param offset Offset c of the gauge's axis in mm, not 0.
 * @param circleRadius Foot circle radius r in mm, above 0.
 * @returns The factor, without a unit.
 * @throws {RangeError} If the offset or the circle is 0.
 *
 * @example
 * ```ts
 * import { surfaceErrorFactor } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(surfaceErrorFactor(mm(150), mm(75), mm(75)), 1);
 * ```
 */
export function surfaceErrorFactor(
  halfDiameter: Millimetres,
  offset: Millimetres,
  circleRadius: Millimetres,
): number {
  return peakToValley(
    quarticFromSagDifference(millimetres(1), offset, circleRadius),
    halfDiameter,
  );
}

/**
 * Finds how much longer a paraboloid reads at an offset than at its vertex.
 *
 * Against the sphere of the same vertex radius the sag falls by c² r²/(2R³),
 * so the radius read grows by `c²/R`, whatever the ring. Exact contact of
 * three 6.35 mm balls on a 60 mm circle at c = 70, R = 3000 grows 0.05 % less.
 *
 * @param offset Offset c of the gauge's axis in mm.
 * @param vertexRadius Vertex radius in mm, above 0.
 * @returns The growth in mm.
 *
 * @example
 * ```ts
 * import { paraboloidRadiusGrowth } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(paraboloidRadiusGrowth(mm(70), mm(3000)).toFixed(4), "1.6333");
 * ```
 */
export function paraboloidRadiusGrowth(
  offset: Millimetres,
  vertexRadius: Millimetres,
): Millimetres {
  return millimetres(offset * offset / vertexRadius);
}

/**
 * Finds the foot circle that shows a4 ρ⁴ best on a disc.
 *
 * The difference grows as c² r² and one foot out reaches c = a − r, so the
 * best circle has half the usable half diameter. It is not the best one for
 * the radius (the largest is), nor for a narrow fault at the edge.
 *
 * @param usableRadius Half the diameter less bevel and margin, in mm.
 * @returns The foot circle radius in mm.
 *
 * @example
 * ```ts
 * import { bestCircleForAsphericity } from "sagbook/geometry/asphericity.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(bestCircleForAsphericity(mm(150)), 75);
 * ```
 */
export function bestCircleForAsphericity(
  usableRadius: Millimetres,
): Millimetres {
  return millimetres(usableRadius / 2);
}
