/**
 * What the moves of the zero between looks at the flat have in common.
 *
 * @module
 */
import { medianOf } from "../statistics/median.ts";
import { summarise } from "../statistics/summary.ts";
import { millimetres } from "../units/length.ts";
import { chiSquareUpper5, studentT } from "./_critical.ts";
import {
  roundingHalfWidth,
  survivingRounding,
} from "../statistics/rounding_floor.ts";
import type { DriftLeft } from "./drift.ts";

/** Two moves that differ by less, in mm, are the same. */
const SAME = 1e-9;

/**
 * Standard uncertainty of the difference of two looks, in mm, and how far a
 * move must go, in mm, to be this zeroing's own: more than one display step,
 * and twice its uncertainty or, of several, Bonferroni's Student factor times.
 */
export function moveUncertainty(
  moves: readonly number[],
  repeats: { readonly variance: number; readonly dof: number } | undefined,
  step: number,
): { uncertainty: number; limit: number } {
  const n = moves.length;
  const rounding = 2 * step * step / 12;
  // Variances of a move, each with its degrees of freedom.
  const known: { variance: number; dof: number }[] = [];
  if (repeats !== undefined) {
    const { variance, dof } = repeats;
    known.push({ variance: rounding + 2 * variance, dof });
  }
  if (n >= 3) {
    const middle = medianOf(moves)!;
    const spread = 1.4826 *
      medianOf(moves.map((move) => Math.abs(move - middle)))!;
    known.push({ variance: Math.max(rounding, spread ** 2), dof: n - 1 });
  }
  if (known.length === 0) {
    known.push({ variance: rounding + 2 * step * step, dof: Infinity });
  }
  const dof = known.reduce((sum, one) => sum + one.dof, 0);
  const uncertainty = Math.sqrt(
    known.length === 1
      ? known[0].variance
      : known.reduce((sum, one) => sum + one.variance * one.dof, 0) / dof,
  );
  const factor = n === 1 ? 2 : studentT(0.025 / n, dof);
  return {
    uncertainty,
    limit: Math.max(step + SAME, factor * uncertainty),
  };
}

/** The mean move, what is not known of it, and whether it is real at 5 %. */
export function commonMove(
  moves: readonly number[],
  step: number,
): { mean: number; real: boolean; left: DriftLeft } {
  const { mean, standardDeviation = 0 } = summarise(moves);
  const n = moves.length;
  const dof = Math.max(1, n - 1);
  const standardError = standardDeviation / Math.sqrt(n);
  const rounding = step === 0 || n < 2 ? 0 : survivingRounding(
    (standardDeviation / step) ** 2,
    dof,
    chiSquareUpper5(dof),
  );
  const half = Math.hypot(
    studentT(0.025, dof) * standardError,
    roundingHalfWidth(0.05) * step * rounding,
  );
  return {
    mean,
    real: n >= 3 && Math.abs(mean) > half,
    left: { standardError: millimetres(standardError), dof, rounding },
  };
}
