/**
 * The sum of a calibration's lines.
 *
 * @module
 */
import type { Estimate } from "../statistics/estimate.ts";
import { expandUncertainty } from "../statistics/estimate_uncertainty.ts";
import { type BudgetLine, effectiveDofOf } from "./budget.ts";
import type { RingCalibration } from "./ring_calibration.ts";

/** Adds up the lines of a foot circle's radius. */
export function calibrationOf(
  head: Pick<
    RingCalibration,
    "ring" | "method" | "ballRadius" | "ballRadiusUncertainty"
  >,
  value: number,
  parts: readonly Omit<BudgetLine, "share">[],
): RingCalibration {
  const total = parts.reduce((sum, part) => sum + part.contribution ** 2, 0);
  const lines = parts.map((part) => ({
    ...part,
    share: total === 0 ? 0 : part.contribution ** 2 / total,
  }));
  const own = lines.filter((line) => line.common === undefined);
  const common: Record<string, number> = {};
  for (const { common: id, contribution } of lines) {
    if (id !== undefined) common[id] = (common[id] ?? 0) + contribution;
  }
  const circleRadius: Estimate = {
    value,
    own: Math.hypot(...own.map((line) => line.contribution)),
    dof: effectiveDofOf(own),
    common,
  };
  const dof = effectiveDofOf(lines);
  const { factor } = expandUncertainty({ value, own: 1, dof, common: {} });
  const standardUncertainty = Math.sqrt(total);
  return {
    ...head,
    circleRadius,
    standardUncertainty,
    dof,
    factor,
    expanded: factor * standardUncertainty,
    lines,
  };
}
