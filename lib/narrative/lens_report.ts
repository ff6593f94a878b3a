/**
 * Power, focal length and test plate of a piece that is a lens.
 *
 * @module
 */
import type { Piece } from "../records/piece.ts";
import type { Estimate } from "../statistics/estimate.ts";
import {
  type LensPower,
  lensPower,
  surfacePowerOf,
} from "../uncertainty/lens_power.ts";
import {
  type RadiusDifference,
  radiusDifference,
} from "../uncertainty/radius_difference.ts";
import type { Budget } from "../uncertainty/budget.ts";
import { radiusAgainstPlate } from "../uncertainty/test_plate.ts";
import { type Dioptres, dioptres, powerAtIndex } from "../units/dioptre.ts";

/** The index that tools for lenses are marked by: common practice, no source. */
const TOOLING_INDEX = 1.53;

/** What a measured radius means for a lens. */
export interface LensReport {
  /** Power of the measured surface in air, negative when concave. */
  readonly surface?: {
    /** At the index of the glass. */
    readonly power: Dioptres;
    /** The same with its uncertainty, in dioptres. */
    readonly estimate: Estimate;
    /** The same surface at the index tools are marked by, 1.530. */
    readonly tooling: Dioptres;
  };
  /** Both surfaces together, where the second is known. */
  readonly lens?: LensPower;
  /** By fringes against a test plate. */
  readonly plate?: {
    /** Name of the plate. */
    readonly id: string;
    /** R of the work in mm, with its budget. */
    readonly radius: Budget;
    /** The ring's R less the plate's, where the ring gave one. */
    readonly ringLessPlate?: RadiusDifference;
  };
}

/**
 * Works out what a radius means for a lens.
 *
 * The measured surface counts as the first; power and focal length do not
 * depend on which way the lens is turned, the back focal length does.
 *
 * @param piece The piece, with what it says of its lens and its test plate.
 * @param radius R of the measured surface in mm with shared parts by id;
 * undefined when no radius with an uncertainty is known.
 * @returns Undefined when the piece is no lens and met no test plate.
 *
 * @see `lensPower`, `surfacePowerOf` and `radiusAgainstPlate`.
 *
 * @example A plano-convex lens
 * ```ts
 * import { lensReport } from "sagbook/narrative/lens_report.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const radius = { value: 100, own: 0.5, dof: Infinity, common: {} };
 * const found = lensReport({
 *   form: "convex",
 *   lens: {
 *     index: 1.5, indexUncertainty: 0, thickness: mm(8), thicknessUncertainty: mm(0),
 *     second: { form: "flat" },
 *   },
 * }, radius);
 * equal(found?.lens?.focalLength?.value.toFixed(6), "200.000000");
 * equal(lensReport({ form: "concave" }, radius), undefined);
 * ```
 */
export function lensReport(
  piece: Pick<Piece, "form" | "lens" | "testPlate">,
  radius: Estimate | undefined,
): LensReport | undefined {
  const { form, lens, testPlate } = piece;
  if (lens === undefined && testPlate === undefined) return undefined;
  const plate = testPlate === undefined
    ? undefined
    : plateOf(form, testPlate, radius);
  if (lens === undefined || radius === undefined) {
    return plate === undefined ? {} : { plate };
  }
  const { index, second, thickness } = lens;
  const { power, estimate } = surfacePowerOf(form, radius, index);
  return {
    surface: {
      power,
      estimate,
      tooling: powerAtIndex(
        dioptres(power.dioptres, index),
        TOOLING_INDEX,
      ),
    },
    ...(second === undefined || thickness === undefined ? {} : {
      lens: lensPower({
        first: { form, radius },
        second: second.form === "flat" ? { form: "flat" } : {
          form: second.form,
          radius: {
            value: second.radius,
            own: second.radiusUncertainty,
            dof: Infinity,
            common: {},
          },
        },
        index,
        indexUncertainty: lens.indexUncertainty,
        thickness,
        thicknessUncertainty: lens.thicknessUncertainty,
      }),
    }),
    ...(plate === undefined ? {} : { plate }),
  };
}

function plateOf(
  form: Piece["form"],
  plate: NonNullable<Piece["testPlate"]>,
  radius: Estimate | undefined,
): LensReport["plate"] {
  const { id, fringeUncertainty } = plate;
  const found = radiusAgainstPlate({
    form,
    plate: id,
    plateRadius: {
      value: plate.radius,
      own: plate.radiusUncertainty,
      dof: Infinity,
      common: {},
    },
    diameter: plate.diameter,
    fringes: plate.fringes,
    ...(fringeUncertainty === undefined ? {} : { fringeUncertainty }),
    touch: plate.touch,
    wavelength: plate.wavelength,
  });
  const apart = radius && radiusDifference(radius, found.estimate);
  return {
    id,
    radius: found,
    ...(apart === undefined ? {} : { ringLessPlate: apart }),
  };
}
