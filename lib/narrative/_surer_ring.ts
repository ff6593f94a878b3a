/**
 * Another ring of the same session that is surer of the radius.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { ringNameFirst } from "../records/ring_name.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { type RadiusStatement, stateRadius } from "./radius_statement.ts";
import { standsToTarget } from "./target_words.ts";
import { writeRadius } from "./write_radius.ts";

/** Part of the stated doubt that another ring's must stay below. */
const SURER = 0.9;

/** A surer ring's radius, and what to say of it. */
export interface SurerRing {
  /** The radius by it. */
  readonly found: RadiusStatement;
  /** The same in words. */
  readonly sentence: string;
}

/**
 * Finds what the surest other ring of a session makes of the radius, where it
 * is surer than the one the answer rests on and does not contradict it.
 */
export function surerRing(
  session: SessionAnalysis,
  sessions: readonly SessionAnalysis[],
  radius: RadiusStatement | undefined,
  piece: Piece,
  bench: Bench,
): SurerRing | undefined {
  const { expanded, other } = radius ?? {};
  if (expanded === undefined || other !== undefined) return undefined;
  const others = sessions.flatMap((one) => {
    if (one.session !== session.session || one === session) return [];
    const found = stateRadius(one, piece, bench);
    const usable = found?.expanded !== undefined &&
      found.other === undefined && found.covers === "everything";
    return usable ? [{ ring: one.ring.id, found }] : [];
  });
  const [surest] = others.sort((a, b) => a.found.expanded! - b.found.expanded!);
  if (surest === undefined || surest.found.expanded! >= SURER * expanded) {
    return undefined;
  }
  const { ring, found } = surest;
  const { target, unit } = piece;
  const stands = target === undefined
    ? ""
    : `; ${standsToTarget(found, target, unit, false)}`;
  return {
    found,
    sentence: `${ringNameFirst(ring)}, read in the same session, is surer: ${
      writeRadius(found, unit)
    }${stands}.`,
  };
}
