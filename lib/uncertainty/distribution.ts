/**
 * What is believed about one input of a measurement.
 *
 * @module
 */

/** The shape of a belief about an input's error, always centred on 0. */
export type Distribution =
  | {
    readonly kind: "normal";
    /** Standard deviation, at least 0. */
    readonly standardDeviation: number;
  }
  | {
    readonly kind: "student";
    /** Standard error of the mean, at least 0. */
    readonly scale: number;
    /** Degrees of freedom of the scale, above 0. */
    readonly dof: number;
  }
  | {
    readonly kind: "rectangular" | "triangular" | "arcsine";
    /** Half the distance between the limits, at least 0. */
    readonly halfWidth: number;
  };

/** One input of a measurement. */
export interface UncertainInput {
  /** What it is called in a budget. */
  readonly source: string;
  /** Its unit, for the reader; empty for a plain number. */
  readonly unit: string;
  /** Its best value. */
  readonly value: number;
  /** What is believed about its error. */
  readonly distribution: Distribution;
  /**
   * Degrees of freedom of the standard uncertainty where it is not taken as
   * known: ½ (Δu/u)⁻² for an uncertainty good to Δu. A `student` distribution
   * brings its own.
   */
  readonly dof?: number;
  /** Id under which other results share this very error, if they do. */
  readonly common?: string;
}

const DIVISOR = {
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  arcsine: Math.SQRT2,
} as const;

/**
 * Finds the standard uncertainty of a distribution.
 *
 * For `student` it is the standard error itself, as the GUM has it; its
 * uncertainty is told by the degrees of freedom. (The distribution that a
 * Monte Carlo draws from is wider by √(ν/(ν − 2)).)
 *
 * @param distribution The distribution.
 * @returns The standard uncertainty, in the unit of the input.
 * @throws {RangeError} If a width is negative or not finite, or the degrees of
 * freedom are not above 0.
 *
 * @see JCGM 100:2008, 4.2.3, 4.3.7 and 4.3.9; JCGM 101:2008, 6.4 (table 1).
 *
 * @example
 * ```ts
 * import { standardDeviationOf } from "sagbook/uncertainty/distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * const step = 0.001;
 * const rounding = { kind: "rectangular", halfWidth: step / 2 } as const;
 * equal(standardDeviationOf(rounding).toFixed(9), "0.000288675");
 * ```
 */
export function standardDeviationOf(distribution: Distribution): number {
  const { kind } = distribution;
  const width = kind === "normal"
    ? distribution.standardDeviation
    : kind === "student"
    ? distribution.scale
    : distribution.halfWidth;
  if (!(width >= 0 && Number.isFinite(width))) {
    throw new RangeError(
      `Cannot find a standard uncertainty as the width of a ${kind} distribution must be finite and at least 0: current value is ${width}`,
    );
  }
  if (kind === "normal") return width;
  if (kind === "student") {
    if (!(distribution.dof > 0)) {
      throw new RangeError(
        `Cannot find a standard uncertainty as the degrees of freedom must be above 0: current value is ${distribution.dof}`,
      );
    }
    return width;
  }
  return width / DIVISOR[kind];
}

/**
 * Finds the degrees of freedom of an input's standard uncertainty.
 *
 * @param input The input.
 * @returns The degrees of freedom; `Infinity` where it is taken as known.
 *
 * @see JCGM 100:2008, G.4.2.
 *
 * @example
 * ```ts
 * import { dofOf } from "sagbook/uncertainty/distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * const distribution = { kind: "student", scale: 1, dof: 4 } as const;
 * equal(dofOf({ source: "mean", unit: "mm", value: 0, distribution }), 4);
 * ```
 */
export function dofOf(input: UncertainInput): number {
  const { distribution } = input;
  return distribution.kind === "student"
    ? distribution.dof
    : input.dof ?? Infinity;
}

/**
 * Finds the degrees of freedom that a doubt about an uncertainty stands for.
 *
 * @param relativeDoubt How far the standard uncertainty itself may be off, as
 * a fraction, above 0: 0.25 for "good to a quarter".
 * @returns `½ (Δu/u)⁻²`.
 * @throws {RangeError} If the doubt is not above 0.
 *
 * @see JCGM 100:2008, G.4.2, formula (G.3).
 *
 * @example
 * ```ts
 * import { dofFromDoubt } from "sagbook/uncertainty/distribution.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(dofFromDoubt(0.25), 8);
 * ```
 */
export function dofFromDoubt(relativeDoubt: number): number {
  if (!(relativeDoubt > 0)) {
    throw new RangeError(
      `Cannot find degrees of freedom as the relative doubt must be above 0: current value is ${relativeDoubt}`,
    );
  }
  return 0.5 / relativeDoubt ** 2;
}
