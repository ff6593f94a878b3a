/**
 * Which ring's readings of a session its answer rests on.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { standardUncertainty } from "../statistics/estimate_uncertainty.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { stateZoneRadius } from "./radius_statement.ts";

/** A ring that is surer by less than a fifth is no better. */
const CLEARLY = 0.8;

/** How unsure the curvature at the innermost zone is, as a part of it. */
function doubtOf(
  session: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
): number {
  const found = stateZoneRadius(session, piece, bench, 0);
  if (found === undefined) return Infinity;
  const { estimate } = found.budget.curvature;
  return standardUncertainty(estimate) / Math.abs(estimate.value);
}

/**
 * Chooses between one session's readings with two rings: those of more places,
 * then of more sets, then those that are clearly surer of the radius.
 *
 * @param one A session with one ring.
 * @param other The same session with another.
 * @param piece The piece.
 * @param bench The bench.
 * @returns One of the two; the first where nothing tells them apart.
 *
 * @example
 * ```ts
 * import { mainOfTwo } from "sagbook/narrative/main_session.ts";
 * import { openPiece } from "sagbook/narrative/open_piece.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { session, folder } = await openPiece("data/metric-250");
 * const fewer = { ...session!, sets: session!.sets.slice(1) };
 * equal(mainOfTwo(fewer, session!, folder.piece, folder.bench), session);
 * ```
 */
export function mainOfTwo(
  one: SessionAnalysis,
  other: SessionAnalysis,
  piece: Pick<Piece, "form">,
  bench: Bench,
): SessionAnalysis {
  const more = one.zones.length - other.zones.length ||
    one.sets.length - other.sets.length;
  if (more !== 0) return more > 0 ? one : other;
  return doubtOf(other, piece, bench) < CLEARLY * doubtOf(one, piece, bench)
    ? other
    : one;
}
