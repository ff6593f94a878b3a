/**
 * Limits of an estimate with a part found from few sessions and a part taken
 * as known.
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { normalQuantile } from "../statistics/normal_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";

/**
 * How far above its value the estimate may lie with a chance of `tail`, 0 to
 * 1/2: Student's limit of the own part and the normal limit of the shared part
 * added in quadrature. With few degrees of freedom this keeps its promise where
 * the formula of Welch and Satterthwaite does not (that one covers 92 % at two
 * degrees of freedom and equal parts).
 */
export function tailLimit(estimate: Estimate, tail: number): number {
  if (tail >= 0.5) return 0;
  const known = Math.hypot(...Object.values(estimate.common));
  const own = estimate.own === 0
    ? 0
    : estimate.own * studentTQuantile(tail, estimate.dof, "upper");
  return Math.hypot(own, known * normalQuantile(tail, "upper"));
}

/** Chance that the estimate's true value lies below 0, by the same limits. */
export function chanceBelowZero(estimate: Estimate): number {
  const size = Math.abs(estimate.value);
  if (size === 0) return 0.5;
  const beyond = (logTail: number) =>
    tailLimit(estimate, Math.exp(logTail)) - size;
  const [least, half] = [Math.log(1e-12), Math.log(0.5)];
  const tail = beyond(least) <= 0
    ? 0
    : Math.exp(findRoot(beyond, least, half, { tolerance: 1e-10 }));
  return estimate.value > 0 ? tail : 1 - tail;
}
