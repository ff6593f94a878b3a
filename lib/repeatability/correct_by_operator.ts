/**
 * Drift taken out operator by operator.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import type { DriftSeen } from "./drift_figure.ts";

/** A rule that takes the drift of the zero out of one run of readings. */
export type CorrectDrift = (
  readings: readonly Reading[],
  step: number,
) => { readonly sag: readonly number[]; readonly drifts: readonly DriftSeen[] };

/** Sags with the drift taken out, and what was found. */
export interface CorrectedReadings {
  /** Sag of every reading in mm, in the order given. */
  readonly sag: readonly number[];
  /** One entry for each zeroing with a closing look at the flat. */
  readonly drifts: readonly DriftSeen[];
}

/**
 * Takes drift out of the readings of each operator apart.
 *
 * A rule that pools the drift of several zeroings must not pool one operator's
 * warm hands with another's cold ones. The readings are split by ring, session
 * and operator, each part goes through the rule, and the results come back in
 * the order of the readings.
 *
 * @param readings Readings, flat included, in order.
 * @param correct The rule, such as `correctDrift` of `zones/drift.ts`; it gets
 * the largest display step of its readings, in mm.
 * @returns Sags and drifts to hand to {@link estimateComponents}.
 *
 * @see The rule's own source.
 *
 * @example A rule that sees only one operator at a time
 * ```ts
 * import { correctByOperator } from "sagbook/repeatability/correct_by_operator.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const readings = ["A", "B", "A"].map((operator, k) => ({
 *   operator, ring: "1", session: "S1", sag: k,
 * } as unknown as Parameters<typeof correctByOperator>[0][number]));
 * const { sag } = correctByOperator(readings, (part) => ({
 *   sag: part.map(({ sag }) => sag + part.length * 10),
 *   drifts: [],
 * }));
 * deepEqual(sag, [20, 11, 22]);
 * ```
 */
export function correctByOperator(
  readings: readonly Reading[],
  correct: CorrectDrift,
): CorrectedReadings {
  const parts = new Map<string, number[]>();
  readings.forEach(({ ring, session, operator }, index) => {
    const key = JSON.stringify([ring, session, operator ?? null]);
    const part = parts.get(key);
    if (part) part.push(index);
    else parts.set(key, [index]);
  });
  const sag = readings.map((reading) => reading.sag as number);
  const drifts: DriftSeen[] = [];
  for (const indices of parts.values()) {
    const part = indices.map((index) => readings[index]);
    const step = part.reduce((most, one) => Math.max(most, one.step ?? 0), 0);
    const found = correct(part, step);
    indices.forEach((index, k) => sag[index] = found.sag[k]);
    drifts.push(...found.drifts);
  }
  return { sag, drifts };
}
