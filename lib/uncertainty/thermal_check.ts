/**
 * Whether readings were taken while the glass was still bending.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { WarmPiece } from "./thermal_radius.ts";
import {
  type ConductingMaterial,
  radiusReadLongerAfter,
  type SettlingTimes,
  settlingTimes,
  type Support,
} from "./thermal_settling.ts";

/** One thing the log says about heat. */
export type ThermalWarning =
  | {
    /** The bench is colder or warmer than the air: a bend that stays. */
    readonly kind: "bench and air apart";
    /** Bench colder than the air by this many kelvin (negative: warmer). */
    readonly kelvin: number;
    /** Reading less true radius for good, in mm, on a bench that holds it. */
    readonly radiusReadsLonger: Millimetres;
    /** Sessions it concerns. */
    readonly sessions: readonly string[];
  }
  | {
    /** The work is warmer or colder than the air: a bend that fades. */
    readonly kind: "work and air apart";
    /** Work warmer than the air by this many kelvin (negative: colder). */
    readonly kelvin: number;
    /** Largest reading less true radius while it settles, in mm. */
    readonly radiusReadsLonger: Millimetres;
    /** Sessions it concerns. */
    readonly sessions: readonly string[];
  }
  | {
    /** Readings came too soon after work that warms. */
    readonly kind: "too soon after work";
    /** Minutes between the end of work and the first reading. */
    readonly minutes: number;
    /** Minutes needed until the bend is below what is allowed. */
    readonly minutesNeeded: number;
    /** Reading less true radius at the first reading, in mm. */
    readonly radiusReadsLonger: Millimetres;
    /** True when how warm the work was is our assumption. */
    readonly warmthAssumed: boolean;
    /** The session it concerns. */
    readonly session: string;
  };

/** What is known about the piece and the work on it. */
export interface ThermalContext {
  /** The glass's shape. */
  readonly piece: WarmPiece;
  /** Its material. */
  readonly glass: ConductingMaterial;
  /** What it lay on while it was read; `insulating pad` unless stated. */
  readonly support?: Support;
  /** ISO times at which warm work (grinding, washing) ended. */
  readonly workEndedAt?: readonly string[];
  /** How warm work leaves the piece, in K; 5 unless stated. */
  readonly warmerBy?: number;
  /** Change of radius that may pass without a word, in mm, above 0. */
  readonly allowed: Millimetres;
}

/** Warmth after work where nobody measured it: common practice, no source. */
const ASSUMED_WARMTH = 5;

/**
 * Looks through the readings for glass that was still bending.
 *
 * Uses the temperatures that were written down and the times of warm work. A
 * warning comes only when the bend would move the radius by more than is
 * allowed, and gives the figure with its sign. Readings without temperatures
 * or times say nothing, and raise nothing.
 *
 * @param readings The readings, any sessions.
 * @param context Glass, support, warm work, what is allowed.
 * @returns Warnings, the settling times beside them.
 * @throws {RangeError} If `allowed` is not above 0.
 *
 * @see `radiusReadLongerAfter` for the model and its accuracy.
 *
 * @example
 * ```ts
 * import { thermalWarnings } from "sagbook/uncertainty/thermal_check.ts";
 * import { materialNamed } from "sagbook/uncertainty/material.ts";
 * import type { ConductingMaterial } from "sagbook/uncertainty/thermal_settling.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const glass = materialNamed("borosilicate") as ConductingMaterial;
 * const piece = {
 *   radius: mm(3000), form: "concave", thickness: mm(40), expansion: glass.expansion,
 * } as const;
 * const { warnings } = thermalWarnings([], { piece, glass, allowed: mm(0.1) });
 * deepEqual(warnings, []);
 * ```
 */
