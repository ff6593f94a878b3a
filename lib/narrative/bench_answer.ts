/**
 * What one reading at the bench says at once.
 *
 * @module
 */
import {
  againstTarget,
  type RadiusRange,
  type TargetVerdict,
} from "../fabrication/against_target.ts";
import { powerFromRadius } from "../geometry/surface_power.ts";
import { surfaceSag } from "../geometry/surface_sag.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { radiusBudget } from "../uncertainty/radius_budget.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { analyseSession } from "../zones/analyse_session.ts";
import type { BenchScatter } from "./bench_scatter.ts";
import { measurementOf, type RadiusStatement } from "./radius_statement.ts";

/** How the surface lies to its target. */
export interface BenchTarget {
  /** The wanted radius in mm. */
  readonly radius: Millimetres;
  /** Sag of the whole surface at the target less the sag now, in mm. */
  readonly toGo: Millimetres;
  /** What this reading decides, told by all of the interval of R. */
  readonly state: TargetVerdict;
}

/** One reading, answered. */
export interface BenchAnswer extends
  Pick<
    RadiusStatement,
    "radius" | "expanded" | "interval" | "covers" | "budget"
  > {
  /** The sag in mm. */
  readonly sag: Millimetres;
  /** What one display step is of R, in mm; absent without a display step. */
  readonly perStep?: Millimetres;
  /** Focal ratio of the sphere over the whole diameter; concave mirrors only. */
  readonly focalRatio?: number;
  /**
   * Surface power in air, in dioptres: of a lens, of a gauge that shows power,
   * or for an index that was asked for. On a mirror it means nothing.
   */
  readonly power?: number;
  /** The index it is meant for. */
  readonly index?: number;
  /** Sag of the whole surface in mm; absent where R is less than the half diameter. */
  readonly surfaceSag?: Millimetres;
  /** How the surface lies to its target, where one is known. */
  readonly target?: BenchTarget;
}

/** What an answer may draw on besides the reading. */
export interface BenchAnswerOptions {
  /** Scatter of one zeroing, where earlier sessions showed it. */
  readonly scatter?: BenchScatter;
  /**
   * Index for the surface power; unless stated the lens's own, or the one set
   * in a gauge that shows power.
   */
  readonly index?: number;
}

/**
 * Answers one reading: R with its uncertainty and all that follows from it.
 *
 * The computation is the report's: the reading is analysed as a session of
 * one, so that its uncertainty covers ring, gauge, flat and display, and the
 * scatter of zeroing only where earlier sessions showed it.
 *
 * @param reading A reading of the work.
 * @param piece The piece.
 * @param bench The bench its ring belongs to.
 * @param options Scatter and index.
 * @returns Plain data in mm; undefined when no radius belongs to the sag.
 * @throws {RangeError} If the ring is not on the bench or the index is not
 * above 1.
 *
 * @example
 * ```ts
 * import { benchAnswer } from "sagbook/narrative/bench_answer.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const answer = benchAnswer(readings[0], piece, bench);
 * equal(answer?.covers, "but repeating");
 * equal(answer?.target?.radius, 3000);
 * ```
 */
export function benchAnswer(
  reading: Reading,
  piece: Piece,
  bench: Bench,
  options: BenchAnswerOptions = {},
): BenchAnswer | undefined {
  const { shows } = bench.gauge;
  const { scatter, index = piece.lens?.index ?? setIndex(shows) } = options;
  const session = analyseSession([reading], piece, bench);
  const found = session?.whole.radius;
  if (session === undefined || found === undefined) return undefined;
  const { radius, perSag } = found;
  const zeroing = scatter && {
    zeroing: {
      standardUncertainty: scatter.standardDeviation,
      dof: scatter.dof,
    },
  };
  const budget = radiusBudget({
    ...measurementOf(session, piece, bench, "centre"),
    ...zeroing,
  });
  const { lower, upper, expanded, shape } = budget;
  const even = shape === "symmetric" && expanded !== undefined;
  const half = piece.diameter / 2;
  const whole = radius >= half
    ? surfaceSag(radius, millimetres(half))
    : undefined;
  const target = whole === undefined ? undefined : targetOf(
    whole,
    piece,
    upper === undefined ? { low: lower } : { low: lower, high: upper },
  );
  return {
    sag: reading.sag,
    radius,
    ...(even ? { expanded: millimetres(expanded) } : {
      interval: upper === undefined
        ? { low: lower }
        : { low: lower, high: upper },
    }),
    covers: scatter === undefined ? "but repeating" : "everything",
    budget,
    ...(reading.step === undefined ? {} : {
      perStep: millimetres(Math.abs(perSag) * reading.step),
    }),
    ...(piece.form === "concave" && piece.lens === undefined
      ? { focalRatio: radius / 2 / piece.diameter }
      : {}),
    ...(index === undefined
      ? {}
      : { power: powerFromRadius(radius, piece.form, index), index }),
    ...(whole === undefined ? {} : { surfaceSag: whole }),
    ...(target === undefined ? {} : { target }),
  };
}

/** The index that a gauge works with, where it shows power. */
function setIndex(shows: Bench["gauge"]["shows"]): number | undefined {
  return shows.kind === "power" ? shows.index : undefined;
}

function targetOf(
  whole: Millimetres,
  { target, diameter }: Piece,
  range: RadiusRange,
): BenchTarget | undefined {
  if (target === undefined) return undefined;
  const wanted = surfaceSag(target.radius, millimetres(diameter / 2));
  return {
    radius: target.radius,
    toGo: millimetres(wanted - whole),
    state: againstTarget(range, target),
  };
}
