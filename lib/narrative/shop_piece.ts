/**
 * A finished piece with its focal length, stated or found from what was read.
 *
 * @module
 */
import {
  focalLengthMeasured,
  type FocalLengthMeasurement,
} from "../fabrication/focal_length_measured.ts";
import type { FinishedPiece } from "../records/finished_pieces.ts";
import type { FocusReading } from "../records/focus_reading.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** A finished piece whose focal length is known. */
export interface ShopPiece extends FinishedPiece {
  /** Its focal length in mm, as stated or found. */
  readonly focalLength: Millimetres;
}

/**
 * Gives a finished piece its focal length.
 *
 * A focal length that the line states is taken as it stands. What was read at
 * the centre of curvature is freed of the zone's own place, a lamp's image of
 * the lamp's distance; a star is far enough. An uncertainty that the line
 * states of the focal length wins over that of the distances.
 *
 * @param piece The piece as read.
 * @returns The piece with its focal length; undefined where the distances
 * belong to no focal length, such as a zone beyond the radius.
 *
 * @example A lamp at 100 m
 * ```ts
 * import { shopPiece } from "sagbook/narrative/shop_piece.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const piece = shopPiece({
 *   line: 2,
 *   groundRadius: mm(3003),
 *   measured: { method: "lamp", image: mm(1522.843), lamp: mm(100_000) },
 * });
 * equal(piece?.focalLength.toFixed(2), "1500.00");
 * equal(piece?.focalLengthUncertainty, undefined);
 * ```
 */
export function shopPiece(piece: FinishedPiece): ShopPiece | undefined {
  const { focalLength, measured } = piece;
  if (focalLength !== undefined) return { ...piece, focalLength };
  if (measured === undefined) return undefined;
  try {
    const { value, own } = focalLengthMeasured(measurementOf(measured));
    const stated = piece.focalLengthUncertainty ??
      (own > 0 ? millimetres(own) : undefined);
    return {
      ...piece,
      focalLength: millimetres(value),
      ...(stated === undefined ? {} : { focalLengthUncertainty: stated }),
    };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The reading with 0 for what the line does not state. */
function measurementOf(measured: FocusReading): FocalLengthMeasurement {
  const { uncertainty = millimetres(0) } = measured;
  return measured.method === "lamp"
    ? {
      ...measured,
      uncertainty,
      lampUncertainty: measured.lampUncertainty ?? millimetres(0),
    }
    : { ...measured, uncertainty };
}

/**
 * Says how a focal length was measured.
 *
 * @param piece The piece as read.
 * @param unit The user's unit.
 * @returns A phrase, such as "lamp at 180 m, corrected"; the user's own words
 * where the line states the focal length; undefined where it says nothing.
 *
 * @example
 * ```ts
 * import { measuredHow } from "sagbook/narrative/shop_piece.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   measuredHow({
 *     line: 2,
 *     groundRadius: mm(3003),
 *     measured: { method: "lamp", image: mm(1522.8), lamp: mm(100_000) },
 *   }, "mm")?.replaceAll("\u00a0", " "),
 *   "lamp at 100 m, corrected",
 * );
 * ```
 */
export function measuredHow(
  { method, measured }: FinishedPiece,
  unit: LengthUnit,
): string | undefined {
  return measured === undefined ? method : readingInWords(measured, unit);
}

function readingInWords(measured: FocusReading, unit: LengthUnit): string {
  switch (measured.method) {
    case "star":
      return "star";
    case "lamp":
      return `lamp at ${
        unit === "mm"
          ? `${Number((measured.lamp / 1000).toFixed(1))}\u00a0m`
          : `${Number((measured.lamp / 304.8).toFixed(0))}\u00a0ft`
      }, corrected`;
    case "centre of curvature": {
      const { zone, source, surface } = measured;
      const where = zone === 0
        ? "centre"
        : `zone at ${formatLength(zone, unit, unit === "mm" ? 0 : 2)}`;
      const how = zone === 0 || surface === "sphere"
        ? ""
        : source === "moves"
        ? ", source moves"
        : ", source fixed";
      return `centre of curvature, ${where}${how}`;
    }
  }
}

/**
 * Tells whether a line of a shop's file is about a piece.
 *
 * @param line The line.
 * @param name The piece's name.
 * @returns Whether the names agree, capitals and spaces aside.
 *
 * @example
 * ```ts
 * import { isPiece } from "sagbook/narrative/shop_piece.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(isPiece({ piece: "Blank  3" }, "blank 3"), true);
 * equal(isPiece({}, "blank 3"), false);
 * ```
 */
export function isPiece(
  { piece }: Pick<FinishedPiece, "piece">,
  name: string,
): boolean {
  const plain = (text: string): string =>
    text.trim().toLowerCase().replace(/\s+/g, " ");
  return piece !== undefined && plain(piece) === plain(name);
}
