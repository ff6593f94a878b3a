/**
 * The sessions of a piece as points on its line of progress.
 *
 * @module
 */
import type { ProgressSession } from "../fabrication/progress_session.ts";
import type { PlacedSession } from "../fabrication/work_timeline.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Estimate } from "../statistics/estimate.ts";
import {
  analyseSession,
  type SessionAnalysis,
} from "../zones/analyse_session.ts";
import { splitSessions } from "../zones/split_sessions.ts";
import { mainOfTwo } from "./main_session.ts";
import { type RadiusStatement, stateRadius } from "./radius_statement.ts";

/** One session of a history. */
export interface HistoryPoint {
  /** The session, with the ring that read most of it. */
  readonly session: SessionAnalysis;
  /** The radius at the innermost zone; absent where the sag has none. */
  readonly centre?: RadiusStatement;
  /** Sag of the whole surface over the half diameter, in mm. */
  readonly sag?: Estimate;
  /**
   * True where it was zeroed once, and how the zero scatters was taken from the
   * other sessions with this ring.
   */
  readonly borrowed?: true;
}

/**
 * Analyses every session and finds the sag of the whole surface from its
 * innermost zone, so that rings may change between sessions.
 *
 * What the budget shares by id stays shared; a source that only one session
 * has counts as that session's own. A session that was zeroed once does not show
 * how its zero scatters: that is taken from the other sessions with its ring,
 * else it would pass for surer than they are.
 *
 * @param folder The folder.
 * @returns One point for each session, in the order of the readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyPoints(folder: PieceFolder): readonly HistoryPoint[] {
  const { piece, bench, readings } = folder;
  const byName = new Map<string, SessionAnalysis>();
  for (const group of splitSessions(readings)) {
    const found = analyseSession(group, piece, bench);
    if (found === undefined) continue;
    const known = byName.get(found.session);
    byName.set(
      found.session,
      known === undefined ? found : mainOfTwo(known, found, piece, bench),
    );
  }
  const half = piece.diameter / 2;
  const scatter = scatterByRing([...byName.values()]);
  const points = [...byName.values()].map((session): HistoryPoint => {
    const [{ mean, ...rest }] = session.zones;
    const known = mean.zeroings === 1
      ? scatter.get(session.ring.id)
      : undefined;
    const first = { ...rest, mean: { ...mean, ...known } };
    const borrowed = known === undefined ? {} : { borrowed: true as const };
    const centre = stateRadius(
      { ...session, zones: [first], whole: first },
      piece,
      bench,
    );
    if (centre === undefined) return { session };
    const curvature = centre.budget.curvature.estimate;
    const sag = surfaceSagEstimate(curvature, half);
    return { session, centre, sag, ...borrowed };
  });
  const counts = new Map<string, number>();
  for (const { sag } of points) {
    for (const id of Object.keys(sag?.common ?? {})) {
      counts.set(id, (counts.get(id) ?? 0) + 1);
    }
  }
  return points.map((point) =>
    point.sag === undefined
      ? point
      : { ...point, sag: ownWhereAlone(point.sag, counts) }
  );
}

/** How one zeroing of the innermost zone scatters, pooled over sessions. */
function scatterByRing(
  sessions: readonly SessionAnalysis[],
): ReadonlyMap<
  string,
  { readonly standardError: number; readonly dof: number }
> {
  const sums = new Map<string, { squares: number; dof: number }>();
  for (const { ring, zones: [{ mean: { deviation, dof } }] } of sessions) {
    if (deviation === undefined) continue;
    const sum = sums.get(ring.id) ?? { squares: 0, dof: 0 };
    sum.squares += dof * deviation ** 2;
    sum.dof += dof;
    sums.set(ring.id, sum);
  }
  return new Map(
    [...sums].filter(([, { dof }]) => dof > 0).map(([ring, sum]) => [
      ring,
      { standardError: Math.sqrt(sum.squares / sum.dof), dof: sum.dof },
    ]),
  );
}

/** Sag over the half diameter from the curvature, first order. */
function surfaceSagEstimate(curvature: Estimate, half: number): Estimate {
  const { value, own, dof, common } = curvature;
  const root = Math.sqrt(1 - (half * value) ** 2);
  // S = κ a²/(1 + √(1 − κ² a²)), so dS/dκ = a²/(√ (1 + √)).
  const slope = half * half / (root * (1 + root));
  return {
    value: value * half * half / (1 + root),
    own: slope * own,
    dof,
    common: Object.fromEntries(
      Object.entries(common).map(([id, shift]) => [id, slope * shift]),
    ),
  };
}

function ownWhereAlone(
  sag: Estimate,
  counts: ReadonlyMap<string, number>,
): Estimate {
  const common: Record<string, number> = {};
  let squared = sag.own ** 2;
  for (const [id, shift] of Object.entries(sag.common)) {
    if (counts.get(id)! > 1) common[id] = shift;
    else squared += shift * shift;
  }
  return { ...sag, own: Math.sqrt(squared), common };
}

/**
 * Tells whether a point may stand for a sphere.
 *
 * @param point The point.
 * @returns False where the zones were shown to differ beyond the tolerance.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function isSphere({ session }: HistoryPoint): boolean {
  return session.sphericity.verdict !== "outside";
}

/**
 * Turns placed sessions into the points a line is fitted to.
 *
 * @param run Sessions of one run with the work before them.
 * @param points The points by session.
 * @returns Those with a sag that are not shown to be no sphere: what one zone
 * of such a surface reads is no measure of the whole.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function progressRun(
  run: readonly PlacedSession[],
  points: ReadonlyMap<string, HistoryPoint>,
): ProgressSession[] {
  return run.flatMap(({ session, work }) => {
    const point = points.get(session);
    if (point?.sag === undefined || !isSphere(point)) return [];
    const { session: analysis, sag } = point;
    return [{
      session,
      work,
      sag,
      zeroings: analysis.zones[0].mean.zeroings,
      gauge: analysis.ring.id,
    }];
  });
}
