/**
 * What looks wrong about a reading while the surface is still there.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import type { Bench, Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { millimetres } from "../units/length.ts";
import type { GaugeScatter } from "./bench_scatter.ts";
import { centreOf, quickRadius } from "./_bench_quick.ts";
import { writeSmall } from "./sag_words.ts";

/** A reading and what it is held against. */
export interface BenchMoment {
  /** The reading. */
  readonly reading: Reading;
  /** Readings of its session before it, withdrawn ones left out, in order. */
  readonly before: readonly Reading[];
  /** What earlier sessions showed of the gauge. */
  readonly scatter: GaugeScatter;
  /** The piece. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** Since the flat was last looked at, or zero pressed. */
  readonly sinceFlat: { readonly minutes: number; readonly readings: number };
}

/** One thing that looks wrong. */
export interface BenchWarning {
  /** A short stable name. */
  readonly code:
    | "unit-changed"
    | "scale"
    | "far-from-nominal"
    | "foot-off"
    | "unlike-before"
    | "zero-moved"
    | "flat-long-ago";
  /** One line. */
  readonly text: string;
}

/** Chance of a false alarm for one good reading; common practice, no source. */
const ALARM = 0.001;
/** Display steps that one reading may be off before any scatter is known. */
const STEPS_UNKNOWN = 40;
/**
 * What is taken for the scatter of a difference until more is known, in display
 * steps, and the degrees of freedom it counts for; common practice, no source.
 */
const SUPPOSED = { steps: 2, dof: 6 };
/** A zero that has moved this many display steps is worth a word. */
const STEPS_OF_ZERO = 3;
/** Minutes and readings after which the flat wants a look; common practice, no source. */
const LONG = { minutes: 15, readings: 12 };

/** Factors by which a slip multiplies a reading, and what the slip is. */
const SLIPS = [
  [25.4, "in inches for millimetres, or the other way"],
  [10, "with its point one place off"],
  [100, "with its point two places off"],
  [1000, "in another unit"],
] as const;

const near = (ratio: number, factor: number): boolean =>
  Math.abs(ratio / factor - 1) < 0.12;

/**
 * Says what looks wrong about a reading: unit, point, place, scatter, zero.
 *
 * A reading off the centre is held against its difference from the centre of
 * its set in earlier sets, which is free of the zero; a reading at the centre
 * against the centre of earlier sets. The limit is Student's t at 0.1 % with the
 * scatter of this session, of earlier ones, and a supposed one of two display
 * steps that counts for six degrees of freedom. A place that was not read
 * before is allowed 40 display steps from the centre of its set, which catches
 * a foot off the work and little else.
 *
 * @param moment The reading and what it is held against.
 * @returns Warnings, each of one line, the likeliest cause first.
 *
 * @example Inches, after readings in millimetres
 * ```ts
 * import { benchWarnings } from "sagbook/narrative/bench_warnings.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const moment = {
 *   before: readings.slice(0, 1), scatter: {}, piece, bench,
 *   sinceFlat: { minutes: 1, readings: 1 },
 * };
 * const slip = { ...readings[1], sag: mm(readings[1].sag / 25.4) };
 * equal(benchWarnings({ ...moment, reading: readings[1] }).length, 0);
 * equal(benchWarnings({ ...moment, reading: slip })[0].code, "scale");
 * ```
 */
export function benchWarnings(moment: BenchMoment): readonly BenchWarning[] {
  const { reading, before, piece, bench, sinceFlat } = moment;
  const ring = bench.rings.find(({ id }) => id === reading.ring);
  if (ring === undefined) return [];
  const found: BenchWarning[] = [];
  const last = before.at(-1);
  if (last !== undefined && last.unit !== reading.unit) {
    found.push({
      code: "unit-changed",
      text:
        `the unit changed from ${last.unit} to ${reading.unit}: was the unit key meant to be pressed?`,
    });
  }
  if (reading.on === "flat") {
    const step = reading.step ?? 0.001;
    if (Math.abs(reading.sag) >= STEPS_OF_ZERO * step) {
      found.push({
        code: "zero-moved",
        text: `the zero has moved by ${
          writeSmall(reading.sag, piece.unit)
        }: warm hands do this; wear gloves, wait, zero again`,
      });
    }
    return found;
  }
  const slip = slipOf(reading, before, piece, ring);
  if (slip !== undefined) found.push(slip);
  else found.push(...unlikeBefore(moment, ring));
  const { minutes, readings } = sinceFlat;
  if (minutes >= LONG.minutes || readings === LONG.readings) {
    found.push({
      code: "flat-long-ago",
      text: minutes >= LONG.minutes
        ? `the flat was last looked at ${Math.round(minutes)} minutes ago`
        : `the flat was last looked at ${readings} readings ago`,
    });
  }
  return found;
}

