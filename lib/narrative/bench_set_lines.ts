/**
 * What the sets so far say, after each of them.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import {
  analyseSession,
  type SessionAnalysis,
} from "../zones/analyse_session.ts";
import { correctDrift } from "../zones/drift.ts";
import {
  type Looks,
  type ProvisionalVerdict,
  provisionalVerdict,
  USUAL_LOOKS,
} from "../zones/provisional_verdict.ts";
import type { SagTolerance } from "../zones/tolerance.ts";
import { stateRadius } from "./radius_statement.ts";
import { writeRadius } from "./write_radius.ts";
import { writeDifference, writeSmall } from "./sag_words.ts";
import { writeTolerance } from "./sphericity_sentence.ts";

/** The sets so far, judged on the way. */
export interface BenchSets {
  /** The session so far. */
  readonly session: SessionAnalysis;
  /** The verdict by the rule that allows to stop early; absent without a tolerance. */
  readonly provisional?: ProvisionalVerdict;
  /** The tolerance it was held to. */
  readonly tolerance?: SagTolerance;
}

/**
 * Analyses the sets so far and judges them by the rule for stopping early.
 *
 * @param readings Readings of one session with one ring, in order.
 * @param piece The piece.
 * @param bench The bench.
 * @param looks The sets after which the verdict is looked at.
 * @returns Undefined when the work was not read.
 *
 * @example
 * ```ts
 * import { benchSets } from "sagbook/narrative/bench_set_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const evening = readings.filter(({ session }) => session === "evening 1");
 * const sets = benchSets(evening.slice(0, 6), piece, bench);
 * equal(sets?.provisional?.verdict, undefined);
 * ```
 */
export function benchSets(
  readings: readonly Reading[],
  piece: Piece,
  bench: Bench,
  looks: Looks = USUAL_LOOKS,
): BenchSets | undefined {
  const session = analyseSession(readings, piece, bench);
  if (session === undefined) return undefined;
  const { sphericity, sets, zones, step } = session;
  const { tolerance } = sphericity;
  if (tolerance === undefined) return { session };
  const { left } = correctDrift(readings, step);
  const provisional = provisionalVerdict(sets, {
    places: zones.map(({ place }) => place),
    tolerance: tolerance.sag,
    step,
    ...(left === undefined ? {} : { drift: left }),
  }, looks);
  return { session, provisional, tolerance };
}

/** What three feet can never see, in as few words as a terminal wants. */
const UNSEEN = "three feet cannot see astigmatism";

function verdictLine(
  { session, provisional, tolerance }: BenchSets,
  piece: Piece,
): string {
  const { unit } = piece;
  const { zones, sphericity } = session;
  if (provisional === undefined || tolerance === undefined) {
    switch (sphericity.reason) {
      case "one zone":
        return "Shape: only one place was read, so nothing is said of it.";
      case "no tolerance":
        return "Shape: piece.json states no tolerance for a sphere, so nothing is judged.";
      case "one set":
        return "Shape: one set tells no difference from scatter.";
      default:
        return "Shape: nothing can be said of it yet.";
    }
  }
  const { verdict, looks, deciding, byEnds, agreeWithin } = provisional;
  const words = writeTolerance(tolerance, unit);
  const rule =
    `Provisional, by the rule for sets ${looks.first} to ${looks.last}`;
  const pair = deciding === undefined
    ? "the places"
    : `${zones[deciding.first].place.label} and ${
      zones[deciding.second].place.label
    }`;
  switch (verdict) {
    case "early":
      return `Shape: the rule for sets ${looks.first} to ${looks.last} speaks after set ${looks.first}.`;
    case "over":
      return `Shape: more sets than the ${looks.last} of the rule; the report's verdict holds if their number was fixed before the first.`;
    case "within":
      return `${rule}: within ${words}, all places agree within ${
        writeSmall(agreeWithin ?? 0, unit)
      }; you may stop here (${UNSEEN}).`;
    case "outside":
      return byEnds || deciding === undefined
        ? `${rule}: not a sphere within ${words}; the two ends of a diameter differ.`
        : `${rule}: not a sphere within ${words}; ${pair} differ by ${
          writeDifference(deciding.mean, deciding.simultaneous95, unit)
        }.`;
    case "undecided": {
      const needed = sphericity.setsNeeded;
      const more = needed?.kind === "sets"
        ? ` About ${needed.sets} sets in all, their number fixed beforehand, would decide.`
        : needed?.kind === "display cannot decide"
        ? " The display is too coarse to decide it."
        : "";
      return `${rule}: within ${words} is not decided${
        byEnds
          ? ", because of the two ends of a diameter"
          : `, ${pair} differ by ${
            deciding === undefined
              ? "an unknown amount"
              : writeDifference(deciding.mean, deciding.interval90, unit)
          }`
      }.${more}`;
    }
  }
}

/**
 * Says what the sets so far say: R, the provisional verdict, what to do.
 *
 * @param sets The sets so far.
 * @param piece The piece.
 * @param bench The bench.
 * @returns Lines.
 *
 * @example
 * ```ts
 * import { benchSetLines, benchSets } from "sagbook/narrative/bench_set_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const evening = readings.filter(({ session }) => session === readings[0].session);
 * const lines = benchSetLines(benchSets(evening, piece, bench)!, piece, bench);
 * ok(lines[0].startsWith("R "));
 * ```
 */
export function benchSetLines(
  sets: BenchSets,
  piece: Piece,
  bench: Bench,
): readonly string[] {
  const { session } = sets;
  const radius = stateRadius(session, piece, bench);
  const { zeroings } = session.whole.mean;
  const where = radius?.over === "centre" && session.zones.length > 1
    ? " at the centre"
    : "";
  const lines = radius === undefined
    ? ["No radius belongs to these readings."]
    : [
      `R ${writeRadius(radius, piece.unit)}${where} from ${zeroings} ${
        zeroings === 1 ? "zeroing" : "zeroings"
      }${
        radius.covers === "everything" ? "" : ", scatter of zeroing not counted"
      }.`,
    ];
  if (session.outliers.length > 0) {
    lines.push(
      `${
        session.outliers.length === 1
          ? "One reading stands"
          : `${session.outliers.length} readings stand`
      } apart from the rest; the report shows the answer with and without.`,
    );
  }
  return [...lines, verdictLine(sets, piece)];
}
