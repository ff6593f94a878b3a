/**
 * The answer to one reading, line by line.
 *
 * @module
 */
import type { LengthUnit, Piece } from "../records/piece.ts";
import {
  formatLength,
  formatWithUncertainty,
  groupFigures,
  readableUnit,
} from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor, roundDecimal } from "../units/round_decimal.ts";
import type { BenchAnswer } from "./bench_answer.ts";
import { writeRadius } from "./write_radius.ts";
import { writeTarget } from "./target_words.ts";
import { smallUnit, writeSmall } from "./sag_words.ts";

/** Figures after the point for a number with this uncertainty, 0 to `most`. */
function decimalsOf(uncertainty: number | undefined, most: number): number {
  if (uncertainty === undefined || !(uncertainty > 0)) return most;
  return Math.min(most, Math.max(0, decimalsFor(uncertainty)));
}

function written(value: number, decimals: number): string {
  return groupFigures(roundDecimal(value, decimals));
}

/** A small or large length with its uncertainty, in a unit that suits it. */
function withDoubt(length: number, doubt: number, unit: LengthUnit): string {
  const value = millimetres(Math.abs(length));
  const shown = value < 0.1 ? smallUnit(unit) : unit;
  return formatWithUncertainty(value, millimetres(doubt), shown);
}

/** A size of the piece without figures that were not given. */
function size(length: number, unit: LengthUnit): string {
  const decimals = unit === "mm" ? 3 : 4;
  const figures = roundDecimal(amountIn(millimetres(length), unit), decimals);
  return `${groupFigures(`${Number(figures)}`)}\u00a0${unit}`;
}

/** Half of what R may be off by, in mm; undefined next to a flat. */
function doubtOf(
  { expanded, interval }: Pick<BenchAnswer, "expanded" | "interval">,
): number | undefined {
  return expanded ??
    (interval?.high === undefined
      ? undefined
      : (interval.high - interval.low) / 2);
}

/**
 * Says how a surface lies to its target, in depth at the centre or the edge.
 *
 * @param answer The answer to a reading.
 * @param piece The piece.
 * @returns One line; undefined without a target.
 *
 * @example
 * ```ts
 * import { benchAnswer } from "sagbook/narrative/bench_answer.ts";
 * import { benchTargetLine } from "sagbook/narrative/bench_answer_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const answer = benchAnswer(readings[0], piece, bench)!;
 * ok(benchTargetLine(answer, piece)!.startsWith("Target R 3000"));
 * ```
 */
export function benchTargetLine(
  answer: BenchAnswer,
  piece: Piece,
): string | undefined {
  const { target } = answer;
  if (target === undefined) return undefined;
  const { unit, form, startingRadius, tolerance } = {
    ...piece,
    tolerance: piece.target?.tolerance,
  };
  const { state, toGo, radius } = target;
  const relative = (doubtOf(answer) ?? 0) / answer.radius;
  const deep = relative === 0
    ? writeSmall(toGo, unit)
    : withDoubt(toGo, relative * (answer.surfaceSag ?? 0), unit);
  const lead = `Target R ${writeTarget({ radius, tolerance }, unit)}`;
  const concave = form === "concave";
  if (state === "within" || state === "not decided") {
    const best = Math.abs(toGo) < 5e-6
      ? ""
      : `; at its best value the ${concave ? "centre" : "edge"} lies ${deep} ${
        toGo > 0 ? "above" : "below"
      } the target's`;
    return state === "within"
      ? `${lead}: reached, as far as one reading can tell${best}.`
      : `${lead}: one reading cannot decide whether it is reached${best}.`;
  }
  const longer = state === "longer";
  const came = startingRadius === undefined
    ? undefined
    : startingRadius > radius
    ? "longer"
    : "shorter";
  const place = concave ? "at the centre" : "at the edge";
  if (came === undefined ? longer : came === state) {
    return longer
      ? `${lead}: ${deep} still to go down ${place}.`
      : `${lead}: R is still shorter; ${place} the surface lies ${deep} too low.`;
  }
  const lies = `${place} the surface lies ${deep} too ${
    longer ? "high" : "low"
  }`;
  return came === undefined
    ? `${lead}: R is ${state}; ${lies}.`
    : `${lead}: past it; ${lies}. Grinding on the same way leads further off.`;
}

