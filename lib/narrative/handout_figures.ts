/**
 * The numbers of a handout: what each ring at hand shows on a surface.
 *
 * @module
 */
import {
  paraboloidRadiusGrowth,
  surfaceErrorFactor,
} from "../geometry/asphericity.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { turnedEdge } from "../geometry/contact_departures.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { reach } from "../geometry/reach.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { radiusSensitivities } from "../geometry/sensitivities.ts";
import { threeFootMean } from "../geometry/three_foot_mean.ts";
import type { Bench, Gauge, Ring } from "../records/bench.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** What a turned edge shows under a ring, as a share of its depth. */
export interface EdgeShares {
  /** Width of the turned zone in mm. */
  readonly width: Millimetres;
  /** With one foot out. */
  readonly footOut: number;
  /** With two feet out at the same place. */
  readonly feetOut: number;
}

/** What three feet show away from the centre. */
export interface EdgeReading {
  /** How much longer a paraboloid reads there than at the centre, in mm. */
  readonly growth: Millimetres;
  /** Surface error of the shape a₄ρ⁴ for a difference of sag of 1 there. */
  readonly surfaceFactor: number;
  /** What a turned edge shows there. */
  readonly turned: EdgeShares;
}

/** What one ring shows on the surface, lengths in mm. */
export interface HandoutRing {
  /** The ring. */
  readonly ring: Ring;
  /** Its feet as the formulas need them. */
  readonly feet: Feet;
  /** Sag of a sphere of the radius asked for. */
  readonly sag: Millimetres;
  /** How much R changes with 1 mm of sag, without its sign. */
  readonly perSag: number;
  /** How much R changes with 1 mm of foot circle radius. */
  readonly perCircle: number;
  /** Largest offset of the gauge's axis with one foot out; 0: centre only. */
  readonly reach: Millimetres;
  /** What it shows there; of three balls that can leave the centre alone. */
  readonly atEdge?: EdgeReading;
}

/** The numbers of a handout, lengths in mm. */
export interface HandoutFigures {
  /** Which way the surface curves. */
  readonly form: SurfaceForm;
  /** The radius it is made for. */
  readonly radius: Millimetres;
  /** Half the clear diameter. */
  readonly halfDiameter: Millimetres;
  /** Where readings of the zone “50%” are taken, from the centre. */
  readonly halfWay: Millimetres;
  /** The gauge. */
  readonly gauge: Gauge;
  /** Unit of the display, in which the sheet is written. */
  readonly unit: LengthUnit;
  /** The step of sag in which cards are written. */
  readonly step: Millimetres;
  /** True when that is the display's own step. */
  readonly stepKnown: boolean;
  /** Rings that stand on the surface, in the order of the bench. */
  readonly rings: readonly HandoutRing[];
  /** Names of rings that do not. */
  readonly tooLarge: readonly string[];
}

/** Width of the turned edge that is told of, as a part of the half diameter. */
const EDGE_PART = 0.135;

/** The step of sag where the display's own is not known, or is not of sag. */
const USUAL_STEP: Record<LengthUnit, number> = { mm: 0.001, in: 0.00127 };

function edgeShares(
  halfDiameter: Millimetres,
  circleRadius: Millimetres,
  offset: Millimetres,
): EdgeShares {
  const width = millimetres(Math.max(1, Math.round(EDGE_PART * halfDiameter)));
  const edge = turnedEdge({ halfDiameter, width, depth: 1 });
  const share = (footDegrees: number): number =>
    threeFootMean((x, y) => edge(x, y).height, {
      circleRadius,
      offset,
      diameterDegrees: 0,
      footDegrees,
    });
  return { width, footOut: share(0), feetOut: share(180) };
}

type Disc = Pick<Piece, "form" | "diameter" | "bevel" | "margin">;

