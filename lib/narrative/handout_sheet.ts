/**
 * The handout of a class: formulas and rules of reading on one sheet.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import type { Piece } from "../records/piece.ts";
import { blind, safety, sphereOrNot } from "./_handout_judging.ts";
import { fromSag, howSure, places, zeroAndSets } from "./_handout_reading.ts";
import { handoutRings } from "./_handout_rings.ts";
import { mainRing, rounded, shortName, writeStep } from "./_handout_words.ts";
import type { HandoutFigures } from "./handout_figures.ts";

/**
 * Writes the handout: formulas, what they come to with the rings at hand, and
 * the rules of reading. Every number is worked out from the piece and bench.
 *
 * It fills one side of A4 or Letter at most, in the frame that
 * {@link HANDOUT_STYLE} is made for: long names are cut, and no more than five
 * rings are tabulated; the others have their bench cards.
 *
 * @param piece The piece.
 * @param figures Its numbers.
 * @returns The content of the sheet, without title and foot.
 *
 * @see Section and rules: common practice, no source. Formulas: Euclid III.35,
 * and the library's own functions, which its tests hold against outside values.
 *
 * @example
 * ```ts
 * import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
 * import { handoutSheet } from "sagbook/narrative/handout_sheet.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { match } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/gauge-study");
 * const { html } = handoutSheet(piece, handoutFigures(piece, bench));
 * match(html, /Astigmatism, however large/);
 * ```
 */
export function handoutSheet(
  piece: Pick<Piece, "diameter">,
  figures: HandoutFigures,
): Markup {
  const main = mainRing(figures);
  return markup`<div class="sheet"><div class="parts">
${fromSag(figures, main)}
${howSure(figures, main)}
${places(figures, main)}
${zeroAndSets()}
${sphereOrNot(figures, main)}
${blind(figures, main)}
${safety(piece)}
</div>
${handoutRings(figures)}</div>`;
}

/**
 * Says for what a handout was made.
 *
 * @param piece The piece.
 * @param figures Its numbers.
 * @returns One line of text.
 *
 * @example
 * ```ts
 * import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
 * import { handoutSubject } from "sagbook/narrative/handout_sheet.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { match } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/gauge-study");
 * match(handoutSubject(piece, handoutFigures(piece, bench)), /concave, 300\smm across/);
 * ```
 */
export function handoutSubject(
  piece: Pick<Piece, "name" | "diameter" | "unit" | "invented">,
  { form, radius, unit, step, stepKnown }: HandoutFigures,
): string {
  // The gauge's unit, and the drawing's where that is another.
  const both = (length: number): string =>
    piece.unit === unit
      ? rounded(length, unit)
      : `${rounded(length, unit)} (${rounded(length, piece.unit)})`;
  const parts = [
    form,
    `${both(piece.diameter)} across`,
    `R ${both(radius)}`,
    ...(stepKnown ? [`display step ${writeStep(step, unit)}`] : []),
  ];
  const invented = piece.invented ? " Piece and rings are invented." : "";
  return `Numbers are for ${shortName(piece.name)}: ${
    parts.join(", ")
  }.${invented}`;
}
