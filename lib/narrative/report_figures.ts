/**
 * The figures of a report.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import type { Figure } from "../figures/figure.ts";
import { planFigure } from "../figures/plan_figure.ts";
import { profileFigure } from "../figures/profile_figure.ts";
import {
  readingsFigure,
  type ReadingsFigureReading,
} from "../figures/readings_figure.ts";
import { zonesFigure } from "../figures/zones_figure.ts";
import { GrowingNumbers } from "../numerics/growing_numbers.ts";
import { itemMaker, lazyList, mapItems } from "../numerics/lazy_list.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import type { Millimetres } from "../units/length.ts";
import type { SphericityVerdict } from "../zones/sphericity.ts";
import { surfaceShape } from "../zones/surface_shape.ts";
import { outermostTouched } from "../zones/unseen.ts";
import { suspicionSentences } from "./caution_sentences.ts";
import { zeroDoubts } from "./zero_doubt.ts";
import type { SessionReport } from "./session_report.ts";

const TITLES: Record<SphericityVerdict["verdict"], string> = {
  within: "The zones agree within the tolerance",
  outside: "The zones differ by more than the tolerance",
  undecided: "Whether the zones agree is not decided",
  none: "How the zones compare",
};

/**
 * Draws how the zones differ from the innermost one.
 *
 * @param report The report.
 * @returns The figure; undefined when no set read two zones.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawZones(
  report: SessionReport,
): Promise<Figure | undefined> {
  const { session, folder: { piece } } = report;
  const against = session?.differences.filter(({ first }) => first === 0);
  if (!session || !against || against.length === 0) return undefined;
  const { zones, sphericity } = session;
  const { tolerance, verdict } = sphericity;
  // Readings in doubt, or without a radius, say nothing of the shape.
  const settled = report.radius !== undefined &&
    suspicionSentences(report.folder.problems).length === 0 &&
    zeroDoubts(session, piece.unit).length === 0;
  return await zonesFigure({
    reference: {
      label: zones[0].place.label,
      distance: zones[0].place.distance,
    },
    zones: against.map(({ second, mean, interval90, interval95 }) => ({
      label: zones[second].place.label,
      distance: zones[second].place.distance,
      difference: -mean,
      ...(interval90 ? { interval90: turned(interval90) } : {}),
      ...(interval95 ? { interval95: turned(interval95) } : {}),
      sets: setsOf(session, second),
    })),
    ...(tolerance === undefined ? {} : { tolerance: tolerance.sag }),
  }, { unit: piece.unit, title: TITLES[settled ? verdict : "none"] });
}

/** What each set says of one zone against the innermost. */
function setsOf({ sets, outliers }: SessionAnalysis, zone: number) {
  const at = itemMaker(sets);
  const both = new GrowingNumbers(Uint32Array);
  for (let set = 0; set < sets.length; set++) {
    const { cells } = at(set);
    if (cells[0] && cells[zone]) both.push(set);
  }
  return lazyList(both.length, (index) => {
    const set = both.at(index);
    const { cells } = at(set);
    const flagged = outliers.some((flag) =>
      flag.set === set && (flag.place === zone || flag.place === 0)
    );
    return { difference: cells[zone]!.sag - cells[0]!.sag, flagged };
  });
}

