/**
 * Drift of the zero within a set, from looks back at the flat.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { summarise } from "../statistics/summary.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/** What the looks at the flat say about one zeroing. */
export interface ZeroDrift {
  /** The zeroing. */
  readonly zeroing: string;
  /** How far the zero moved between the opening and the closing look, in mm. */
  readonly moved: Millimetres;
  /** Standard uncertainty of `moved`, in mm. */
  readonly uncertainty: Millimetres;
  /** Steps of time or order between the two looks. */
  readonly steps: number;
  /** Whether place in time came from the clock or from the order. */
  readonly by: "time" | "order";
  /**
   * `corrected`: this zeroing's own move is beyond its uncertainty and was
   * taken out in proportion; `pooled`: the mean move of the zeroings is, and
   * that was taken out instead; `carried`: neither is, so nothing was taken
   * out and the move counts as uncertainty.
   */
  readonly treatment: "corrected" | "pooled" | "carried";
}

/** Readings with the drift of the zero taken out where it is real. */
export interface DriftCorrected {
  /** Sag of each reading in the order given, in mm. */
  readonly sag: readonly number[];
  /** One entry for each zeroing with a closing look at the flat. */
  readonly drifts: readonly ZeroDrift[];
  /** Standard uncertainty of a mean sag from moves carried, in mm. */
  readonly carried: Millimetres;
}

/**
 * Takes the drift of the zero out of the readings of each zeroing.
 *
 * The zero is known at the opening look (pressing zero is one, at 0) and at
 * every later look at the flat; between two looks it is taken to move in
 * proportion to time where every reading has one, else to the order of
 * readings. A zeroing is corrected by its own looks when its zero moved by
 * more than twice the uncertainty of that move (three times, when several
 * zeroings were looked back on). The others are corrected by
 * their mean move when three or more show one at 5 %, and left alone else: a
 * correction that is mostly scatter would only add scatter.
 *
 * The uncertainty of a move is that of two looks: display step over sqrt(12)
 * with the repeatability of a reading. That comes from successive readings of
 * one place, so that drift does not enter it; without any, from how much the
 * moves of the zeroings differ (median deviation), and without that it is
 * taken to be one display step.
 *
 * @param readings Readings of one session and ring, flat included, in order.
 * @param step Display step in mm, at least 0.
 * @returns Corrected sags, in the order given, and what was found.
 *
 * @see von Neumann and others (1941), mean square successive difference.
 *
 * @example Four readings climb by one step each, and so does the zero
 * ```ts
 * import { correctDrift } from "sagbook/zones/drift.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rows = [["flat", 0], ["work", 715], ["work", 716], ["flat", 3]] as const;
 * const readings = rows.map(([on, sag], order) => ({
 *   on, sag: sag / 1000, order, zeroing: "S1 / 1", zone: { label: on },
 * } as unknown as Parameters<typeof correctDrift>[0][number]));
 * const { sag, drifts } = correctDrift(readings, 0.001);
 * equal(drifts[0].treatment, "corrected");
 * equal(sag[1].toFixed(4), "0.7140");
 * ```
 */
export function correctDrift(
  readings: readonly Reading[],
  step: number,
): DriftCorrected {
  const sag = readings.map((reading) => reading.sag as number);
  const sets = new Map<string, number[]>();
  readings.forEach((reading, index) => {
    const set = sets.get(reading.zeroing);
    if (set) set.push(index);
    else sets.set(reading.zeroing, [index]);
  });
  const found = [...sets].flatMap(([zeroing, members]) => {
    const looks = looksBack(readings, sag, members);
    return looks === undefined ? [] : [{ zeroing, members, ...looks }];
  });
  const moves = found.map(({ moved }) => moved);
  const uncertainty = moveUncertainty(readings, sets, moves, step);
  // The largest of several moves must stand further out than a single one.
  const limit = (found.length > 1 ? 3 : 2) * uncertainty;
  const small = found.filter(({ moved }) => Math.abs(moved) <= limit);
  const pooled = commonMove(small.map(({ moved }) => moved));
  const drifts = found.map((one): ZeroDrift => {
    const { zeroing, members, knots, moved, timed } = one;
    const steps = knots[knots.length - 1].at - knots[0].at;
    const own = Math.abs(moved) > limit && steps > 0;
    const share = own || pooled === undefined ? 0 : pooled;
    for (const index of members) {
      const at = momentOf(readings, index, timed);
      if (readings[index].on === "flat") continue;
      if (own) sag[index] -= interpolate(knots, at);
      else if (share !== 0) sag[index] -= share * progress(knots, at);
    }
    return {
      zeroing,
      moved: millimetres(moved),
      uncertainty: millimetres(uncertainty),
      steps,
      by: timed ? "time" : "order",
      treatment: own ? "corrected" : share === 0 ? "carried" : "pooled",
    };
  });
  const left = drifts.filter(({ treatment }) => treatment === "carried");
  const mean = left.length === 0
    ? 0
    : left.reduce((sum, { moved }) => sum + moved, 0) / left.length;
  // Half the mean move on average, somewhere between none and all of it.
  const carried = millimetres(Math.abs(mean) / 2 / Math.sqrt(3));
  return { sag, drifts, carried };
}

