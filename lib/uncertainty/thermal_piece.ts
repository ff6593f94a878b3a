/**
 * What heat does to one piece and its rings, before anything was read.
 *
 * @module
 */
import type { Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { materialNamed } from "./material.ts";
import { radiusReadLonger, radiusWarmedBy } from "./thermal_radius.ts";
import {
  type ConductingMaterial,
  radiusReadLongerAfter,
  type SettlingTimes,
  settlingTimes,
  type Support,
} from "./thermal_settling.ts";

/** How a piece settles on one support. */
export interface SupportedHeat {
  /** What it lies on. */
  readonly support: Support;
  /** The three times to 1/e, and the one that governs, in seconds. */
  readonly times: SettlingTimes;
  /** Seconds until 5 % of a gradient is left: three of the governing time. */
  readonly wait: number;
  /**
   * Reading less true radius in mm, ten minutes, half an hour and two hours
   * after the piece was 5 K warmer than the air throughout.
   */
  readonly after: readonly {
    /** Minutes since. */
    readonly minutes: number;
    /** Reading less true radius in mm. */
    readonly radiusReadsLonger: Millimetres;
  }[];
}

/** What heat does to one piece. */
export interface HeatOfPiece {
  /** The glass. */
  readonly glass: ConductingMaterial;
  /** Thickness in mm. */
  readonly thickness: Millimetres;
  /** Reading less true radius in mm with the upper face 1 K warmer. */
  readonly perGradientKelvin: Millimetres;
  /** True change of the radius in mm with all of the piece 1 K warmer. */
  readonly perPieceKelvin: Millimetres;
  /** Reading less true radius in mm with a ring 1 K warmer than calibrated. */
  readonly perRingKelvin: readonly {
    /** The ring. */
    readonly ring: string;
    /** Reading less true radius in mm. */
    readonly radiusReadsLonger: Millimetres;
  }[];
  /** Bend for good in mm on a bench 1 K colder than the air. */
  readonly perBenchKelvin: Millimetres;
  /** How it settles, by support. */
  readonly supports: readonly SupportedHeat[];
}

const SUPPORTS = ["small supports", "insulating pad", "cold bench"] as const;

/** Warmth of a piece after work: common practice, no source. */
const WARMER_BY = 5;

/**
 * Finds what heat does to a piece: how long it settles on each support, and
 * what a kelvin in the glass, across it, in the ring or in the bench does to R.
 *
 * @param piece The piece, with thickness and glass.
 * @param radius Radius of curvature in mm, as expected.
 * @param rings The rings that may be used.
 * @returns Undefined when the thickness is not stated or the glass not known.
 *
 * @see `settlingTimes`, `radiusReadLonger` and `radiusReadLongerAfter`; a ring
 * grows by αΔT, and r enters R twice, so R reads shorter by 2αΔT.
 *
 * @example 40 mm of borosilicate: wait 13 min on blocks, 52 min on the bench
 * ```ts
 * import { heatOfPiece } from "sagbook/uncertainty/thermal_piece.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const piece = { form: "concave", thickness: mm(40), glass: "borosilicate" } as const;
 * const { supports } = heatOfPiece(piece, mm(3000), [])!;
 * deepEqual(supports.map(({ wait }) => Math.ceil(wait / 60)), [13, 345, 50]);
 * ```
 */
export function heatOfPiece(
  piece: Pick<Piece, "form" | "thickness" | "glass">,
  radius: Millimetres,
  rings: readonly Pick<Ring, "id" | "expansion">[],
): HeatOfPiece | undefined {
  const glass = conductingGlass(piece.glass);
  const { form, thickness } = piece;
  if (glass === undefined || thickness === undefined) return undefined;
  const { expansion } = glass;
  const warm = { radius, form, thickness, expansion };
  return {
    glass,
    thickness,
    perGradientKelvin: radiusReadLonger(warm, 1),
    perPieceKelvin: millimetres(radiusWarmedBy(radius, expansion, 1) - radius),
    perRingKelvin: rings.map(({ id, expansion }) => ({
      ring: id,
      radiusReadsLonger: millimetres(-2 * expansion * radius),
    })),
    perBenchKelvin: radiusReadLongerAfter(warm, glass, {
      support: "cold bench",
      warmerBy: 0,
      benchColderBy: 1,
      after: Infinity,
    }),
    supports: SUPPORTS.map((support) => {
      const times = settlingTimes(glass, thickness, support);
      return {
        support,
        times,
        wait: 3 * times.governing,
        after: [10, 30, 120].map((minutes) => ({
          minutes,
          radiusReadsLonger: radiusReadLongerAfter(warm, glass, {
            support,
            warmerBy: WARMER_BY,
            after: 60 * minutes,
          }),
        })),
      };
    }),
  };
}

/**
 * Finds a glass whose expansion, conductivity and diffusivity are known here.
 *
 * @param name The glass as the user names it.
 * @returns Undefined when it is not known, or no name is given.
 *
 * @example
 * ```ts
 * import { conductingGlass } from "sagbook/uncertainty/thermal_piece.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(conductingGlass("float glass")?.name, "soda-lime glass");
 * equal(conductingGlass("steel"), undefined);
 * ```
 */
export function conductingGlass(
  name: string | undefined,
): ConductingMaterial | undefined {
  const glass = name === undefined ? undefined : materialNamed(name);
  if (glass?.conductivity === undefined || glass.diffusivity === undefined) {
    return undefined;
  }
  const { conductivity, diffusivity } = glass;
  return { ...glass, conductivity, diffusivity };
}