/**
 * Draws every reading in the order it was taken, looks at the flat included.
 *
 * @param report The report.
 * @returns The figure; undefined without readings.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawReadings(
  report: SessionReport,
): Promise<Figure | undefined> {
  const { session, folder: { piece } } = report;
  if (!session) return undefined;
  const { readings, looks, outliers, sets } = session;
  const flagged = new Set(
    outliers.map(({ set, place }) => `${sets[set].zeroing} ${place}`),
  );
  const workAt = itemMaker(readings);
  const lookAt = itemMaker(looks);
  const places = inOrder(
    readings.length,
    (index) => workAt(index).reading.order,
    looks.length,
    (index) => lookAt(index).order,
  );
  const all = lazyList(places.length, (index): ReadingsFigureReading => {
    const place = places.at(index);
    if (place >= readings.length) {
      const look = lookAt(place - readings.length);
      return {
        set: zeroingLabel(look),
        zone: "flat",
        on: "flat",
        sag: look.sag,
      };
    }
    const { reading, sag, place: zone } = workAt(place);
    return {
      set: zeroingLabel(reading),
      zone: session.zones[zone].place.label,
      on: "work",
      sag,
      flagged: flagged.has(`${reading.zeroing} ${zone}`),
    };
  });
  return await readingsFigure({ readings: all }, { unit: piece.unit });
}

/** Two lists in the order of both; places in the second follow the first's. */
function inOrder(
  count: number,
  orderOf: (index: number) => number,
  others: number,
  orderOfOther: (index: number) => number,
): GrowingNumbers {
  const places = new GrowingNumbers(Uint32Array);
  let other = 0;
  for (let index = 0; index < count; index++) {
    const order = orderOf(index);
    while (other < others && orderOfOther(other) < order) {
      places.push(count + other++);
    }
    places.push(index);
  }
  while (other < others) places.push(count + other++);
  return places;
}

/**
 * Draws the work from above with the points each reading saw.
 *
 * A reading's departure is its sag less the mean of its set, so that the zero
 * does not colour it.
 *
 * @param report The report.
 * @returns The figure; undefined without readings or a radius.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawPlan(
  report: SessionReport,
): Promise<Figure | undefined> {
  const { session, folder: { piece } } = report;
  const radius = nominalRadius(report);
  if (!session || radius === undefined) return undefined;
  const { ring: { shape }, readings, sets } = session;
  const levels = new Map<string, { sum: number; count: number }>();
  for (const { zeroing, cells } of sets) {
    const level = levels.get(zeroing) ?? { sum: 0, count: 0 };
    for (const cell of cells) {
      if (!cell) continue;
      level.sum += cell.sag;
      level.count++;
    }
    levels.set(zeroing, level);
  }
  return await planFigure({
    halfDiameter: piece.diameter / 2,
    bevel: piece.bevel,
    contactRadius: contactCircleRadius(shape, piece.form, radius),
    feet: shape.kind,
    // A gauge whose step nobody knows has none to tell departures apart by.
    ...(session.step > 0 ? { displayStep: session.step } : {}),
    readings: mapItems(readings, ({ reading, sag }) => {
      const { sum, count } = levels.get(reading.zeroing)!;
      const { offset, diameterDegrees, foot } = reading;
      return {
        offset,
        foot,
        departure: sag - sum / count,
        ...(diameterDegrees === undefined ? {} : { diameterDegrees }),
      };
    }),
  }, { unit: piece.unit });
}

/**
 * Draws the shape that the zones suggest as far as it was touched, with a
 * band that rests on smoothness alone.
 *
 * @param report The report.
 * @returns The figure; undefined when the readings carry no profile.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawProfile(
  report: SessionReport,
): Promise<Figure | undefined> {
  const { session, folder: { piece } } = report;
  const radius = nominalRadius(report);
  if (!session?.profile || radius === undefined) return undefined;
  const { profile, readings, ring, zones, sets } = session;
  const seenTo = outermostTouched(
    mapItems(readings, ({ reading }) => reading),
    ring.shape,
    piece.form,
    radius,
  );
  const shape = surfaceShape(sets, zones.map(({ place }) => place), {
    contactCircle: contactCircleRadius(ring.shape, piece.form, radius),
    seenTo,
    step: session.step,
    scope: session.sphericity.scope,
    drift: session.driftUncertainty,
  });
  if (!shape) return undefined;
  return await profileFigure({
    points: shape.points,
    halfDiameter: profile.halfDiameter,
    seenTo,
    zones: zones.map(({ place: { label, distance } }) => ({ label, distance })),
  }, { unit: piece.unit });
}

/** A radius good enough to say where the feet touch. */
function nominalRadius(
  { session, folder: { piece } }: SessionReport,
): Millimetres | undefined {
  return session?.zones[0].radius?.radius ?? piece.target?.radius ??
    piece.startingRadius;
}

/** The interval of the opposite difference. */
function turned(
  { low, high }: { low: number; high: number },
): { low: number; high: number } {
  return { low: -high, high: -low };
}
