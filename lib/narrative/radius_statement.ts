/**
 * The radius a report states, and what its uncertainty covers.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import {
  type RadiusBudget,
  radiusBudget,
} from "../uncertainty/radius_budget.ts";
import type { RadiusMeasurement } from "../uncertainty/radius_measurement.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { centreAgainstEdge } from "../zones/centre_against_edge.ts";

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
  /** Where it was read: all zones of a sphere, or one zone, the innermost. */
  readonly over: "all zones" | "centre";
  /**
   * What the uncertainty covers: `everything` the budget names, or all `but
   * repeating` when there was one zeroing and its scatter is not known.
   */
  readonly covers: "everything" | "but repeating";
  /** The budget behind it. */
  readonly budget: RadiusBudget;
  /** How many people read, where each counts as one look since they differ. */
  readonly people?: number;
  /**
   * The radius of another zone, on the same footing, where the surface is not
   * a sphere and one radius would not do: the outermost, or the zone between
   * that stands apart.
   */
  readonly other?: RadiusStatement & {
    /** Its place in the session's zones, from 0. */
    readonly zone: number;
  };
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
  const { zones, sphericity: { verdict } } = session;
  if (verdict === "within" && zones.length > 1) {
    return stated(session, piece, bench, "all zones");
  }
  const found = stateZoneRadius(session, piece, bench, 0);
  if (found === undefined || verdict !== "outside") return found;
  const zone = centreAgainstEdge(session.differences, zones.length).farthest;
  const other = stateZoneRadius(session, piece, bench, zone);
  return other === undefined ? found : { ...found, other: { ...other, zone } };
}

/**
 * States the radius of one zone, with all that its uncertainty holds.
 *
 * @param session The session.
 * @param piece The piece.
 * @param bench The bench.
 * @param zone Its place in the session's zones, from 0.
 * @returns Undefined when no radius belongs to the readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function stateZoneRadius(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
  zone: number,
): RadiusStatement | undefined {
  return stated(session, piece, bench, zone);
}

/**
 * Finds how many standard uncertainties the stated ± is.
 *
 * The ± reaches the farther end of an interval that is even in curvature and so
 * a little uneven in R; it is therefore a little more than Student's t at the
 * effective degrees of freedom.
 *
 * @param statement The radius stated.
 * @returns U over u, so that the two always multiply; Student's t where the
 * radius has no ± or no standard uncertainty.
 *
 * @see JCGM 200:2012, 2.38 (coverage factor).
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function coverageFactorOf(
  { expanded, budget }: Pick<RadiusStatement, "expanded" | "budget">,
): number {
  const { standardUncertainty, factor } = budget;
  return expanded === undefined || !standardUncertainty
    ? factor
    : expanded / standardUncertainty;
}

function stated(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
  where: "all zones" | number,
): RadiusStatement | undefined {
  const from = where === "all zones" ? session.whole : session.zones[where];
  if (from?.radius === undefined) return undefined;
  const { mean, radius: { radius } } = from;
  const budget = radiusBudget(measurementOf(session, piece, bench, where));
  const { lower, upper } = budget;
  const expanded = evenHalf(radius, lower, upper);
  return {
    radius,
    ...(expanded !== undefined ? { expanded: millimetres(expanded) } : {
      interval: upper === undefined
        ? { low: lower }
        : { low: lower, high: upper },
    }),
    over: where === "all zones" ? where : "centre",
    covers: mean.dof > 0 ? "everything" : "but repeating",
    budget,
    ...(mean.people === undefined ? {} : { people: mean.people }),
  };
}

/**
 * Gathers everything that a radius of a session hangs on.
 *
 * @param session The session.
 * @param piece The piece.
 * @param bench The bench.
 * @param over Where the sag was read: all zones, the innermost, or the place
 * of a zone among the session's.
 * @returns The measurement, for a budget or a simulation.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function measurementOf(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
  over: RadiusStatement["over"] | number,
): RadiusMeasurement {
  const { zones, whole, ring, step, driftUncertainty } = session;
  const { mean } = over === "all zones"
    ? whole
    : zones[over === "centre" ? 0 : over];
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
