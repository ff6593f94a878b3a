/**
 * Rules that tell a pattern on a control chart from chance.
 *
 * @module
 */
import { requireAllFinite, requireFinite } from "./_guards.ts";

/** A rule for points on a control chart. */
export type RunsRule =
  | "one beyond three sigma"
  | "two of three beyond two sigma"
  | "four of five beyond one sigma"
  | "eight on one side"
  | "seven rising or falling";

/** Where a rule was met. */
export interface RunsSignal {
  /** The rule. */
  readonly rule: RunsRule;
  /** Position of the first point that makes up the pattern. */
  readonly from: number;
  /** Position of the point that completes it. */
  readonly to: number;
}

/** A rule about how many of so many points lie far out on one side. */
const ZONE_RULES = [
  { rule: "one beyond three sigma", needed: 1, of: 1, beyond: 3 },
  { rule: "two of three beyond two sigma", needed: 2, of: 3, beyond: 2 },
  { rule: "four of five beyond one sigma", needed: 4, of: 5, beyond: 1 },
  { rule: "eight on one side", needed: 8, of: 8, beyond: 0 },
] as const;

/**
 * Finds the points at which a series breaks a rule for control charts.
 *
 * Four rules look at how far out points lie on one side of the centre line; a
 * fifth looks for seven points in a row that each rise above, or fall below,
 * the one before. Each alone gives a false alarm about once in a hundred to
 * four hundred points, all together about once in ninety: a signal asks for a
 * look, not for a cure.
 *
 * @param values The points in order of time.
 * @param centre Centre line.
 * @param sigma Standard deviation of a point, above 0.
 * @returns Every completed pattern, in order of completion.
 * @throws {RangeError} If a value is not finite or `sigma` is not above 0.
 *
 * @see Western Electric, Statistical Quality Control Handbook (1956), tests for
 * unnatural patterns; ISO 7870-2:2013, runs of seven; both from memory.
 *
 * @example
 * ```ts
 * import { findRuns } from "sagbook/statistics/runs_rules.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(findRuns([0, 1, -1, 4, 0], 0, 1), [
 *   { rule: "one beyond three sigma", from: 3, to: 3 },
 * ]);
 * ```
 */
export function findRuns(
  values: readonly number[],
  centre: number,
  sigma: number,
): RunsSignal[] {
  const action = "look for runs";
  requireAllFinite(values, action, "point");
  requireFinite(centre, action, "the centre line");
  if (!(sigma > 0 && sigma < Infinity)) {
    throw new RangeError(
      `Cannot ${action} as sigma must be finite and above 0: current value is ${sigma}`,
    );
  }
  const signals: RunsSignal[] = [];
  for (let to = 0; to < values.length; to++) {
    for (const { rule, needed, of, beyond } of ZONE_RULES) {
      for (const side of [1, -1]) {
        const isOut = (i: number) =>
          side * (values[i] - centre) > beyond * sigma;
        if (!isOut(to)) continue;
        const out: number[] = [];
        for (let i = Math.max(0, to - of + 1); i <= to; i++) {
          if (isOut(i)) out.push(i);
        }
        if (out.length >= needed) signals.push({ rule, from: out[0], to });
      }
    }
    if (to >= 6 && isMonotonic(values, to - 6, to)) {
      signals.push({ rule: "seven rising or falling", from: to - 6, to });
    }
  }
  return signals;
}

/** Whether each point rises above, or each falls below, the one before. */
function isMonotonic(
  values: readonly number[],
  from: number,
  to: number,
): boolean {
  let [rising, falling] = [true, true];
  for (let i = from + 1; i <= to; i++) {
    if (!(values[i] > values[i - 1])) rising = false;
    if (!(values[i] < values[i - 1])) falling = false;
  }
  return rising || falling;
}
