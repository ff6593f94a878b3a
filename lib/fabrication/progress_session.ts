/**
 * One session of readings as a point on the line of progress.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";

/** A session's sag, and the work done before it. */
export interface ProgressSession {
  /** The session's name. */
  readonly session: string;
  /** Work done before it, in wets or minutes, counted from one start. */
  readonly work: number;
  /**
   * Sag of the surface in mm: over one foot circle or over the half diameter,
   * the same for all sessions. `own` is what differs from session to session,
   * `common` what they share, such as the ring's radius.
   */
  readonly sag: Estimate;
  /**
   * How many zeroings `sag.own` comes from. Where given, the scatter of a
   * zeroing is pooled over all sessions with the same gauge, since two or three
   * zeroings say little about it; where left out, `sag.own` is taken as it is.
   */
  readonly zeroings?: number;
  /** What the sessions that share one scatter have in common: ring and gauge. */
  readonly gauge?: string;
}

/** Sessions with one setting between them; the first is where it began. */
export type ProgressRun = readonly ProgressSession[];

/**
 * How the work departs from an even rate.
 *
 * `accumulates`: a wet that took more stays taken, so that departures add up
 * as work goes on. `by session`: each session departs from the line on its
 * own, and the next knows nothing of it.
 */
export type WorkScatter = "accumulates" | "by session";
