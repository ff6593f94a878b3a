/**
 * Glass taken off everywhere, which the gauge cannot see.
 *
 * @module
 */
import type { PitsSeen } from "../records/work_log.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { subtractEstimates } from "../statistics/estimate_arithmetic.ts";
import type { Interval } from "../statistics/interval.ts";
import { progressLimits } from "./predict_progress.ts";

/** How much glass a finer grade should take off, in mm. */
export interface PitAllowance extends Interval {
  /** Whose figure it is. */
  readonly from: "common practice" | "the user";
}

/**
 * Finds how deep the pits of the grade before are reckoned.
 *
 * One to one and a half mean grain sizes of the grade before; common practice,
 * no source. The user's own factor wins.
 *
 * @param grain Mean grain size of the grade before, in mm, above 0.
 * @param factor The user's own factor, above 0.
 * @returns Depth to take off everywhere, in mm.
 * @throws {RangeError} If a number is not above 0.
 *
 * @example
 * ```ts
 * import { pitAllowance } from "sagbook/fabrication/removal.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(pitAllowance(0.02), { low: 0.02, high: 0.03, from: "common practice" });
 * ```
 */
export function pitAllowance(grain: number, factor?: number): PitAllowance {
  for (const [name, value] of [["grain size", grain], ["factor", factor]]) {
    if (
      value !== undefined && !(Number(value) > 0 && Number(value) < Infinity)
    ) {
      throw new RangeError(
        `Cannot reckon pits as the ${name} must be above 0 and finite: current value is ${value}`,
      );
    }
  }
  return factor === undefined
    ? { low: grain, high: 1.5 * grain, from: "common practice" }
    : { low: factor * grain, high: factor * grain, from: "the user" };
}

/**
 * Finds the glass taken off from two thicknesses at one place.
 *
 * @param before Thickness before, in mm, with what both readings share by id.
 * @param after Thickness after, in mm.
 * @returns What was taken off, in mm; the caliper's shared error cancels.
 *
 * @example
 * ```ts
 * import { removalByThickness } from "sagbook/fabrication/removal.ts";
 * import { equal } from "node:assert/strict";
 *
 * const read = (value: number) => ({ value, own: 0.003, dof: Infinity, common: { caliper: 0.01 } });
 * const taken = removalByThickness(read(40.12), read(40.07));
 * equal(taken.value.toFixed(2), "0.05");
 * equal(Object.keys(taken.common).length, 0);
 * ```
 */
export function removalByThickness(
  before: Estimate,
  after: Estimate,
): Estimate {
  return subtractEstimates(before, after);
}

/**
 * Finds the glass taken off from the work done and the shop's own rate.
 *
 * @param work Work done, in wets or minutes, at least 0.
 * @param rate The shop's rate of removal, in mm for one of them.
 * @returns What was taken off everywhere, in mm.
 * @throws {RangeError} If the work is negative or not finite.
 *
 * @example
 * ```ts
 * import { removalByWork } from "sagbook/fabrication/removal.ts";
 * import { equal } from "node:assert/strict";
 *
 * const rate = { value: 0.004, own: 0.0005, dof: 6, common: {} };
 * equal(removalByWork(10, rate).value.toFixed(3), "0.040");
 * ```
 */
export function removalByWork(work: number, rate: Estimate): Estimate {
  if (!(work >= 0 && work < Infinity)) {
    throw new RangeError(
      `Cannot reckon removal as the work must be 0 or more and finite: current value is ${work}`,
    );
  }
  return {
    value: work * rate.value,
    own: work * rate.own,
    dof: rate.dof,
    common: Object.fromEntries(
      Object.entries(rate.common).map(([id, shift]) => [id, work * shift]),
    ),
  };
}

/** What is known of the pits of the grade before. */
export interface PitsState {
  /** Glass to take off. */
  readonly wanted?: PitAllowance;
  /** Glass taken off, in mm. */
  readonly removed?: Estimate;
  /**
   * Whether the removal reaches what is wanted, its interval reckoned with. No
   * removal can say that the pits are gone: that is for the loupe.
   */
  readonly removal: "enough" | "not enough" | "cannot tell";
  /** The loupe's last verdict as entered; absent when nobody has looked. */
  readonly loupe?: PitsSeen;
}

/**
 * Puts removal and the loupe's verdict side by side.
 *
 * A gauge that stands on three feet cannot see glass taken off everywhere, so
 * no sag enters here. The verdict is the user's, taken as entered.
 *
 * @param wanted Depth to take off, where it can be reckoned.
 * @param removed Glass taken off, where it was measured or reckoned.
 * @param loupe The loupe's last verdict.
 * @returns Both, without drawing one from the other.
 *
 * @example
 * ```ts
 * import { pitsState } from "sagbook/fabrication/removal.ts";
 * import { equal } from "node:assert/strict";
 *
 * const removed = { value: 0.05, own: 0.004, dof: Infinity, common: {} };
 * const state = pitsState({ low: 0.02, high: 0.03, from: "common practice" }, removed, "edge");
 * equal(state.removal, "enough");
 * equal(state.loupe, "edge");
 * ```
 */
export function pitsState(
  wanted: PitAllowance | undefined,
  removed: Estimate | undefined,
  loupe: PitsSeen | undefined,
): PitsState {
  const interval = removed && progressLimits(removed);
  const removal = wanted === undefined || interval === undefined
    ? "cannot tell"
    : interval.low >= wanted.high
    ? "enough"
    : interval.high < wanted.low
    ? "not enough"
    : "cannot tell";
  return {
    ...(wanted === undefined ? {} : { wanted }),
    ...(removed === undefined ? {} : { removed }),
    removal,
    ...(loupe === undefined ? {} : { loupe }),
  };
}
