/**
 * How a radius stands to its target, in words.
 *
 * @module
 */
import { againstTarget } from "../fabrication/against_target.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor, roundDecimal } from "../units/round_decimal.ts";
import { rangeOf } from "./radius_range.ts";
import type { RadiusStatement } from "./radius_statement.ts";

/** A wanted radius as a piece states it, in mm. */
export interface TargetInWords {
  /** The radius. */
  readonly radius: number;
  /** How far from it is still good, either way. */
  readonly tolerance?: number | undefined;
}

/**
 * Writes a wanted radius with its tolerance, with the figures that were given;
 * converted from another unit, with those that the tolerance supports.
 *
 * @param target The target, in mm.
 * @param unit The user's unit.
 * @returns Such as `2200 ± 10 mm`; `2200 mm` without a tolerance.
 *
 * @example
 * ```ts
 * import { writeTarget } from "sagbook/narrative/target_words.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = writeTarget({ radius: 2200, tolerance: 7.5 }, "mm");
 * equal(text.replaceAll("\u00a0", " "), "2200.0 ± 7.5 mm");
 * ```
 */
export function writeTarget(
  { radius, tolerance }: TargetInWords,
  unit: LengthUnit,
): string {
  const given = [radius, tolerance ?? 0].map((length) =>
    amountIn(millimetres(length), unit)
  );
  const figures = given.map((amount) =>
    Number(roundDecimal(amount, unit === "mm" ? 3 : 4))
  );
  // Another unit's round number has no figures of its own in this one.
  const isConverted = given.some((amount, k) =>
    Math.abs(amount - figures[k]) > 1e-9 * Math.abs(amount)
  );
  const decimals = !isConverted
    ? Math.max(
      ...figures.map((amount) => `${amount}`.split(".")[1]?.length ?? 0),
    )
    : given[1] > 0
    ? Math.max(0, decimalsFor(given[1]))
    : unit === "mm"
    ? 1
    : 2;
  const wanted = millimetres(radius);
  return tolerance === undefined
    ? formatLength(wanted, unit, decimals)
    : formatWithUncertainty(wanted, millimetres(tolerance), unit, decimals);
}

/**
 * Says how a stated radius stands to its target: how far off where it is off for
 * certain, and whether it is within the tolerance, outside, or neither for
 * certain.
 *
 * @param statement The radius.
 * @param target The target, in mm.
 * @param unit The user's unit.
 * @param past Whether the work came from the other side of the target.
 * @returns The end of a sentence, after a semicolon.
 *
 * @example
 * ```ts
 * import { standsToTarget } from "sagbook/narrative/target_words.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const radius = { radius: mm(2206), expanded: mm(9.4), covers: "everything" } as const;
 * equal(
 *   standsToTarget(radius, { radius: 2200, tolerance: 10 }, "mm", false)
 *     .replaceAll("\u00a0", " "),
 *   "the target is 2200 ± 10 mm, and whether the radius is within that is not decided",
 * );
 * ```
 */
export function standsToTarget(
  statement: Pick<
    RadiusStatement,
    "radius" | "expanded" | "interval" | "covers"
  >,
  target: TargetInWords,
  unit: LengthUnit,
  past: boolean,
): string {
  const { tolerance } = target;
  const range = rangeOf(statement);
  const wanted = writeTarget(target, unit);
  const off = statement.radius - target.radius;
  const apart = `${writeOff(off, range, unit)} ${
    off < 0 ? "shorter" : "longer"
  }`;
  if (statement.covers !== "everything") {
    return `the target is ${wanted}: this one zeroing reads ${apart}, and since nothing is known of how the zero scatters, that decides nothing`;
  }
  const verdict = againstTarget(range, {
    radius: target.radius,
    ...(tolerance === undefined ? {} : { tolerance }),
  });
  if (verdict === "within") {
    return `the target is ${wanted}, and the radius is within that`;
  }
  if (verdict !== "not decided") {
    const outside = tolerance === undefined ? "" : ", outside its tolerance";
    return `that is ${apart} than the target of ${wanted}${outside}${
      past ? ", past it" : ""
    }`;
  }
  if (tolerance === undefined) {
    return `the target is ${wanted}, which lies within that doubt`;
  }
  return `the target is ${wanted}, and whether the radius is within that is not decided`;
}

/** A distance from the target with the figures its uncertainty supports. */
function writeOff(
  off: number,
  range: ReturnType<typeof rangeOf>,
  unit: LengthUnit,
): string {
  const size = Math.abs(off);
  const half = range?.high === undefined ? 0 : (range.high - range.low) / 2;
  const doubt = amountIn(millimetres(Math.max(half, size / 100)), unit);
  return formatLength(
    millimetres(size),
    unit,
    doubt === 0 ? 0 : decimalsFor(doubt),
  );
}
