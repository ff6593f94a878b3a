/**
 * Lengths as messages about a user's files say them: in the piece's unit, with
 * as many figures as help.
 *
 * @module
 */
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import type { LengthUnit } from "./piece.ts";

function written(
  length: number,
  unit: LengthUnit,
  decimals: Readonly<Record<LengthUnit, number>>,
): string {
  const amount = amountIn(millimetres(length), unit);
  return `${Number(amount.toFixed(decimals[unit]))} ${unit}`;
}

/** A place on the work: to 0.1 mm, or 0.01 in. */
export function saidPlace(length: number, unit: LengthUnit): string {
  return written(length, unit, { mm: 1, in: 2 });
}

/** A size of a ring: to a micrometre, or 0.0001 in. */
export function saidSize(length: number, unit: LengthUnit): string {
  return written(length, unit, { mm: 3, in: 4 });
}

/** A sag: to 0.1 µm, or 0.00001 in, and never as nought. */
export function saidSag(length: number, unit: LengthUnit): string {
  const text = written(length, unit, { mm: 4, in: 5 });
  return /^-?0 /.test(text) && length !== 0
    ? `${Number(amountIn(millimetres(length), unit).toPrecision(2))} ${unit}`
    : text;
}

/** A radius of curvature, or none: five figures. */
export function saidRadius(
  length: number | undefined,
  unit: LengthUnit,
): string {
  if (length === undefined) return "none";
  const amount = amountIn(millimetres(length), unit);
  return `${
    Number(amount.toPrecision(amount >= 1e5 ? 2 : amount >= 1e4 ? 4 : 5))
  } ${unit}`;
}