/** An index with the figures it was given, three at least. */
function writtenIndex(index: number): string {
  const given = `${index}`.split(".")[1]?.length ?? 0;
  return roundDecimal(index, Math.max(3, given));
}

/** What the uncertainty covers, and what it does not. */
function coverLine({ covers, budget }: BenchAnswer): string {
  const zero = covers === "everything"
    ? "the scatter of zeroing is counted as earlier sessions showed it"
    : "one reading does not show how the zero scatters";
  const missing = budget.notCounted.length === 0
    ? ""
    : `; not counted, since nothing is known of it: ${
      budget.notCounted.join(", ")
    }`;
  return `The uncertainty is for 95 %: ring, gauge, display; ${zero}${missing}.`;
}

/** What the lines should say. */
export interface BenchAnswerLinesOptions {
  /** False where nobody said how large the work is; true unless stated. */
  readonly sizeKnown?: boolean;
}

/**
 * Writes the answer to one reading: R ± U first, then what follows from it.
 *
 * @param answer The answer.
 * @param piece The piece, with the unit to write in.
 * @param options What is known.
 * @returns Lines without a heading, each complete when read aloud.
 *
 * @example
 * ```ts
 * import { benchAnswer } from "sagbook/narrative/bench_answer.ts";
 * import { benchAnswerLines } from "sagbook/narrative/bench_answer_lines.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const answer = benchAnswer(readings[0], piece, bench)!;
 * ok(benchAnswerLines(answer, piece)[0].startsWith("R "));
 * ```
 */
export function benchAnswerLines(
  answer: BenchAnswer,
  piece: Piece,
  options: BenchAnswerLinesOptions = {},
): readonly string[] {
  const { sizeKnown = true } = options;
  const { unit, form, diameter } = piece;
  const { radius, focalRatio, power, index, perStep, surfaceSag } = answer;
  const doubt = doubtOf(answer);
  const relative = doubt === undefined ? undefined : doubt / radius;
  const lines = [`R ${writeRadius(answer, unit)}, ${form}.`];
  if (focalRatio !== undefined) {
    const decimals = decimalsOf(relative && relative * focalRatio, 3);
    const ratio = `, f/${written(focalRatio, decimals)} over ${
      size(diameter, unit)
    }`;
    lines.push(
      `Focal length ${writeRadius(answer, unit, 0.5)}${
        sizeKnown ? ratio : ""
      }.`,
    );
  }
  if (power !== undefined && index !== undefined) {
    const decimals = decimalsOf(relative && relative * Math.abs(power), 5);
    lines.push(
      `Surface power ${written(power, decimals)}\u00a0D for an index of ${
        writtenIndex(index)
      }.`,
    );
  }
  if (sizeKnown) {
    lines.push(
      surfaceSag === undefined
        ? "A sphere of this radius is smaller than the work: it has no sag over the whole surface."
        : `Sag of the whole surface ${
          relative === undefined
            ? writeSmall(surfaceSag, unit)
            : withDoubt(surfaceSag, relative * surfaceSag, unit)
        } over a half diameter of ${size(diameter / 2, unit)}.`,
    );
    const target = benchTargetLine(answer, piece);
    if (target !== undefined) lines.push(target);
  }
  if (perStep !== undefined) {
    const shown = readableUnit(perStep, unit);
    const amount = amountIn(perStep, shown);
    lines.push(
      `One display step is ${
        formatLength(perStep, shown, decimalsFor(amount))
      } of R here.`,
    );
  }
  return [...lines, coverLine(answer)];
}
