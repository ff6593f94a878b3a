/**
 * Readings that stand apart, flagged and never dropped.
 *
 * @module
 */
import { medianOf } from "../statistics/median.ts";
import { forEachItem, mapItems } from "../numerics/lazy_list.ts";
import { grubbsTest } from "../statistics/grubbs_test.ts";
import { summarise } from "../statistics/summary.ts";
import type { MeasuredSet } from "./set_table.ts";

/** What one set read at one place and stands apart. */
export interface OutlierFlag {
  /** Index of the set. */
  readonly set: number;
  /** Index of the place. */
  readonly place: number;
  /** How far it stands from the mean of its place, in mm, set levels removed. */
  readonly from: number;
}

/** With fewer values no single one can stand apart. */
const FEWEST = 4;

/**
 * Flags what stands apart from the other sets at the same place.
 *
 * Each set's level is taken out first (half way among its other places, each
 * held against how it usually lies to this one), so that a shift of the zero, or
 * a place that was left out, is not taken for a slip of one reading; with one
 * place the sags are compared as they are. With two places nobody can tell
 * which of the two slipped, and both are flagged. Grubbs' two-sided test at 5 % for
 * each place and, since a display cannot show less, at least two display
 * steps. It needs four sets.
 *
 * @param sets The sets.
 * @param places How many places there are.
 * @param step Display step in mm, at least 0.
 * @returns At most one flag for each place; in a session without slips none,
 * 19 times in 20 (`tests/studies/RESULTS.md`).
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1.
 *
 * @example Six sets, one slip at the edge
 * ```ts
 * import { flagOutliers } from "sagbook/zones/outliers.ts";
 * import { equal } from "node:assert/strict";
 *
 * const edge = [0.700, 0.701, 0.700, 0.690, 0.701, 0.700];
 * const sets = edge.map((sag) => ({
 *   label: "", zeroing: "",
 *   cells: [0.715, 0.714, sag].map((sag) => ({ sag, readings: 1 })),
 * }));
 * equal(flagOutliers(sets, 3, 0.001)[0].set, 3);
 * ```
 */
export function flagOutliers(
  sets: readonly MeasuredSet[],
  places: number,
  step: number,
): readonly OutlierFlag[] {
  const flags: OutlierFlag[] = [];
  for (let place = 0; place < places; place++) {
    const { members, values } = departures(sets, place, places);
    if (values.length < FEWEST) continue;
    const { mean, standardDeviation = 0 } = summarise(values);
    const test = grubbsTest(values, 0.05 / places, "either");
    const from = test.value - mean;
    const limit = test.critical * standardDeviation;
    if (Math.abs(from) > limit && Math.abs(from) >= 2 * step) {
      flags.push({ set: members[test.index], place, from });
    }
  }
  // A slip in one place shifts the level of the others: keep a set's largest.
  return flags.filter((flag) =>
    flags.every((other) =>
      other.set !== flag.set || Math.abs(other.from) <= Math.abs(flag.from)
    )
  );
}

/**
 * Takes what was flagged out of the sets, for the answer without it.
 *
 * @param sets The sets.
 * @param outliers What stands apart.
 * @returns The sets with those cells empty.
 *
 * @example
 * ```ts
 * import { withoutFlagged } from "sagbook/zones/outliers.ts";
 * import { equal } from "node:assert/strict";
 *
 * const cells = [0.715, 0.690].map((sag) => ({ sag, readings: 1 }));
 * const [set] = withoutFlagged(
 *   [{ label: "", zeroing: "", cells }],
 *   [{ set: 0, place: 1, from: -0.01 }],
 * );
 * equal(set.cells[1], undefined);
 * ```
 */
export function withoutFlagged(
  sets: readonly MeasuredSet[],
  outliers: readonly OutlierFlag[],
): readonly MeasuredSet[] {
  return mapItems(sets, (set, index) => {
    const flags = outliers.filter((flag) => flag.set === index);
    if (flags.length === 0) return set;
    const cells = set.cells.map((cell, place) =>
      flags.some((flag) => flag.place === place) ? undefined : cell
    );
    return { ...set, cells };
  });
}

/**
 * How far each set stands off at one place, its own level taken out.
 *
 * The level is what the set reads at its other places, each held against how
 * that place usually lies to this one, so that a set that lacks a place is not
 * taken to stand apart.
 */
function departures(
  sets: readonly MeasuredSet[],
  place: number,
  places: number,
): { members: number[]; values: number[] } {
  const members: number[] = [];
  const values: number[] = [];
  if (places === 1) {
    forEachItem(sets, ({ cells }, index) => {
      const own = cells[place];
      if (!own) return;
      members.push(index);
      values.push(own.sag);
    });
    return { members, values };
  }
  const usual = Array.from({ length: places }, (_, other) => {
    const both: number[] = [];
    forEachItem(sets, ({ cells }) => {
      const [own, there] = [cells[place], cells[other]];
      if (own && there && other !== place) both.push(own.sag - there.sag);
    });
    return medianOf(both);
  });
  forEachItem(sets, ({ cells }, index) => {
    const own = cells[place];
    if (!own) return;
    const off = medianOf(cells.flatMap((cell, other) => {
      const apart = usual[other];
      return cell && other !== place && apart !== undefined
        ? [own.sag - cell.sag - apart]
        : [];
    }));
    if (off === undefined) return;
    members.push(index);
    values.push(off);
  });
  return { members, values };
}
