/**
 * Drift of the zero within a set, from looks back at the flat.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
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
   * `corrected`: the readings were corrected in proportion; `carried`: the
   * move is within its own uncertainty, so it is not corrected and counts as
   * uncertainty.
   */
  readonly treatment: "corrected" | "carried";
}

/** Readings with the drift of the zero taken out where it is real. */
export interface DriftCorrected {
  /** Sag of each reading in the order given, in mm. */
  readonly sag: readonly number[];
  /** One entry for each zeroing with a closing look at the flat. */
  readonly drifts: readonly ZeroDrift[];
}

/**
 * Takes the drift of the zero out of the readings of each zeroing.
 *
 * The zero is known at the opening look (pressing zero is one, at 0) and at
 * every later look at the flat; between two looks it is taken to move in
 * proportion to time where every reading has one, else to the order of
 * readings. A set whose closing look differs from its opening one by no more
 * than twice the uncertainty of that difference is left alone.
 *
 * The uncertainty of a look is the display step over sqrt(12) with the
 * repeatability of a reading, which is taken from successive readings of the
 * same place so that the drift itself does not enter it.
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
  const drifts: ZeroDrift[] = [];
  const sets = new Map<string, number[]>();
  readings.forEach((reading, index) => {
    const set = sets.get(reading.zeroing);
    if (set) set.push(index);
    else sets.set(reading.zeroing, [index]);
  });
  const lookVariance = step * step / 12 + repeatVariance(readings, sets);
  for (const [zeroing, members] of sets) {
    const work = members.filter((index) => readings[index].on === "work");
    const looks = members.filter((index) => readings[index].on === "flat");
    const last = work.at(-1);
    if (last === undefined) continue;
    const closing = looks.filter((index) => index > last);
    if (closing.length === 0) continue;
    const timed = members.every((index) =>
      readings[index].takenAt !== undefined
    );
    const at = (index: number): number =>
      timed ? Date.parse(readings[index].takenAt!) : index;
    const knots = looks.map((index) => ({ at: at(index), zero: sag[index] }));
    const start = at(members[0]) - (timed ? 0 : 1);
    if (looks[0] > work[0]) knots.unshift({ at: start, zero: 0 });
    const end = knots[knots.length - 1];
    const moved = end.zero - knots[0].zero;
    const uncertainty = Math.sqrt(2 * lookVariance);
    const real = Math.abs(moved) > 2 * uncertainty && end.at > knots[0].at;
    if (real) {
      for (const index of work) sag[index] -= interpolate(knots, at(index));
    }
    drifts.push({
      zeroing,
      moved: millimetres(moved),
      uncertainty: millimetres(uncertainty),
      steps: end.at - knots[0].at,
      by: timed ? "time" : "order",
      treatment: real ? "corrected" : "carried",
    });
  }
  return { sag, drifts };
}

/** Half the mean square difference of successive readings of one place. */
function repeatVariance(
  readings: readonly Reading[],
  sets: ReadonlyMap<string, readonly number[]>,
): number {
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
  return count === 0 ? 0 : sum / count / 2;
}

/** The zero at a moment, in proportion between the looks around it. */
function interpolate(
  knots: readonly { at: number; zero: number }[],
  at: number,
): number {
  let k = 1;
  while (k < knots.length - 1 && at > knots[k].at) k++;
  const [a, b] = [knots[k - 1], knots[k]];
  if (b.at === a.at) return b.zero;
  const share = Math.min(1, Math.max(0, (at - a.at) / (b.at - a.at)));
  return a.zero + share * (b.zero - a.zero);
}
