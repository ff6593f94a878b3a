/**
 * How far a radius may be off before a ring shows it.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { sagForRadiusChange } from "../geometry/sensitivities.ts";
import { millimetres } from "../units/length.ts";
import { detectableDifference } from "./detection.ts";
import { radiusBudget } from "./radius_budget.ts";
import type {
  ComparedRing,
  RingAnswer,
  RingChoicePlan,
} from "./ring_question.ts";

/**
 * Scatter, in mm, of a gauge that is taken to have none: its readings differ by
 * less than its display shows, and what they share is all there is to doubt.
 */
const NO_SCATTER = 1e-9;

/** How far R may be off before its interval leaves the target out. */
export function radiusAnswer(
  ring: ComparedRing,
  plan: RingChoicePlan,
): Pick<RingAnswer, "detectable" | "expanded" | "offset"> {
  const { work, scatter, step, sets, gauge, flat, power } = plan;
  const { form, radius } = work;
  const feet = effectiveFeet(ring.shape, form);
  const sag = sagFromRadius(radius, feet, form);
  const spread = Math.hypot(scatter.repeat, scatter.zeroing);
  const deviation = Math.max(
    NO_SCATTER,
    Math.sqrt(spread ** 2 + 2 * spreadRounding(spread, step)),
  );
  const budget = radiusBudget({
    form,
    ring,
    gauge,
    flat,
    step,
    roundingShare: survivingShare(spread, step),
    sag: {
      value: sag,
      own: deviation / Math.sqrt(sets),
      dof: sets - 1,
      common: {},
    },
  });
  const perSag = radius / sagForRadiusChange(radius, radius, feet, form);
  const repeated = budget.lines.find(({ source }) => source === "repetition");
  const { standardUncertainty, expanded } = budget;
  if (standardUncertainty === undefined || repeated === undefined) return {};
  const shared = Math.sqrt(
    Math.max(0, standardUncertainty ** 2 - repeated.contribution ** 2),
  ) / perSag;
  const amount = detectableDifference({ deviation, sets, shared }, power);
  return {
    detectable: amount * perSag,
    expanded,
    offset: millimetres(0),
  };
}

/** Variance of one rounding that scatter of this size spreads, in mm². */
function spreadRounding(spread: number, step: number): number {
  return step * step / 12 * (1 - survivingShare(spread, step) ** 2);
}

/** The part of a rounding error that averaging leaves (first harmonic). */
function survivingShare(spread: number, step: number): number {
  return step === 0 ? 0 : Math.exp(-2 * (Math.PI * spread / step) ** 2);
}
