/**
 * Readings of one and the same surface, for what is asked of the gauge.
 *
 * @module
 */
import { workTimeline } from "../fabrication/work_timeline.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import type { SurfaceComponents } from "../repeatability/surface_components.ts";
import { splitSessions } from "../zones/split_sessions.ts";
import { listed } from "./_listed.ts";

/** A folder with the readings of one surface, and what to say about it. */
export interface OneSurface {
  /** The folder, its readings those of one surface. */
  readonly folder: PieceFolder;
  /** What was left out and why, as sentences. */
  readonly notes: readonly string[];
  /** Whether the log tells what was done between the sessions. */
  readonly known: boolean;
}

/**
 * Takes the sessions between which no glass was worked.
 *
 * What work changes from one session to the next is progress, and no scatter of
 * the gauge. Of several surfaces the one with most readings is taken, of equals
 * the later. Without a log nothing is known of work, and all sessions are taken
 * for days on one surface.
 *
 * @param folder A folder as read by `readPieceFolder`.
 * @param log Lines of its work log, in the order of the file.
 * @returns The folder itself where all sessions are of one surface.
 *
 * @example No log
 * ```ts
 * import { onOneSurface } from "sagbook/narrative/one_surface.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const folder = await readPieceFolder("data/gauge-study");
 * deepEqual(onOneSurface(folder), { folder, notes: [], known: false });
 * ```
 */
export function onOneSurface(
  folder: PieceFolder,
  log: readonly WorkLogEntry[] = [],
): OneSurface {
  const counts = new Map<string, number>();
  const begun = new Map<string, string | undefined>();
  for (const group of splitSessions(folder.readings)) {
    const [{ session, takenAt }] = group;
    counts.set(session, (counts.get(session) ?? 0) + group.length);
    if (!begun.has(session)) begun.set(session, takenAt);
  }
  const whole = { folder, notes: [], known: log.length > 0 };
  if (log.length === 0 || counts.size < 2) return whole;
  const { sessions, intervals } = workTimeline(
    log,
    [...begun].map(([session, takenAt]) => ({
      session,
      ...(takenAt === undefined ? {} : { takenAt }),
    })),
  );
  // A session that the log does not place may stand anywhere: a surface alone.
  const placed = new Set(sessions.map(({ session }) => session));
  const surfaces = [...counts.keys()].filter((name) => !placed.has(name))
    .map((name) => [name]);
  sessions.forEach(({ session }, k) => {
    const worked = k === 0 || intervals[k - 1].entries.length > 0;
    if (worked) surfaces.push([session]);
    else surfaces[surfaces.length - 1].push(session);
  });
  if (surfaces.length < 2) return whole;
  const size = (names: readonly string[]): number =>
    names.reduce((sum, name) => sum + counts.get(name)!, 0);
  const kept = surfaces.reduce((a, b) => size(b) >= size(a) ? b : a);
  const readings = folder.readings.filter(({ session }) =>
    kept.includes(session)
  );
  return {
    folder: { ...folder, readings },
    known: true,
    notes: [
      `Of ${counts.size} sessions ${
        kept.length === 1 ? `${kept[0]} alone is` : `${listed(kept)} are`
      } studied: the glass was worked between the others, and what that changed is no scatter of the gauge.`,
    ],
  };
}

/** Share of the variance from which the day is spoken of. */
const MUCH = 0.25;

/**
 * Warns that days which differ may be work that nobody wrote down.
 *
 * @param main The components of a folder without a log of the work.
 * @returns One sentence, or none where the days bring little.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function unloggedWork(
  { figures }: SurfaceComponents,
): readonly string[] {
  const sum = figures.reduce((all, { usable }) => all + usable, 0);
  const days = figures.find(({ sources }) => sources.includes("session"));
  return days === undefined || !(days.usable > MUCH * sum) ? [] : [
    "The days differ much. If the glass was worked between these sessions, that is its progress and no fault of the gauge: write the work into worklog.csv, and sessions with work between them are kept apart.",
  ];
}