/** What a ring shows; undefined when it does not stand on the surface. */
function ringFigures(
  ring: Ring,
  { form, diameter, bevel, margin }: Disc,
  radius: Millimetres,
): HandoutRing | undefined {
  const { shape } = ring;
  const feet = effectiveFeet(shape, form);
  const inward = form === "concave" ? feet.ballRadius : -feet.ballRadius;
  if (radius - inward < feet.circleRadius) return undefined;
  const halfDiameter = millimetres(diameter / 2 - bevel);
  const offset = reach(
    shape,
    form,
    radius,
    millimetres(halfDiameter - margin),
    0,
  );
  if (offset === undefined) return undefined;
  const sag = sagFromRadius(radius, feet, form);
  const slopes = radiusSensitivities(sag, feet, form);
  const touching = contactCircleRadius(shape, form, radius);
  return {
    ring,
    feet,
    sag,
    perSag: Math.abs(slopes.sag),
    perCircle: slopes.circleRadius,
    reach: offset,
    ...(shape.kind === "balls" && offset > 0
      ? {
        atEdge: {
          growth: paraboloidRadiusGrowth(offset, radius),
          surfaceFactor: surfaceErrorFactor(halfDiameter, offset, touching),
          turned: edgeShares(halfDiameter, touching, offset),
        },
      }
      : {}),
  };
}

/** The display's unit, and its step of sag where it has one. */
function displayOf(
  { unit: stated, steps, shows }: Gauge,
  own: LengthUnit,
): { unit: LengthUnit; step: Millimetres; stepKnown: boolean } {
  const other = own === "mm" ? "in" : "mm";
  const unit = stated ??
    (steps[own] === undefined && steps[other] !== undefined ? other : own);
  const step = shows.kind === "sag" ? steps[unit] : undefined;
  return step === undefined || step <= 0
    ? { unit, step: millimetres(USUAL_STEP[unit]), stepKnown: false }
    : { unit, step, stepKnown: true };
}

/**
 * Works out the numbers of a handout for a surface and the rings at hand.
 *
 * The shares of a turned edge are the mean under three feet, which exact
 * contact confirms to about 1e-3 of the amplitude. A gauge that gives no
 * display step, or shows no sag, gets the step of 0.001 mm or 0.00005 in.
 *
 * @param piece The piece, or one surface of it: form and size of the disc.
 * @param bench The bench, with the gauge and the rings.
 * @param radius The radius to make it for in mm; the piece's target unless
 * told.
 * @returns Plain data.
 * @throws {RangeError} If there is no radius to make it for, or no ring stands
 * on the surface.
 *
 * @example
 * ```ts
 * import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/gauge-study");
 * const { rings } = handoutFigures(piece, bench);
 * equal(rings[0].sag.toFixed(6), "0.601333");
 * ```
 */
export function handoutFigures(
  piece: Pick<
    Piece,
    "form" | "diameter" | "bevel" | "margin" | "unit" | "target"
  >,
  bench: Bench,
  radius: Millimetres | undefined = piece.target?.radius,
): HandoutFigures {
  if (radius === undefined) {
    throw new RangeError(
      "Cannot make a handout as there must be a radius to make it for: current value is no target in piece.json and no --radius",
    );
  }
  const found = bench.rings.map((ring) =>
    [ring, ringFigures(ring, piece, radius)] as const
  );
  const rings = found.flatMap(([, figures]) => figures ? [figures] : []);
  if (rings.length === 0) {
    throw new RangeError(
      `Cannot make a handout as a ring must stand on a disc of ${piece.diameter} mm with a radius of ${radius} mm: current value is ${
        bench.rings.map(({ id }) => id).join(", ")
      }`,
    );
  }
  return {
    form: piece.form,
    radius,
    halfDiameter: millimetres(piece.diameter / 2 - piece.bevel),
    halfWay: millimetres(piece.diameter / 4),
    gauge: bench.gauge,
    ...displayOf(bench.gauge, piece.unit),
    rings,
    tooLarge: found.flatMap(([ring, figures]) => figures ? [] : [ring.id]),
  };
}
