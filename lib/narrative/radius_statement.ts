/**
 * The radius a report states, and what its uncertainty covers.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import type { Interval } from "../statistics/interval.ts";
import {
  type RadiusBudget,
  radiusBudget,
} from "../uncertainty/radius_budget.ts";
import type { RadiusMeasurement } from "../uncertainty/radius_measurement.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";

/** A radius with what is known of its uncertainty. */
export interface RadiusStatement {
  /** Radius of curvature in mm. */
  readonly radius: Millimetres;
  /** Expanded uncertainty in mm, 95 %; absent where ± does not describe it. */
  readonly expanded?: Millimetres;
  /**
   * The 95 % interval in mm, where it lies unevenly about the radius; without
   * an upper end when a flat is within it.
   */
  readonly interval?: { readonly low: number; readonly high?: number };
  /** Where it was read: all zones of a sphere, or the centre only. */
  readonly over: "all zones" | "centre";
  /**
   * What the uncertainty covers: `everything` the budget names, or all `but
   * repeating` when there was one zeroing and its scatter is not known.
   */
  readonly covers: "everything" | "but repeating";
  /** The budget behind it. */
  readonly budget: RadiusBudget;
}

/**
 * Chooses the radius a report may state for a session, with its uncertainty.
 *
 * A sphere has one radius, from all its zones. On a surface that is not one,
 * or is not known to be, the zones are not averaged into a figure that belongs
 * to no place: the radius is that of the innermost zone.
 *
 * @param session The session.
 * @param piece The piece.
 * @param bench The bench.
 * @returns Undefined when no radius belongs to the readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function stateRadius(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
): RadiusStatement | undefined {
  const { zones, whole, sphericity } = session;
  const sphere = sphericity.verdict === "within" || zones.length === 1;
  const from = sphere ? whole : zones[0];
  if (from?.radius === undefined) return undefined;
  const { mean, radius: { radius } } = from;
  const over = sphere && zones.length > 1 ? "all zones" : "centre";
  const budget = radiusBudget(measurementOf(session, piece, bench, over));
  const { lower, upper } = budget;
  const expanded = evenHalf(radius, lower, upper);
  return {
    radius,
    ...(expanded !== undefined ? { expanded: millimetres(expanded) } : {
      interval: upper === undefined
        ? { low: lower }
        : { low: lower, high: upper },
    }),
    over,
    covers: mean.dof > 0 ? "everything" : "but repeating",
    budget,
  };
}

/**
 * Gathers everything that a radius of a session hangs on.
 *
 * @param session The session.
 * @param piece The piece.
 * @param bench The bench.
 * @param over Where the sag was read.
 * @returns The measurement, for a budget or a simulation.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function measurementOf(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
  over: RadiusStatement["over"],
): RadiusMeasurement {
  const { zones, whole, ring, step, driftUncertainty } = session;
  const { mean } = over === "all zones" ? whole : zones[0];
  return {
    form: piece.form,
    sag: {
      value: mean.sag,
      own: mean.standardError ?? 0,
      dof: Math.max(1, mean.dof),
      common: {},
    },
    ring,
    gauge: bench.gauge,
    step,
    roundingShare: mean.rounding,
    session: session.session,
    ...(driftUncertainty > 0
      ? { drift: { standardUncertainty: driftUncertainty } }
      : {}),
    ...(bench.flat === undefined ? {} : { flat: bench.flat }),
  };
}

/**
 * Half the interval where ± describes it: both halves round to the same two
 * figures, give or take one of the second; else undefined.
 */
function evenHalf(
  radius: number,
  lower: number,
  upper: number | undefined,
): number | undefined {
  if (upper === undefined) return undefined;
  const half = Math.max(radius - lower, upper - radius);
  if (half === 0) return 0;
  const place = 10 ** -decimalsFor(half);
  const lopsided = Math.abs(upper - radius - (radius - lower));
  return lopsided <= place ? half : undefined;
}

/**
 * Writes the uncertainty of a stated radius alone.
 *
 * @param statement The radius.
 * @param unit The user's unit.
 * @returns Such as `±6.8 mm` or `2158 mm to 2245 mm`; undefined where nothing
 * is known of it.
 *
 * @example
 * ```ts
 * import { writeDoubt } from "sagbook/narrative/radius_statement.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const text = writeDoubt({ expanded: mm(6.84) }, "mm");
 * equal(text?.replace("\u00a0", " "), "±6.8 mm");
 * ```
 */
export function writeDoubt(
  { expanded, interval }: Pick<RadiusStatement, "expanded" | "interval">,
  unit: LengthUnit,
): string | undefined {
  if (expanded !== undefined) {
    const decimals = Math.max(0, decimalsFor(amountIn(expanded, unit)));
    return `±${formatLength(expanded, unit, decimals)}`;
  }
  if (interval === undefined) return undefined;
  const { low, high } = interval;
  return high === undefined
    ? `at least ${
      formatLength(floored(low, unit), unit, unit === "mm" ? 0 : 1)
    }`
    : writeRange({ low, high }, unit);
}

/** The lower end of an interval without an upper, down to three figures. */
function floored(low: number, unit: LengthUnit): Millimetres {
  const amount = amountIn(millimetres(low), unit);
  const place = 10 ** (Math.floor(Math.log10(Math.max(amount, 1))) - 2);
  const down = Math.floor(amount / place) * place;
  return millimetres(amount === 0 ? 0 : low * down / amount);
}

/** Writes an interval with the figures its width supports. */
function writeRange({ low, high }: Interval, unit: LengthUnit): string {
  const half = amountIn(millimetres((high - low) / 2), unit);
  const decimals = half === 0 ? 3 : decimalsFor(half);
  return `${formatLength(millimetres(low), unit, decimals)} to ${
    formatLength(millimetres(high), unit, decimals)
  }`;
}

/**
 * Writes a stated length, or half of it, with its uncertainty.
 *
 * @param statement The radius.
 * @param unit The user's unit.
 * @param part 1 for the radius, 1/2 for the focal length of a sphere.
 * @returns Such as `2519.7 ± 1.4 mm`, or `2870 mm (2650 mm to 3140 mm)` where
 * the interval is uneven, or `at least 9000 mm`.
 *
 * @example
 * ```ts
 * import { writeRadius } from "sagbook/narrative/radius_statement.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const statement = { radius: mm(2519.667), expanded: mm(2.4) };
 * equal(writeRadius(statement, "mm").replaceAll("\u00a0", " "), "2519.7 ± 2.4 mm");
 * ```
 */
export function writeRadius(
  statement: Pick<RadiusStatement, "radius" | "expanded" | "interval">,
  unit: LengthUnit,
  part: number = 1,
): string {
  const { expanded, interval } = statement;
  const value = millimetres(statement.radius * part);
  if (expanded !== undefined) {
    return formatWithUncertainty(value, millimetres(expanded * part), unit);
  }
  const rough = unit === "mm" ? 0 : 1;
  if (interval === undefined) {
    return `about ${formatLength(value, unit, rough)}`;
  }
  const low = interval.low * part;
  if (interval.high === undefined) {
    return `at least ${formatLength(floored(low, unit), unit, rough)}`;
  }
  const high = interval.high * part;
  const half = amountIn(millimetres((high - low) / 2), unit);
  return `${formatLength(value, unit, decimalsFor(half))} (${
    writeRange({ low, high }, unit)
  })`;
}
