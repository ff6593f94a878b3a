/**
 * Everything the zones of one session say.
 *
 * @module
 */
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Feet } from "../geometry/feet.ts";
import {
  filterItems,
  isLazy,
  itemMaker,
  mapItems,
} from "../numerics/lazy_list.ts";
import type { Bench, Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { correctDrift, type RecordedZero, type ZeroDrift } from "./drift.ts";
import { flagOutliers, type OutlierFlag, withoutFlagged } from "./outliers.ts";
import { peopleOf, wherePeopleDiffer } from "./_people.ts";
import { type Place, placesOf } from "./place.ts";
import { fitProfile, type SurfaceProfile } from "./profile.ts";
import type { Scope } from "./replicates.ts";
import {
  meanOfSets,
  type MeanSag,
  meanSag,
  type RadiusOfSag,
  radiusOfSag,
} from "./session_radius.ts";
import { type MeasuredSet, setTable } from "./set_table.ts";
import { type JudgedSets, judgeSets } from "./judge_sets.ts";
import type { SphericityVerdict } from "./sphericity.ts";
import { compareEnds, type EndsComparison } from "./two_ends.ts";
import { type Unseen, unseenBy } from "./unseen.ts";
import type { ZoneDifference } from "./zone_difference.ts";

/** A mean sag and the radius that belongs to it. */
export interface MeanWithRadius {
  /** Mean sag over zeroings. */
  readonly mean: MeanSag;
  /** The radius that belongs to it; undefined when none does. */
  readonly radius?: RadiusOfSag;
}

/** One place of the session with what was read there. */
export interface ZoneSummary extends MeanWithRadius {
  /** The place. */
  readonly place: Place;
}

/** What one session with one ring says. */
export interface SessionAnalysis {
  /** The session. */
  readonly session: string;
  /** The ring. */
  readonly ring: Ring;
  /** Its feet as the formulas need them. */
  readonly feet: Feet;
  /** Grade the surface was left by, where all readings agree. */
  readonly grade?: string;
  /** When the first reading was taken, where recorded. */
  readonly takenAt?: string;
  /** Display step in mm, 0 when none is known. */
  readonly step: Millimetres;
  /** Readings of the work, in order, with the sag corrected for drift. */
  readonly readings: readonly {
    readonly reading: Reading;
    readonly sag: number;
    readonly place: number;
  }[];
  /** Looks at the flat, in order. */
  readonly looks: readonly Reading[];
  /** Every place read, from the centre outward. */
  readonly zones: readonly ZoneSummary[];
  /** Readings by set and place. */
  readonly sets: readonly MeasuredSet[];
  /** All places together: the radius if the surface is a sphere. */
  readonly whole: MeanWithRadius;
  /** Every pair of places compared within sets. */
  readonly differences: readonly ZoneDifference[];
  /** The two ends of diameters, where both were read. */
  readonly ends?: EndsComparison;
  /** The verdict. */
  readonly sphericity: SphericityVerdict;
  /** The shape the zones suggest. */
  readonly profile?: SurfaceProfile;
  /** Readings that stand apart. */
  readonly outliers: readonly OutlierFlag[];
  /** The same without them, where there are any. */
  readonly withoutOutliers?: JudgedSets & { readonly whole: MeanWithRadius };
  /** Drift of the zero, by zeroing. */
  readonly drifts: readonly ZeroDrift[];
  /** Zeroings whose flat did not show 0: their readings count from there. */
  readonly zeros: readonly RecordedZero[];
  /** Standard uncertainty of the mean sag from drift that is left, in mm. */
  readonly driftUncertainty: Millimetres;
  /** What could not have been seen. */
  readonly unseen: readonly Unseen[];
}

/** A session of no more readings is taken out of its columns first. */
const MOST_OBJECTS = 20_000;

/** Choices a caller may make. */
export interface SessionOptions {
  /** What the verdict is meant for; any diameter unless stated. */
  readonly scope?: Scope;
  /** Seed of the simulation behind the number of sets; 1 unless stated. */
  readonly seed?: number;
}

/**
 * Analyses one session read with one ring.
 *
 * The radius rests on all zeroings, the verdict on differences within sets,
 * which are free of the zero. Drift of the zero is taken out first where looks
 * at the flat show it. Nothing is dropped: readings that stand apart are
 * flagged and the answer without them is given beside the answer with them.
 *
 * Of a session kept in columns (more than 20,000 readings) sets and readings are
 * lists that make their items when they are looked at; the numbers are the same.
 *
 * @param given Readings of one session and ring, flat included, in order.
 * @param piece The piece.
 * @param bench The bench the ring belongs to.
 * @param options Scope and seed.
 * @returns Plain data, lengths in mm. Undefined when the work was not read.
 * @throws {RangeError} If the ring is not on the bench.
 *
 * @see Each part's own file for its method and source.
 *
 * @example See the example of `lib/zones/mod.ts`, which reads a whole session.
 */
export function analyseSession(
  given: readonly Reading[],
  piece: Piece,
  bench: Bench,
  options: SessionOptions = {},
): SessionAnalysis | undefined {
  const { scope = "any diameter", seed = 1 } = options;
  const readings = isLazy(given) && given.length <= MOST_OBJECTS
    ? [...given]
    : given;
  const work = filterItems(readings, ({ on }) => on === "work");
  if (work.length === 0) return undefined;
  const ring = bench.rings.find(({ id }) => id === work[0].ring);
  if (!ring) {
    throw new RangeError(
      `Cannot analyse a session as its ring must be on the bench: current value is ${
        work[0].ring
      }`,
    );
  }
  const { form } = piece;
  const feet = effectiveFeet(ring.shape, form);
  const step = work.reduce((most, one) => Math.max(most, one.step ?? 0), 0);
  const { kind } = ring.shape;
  const { drifts, zeros, carried, left, ...looked } = correctDrift(
    readings,
    step,
  );
  const at = itemMaker(readings);
  const onWork = (_: number, index: number): boolean => at(index).on === "work";
  const sag = looked.sag.filter(onWork);
  const progress = looked.progress.filter(onWork);
  const drift = left === undefined ? {} : { drift: left };
  const { places, placeOf } = placesOf(work, kind);
  const zeroingOf = work.map(({ zeroing }) => zeroing);
  const sets = setTable(work, sag, places, placeOf, progress);
  const personOf = wherePeopleDiffer(sets, peopleOf(work));
  const statements = places.length * (places.length - 1) / 2 + 1;
  const ends = compareEnds(sets, places, step, statements, scope, left);
  const ground = {
    places,
    ends,
    piece,
    feet,
    kind,
    step,
    scope,
    seed,
    ...drift,
  };

  const withRadius = (mean: MeanSag): MeanWithRadius => {
    const radius = radiusOfSag(mean, feet, form);
    return radius === undefined ? { mean } : { mean, radius };
  };
  const zones = places.map((place, number): ZoneSummary => {
    const inside = (_: unknown, index: number): boolean =>
      placeOf[index] === number;
    const sags = sag.filter(inside);
    const zeroings = zeroingOf.filter(inside);
    return { place, ...withRadius(meanSag(sags, zeroings, step, personOf)) };
  });
  const rim = millimetres(piece.diameter / 2 - piece.bevel);
  const radius = zones[0].radius?.radius ?? piece.target?.radius ??
    piece.startingRadius;
  const profile = radius === undefined || kind !== "balls"
    ? undefined
    : fitProfile(sets, places, {
      contactCircle: contactCircleRadius(ring.shape, form, radius),
      halfDiameter: rim,
      radius,
      step,
      scope,
      ...drift,
    });
  const outliers = flagOutliers(sets, places.length, step);
  const kept = withoutFlagged(sets, outliers);
  const grade = work[0].grade;
  return {
    session: work[0].session,
    ring,
    feet,
    ...(grade !== undefined && work.every((one) => one.grade === grade)
      ? { grade }
      : {}),
    ...(work[0].takenAt === undefined ? {} : { takenAt: work[0].takenAt }),
    step: millimetres(step),
    readings: mapItems(work, (reading, index) => ({
      reading,
      sag: sag[index],
      place: placeOf[index],
    })),
    looks: filterItems(readings, ({ on }) => on === "flat"),
    zones,
    sets,
    whole: withRadius(meanOfSets(sets, step, personOf)),
    ...judgeSets(sets, ground),
    ...(ends === undefined ? {} : { ends }),
    ...(profile === undefined ? {} : { profile }),
    outliers,
    ...(outliers.length === 0 ? {} : {
      withoutOutliers: {
        whole: withRadius(meanOfSets(kept, step, personOf)),
        ...judgeSets(kept, {
          ...ground,
          ends: compareEnds(kept, places, step, statements, scope, left),
        }),
      },
    }),
    drifts,
    zeros,
    driftUncertainty: carried,
    unseen: radius === undefined
      ? []
      : unseenBy(work, ring.shape, form, radius, rim, ends !== undefined),
  };
}
