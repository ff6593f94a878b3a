/**
 * How long warm glass goes on bending, and by how much.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Material } from "./material.ts";
import { radiusReadLonger, type WarmPiece } from "./thermal_radius.ts";

/**
 * What the glass lies on. `small supports`: three small blocks, air on both
 * faces. `insulating pad`: the lower face gives off no heat. `cold bench`: the
 * lower face takes the bench's temperature.
 */
export type Support = "small supports" | "insulating pad" | "cold bench";

/** A glass whose heat is known. */
export type ConductingMaterial = Material & {
  readonly conductivity: number;
  readonly diffusivity: number;
};

/**
 * Heat given off by a face in still air, in W/(m² K); handbook, from memory,
 * good to a third.
 */
export const STILL_AIR = 10;

/** The three times a piece of glass needs, in seconds: each to 1/e. */
export interface SettlingTimes {
  /** A gradient left to itself: t²/(π²κ). */
  readonly leftToItself: number;
  /** A gradient with one face held by a bench: 4t²/(π²κ). */
  readonly oneFaceHeld: number;
  /**
   * A gradient driven by unequal faces, which lasts as long as the piece
   * differs from the air: ρ c t/h, half of it with both faces in air.
   */
  readonly drivenByAir: number;
  /** The one to wait for on the given support. */
  readonly governing: number;
}

/**
 * Finds the three settling times of a piece of glass.
 *
 * @param glass The glass, with conductivity and diffusivity.
 * @param thickness Thickness t in mm, above 0.
 * @param support What it lies on.
 * @returns Times to 1/e, in seconds; three of them leave 5 %.
 * @throws {RangeError} If the thickness is not above 0.
 *
 * @see Carslaw and Jaeger, Conduction of Heat in Solids, 1959, chapter III
 * (slab with insulated, held and radiating faces).
 *
 * @example 40 mm of borosilicate: 4 minutes, 17 minutes, about two hours
 * ```ts
 * import { materialNamed } from "sagbook/uncertainty/material.ts";
 * import { type ConductingMaterial, settlingTimes } from "sagbook/uncertainty/thermal_settling.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const glass = materialNamed("borosilicate") as ConductingMaterial;
 * const times = settlingTimes(glass, mm(40), "insulating pad");
 * const minutes = [times.leftToItself, times.oneFaceHeld, times.drivenByAir];
 * deepEqual(minutes.map((time) => Math.round(time / 60)), [4, 17, 115]);
 * ```
 */
export function settlingTimes(
  glass: ConductingMaterial,
  thickness: Millimetres,
  support: Support,
): SettlingTimes {
  if (!(thickness > 0)) {
    throw new RangeError(
      `Cannot find settling times as the thickness must be above 0 mm: current value is ${thickness} mm`,
    );
  }
  const { conductivity, diffusivity } = glass;
  const leftToItself = thickness ** 2 / (Math.PI ** 2 * diffusivity);
  // ρc = k/κ, with t in mm and κ in mm²/s: metres once over.
  const perFace = conductivity / diffusivity * 1e3 * thickness / STILL_AIR;
  const drivenByAir = support === "small supports" ? perFace / 2 : perFace;
  const oneFaceHeld = 4 * leftToItself;
  return {
    leftToItself,
    oneFaceHeld,
    drivenByAir,
    governing: support === "cold bench"
      ? oneFaceHeld
      : support === "insulating pad"
      ? drivenByAir
      : leftToItself,
  };
}

/** How things stand about a warm piece. */
export interface WarmSituation {
  /** What it lies on. */
  readonly support: Support;
  /** Piece warmer than the air at the start, the same throughout, in K. */
  readonly warmerBy: number;
  /** Bench colder than the air, in K; it acts on a cold bench only. */
  readonly benchColderBy?: number;
  /** Time since the start in seconds, at least 0; `Infinity` for good. */
  readonly after: number;
}

