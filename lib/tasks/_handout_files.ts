/**
 * The two pages of `deno task handout`.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import { benchCard } from "../narrative/bench_card.ts";
import {
  type HandoutFigures,
  handoutFigures,
} from "../narrative/handout_figures.ts";
import { handoutSheet, handoutSubject } from "../narrative/handout_sheet.ts";
import { HANDOUT_STYLE } from "../narrative/handout_style.ts";
import { pageShell } from "../notebook/page_shell.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Millimetres } from "../units/length.ts";
import { VERSION } from "../version.ts";
import { OWN_MARK } from "./_handout_owner.ts";

/** Name of the class's sheet. */
export const HANDOUT = "handout.html";

/** Name of the page of bench cards. */
export const BENCH_CARDS = "bench-cards.html";

const FOOT = `Made by sagbook ${VERSION}.`;

/** A lens's other surface, where it curves, as a piece of its own. */
function otherSurface(piece: Piece): Piece | undefined {
  const second = piece.lens?.second;
  if (second === undefined || second.form === "flat") return undefined;
  return {
    ...piece,
    name: `${piece.name}, second surface`,
    form: second.form,
    target: { radius: second.radius, statedAs: "radius" },
  };
}

function cardsOf(piece: Piece, figures: HandoutFigures): readonly Markup[] {
  return figures.rings.map((one) => benchCard(piece, figures, one, FOOT));
}

function missing(piece: Piece, { tooLarge }: HandoutFigures): string[] {
  return tooLarge.length === 0
    ? []
    : [`No card for ${tooLarge.join(", ")}: too large for ${piece.name}.`];
}

/**
 * Makes the pages.
 *
 * @param piece The piece.
 * @param bench The bench.
 * @param radius The radius to make them for; the piece's target unless told.
 * @returns Files by name, and what there is to say of them.
 */
export function handoutFiles(
  piece: Piece,
  bench: Bench,
  radius: Millimetres | undefined,
): {
  readonly files: ReadonlyMap<string, string>;
  readonly said: readonly string[];
} {
  const figures = handoutFigures(piece, bench, radius ?? piece.target?.radius);
  const cards = [...cardsOf(piece, figures)];
  const said = missing(piece, figures);
  const other = otherSurface(piece);
  if (other !== undefined) {
    try {
      const theirs = handoutFigures(other, bench);
      cards.push(...cardsOf(other, theirs));
      said.push(...missing(other, theirs));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      said.push(`No cards for the second surface: no ring stands on it.`);
    }
  }
  said.push(
    `${HANDOUT} is one sheet; ${BENCH_CARDS} is ${cards.length} ${
      cards.length === 1 ? "sheet" : "sheets"
    }, one for each ring${other === undefined ? "" : " and surface"}.`,
  );
  const page = (content: Markup, several: boolean): string =>
    markup`<div ${OWN_MARK}${
      several ? markup` class="several"` : ""
    }>${content}</div>`
      .html;
  return {
    files: new Map([
      [
        HANDOUT,
        pageShell(page(handoutSheet(piece, figures), false), {
          title: "Three feet and a probe: the class on one sheet",
          subtitle: handoutSubject(piece, figures),
          footer: FOOT,
          style: HANDOUT_STYLE,
        }),
      ],
      [
        BENCH_CARDS,
        pageShell(page(markup`${cards}`, true), {
          title: "Bench cards: radius against sag",
          subtitle: handoutSubject(piece, figures),
          footer: FOOT,
          style: HANDOUT_STYLE,
        }),
      ],
    ]),
    said,
  };
}