/** Sags that this ring shows on the piece's nominal radii. */
function nominalSags(piece: Piece, ring: Ring): number[] {
  const feet = effectiveFeet(ring.shape, piece.form);
  return [piece.target?.radius, piece.startingRadius].flatMap((radius) => {
    try {
      return radius === undefined
        ? []
        : [sagFromRadius(radius, feet, piece.form)];
    } catch {
      return [];
    }
  });
}

/** A unit, a point or a whole reading that cannot be of this surface. */
function slipOf(
  reading: Reading,
  before: readonly Reading[],
  piece: Piece,
  ring: Ring,
): BenchWarning | undefined {
  const { sag } = reading;
  const size = Math.abs(sag);
  const work = before.filter(({ on, ring }) =>
    on === "work" && ring === reading.ring
  ).map((one) => Math.abs(one.sag)).sort((a, b) => a - b);
  const middle = work[work.length >> 1];
  const nominal = nominalSags(piece, ring);
  const usual = middle ?? (nominal.length === 1 ? nominal[0] : undefined);
  if (usual === undefined && nominal.length === 0) return undefined;
  const low = Math.min(usual ?? Infinity, ...nominal);
  const high = Math.max(usual ?? 0, ...nominal);
  if (size > low / 1.35 && size < high * 1.35) return undefined;
  const against = usual ?? (size < low ? low : high);
  for (const [factor, what] of SLIPS) {
    const up = near(against / size, factor);
    if (!up && !near(size / against, factor)) continue;
    const meant = millimetres(up ? sag * factor : sag / factor);
    const radius = quickRadius({ ...reading, sag: meant }, piece, ring);
    return {
      code: "scale",
      text: `${up ? "about a" : "about"} ${factor}${
        up ? "th of" : " times"
      } what this surface shows: read or typed ${what}?${
        radius === undefined ? "" : ` Then R would be ${radius}`
      }`,
    };
  }
  return size > low / 2.5 && size < high * 2.5 ? undefined : {
    code: "far-from-nominal",
    text: "far from anything this surface should show: read it again",
  };
}

/** The mean of earlier values and how far the next may lie from it, in mm. */
function expectation(
  values: readonly number[],
  known: { standardDeviation: number; dof: number } | undefined,
  step: number,
): { mean: number; limit: number } | undefined {
  const n = values.length;
  if (n === 0) return undefined;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const dof = n - 1 + (known?.dof ?? 0) + SUPPOSED.dof;
  const sum = squares +
    (known === undefined ? 0 : known.dof * known.standardDeviation ** 2) +
    SUPPOSED.dof * (SUPPOSED.steps * step) ** 2;
  const sd = Math.sqrt(sum / dof * (1 + 1 / n));
  return { mean, limit: studentTQuantile(ALARM / 2, dof, "upper") * sd };
}

function unlikeBefore(
  { reading, before, scatter, piece }: BenchMoment,
  ring: Ring,
): BenchWarning[] {
  const { offset, zeroing, sag } = reading;
  const step = reading.step ?? 0.001;
  const work = before.filter((one) =>
    one.on === "work" && one.ring === ring.id
  );
  const set = work.filter((one) => one.zeroing === zeroing);
  const centre = centreOf(set);
  const here = work.filter((one) => Math.abs(one.offset - offset) < 0.5);
  if (offset === 0 || centre === undefined) {
    const known = centre !== undefined || here.length === 0
      ? scatter.difference
      : scatter.zeroing;
    const expected = expectation(here.map((one) => one.sag), known, step);
    if (expected === undefined) return [];
    const apart = sag - expected.mean;
    return Math.abs(apart) <= expected.limit ? [] : [{
      code: "unlike-before",
      text: `${writeSmall(apart, piece.unit)} ${
        apart < 0 ? "less" : "more"
      } than here before, far outside this gauge's scatter: grit under a foot, or under the gauge when it was zeroed? Wipe and read again`,
    }];
  }
  const earlier = here.flatMap((one) => {
    const middle = centreOf(
      work.filter(({ zeroing }) => zeroing === one.zeroing),
    );
    return middle === undefined ? [] : [one.sag - middle];
  });
  const expected = expectation(earlier, scatter.difference, step) ??
    { mean: 0, limit: STEPS_UNKNOWN * step };
  const apart = sag - centre - expected.mean;
  if (Math.abs(apart) <= expected.limit) return [];
  const size = writeSmall(apart, piece.unit);
  const than = earlier.length === 0
    ? "than the centre of this set"
    : "than the same place in earlier sets, set against the centre";
  return [{
    code: apart < 0 ? "foot-off" : "unlike-before",
    text: apart < 0
      ? `${size} less ${than}: is a foot on the bevel or off the work, or grit under one? Wipe and read again`
      : `${size} more ${than}: grit under a foot? Wipe and read again`,
  }];
}
