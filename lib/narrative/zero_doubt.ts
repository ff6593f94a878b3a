/**
 * A zero that moved by more than the question is about.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { nearest } from "../zones/sphericity.ts";
import { writeSmall } from "./sag_words.ts";

/**
 * Doubts a verdict on the shape that hangs on when the zero moved.
 *
 * Between two looks at the flat the zero is taken to creep evenly. Where it
 * slipped all at once instead, readings after the slip are off by the whole of
 * it, in every set alike, and no scatter shows it. So long as the mean move
 * between two looks is smaller than the tolerance of the zones, or a departure
 * is beyond it whenever the zero moved, the verdict stands.
 *
 * @param session The session.
 * @param unit The user's unit.
 * @returns One sentence, or none.
 *
 * @example A session without looks at the flat
 * ```ts
 * import { zeroDoubts } from "sagbook/narrative/zero_doubt.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(zeroDoubts({ drifts: [], sphericity: { verdict: "within" } } as
 *   unknown as Parameters<typeof zeroDoubts>[0], "mm"), []);
 * ```
 */
export function zeroDoubts(
  session: Pick<SessionAnalysis, "drifts" | "sphericity">,
  unit: LengthUnit,
): readonly string[] {
  const { drifts, sphericity: { verdict, tolerance, deciding } } = session;
  if (tolerance === undefined || drifts.length === 0) return [];
  if (verdict !== "within" && verdict !== "outside") return [];
  const taken = drifts.filter(({ treatment }) => treatment !== "carried");
  const moved = Math.abs(
    taken.reduce((sum, { between }) => sum + between, 0) / drifts.length,
  );
  if (!(moved > tolerance.sag)) return [];
  const surest = deciding?.simultaneous95;
  if (
    verdict === "outside" &&
    (surest === undefined || nearest(surest) - moved > tolerance.sag)
  ) return [];
  return [
    `Check before you trust this: the zero moved by ${
      writeSmall(moved, unit)
    } between two looks at the flat, more than the ${
      writeSmall(tolerance.sag, unit)
    } that zones may differ by. It was taken out as if it had crept evenly; if it slipped all at once, zones that agree seem to differ, and zones that differ to agree. Let gauge and glass come to rest, and read again with a look at the flat after every reading.`,
  ];
}
