/**
 * Lengths held in mm, written in the user's unit.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import { decimalsFor, linearTicks, signed, written } from "./_ticks.ts";
import type { Axis } from "./_panel.ts";

/** How a kind of length is written. */
export interface LengthAxis {
  /** Number on an axis for one millimetre. */
  readonly perMillimetre: number;
  /** What such an axis says of its unit, in brackets. */
  readonly unit: string;
  /**
   * Writes one length with its unit, to two figures of an uncertainty (of the
   * length itself where none is given), both in mm.
   */
  readonly text: (length: number, uncertainty?: number) => string;
  /** The same with a sign. */
  readonly signedText: (length: number, uncertainty?: number) => string;
}

const MILLIMETRES_PER_INCH = 25.4;

function lengthAxis(
  perMillimetre: number,
  unit: string,
  textPerMillimetre: number,
  textUnit: string,
): LengthAxis {
  const with2 = (write: typeof written) => (length: number, u?: number) => {
    const value = length * textPerMillimetre;
    const scale = Math.abs(u === undefined ? value : u * textPerMillimetre);
    const text = write(value, decimalsFor(scale));
    const short = u === undefined ? text.replace(/\.?0+$/, "") : text;
    return `${text.includes(".") ? short : text} ${textUnit}`;
  };
  return {
    perMillimetre,
    unit,
    text: with2(written),
    signedText: with2(signed),
  };
}

const SMALL = {
  mm: lengthAxis(1000, "µm", 1000, "µm"),
  in: lengthAxis(
    1000 / MILLIMETRES_PER_INCH,
    "thou",
    1000 / MILLIMETRES_PER_INCH,
    "thou",
  ),
};
const PLAIN = {
  mm: lengthAxis(1, "mm", 1, "mm"),
  in: lengthAxis(
    1 / MILLIMETRES_PER_INCH,
    "in",
    1 / MILLIMETRES_PER_INCH,
    "in",
  ),
};

/** Small lengths: differences of sag, departures: µm, or thou (0.001 in). */
export function smallLength(unit: LengthUnit): LengthAxis {
  return SMALL[unit];
}

/** Lengths as they are typed: sag, radius, places on the work. */
export function plainLength(unit: LengthUnit): LengthAxis {
  return PLAIN[unit];
}

/** A place on the work: whole millimetres, or hundredths of an inch. */
export function placeText(distance: number, unit: LengthUnit): string {
  const { perMillimetre } = PLAIN[unit];
  return `${written(distance * perMillimetre, unit === "mm" ? 0 : 2)} ${unit}`;
}

/**
 * An axis that holds values and a little more.
 *
 * @param values Values on the axis, finite.
 * @param options `least`: smallest width of the axis; `signs`: a plus sign on
 * numbers above zero; `pad`: room at either end as a share; `fromZero`: for
 * values that are at least 0; `tight`: end at the values, not at ticks.
 */
export function axisAround(
  values: readonly number[],
  {
    least = 1e-9,
    signs = false,
    grid = true,
    count = 5,
    pad = 0.04,
    fromZero = false,
    tight = false,
  } = {},
): Axis {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (fromZero) low = 0;
  const room = Math.max(high - low, tight ? least : 0) * pad;
  const [from, to] = fromZero
    ? [0, Math.max(high + room, least)]
    : [low - room, high + room];
  const ticks = linearTicks(from, to, count, least);
  const write = signs ? signed : written;
  const ends = tight && to - from >= least ? [from, to] as const : ticks.domain;
  return {
    domain: fromZero ? [0, ends[1]] : ends,
    ticks: ticks.values.filter((v) => v >= ends[0] && v <= ends[1]),
    label: (value) => write(value, ticks.decimals),
    grid,
  };
}
