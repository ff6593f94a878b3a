/**
 * Rings that read one surface differently, for the answer.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { ringNameFirst } from "../records/ring_name.ts";
import { formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { compareRadii } from "./plan_differences.ts";

/**
 * Says which rings of a session do not agree with the one its answer rests on.
 *
 * On a surface that was shown to be no sphere rings of different sizes see
 * different radii, so nothing is said there.
 *
 * @param session The session with the ring of its answer.
 * @param sessions Every session and ring, in order.
 * @param piece The piece.
 * @param bench The bench.
 * @returns A sentence for each ring whose radius differs by more than both
 * uncertainties allow (E_n above 1).
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function ringDisagreement(
  session: SessionAnalysis,
  sessions: readonly SessionAnalysis[],
  piece: Pick<Piece, "form" | "unit">,
  bench: Bench,
): readonly string[] {
  const isAlone = !sessions.some((one) =>
    one !== session && one.session === session.session
  );
  if (isAlone || session.sphericity.verdict === "outside") return [];
  return compareRadii(session, sessions, piece, bench)
    .filter(({ between, normalisedError }) =>
      between === "rings" && normalisedError > 1
    )
    .map(({ second, difference, expanded }) =>
      `${ringNameFirst(second)} says otherwise: with it R is ${
        formatWithUncertainty(
          millimetres(Math.abs(difference)),
          millimetres(expanded),
          piece.unit,
        )
      } ${
        difference < 0 ? "longer" : "shorter"
      }, more than both can be off by what the bench file states.`
    );
}
