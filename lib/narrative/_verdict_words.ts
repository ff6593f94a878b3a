/**
 * The verdict on a session in the words of a table.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { zeroDoubts } from "./zero_doubt.ts";

const VERDICTS = {
  within: "within tolerance",
  outside: "out of tolerance",
  undecided: "not decided",
  none: "not tested",
} as const;

/** The verdict, or why it is in doubt. */
export function verdictWords(
  session: Pick<SessionAnalysis, "drifts" | "sphericity">,
  unit: LengthUnit,
): string {
  return zeroDoubts(session, unit).length > 0
    ? "in doubt: the zero moved"
    : VERDICTS[session.sphericity.verdict];
}