/**
 * Finds how much longer a radius reads some time after warm work.
 *
 * A slab that starts warmer than the air and gives off heat at its upper face
 * (10 W/m² K), the lower one insulated, held, or in air too. Exact for the
 * slab (40 terms of its series, enough from one second on for 10 mm and more);
 * the coefficient for air is only good to a third.
 * With air on both faces alike no gradient arises at all.
 *
 * @param piece The glass's shape.
 * @param glass Its material.
 * @param situation Support, temperatures, time.
 * @returns Reading less true radius in mm, signed.
 *
 * @see Carslaw and Jaeger, Conduction of Heat in Solids, 1959, section 3.11.
 *
 * @example 40 mm of borosilicate on a pad, 5 K warm, half an hour later
 * ```ts
 * import { materialNamed } from "sagbook/uncertainty/material.ts";
 * import { type ConductingMaterial, radiusReadLongerAfter } from "sagbook/uncertainty/thermal_settling.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const glass = materialNamed("borosilicate") as ConductingMaterial;
 * const piece = {
 *   radius: mm(3000), form: "concave", thickness: mm(40), expansion: glass.expansion,
 * } as const;
 * const change = radiusReadLongerAfter(piece, glass, {
 *   support: "insulating pad", warmerBy: 5, after: 1800,
 * });
 * equal(change.toFixed(2), "-0.48");
 * ```
 */
export function radiusReadLongerAfter(
  piece: WarmPiece,
  glass: ConductingMaterial,
  situation: WarmSituation,
): Millimetres {
  const { support, warmerBy, benchColderBy = 0, after } = situation;
  if (!(after >= 0)) {
    throw new RangeError(
      `Cannot find what is left of a gradient as the time must be at least 0 s: current value is ${after} s`,
    );
  }
  if (support === "small supports" || after === 0) return millimetres(0);
  const biot = STILL_AIR * piece.thickness / 1000 / glass.conductivity;
  const fourier = glass.diffusivity * after / piece.thickness ** 2;
  const gradient = support === "insulating pad"
    ? insulatedBelow(biot, fourier) * warmerBy
    : heldBelow(biot, fourier, warmerBy, benchColderBy);
  return radiusReadLonger(piece, gradient);
}

const TERMS = 40;

/** First moment of cos(μx) over 0 to 1 about its middle, times 12. */
function cosineMoment(mu: number): number {
  // The series where the two terms would cancel.
  if (mu < 1e-2) return -mu * mu / 2 + mu ** 4 / 30;
  return 12 * (Math.sin(mu) / (2 * mu) + (Math.cos(mu) - 1) / (mu * mu));
}

/** First moment of sin(μx) over 0 to 1 about its middle, times 12. */
function sineMoment(mu: number): number {
  const about0 = Math.sin(mu) / (mu * mu) - Math.cos(mu) / mu;
  return 12 * (about0 - (1 - Math.cos(mu)) / (2 * mu));
}

/** Effective gradient per kelvin: insulated below, air above. */
function insulatedBelow(biot: number, fourier: number): number {
  let sum = 0;
  for (let n = 0; n < TERMS; n++) {
    const mu = findRoot(
      (x) => x * Math.sin(x) - biot * Math.cos(x),
      n * Math.PI,
      n * Math.PI + Math.PI / 2,
    );
    const amplitude = 4 * Math.sin(mu) / (2 * mu + Math.sin(2 * mu));
    sum += amplitude * decay(mu, fourier) * cosineMoment(mu);
  }
  return sum;
}

/** Effective gradient in kelvin: held below at the bench, air above. */
function heldBelow(
  biot: number,
  fourier: number,
  warmerBy: number,
  benchColderBy: number,
): number {
  const steady = benchColderBy * biot / (1 + biot);
  let sum = 0;
  for (let n = 0; n < TERMS; n++) {
    const mu = findRoot(
      (x) => x * Math.cos(x) + biot * Math.sin(x),
      n * Math.PI + Math.PI / 2,
      (n + 1) * Math.PI,
    );
    // What differs from the steady state at the start: piece − bench − slope x.
    const length = 0.5 - Math.sin(2 * mu) / (4 * mu);
    const flat = (1 - Math.cos(mu)) / mu;
    const slope = Math.sin(mu) / (mu * mu) - Math.cos(mu) / mu;
    const amplitude = ((warmerBy + benchColderBy) * flat - steady * slope) /
      length;
    sum += amplitude * decay(mu, fourier) * sineMoment(mu);
  }
  return steady + sum;
}

function decay(mu: number, fourier: number): number {
  return fourier === Infinity ? 0 : Math.exp(-mu * mu * fourier);
}
