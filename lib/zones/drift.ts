/**
 * Drift of the zero within a set, from looks back at the flat.
 *
 * @module
 */
import { groupPlaces } from "../numerics/group_places.ts";
import { type ItemMaker, itemMaker } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import {
  largestMove,
  type Looks,
  looksBack,
  momentOf,
  progressOf,
  repeatVariance,
  zeroAt,
} from "./_looks.ts";
import { commonMove, moveUncertainty } from "./_moves.ts";
import { type RecordedZero, recordedZeros } from "./_recorded_zero.ts";

export type { RecordedZero };

/** What the looks at the flat say about one zeroing. */
export interface ZeroDrift {
  /** The zeroing. */
  readonly zeroing: string;
  /** How far the zero moved between the opening and the closing look, in mm. */
  readonly moved: Millimetres;
  /**
   * The largest move from one look to the next, in mm; `moved` itself where
   * there are two looks.
   */
  readonly between: Millimetres;
  /** Standard uncertainty of `moved`, in mm. */
  readonly uncertainty: Millimetres;
  /** Milliseconds, or steps of order, between the two looks. */
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

/**
 * What is not known of the move of the zero that all zeroings share, whether
 * its mean was taken out or not.
 */
export interface DriftLeft {
  /** Standard error of the mean move, in mm. */
  readonly standardError: Millimetres;
  /** Its degrees of freedom; endless when it was not found from the moves. */
  readonly dof: number;
  /** Share of the rounding of the looks that averaging has not removed. */
  readonly rounding: number;
}

/** Readings with the drift of the zero taken out where it is real. */
export interface DriftCorrected {
  /** Sag of each reading in the order given, in mm. */
  readonly sag: readonly number[];
  /**
   * How far between the looks of its zeroing each reading was taken, 0 to 1;
   * 0 where nobody looked back.
   */
  readonly progress: readonly number[];
  /** One entry for each zeroing with a closing look at the flat. */
  readonly drifts: readonly ZeroDrift[];
  /** Zeroings whose flat did not show 0: their readings count from there. */
  readonly zeros: readonly RecordedZero[];
  /** What is not known of the drift; undefined where nobody looked back. */
  readonly left?: DriftLeft;
  /** Standard uncertainty of a mean sag from drift that is left, in mm. */
  readonly carried: Millimetres;
}

type Found = Looks & {
  readonly zeroing: string;
  /** Which group of readings it is. */
  readonly group: number;
};

/**
 * Takes the drift of the zero out of the readings of each zeroing.
 *
 * The zero is known at the opening look (pressing zero is one, at 0) and at
 * every later look at the flat; between two looks it is taken to move in
 * proportion to time where every reading has one, else to the order of
 * readings.
 *
 * Where the flat did not show 0 before the work was read, by more than three
 * display steps and more than chance, zero was not pressed: the readings of
 * that zeroing count from what it showed.
 *
 * A zeroing is corrected by its own looks when its zero moved by more than one
 * display step and by more than twice the uncertainty of that move (more, when
 * several zeroings were looked back on, so that in 19 of 20 sessions without
 * drift none is corrected so). The others are corrected by their mean move when three
 * or more show one at 5 %, the rounding of the looks included, and left alone
 * else. Either way the error of that mean stays in the answer (`left`): drift
 * has the same sign in every set and no scatter between sets would show it.
 *
 * The uncertainty of a move is that of two looks: display step over sqrt(12)
 * with the repeatability of a reading. That comes from successive readings of
 * one place, so that drift hardly enters it, and from how much the moves of
 * three zeroings or more differ (median deviation), each with the weight of
 * its degrees of freedom; without either it is taken to be one display step.
 *
 * Without drift, intervals grow by about a fifth at equal scatter of looks and
 * readings (five readings a set); with drift they keep their coverage, which
 * falls to nothing when it is ignored: `tests/studies/RESULTS.md`.
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
  const at = itemMaker(readings);
  const groups = groupPlaces(readings.length, (index) => at(index).zeroing);
  const found: Found[] = [];
  groups.keys.forEach((zeroing, group) => {
    const looks = looksBack(at, groups.placesOf(group));
    if (looks !== undefined) found.push({ zeroing, group, ...looks });
  });
  const sag = new Array<number>(readings.length).fill(0);
  for (let index = 0; index < sag.length; index++) sag[index] = at(index).sag;
  const progress = new Array<number>(readings.length).fill(0);
  const repeats = repeatVariance(at, groups);
  const opened = recordedZeros(at, groups, step, repeats?.variance ?? 0);
  for (const [group, { zero }] of opened) {
    for (const index of groups.placesOf(group)) {
      if (at(index).on === "work") sag[index] -= zero;
    }
  }
  const zeros = [...opened.values()];
  if (found.length === 0) {
    return { sag, progress, drifts: [], zeros, carried: millimetres(0) };
  }
  const { uncertainty, limit } = moveUncertainty(
    found.map(({ moved }) => moved),
    repeats,
    step,
  );
  const isOwn = ({ moved, knots }: Found): boolean =>
    Math.abs(moved) > limit && knots[knots.length - 1].at > knots[0].at;
  const others = found.filter((one) => !isOwn(one)).map(({ moved }) => moved);
  const common = others.length > 0 ? commonMove(others, step) : undefined;
  const share = common?.real ? common.mean : 0;
  const drifts = found.map((one): ZeroDrift => {
    const { zeroing, group, knots, moved, timed } = one;
    const own = isOwn(one);
    for (const index of groups.placesOf(group)) {
      if (at(index).on === "flat") continue;
      const moment = momentOf(at, index, timed);
      progress[index] = progressOf(knots, moment);
      sag[index] -= own
        ? zeroAt(knots, moment) - (opened.get(group)?.zero ?? 0)
        : share * progress[index];
    }
    return {
      zeroing,
      moved: millimetres(moved),
      between: millimetres(largestMove(knots)),
      uncertainty: millimetres(uncertainty),
      steps: knots[knots.length - 1].at - knots[0].at,
      by: timed ? "time" : "order",
      treatment: own ? "corrected" : share === 0 ? "carried" : "pooled",
    };
  });
  // The looks of zeroings corrected one by one show in the scatter between
  // them; of a single zeroing only the looks' own uncertainty speaks.
  const left: DriftLeft = common && others.length > 1 ? common.left : {
    standardError: millimetres(
      !common && found.length > 1 ? 0 : uncertainty,
    ),
    dof: Infinity,
    rounding: 0,
  };
  const uncorrected = common && share === 0 ? Math.abs(common.mean) : 0;
  return {
    sag,
    progress,
    drifts,
    zeros,
    left,
    carried: millimetres(
      meanProgress(at, progress) * Math.max(
        uncorrected,
        Math.hypot(left.standardError, left.rounding * step / Math.sqrt(6)),
      ),
    ),
  };
}

/** How far between the looks the work was read on average, 0 to 1. */
function meanProgress(
  at: ItemMaker<Reading>,
  progress: readonly number[],
): number {
  let [sum, count] = [0, 0];
  progress.forEach((value, index) => {
    if (at(index).on === "flat") return;
    sum += value;
    count++;
  });
  return count === 0 ? 0 : sum / count;
}
