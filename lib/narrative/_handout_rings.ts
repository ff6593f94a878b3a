/**
 * The rings at hand, in a table at the foot of a handout.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import { groupFigures } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";
import { shortName } from "./_handout_words.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";
import { smallUnit, writeSmall } from "./sag_words.ts";

/** More rings than this have only their cards. */
export const MOST_RINGS = 5;

/** What stands where a number is of no use. */
const NONE = "–";

function cellsOf(
  { ring, feet, sag, perSag, perCircle, reach, atEdge }: HandoutRing,
  { unit, step }: HandoutFigures,
): readonly string[] {
  const bare = (length: number, decimals: number): string =>
    groupFigures(
      roundDecimal(amountIn(millimetres(length), unit), decimals),
    );
  const [size, radius] = unit === "mm" ? [2, 1] : [4, 2];
  const [small, circle] = unit === "mm" ? [0.001, 0.01] : [0.00254, 0.0254];
  return [
    shortName(ring.id, 24),
    bare(feet.circleRadius, size),
    feet.ballRadius === 0 ? NONE : bare(feet.ballRadius, size),
    bare(sag, stepDecimals(step, unit)),
    bare(perSag * small, radius),
    bare(perCircle * circle, radius),
    reach === 0 ? "centre only" : bare(reach, unit === "mm" ? 0 : 2),
    atEdge === undefined ? NONE : writeSmall(atEdge.growth, unit),
    atEdge === undefined ? NONE : atEdge.surfaceFactor.toFixed(2),
  ];
}

/** Says which rings the table leaves out. */
function leftOut({ rings, tooLarge }: HandoutFigures): string {
  const more = rings.length - MOST_RINGS;
  const named = tooLarge.slice(0, 3).map((id) => shortName(id, 24)).join(", ");
  const others = tooLarge.length > 3 ? ` and ${tooLarge.length - 3} more` : "";
  return [
    ...(more > 0
      ? [`${more} more ${more === 1 ? "is" : "are"} on the bench cards.`]
      : []),
    ...(tooLarge.length > 0
      ? [`Too large for this surface: ${named}${others}.`]
      : []),
  ].join(" ");
}

/** The table, and what it leaves out. */
export function handoutRings(figures: HandoutFigures): Markup {
  const { unit, rings } = figures;
  const micro = unit === "mm" ? "1 µm" : "0.1 thou";
  const headings = [
    "ring",
    `r, ${unit}`,
    `b, ${unit}`,
    `sag at R, ${unit}`,
    `${micro} of sag moves R by, ${unit}`,
    `${unit === "mm" ? "0.01 mm" : "0.001 in"} of r moves R by, ${unit}`,
    `“edge” at c, ${unit}`,
    "a paraboloid reads longer there by",
    `surface error for 1 ${smallUnit(unit)} of sag there, ${smallUnit(unit)}`,
  ];
  const left = leftOut(figures);
  return markup`<div class="wide" tabindex="0" role="group" aria-label="The rings at hand"><table><caption>The rings at hand${
    left === "" ? "" : `. ${left}`
  }</caption><thead><tr>${
    headings.map((heading) => markup`<th scope="col">${heading}</th>`)
  }</tr></thead><tbody>${
    rings.slice(0, MOST_RINGS).map((one) => {
      const [name, ...cells] = cellsOf(one, figures);
      return markup`<tr><th scope="row">${name}</th>${
        cells.map((cell) => markup`<td>${cell}</td>`)
      }</tr>`;
    })
  }</tbody></table></div>`;
}
