/**
 * What the moves of the zero between looks at the flat have in common.
 *
 * @module
 */
import { summarise } from "../statistics/summary.ts";
import { millimetres } from "../units/length.ts";
import { chiSquareUpper5, studentT } from "./_critical.ts";
import { roundingHalfWidth, survivingRounding } from "./display_floor.ts";
import type { DriftLeft } from "./drift.ts";

/** Standard uncertainty of the difference of two looks, in mm. */
export function moveUncertainty(
  moves: readonly number[],
  repeats: number | undefined,
  step: number,
): number {
  const rounding = step * step / 12;
  if (repeats !== undefined) return Math.sqrt(2 * (rounding + repeats));
  const assumed = Math.sqrt(2 * (rounding + step * step));
  if (moves.length < 3) return assumed;
  const middle = median(moves);
  const spread = 1.4826 * median(moves.map((move) => Math.abs(move - middle)));
  return Math.max(Math.sqrt(2 * rounding), spread);
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

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? sorted[half]
    : (sorted[half - 1] + sorted[half]) / 2;
}
