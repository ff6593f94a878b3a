/**
 * Readings that stand apart, flagged and never dropped.
 *
 * @module
 */
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
 * Each set's level is taken out first (half way among its other places), so
 * that a shift of the zero is not taken for a slip of one reading; with one
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
    const members: number[] = [];
    const values: number[] = [];
    sets.forEach(({ cells }, index) => {
      const own = cells[place];
      if (!own) return;
      const level = levelOf(cells.filter((_, other) => other !== place));
      if (places > 1 && level === undefined) return;
      members.push(index);
      values.push(own.sag - (level ?? 0));
    });
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

/** The middle of what a set read elsewhere. */
function levelOf(
  cells: readonly ({ sag: number } | undefined)[],
): number | undefined {
  const sags = cells.flatMap((cell) => cell ? [cell.sag] : []);
  if (sags.length === 0) return undefined;
  sags.sort((a, b) => a - b);
  const middle = sags.length >> 1;
  return sags.length % 2 === 1
    ? sags[middle]
    : (sags[middle - 1] + sags[middle]) / 2;
}
