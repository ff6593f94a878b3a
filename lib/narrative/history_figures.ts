/**
 * The figures of a history.
 *
 * @module
 */
import {
  predictProgress,
  progressLimits,
} from "../fabrication/predict_progress.ts";
import type { Setting } from "../fabrication/work_timeline.ts";
import type { Figure } from "../figures/figure.ts";
import { gradesTimelineFigure } from "../figures/grades_timeline_figure.ts";
import { progressFigure } from "../figures/progress_figure.ts";
import { rateFigure } from "../figures/rate_figure.ts";
import { zonesOverTimeFigure } from "../figures/zones_over_time_figure.ts";
import { radiusFromSurfaceSag, surfaceSag } from "../geometry/surface_sag.ts";
import type { WorkLogEntry } from "../records/work_log.ts";
import { millimetres } from "../units/length.ts";
import type { HistoryReport } from "./history_report.ts";

/** Points of the forecast that are drawn. */
const STEPS = 24;

/**
 * Draws radius or sag against the work done, with forecast and target.
 *
 * @param report The report.
 * @param quantity Radius, or sag of the whole surface.
 * @returns The figure; undefined where no session has a place and a sag.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawProgress(
  report: HistoryReport,
  quantity: "radius" | "sag" = "radius",
): Promise<Figure | undefined> {
  const { timeline, points, current, forecast, folder: { piece }, risk } =
    report;
  const half = millimetres(piece.diameter / 2);
  const byName = new Map(points.map((one) => [one.session.session, one]));
  const shown = (sag: number): number =>
    quantity === "sag" ? sag : radiusFromSurfaceSag(millimetres(sag), half);
  const shownInterval = ({ low, high }: { low: number; high: number }) => {
    const ends = [shown(low), shown(high)];
    return { low: Math.min(...ends), high: Math.max(...ends) };
  };
  const wrong = wrongSessions(report);
  const sessions = timeline.sessions.flatMap(({ session, work }) => {
    const sag = byName.get(session)?.sag;
    if (sag === undefined || sag.value <= 0) return [];
    const ends = progressLimits(sag);
    return [{
      work,
      value: shown(sag.value),
      ...(ends.low > 0 ? { interval95: shownInterval(ends) } : {}),
      ...(wrong.has(session) ? { wrongWay: true } : {}),
    }];
  });
  if (sessions.length === 0) return undefined;
  const { unit } = timeline;
  const { target } = piece;
  const aim = target && {
    target: quantity === "radius"
      ? target.radius as number
      : surfaceSag(target.radius, half) as number,
  };
  const tolerance = target?.tolerance === undefined ? undefined : (
    quantity === "radius" ? target.tolerance as number : Math.abs(
      surfaceSag(millimetres(target.radius - target.tolerance), half) -
        surfaceSag(target.radius, half),
    )
  );
  const fit = current?.fit;
  const line = fit === undefined ? [] : lastRun(report).map((work) => ({
    work,
    value: shown(fit.level.value + fit.rate.value * (work - fit.lastWork)),
  }));
  const far = forecast?.kind === "forecast"
    ? Math.min(
      1.4 * (forecast.interval.high ?? 3 * forecast.work),
      3 * forecast.work,
    )
    : 0;
  const fan = far > 0 && fit !== undefined
    ? Array.from({ length: STEPS + 1 }, (_, i) => {
      const more = far * i / STEPS;
      const predicted = predictProgress(fit, more);
      const { low, high } = progressLimits(predicted);
      return {
        work: fit.lastWork + more,
        value: shown(predicted.value),
        ...shownInterval({ low, high }),
      };
    })
    : [];
  return await progressFigure({
    quantity,
    workUnit: unit ?? "wets",
    sessions,
    ...(line.length > 1 ? { fit: line } : {}),
    ...(fan.length > 1 ? { forecast: fan } : {}),
    ...(aim ?? {}),
    ...(tolerance === undefined || tolerance === 0 ? {} : { tolerance }),
    ...(forecast?.kind === "forecast" && fit !== undefined
      ? { stop: { work: fit.lastWork + forecast.most, risk } }
      : {}),
  }, {
    unit: piece.unit,
    ...(quantity === "sag"
      ? { title: "Sag of the whole surface against the work done" }
      : {}),
  });
}

/** Work at the sessions of the last run of the setting in use. */
function lastRun({ current }: HistoryReport): number[] {
  return (current?.runs.at(-1) ?? []).map(({ work }) => work);
}

