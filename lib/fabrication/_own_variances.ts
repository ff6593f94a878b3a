/**
 * The variance each session brings of its own.
 *
 * @module
 */
import type { ProgressSession } from "./progress_session.ts";

/** Own variances and how well they are known. */
export interface OwnVariances {
  /** One for each session, in mm². */
  readonly variances: readonly number[];
  /** Degrees of freedom behind them; `Infinity` where taken as known. */
  readonly dof: number;
}

/**
 * Pools the scatter of a zeroing over the sessions with one gauge.
 *
 * A session of k zeroings whose mean has the standard error u tells the
 * variance k u² of one zeroing with its degrees of freedom; pooled, and
 * divided by each session's own k. A session of one zeroing takes what the
 * others show; where none shows it, its own figure stands.
 */
export function ownVariances(
  sessions: readonly ProgressSession[],
): OwnVariances {
  const pools = new Map<string, { squares: number; dof: number }>();
  const pooled = ({ zeroings, sag }: ProgressSession): boolean =>
    zeroings !== undefined && zeroings > 1 && Number.isFinite(sag.dof) &&
    sag.dof > 0;
  for (const session of sessions) {
    if (!pooled(session)) continue;
    const { sag: { own, dof }, zeroings = 1, gauge = "" } = session;
    const pool = pools.get(gauge) ?? { squares: 0, dof: 0 };
    pool.squares += dof * zeroings * own * own;
    pool.dof += dof;
    pools.set(gauge, pool);
  }
  const variances = sessions.map(({ sag: { own }, zeroings, gauge = "" }) => {
    const pool = pools.get(gauge);
    return zeroings === undefined || pool === undefined
      ? own * own
      : pool.squares / pool.dof / zeroings;
  });
  const dofs = [...pools.values()].map(({ dof }) => dof);
  return { variances, dof: dofs.length === 0 ? Infinity : Math.min(...dofs) };
}
