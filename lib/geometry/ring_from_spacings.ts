/**
 * The foot circle from what a caliper gives.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";

/** Three lengths between feet, in the order 1–2, 2–3, 3–1, in mm. */
export type Spacings = readonly [Millimetres, Millimetres, Millimetres];

function checkedAscending(spacings: Spacings): [number, number, number] {
  const [short, middle, long] = spacings.toSorted((a, b) => a - b);
  if (short <= 0) {
    throw new RangeError(
      `Cannot find a foot circle as every spacing must be above 0 mm: current value is ${short} mm`,
    );
  }
  if (short + middle <= long) {
    throw new RangeError(
      `Cannot find a foot circle as the longest spacing must be below the sum of the other two, ${
        short + middle
      } mm: current value is ${long} mm`,
    );
  }
  return [short, middle, long];
}

/**
 * Finds the radius of the circle through three feet from their spacings.
 *
 * The circumradius A·B·C / (4K), with the area K by Heron's formula in the
 * order of operations that keeps its digits for thin triangles too. It holds
 * for unequal spacings, where a mean spacing over √3 does not.
 *
 * @param spacings Distances between ball centres in mm, each above 0.
 * @returns The radius in mm, within a few roundings.
 * @throws {RangeError} If a spacing is not above 0, or the three make no
 * triangle.
 *
 * @see Heron, Metrica, book I, proposition 8 (area from three sides), and
 * Euclid, Elements, book IV, proposition 5 (the circle about a triangle).
 *
 * @example Sides 3, 4 and 5 stand in a circle of radius 2.5
 * ```ts
 * import { circleRadiusFromSpacings } from "sagbook/geometry/ring_from_spacings.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(circleRadiusFromSpacings([mm(3), mm(4), mm(5)]), 2.5);
 * ```
 */
export function circleRadiusFromSpacings(spacings: Spacings): Millimetres {
  const [c, b, a] = checkedAscending(spacings);
  const sixteenAreaSquared = (a + (b + c)) * (c - (a - b)) * (c + (a - b)) *
    (a + (b - c));
  return millimetres(a * b * c / Math.sqrt(sixteenAreaSquared));
}

/**
 * Finds what the foot circle's radius would be if the spacings were equal.
 *
 * The mean spacing over √3, for comparison with `circleRadiusFromSpacings`: on
 * unequal spacings it is short, by about the variance of the spacings over
 * twice their mean.
 *
 * @param spacings Distances between ball centres in mm, each above 0.
 * @returns Mean spacing over √3, in mm.
 * @throws {RangeError} If a spacing is not above 0, or the three make no
 * triangle.
 *
 * @example
 * ```ts
 * import { equalSpacingRadius } from "sagbook/geometry/ring_from_spacings.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(equalSpacingRadius([mm(103), mm(104), mm(104.8)]).toFixed(6), "60.005938");
 * ```
 */
export function equalSpacingRadius(spacings: Spacings): Millimetres {
  const [c, b, a] = checkedAscending(spacings);
  return millimetres((a + b + c) / 3 / Math.sqrt(3));
}

/**
 * Turns caliper figures taken over the outsides of the balls into spacings.
 *
 * Outside to outside is the spacing of the centres and one ball diameter.
 *
 * @param outside Distances over the outsides of two balls, in mm.
 * @param ballRadius Radius of the balls, all alike, in mm, at least 0.
 * @returns Distances between ball centres, in mm.
 * @throws {RangeError} If the ball radius is negative, or a figure is not
 * above two ball diameters, where the balls would stand in each other.
 *
 * @example
 * ```ts
 * import { spacingsFromOutside } from "sagbook/geometry/ring_from_spacings.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const outside = [mm(109), mm(110), mm(111)] as const;
 * deepEqual(spacingsFromOutside(outside, mm(3)), [103, 104, 105]);
 * ```
 */
export function spacingsFromOutside(
  outside: Spacings,
  ballRadius: Millimetres,
): Spacings {
  if (ballRadius < 0) {
    throw new RangeError(
      `Cannot turn caliper figures into spacings as the ball radius must be at least 0 mm: current value is ${ballRadius} mm`,
    );
  }
  const diameter = 2 * ballRadius;
  const least = Math.min(...outside);
  if (least <= 2 * diameter) {
    throw new RangeError(
      `Cannot turn caliper figures into spacings as each must be above two ball diameters, ${
        2 * diameter
      } mm: current value is ${least} mm`,
    );
  }
  const [a, b, c] = outside;
  return [
    millimetres(a - diameter),
    millimetres(b - diameter),
    millimetres(c - diameter),
  ];
}