/** A look at the flat. */
interface Knot {
  readonly at: number;
  readonly zero: number;
}

function momentOf(
  readings: readonly Reading[],
  index: number,
  timed: boolean,
): number {
  return timed ? Date.parse(readings[index].takenAt!) : index;
}

/** The looks of one zeroing, where there is one after the work was read. */
function looksBack(
  readings: readonly Reading[],
  sag: readonly number[],
  members: readonly number[],
): { knots: readonly Knot[]; moved: number; timed: boolean } | undefined {
  const work = members.filter((index) => readings[index].on === "work");
  const looks = members.filter((index) => readings[index].on === "flat");
  const last = work.at(-1);
  if (last === undefined || !looks.some((index) => index > last)) {
    return undefined;
  }
  const timed = members.every((index) => readings[index].takenAt !== undefined);
  const knots: Knot[] = looks.map((index) => ({
    at: momentOf(readings, index, timed),
    zero: sag[index],
  }));
  if (looks[0] > work[0]) {
    // Pressing zero, one step before the first reading, was the opening look.
    const at = momentOf(readings, members[0], timed) - (timed ? 0 : 1);
    knots.unshift({ at, zero: 0 });
  }
  return { knots, moved: knots[knots.length - 1].zero - knots[0].zero, timed };
}

/** Standard uncertainty of the difference of two looks, in mm. */
function moveUncertainty(
  readings: readonly Reading[],
  sets: ReadonlyMap<string, readonly number[]>,
  moves: readonly number[],
  step: number,
): number {
  const repeats = repeatVariance(readings, sets);
  const rounding = step * step / 12;
  if (repeats !== undefined) return Math.sqrt(2 * (rounding + repeats));
  const assumed = Math.sqrt(2 * (rounding + step * step));
  if (moves.length < 3) return assumed;
  const middle = median(moves);
  const spread = 1.4826 * median(moves.map((move) => Math.abs(move - middle)));
  return Math.max(Math.sqrt(2 * rounding), spread);
}

/** The mean move where three or more show one at 5 %, else undefined. */
function commonMove(moves: readonly number[]): number | undefined {
  if (moves.length < 3) return undefined;
  const { mean, standardDeviation = 0 } = summarise(moves);
  const error = standardDeviation / Math.sqrt(moves.length);
  const t = studentTQuantile(0.025, moves.length - 1, "upper");
  return mean !== 0 && Math.abs(mean) > t * error ? mean : undefined;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? sorted[half]
    : (sorted[half - 1] + sorted[half]) / 2;
}

/** How far between the first look and the last a moment lies, 0 to 1. */
function progress(knots: readonly Knot[], at: number): number {
  const [start, end] = [knots[0].at, knots[knots.length - 1].at];
  return end === start
    ? 1
    : Math.min(1, Math.max(0, (at - start) / (end - start)));
}

/** Half the mean square difference of successive readings of one place. */
function repeatVariance(
  readings: readonly Reading[],
  sets: ReadonlyMap<string, readonly number[]>,
): number | undefined {
  let sum = 0;
  let count = 0;
  for (const members of sets.values()) {
    for (let k = 1; k < members.length; k++) {
      const [a, b] = [readings[members[k - 1]], readings[members[k]]];
      const same = a.on === b.on && a.zone.label === b.zone.label &&
        a.offset === b.offset && a.diameterDegrees === b.diameterDegrees;
      if (!same) continue;
      sum += (a.sag - b.sag) ** 2;
      count++;
    }
  }
  return count === 0 ? undefined : sum / count / 2;
}

/** The zero at a moment, in proportion between the looks around it. */
function interpolate(
  knots: readonly Knot[],
  at: number,
): number {
  let k = 1;
  while (k < knots.length - 1 && at > knots[k].at) k++;
  const [a, b] = [knots[k - 1], knots[k]];
  if (b.at === a.at) return b.zero;
  const share = Math.min(1, Math.max(0, (at - a.at) / (b.at - a.at)));
  return a.zero + share * (b.zero - a.zero);
}
