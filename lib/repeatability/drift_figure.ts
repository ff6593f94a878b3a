/**
 * How much the zero creeps within a set, from looks at the flat.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import type { Interval } from "../statistics/interval.ts";
import { studentInterval } from "../statistics/student_interval.ts";

/** What the looks at the flat say about one zeroing, lengths in mm of sag. */
export interface DriftSeen {
  /** The zeroing. */
  readonly zeroing: string;
  /** How far the zero moved from the opening look to the closing one. */
  readonly moved: number;
  /** Standard uncertainty of that. */
  readonly uncertainty: number;
  /**
   * Whether the readings were corrected for it, for the mean move of several
   * zeroings instead, or not at all.
   */
  readonly treatment: "corrected" | "pooled" | "carried";
}

/** A mean move of the zero. */
export interface MeanMove {
  /** How many zeroings it rests on. */
  readonly zeroings: number;
  /** Mean move from the opening look to the closing one, in mm. */
  readonly mean: number;
  /** Student's interval of the mean, for two zeroings or more. */
  readonly interval?: Interval;
}

/** Creep of the zero over the sets of a study, lengths in mm of sag. */
export interface DriftFigure extends MeanMove {
  /** The same by operator, where operators are recorded. */
  readonly byOperator: readonly (MeanMove & { readonly operator: string })[];
  /** Zeroings whose readings were corrected, by their own move or the mean. */
  readonly corrected: readonly string[];
  /** Zeroings whose move is within its own uncertainty and was left alone. */
  readonly carried: readonly string[];
  /**
   * Variance that creep adds to a reading at an average moment of a set if
   * nobody corrects it, in mm²; below 0 where the moves are smaller than
   * their own uncertainty.
   */
  readonly variance: number;
  /** Degrees of freedom of that. */
  readonly dof: number;
  /** Interval of the variance, cut at 0. */
  readonly varianceInterval: Interval;
}

function meanMove(moves: readonly number[], confidence: number): MeanMove {
  if (moves.length === 1) return { zeroings: 1, mean: moves[0] };
  const { mean, interval } = studentInterval(moves, confidence);
  return { zeroings: moves.length, mean, interval };
}

/**
 * Sums up the drift of the zero over the sets of a study.
 *
 * Taking the zero to move in proportion, a reading i of n in a set is off by
 * the part i/(n + 1) of the move, on the mean square by (2n + 1)/(6(n + 1)) of
 * the move's square. The mean square of the moves is lessened by that of their
 * own uncertainties. Degrees of freedom by Satterthwaite, a steady move in one
 * direction counting as a mean; the interval is approximate.
 *
 * @param drifts What the looks say, one entry for each zeroing with a closing
 * look.
 * @param readings The readings of the work.
 * @param confidence Confidence of the intervals, between 0 and 1.
 * @returns The drift; undefined where no set was closed with a look.
 *
 * @see Satterthwaite (1946), Biometrics Bulletin 2, 110-114.
 *
 * @example A zero that moves 6 µm over a set of two readings
 * ```ts
 * import { sumUpDrift } from "sagbook/repeatability/drift_figure.ts";
 * import { equal } from "node:assert/strict";
 *
 * const readings = [1, 2].map(() => ({ zeroing: "1", on: "work" } as
 *   unknown as Parameters<typeof sumUpDrift>[1][number]));
 * const seen = [{ zeroing: "1", moved: 0.006, uncertainty: 0, treatment: "corrected" } as const];
 * const found = sumUpDrift(seen, readings);
 * // Off by 2 and 4 µm: mean square 10 µm².
 * equal(found?.variance.toFixed(9), "0.000010000");
 * ```
 */
export function sumUpDrift(
  drifts: readonly DriftSeen[],
  readings: readonly Reading[],
  confidence: number = 0.95,
): DriftFigure | undefined {
  const sizes = new Map<string, number>();
  const operators = new Map<string, string>();
  for (const { on, zeroing, operator } of readings) {
    if (on !== "work") continue;
    sizes.set(zeroing, (sizes.get(zeroing) ?? 0) + 1);
    if (operator !== undefined) operators.set(zeroing, operator);
  }
  const seen = drifts.filter(({ zeroing }) => sizes.has(zeroing));
  if (seen.length === 0) return undefined;
  const moves = seen.map(({ moved }) => moved as number);
  const share = seen.reduce((sum, { zeroing }) => {
    const n = sizes.get(zeroing)!;
    return sum + (2 * n + 1) / (6 * (n + 1));
  }, 0) / seen.length;
  const square = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value * value, 0) / values.length;
  const [found, own] = [
    square(moves),
    square(seen.map(({ uncertainty }) => uncertainty)),
  ];
  const all = meanMove(moves, confidence);
  const scatter = Math.max(0, found - all.mean ** 2);
  const spread = 4 * all.mean ** 2 * scatter + 2 * scatter ** 2;
  const dof = seen.length === 1 || spread === 0
    ? seen.length
    : Math.max(1, 2 * found ** 2 * seen.length / spread);
  const end = (tail: "lower" | "upper"): number =>
    share * Math.max(
      0,
      dof * found / chiSquareQuantile((1 - confidence) / 2, dof, tail) - own,
    );
  const names = new Set(operators.values());
  return {
    ...all,
    byOperator: [...names].map((operator) => ({
      operator,
      ...meanMove(
        seen.filter(({ zeroing }) => operators.get(zeroing) === operator)
          .map(({ moved }) => moved),
        confidence,
      ),
    })),
    corrected: seen.filter(({ treatment }) => treatment !== "carried")
      .map(({ zeroing }) => zeroing),
    carried: seen.filter(({ treatment }) => treatment === "carried")
      .map(({ zeroing }) => zeroing),
    variance: share * (found - own),
    dof,
    varianceInterval: { low: end("upper"), high: end("lower") },
  };
}
