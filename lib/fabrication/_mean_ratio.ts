/**
 * The mean of 2f/R − 1 over finished pieces.
 *
 * @module
 */
import { betweenPieces } from "./_between_pieces.ts";
import type { KnownPiece } from "./focal_habit.ts";
import type { MeanRatio } from "./focal_habit_forms.ts";

/** The standard uncertainty of a piece's 2f/R. */
export function ratioUncertainty(piece: KnownPiece): number {
  const { radius, radiusUncertainty, focalLength, focalLengthUncertainty } =
    piece;
  return Math.hypot(
    2 * focalLengthUncertainty / radius,
    2 * focalLength / radius * radiusUncertainty / radius,
  );
}

/** Weighs the pieces by uncertainty and scatter, and averages them. */
export function meanRatio(
  pieces: readonly KnownPiece[],
  stated: boolean,
): MeanRatio {
  const ratios = pieces.map(({ radius, focalLength }) =>
    (2 * focalLength - radius) / radius
  );
  const squares = pieces.map((piece) => ratioUncertainty(piece) ** 2);
  const at = (variance: number) => {
    const weights = squares.map((u2) => 1 / (u2 + variance));
    const total = weights.reduce((sum, w) => sum + w, 0);
    const value = weights.reduce((sum, w, i) => sum + w * ratios[i], 0) / total;
    const left = weights.reduce(
      (sum, w, i) => sum + w * (ratios[i] - value) ** 2,
      0,
    );
    return { value, total, left };
  };
  const dof = pieces.length - 1;
  const plain = ratios.reduce((sum, q) => sum + q * q, 0);
  const { variance, scale } = betweenPieces(
    (v) => at(v).left,
    dof,
    plain / dof + Math.min(...squares),
    stated,
  );
  const { value, total } = at(variance);
  return {
    value,
    standardError: Math.sqrt(scale / total),
    dof,
    between: Math.sqrt(variance),
    scale,
    typical: Math.sqrt(
      pieces.length / squares.reduce((sum, u2) => sum + 1 / u2, 0),
    ),
  };
}