/** Sessions whose stretch moved the radius away from its target. */
function wrongSessions(
  { timeline, points, folder: { piece } }: HistoryReport,
): ReadonlySet<string> {
  const wrong = new Set<string>();
  const target = piece.target?.radius;
  if (target === undefined) return wrong;
  const aim = surfaceSag(target, millimetres(piece.diameter / 2));
  const byName = new Map(points.map((one) => [one.session.session, one.sag]));
  for (const { before, after } of timeline.intervals) {
    const [a, b] = [byName.get(before.session), byName.get(after.session)];
    if (a === undefined || b === undefined) continue;
    const doubt = 2 * Math.hypot(a.own, b.own);
    const moved = Math.sign(aim - a.value) * (b.value - a.value);
    if (moved < -doubt) wrong.add(after.session);
  }
  return wrong;
}

/**
 * Draws the rate of each setting beside what the shop expects of it.
 *
 * @param report The report.
 * @returns The figure; undefined where no rate was found.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawRates(
  report: HistoryReport,
): Promise<Figure | undefined> {
  const { stages, folder: { piece }, timeline, points } = report;
  const target = piece.target?.radius;
  const start = points.find(({ centre }) => centre !== undefined)?.centre
    ?.radius;
  const ahead = target !== undefined && start !== undefined && start < target
    ? -1
    : 1;
  const stretches = stages.flatMap((stage) => {
    const { fit, expected } = stage;
    if (fit === undefined) return [];
    const { low, high } = progressLimits(fit.rate);
    return [{
      label: shortName(stage),
      rate: ahead * fit.rate.value,
      interval95: ahead > 0 ? { low, high } : { low: -high, high: -low },
      ...(expected === undefined
        ? {}
        : { expected: ahead * expected.rate.value }),
    }];
  });
  if (stretches.length === 0) return undefined;
  return await rateFigure({
    workUnit: timeline.unit === "minutes" ? "minute" : "wet",
    stretches,
  }, { unit: piece.unit });
}

/** Grade, and what lies on top, short enough for an axis. */
function shortName({ grade, position }: Setting): string {
  const name = grade ?? "no name";
  return position === undefined
    ? name
    : `${name}\n${position === "tool on top" ? "tool" : "mirror"}`;
}

/**
 * Draws the zones' differences from the centre through the sessions.
 *
 * @param report The report.
 * @returns The figure; undefined where no two zones were read in one set.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawZonesOverTime(
  report: HistoryReport,
): Promise<Figure | undefined> {
  const { points, folder: { piece } } = report;
  const sessions = points.map(({ session }) => session);
  const labels = new Set<string>();
  for (const { zones } of sessions) {
    for (const { place } of zones.slice(1)) labels.add(place.label);
  }
  const zones = [...labels].map((label) => ({
    label,
    differences: sessions.map(({ zones, differences }) => {
      const at = zones.findIndex(({ place }) => place.label === label);
      const found = differences.find(({ first, second }) =>
        first === 0 && second === at
      );
      if (at < 1 || found === undefined) return undefined;
      const { mean, interval95: ends } = found;
      return {
        value: -mean,
        ...(ends === undefined
          ? {}
          : { interval95: { low: -ends.high, high: -ends.low } }),
      };
    }),
  })).filter(({ differences }) => differences.some((one) => one));
  if (zones.length === 0) return undefined;
  const tolerance = sessions.at(-1)?.sphericity.tolerance?.sag;
  return await zonesOverTimeFigure({
    sessions: sessions.map(({ session }) => session),
    reference: sessions[0].zones[0].place.label,
    zones,
    ...(tolerance === undefined ? {} : { tolerance }),
  }, { unit: piece.unit });
}

/**
 * Draws the grades as a timeline.
 *
 * @param report The report.
 * @returns The figure; undefined where no line of work has grade and date.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawGrades(
  report: HistoryReport,
): Promise<Figure | undefined> {
  const { timeline, points, folder: { piece } } = report;
  const entries = [
    ...timeline.before,
    ...timeline.intervals.flatMap((one) => one.entries),
    ...timeline.after,
  ].filter((one): one is WorkLogEntry & { date: string; grade: string } =>
    one.date !== undefined && one.grade !== undefined
  );
  const stretches: {
    grade: string;
    from: string;
    to: string;
    minutes?: number;
  }[] = [];
  for (const { grade, date, minutes } of entries) {
    const last = stretches.at(-1);
    if (last?.grade === grade && date >= last.to) {
      last.to = date;
      if (last.minutes !== undefined && minutes !== undefined) {
        last.minutes += minutes;
      } else delete last.minutes;
    } else {
      stretches.push({
        grade,
        from: date,
        to: date,
        ...(minutes === undefined ? {} : { minutes }),
      });
    }
  }
  if (stretches.length === 0) return undefined;
  const sessions = points.flatMap(({ session }) =>
    session.takenAt === undefined ? [] : [session.takenAt]
  );
  return await gradesTimelineFigure({
    stretches,
    ...(sessions.length === 0 ? {} : { sessions }),
  }, { unit: piece.unit });
}