export function thermalWarnings(
  readings: readonly Pick<
    Reading,
    | "session"
    | "takenAt"
    | "temperatureAir"
    | "temperatureBench"
    | "temperatureWork"
  >[],
  context: ThermalContext,
): { warnings: ThermalWarning[]; times: SettlingTimes } {
  const { piece, glass, support = "insulating pad", allowed } = context;
  if (!(allowed > 0)) {
    throw new RangeError(
      `Cannot judge heat as the allowed change of radius must be above 0 mm: current value is ${allowed} mm`,
    );
  }
  const times = settlingTimes(glass, piece.thickness, support);
  const warnings: ThermalWarning[] = [];
  const apart = (
    kind: "bench and air apart" | "work and air apart",
    kelvinOf: (reading: typeof readings[number]) => number | undefined,
    radiusOf: (kelvin: number) => number,
  ): void => {
    let [worst, longer] = [0, 0];
    const sessions = new Set<string>();
    for (const reading of readings) {
      const kelvin = kelvinOf(reading);
      if (kelvin === undefined) continue;
      const change = radiusOf(kelvin);
      if (Math.abs(change) <= allowed) continue;
      sessions.add(reading.session);
      if (Math.abs(change) > Math.abs(longer)) {
        [worst, longer] = [kelvin, change];
      }
    }
    if (sessions.size === 0) return;
    warnings.push({
      kind,
      kelvin: worst,
      radiusReadsLonger: millimetres(longer),
      sessions: [...sessions],
    });
  };
  const after = (warmerBy: number, seconds: number, on: Support = support) =>
    radiusReadLongerAfter(piece, glass, {
      support: on,
      warmerBy,
      after: seconds,
    });
  const perBenchKelvin = radiusReadLongerAfter(piece, glass, {
    support: "cold bench",
    warmerBy: 0,
    benchColderBy: 1,
    after: Infinity,
  });
  if (support === "cold bench") {
    apart(
      "bench and air apart",
      ({ temperatureAir: air, temperatureBench: bench }) =>
        air === undefined || bench === undefined ? undefined : air - bench,
      (kelvin) => kelvin * perBenchKelvin,
    );
  }
  const peak = largestPerKelvin(after, times);
  apart(
    "work and air apart",
    ({ temperatureAir: air, temperatureWork: work }) =>
      air === undefined || work === undefined ? undefined : work - air,
    (kelvin) => kelvin * peak,
  );
  const { workEndedAt = [], warmerBy } = context;
  const ends = workEndedAt.map((time) => Date.parse(time)).filter((time) =>
    Number.isFinite(time)
  );
  const warmth = warmerBy ?? ASSUMED_WARMTH;
  for (const [session, start] of firstReadings(readings)) {
    const before = ends.filter((end) => end <= start);
    if (before.length === 0) continue;
    const seconds = (start - Math.max(...before)) / 1000;
    const longer = after(warmth, seconds);
    if (Math.abs(longer) <= allowed) continue;
    warnings.push({
      kind: "too soon after work",
      minutes: seconds / 60,
      minutesNeeded: secondsUntil(after, warmth, allowed, times) / 60,
      radiusReadsLonger: longer,
      warmthAssumed: warmerBy === undefined,
      session,
    });
  }
  return { warnings, times };
}

type After = (warmerBy: number, seconds: number) => number;

/** The largest bend of the whole course, for 1 K, with its sign. */
function largestPerKelvin(after: After, times: SettlingTimes): number {
  let largest = 0;
  for (let part = 1; part <= 60; part++) {
    const change = after(1, times.oneFaceHeld * part / 20);
    if (Math.abs(change) > Math.abs(largest)) largest = change;
  }
  return largest;
}

/** Seconds after which the bend stays below what is allowed. */
function secondsUntil(
  after: After,
  warmerBy: number,
  allowed: number,
  times: SettlingTimes,
): number {
  const longest = Math.max(times.drivenByAir, times.oneFaceHeld);
  let [early, late] = [0, longest];
  while (Math.abs(after(warmerBy, late)) > allowed) {
    [early, late] = [late, 2 * late];
  }
  // Past its peak the bend only falls, so halving finds where it crosses.
  for (let step = 0; step < 40; step++) {
    const middle = (early + late) / 2;
    const open = Math.abs(after(warmerBy, middle)) > allowed ||
      middle < times.leftToItself;
    if (open) early = middle;
    else late = middle;
  }
  return late;
}

function firstReadings(
  readings: readonly Pick<Reading, "session" | "takenAt">[],
): Map<string, number> {
  const first = new Map<string, number>();
  for (const { session, takenAt } of readings) {
    const time = takenAt === undefined ? NaN : Date.parse(takenAt);
    if (Number.isFinite(time) && !(time >= (first.get(session) ?? Infinity))) {
      first.set(session, time);
    }
  }
  return first;
}
