/**
 * Where foot 1 points, seen from the rim the gauge stands nearest to.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";
import type { FootDirection } from "./feet.ts";

/**
 * Finds the angle of foot 1 from the outward radius through the gauge.
 *
 * 0 is one foot out (it points to the nearest rim), 180 is two feet out. In
 * the work's own axes the outward radius points along `diameterDegrees`, or
 * against it where the offset is negative.
 *
 * @param foot Where foot 1 pointed.
 * @param diameterDegrees Direction of the diameter in the work's axes, in
 * degrees; needed for an angle only.
 * @param offset Signed distance of the gauge's axis along the diameter, in mm.
 * @returns Degrees in [0, 360), or `undefined` when the direction is unknown,
 * or is an angle and the diameter's direction was not recorded.
 *
 * @example The same foot at both ends of a diameter
 * ```ts
 * import { relativeFootDegrees } from "sagbook/geometry/foot_direction.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const foot = { kind: "angle", degrees: 30 } as const;
 * equal(relativeFootDegrees(foot, 30, mm(80)), 0);
 * equal(relativeFootDegrees(foot, 30, mm(-80)), 180);
 * ```
 */
export function relativeFootDegrees(
  foot: FootDirection,
  diameterDegrees: number | undefined,
  offset: Millimetres,
): number | undefined {
  switch (foot.kind) {
    case "foot out":
      return 0;
    case "feet out":
      return 180;
    case "unknown":
      return undefined;
    case "angle": {
      if (diameterDegrees === undefined) return undefined;
      const turned = foot.degrees - diameterDegrees + (offset < 0 ? 180 : 0);
      return ((turned % 360) + 360) % 360;
    }
  }
}
