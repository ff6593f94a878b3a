/**
 * What a shop states about its own work, as the analyses take it.
 *
 * @module
 */
import { COMMON_STROKES, type StrokeTable } from "../fabrication/next_step.ts";
import type { Bench } from "../records/bench.ts";
import type { OwnPractice } from "./history_pits.ts";
import type { Estimate } from "../statistics/estimate.ts";

/** The shop's strokes, those in common use where it states none. */
export function strokesOf({ work }: Bench): StrokeTable {
  return { ...COMMON_STROKES, ...work?.strokes };
}

/** The shop's rate of removal for the unit in which its log counts work. */
function removalRateOf(
  { work }: Bench,
  unit: "wets" | "minutes" | undefined,
): Estimate | undefined {
  const removal = work?.removal;
  if (removal === undefined || `${removal.per}s` !== unit) return undefined;
  return {
    value: removal.amount,
    own: removal.uncertainty,
    dof: Infinity,
    common: {},
  };
}

/** What a shop states of pits, removal and thicknesses. */
export function habitsOf(
  bench: Bench,
  unit: "wets" | "minutes" | undefined,
): OwnPractice {
  const { pitGrainSizes, thicknessUncertainty } = bench.work ?? {};
  const removalRate = removalRateOf(bench, unit);
  return {
    ...(pitGrainSizes === undefined ? {} : { pitFactor: pitGrainSizes }),
    ...(thicknessUncertainty === undefined ? {} : { thicknessUncertainty }),
    ...(removalRate === undefined ? {} : { removalRate }),
  };
}
