/**
 * The next step that a session's readings call for.
 *
 * @module
 */
import {
  type NextStep,
  nextStep,
  type StrokeTable,
  type SurfaceState,
} from "../fabrication/next_step.ts";
import type { Piece } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { centreAgainstEdge } from "../zones/centre_against_edge.ts";
import { rangeOf } from "./radius_range.ts";
import type { RadiusStatement } from "./radius_statement.ts";

/**
 * Chooses the next step for a session.
 *
 * @param session The session.
 * @param piece The piece.
 * @param radius The radius stated, where there is one.
 * @param table The bench's strokes; those in common use unless told.
 * @returns The step; "measure more" where no radius belongs to the readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function chooseNext(
  session: SessionAnalysis,
  piece: Piece,
  radius: RadiusStatement | undefined,
  table?: StrokeTable,
): NextStep {
  const { sphericity, zones } = session;
  const { target, form } = piece;
  if (radius === undefined) return { kind: "measure more", why: "untested" };
  const { difference } = centreAgainstEdge(session.differences, zones.length);
  return nextStep({
    form,
    sphericity: sphericity.verdict,
    lopsided: sphericity.byEnds,
    ...(sphericity.verdict !== "outside" || sphericity.byEnds
      ? {}
      : difference === undefined
      ? { zoneApart: true }
      : { centreLessEdge: difference }),
    ...(target === undefined ? {} : offTarget(radius, target.radius)),
    ...(target?.tolerance === undefined ? {} : { tolerance: target.tolerance }),
  }, table);
}

/** Radius less target, at best and with all that it may be. */
function offTarget(
  radius: RadiusStatement,
  target: number,
): Pick<SurfaceState, "radiusLessTarget" | "range"> {
  const range = rangeOf(radius);
  return {
    radiusLessTarget: radius.radius - target,
    ...(range === undefined ? {} : {
      range: {
        low: range.low - target,
        ...(range.high === undefined ? {} : { high: range.high - target }),
      },
    }),
  };
}
