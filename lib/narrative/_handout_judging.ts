/**
 * Parts of a handout that tell what readings mean, and how to stay unhurt.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import type { Piece } from "../records/piece.ts";
import {
  conicFormula,
  formula,
  growthFormula,
  mi,
  mn,
  mo,
  power,
  row,
  surfaceFormula,
} from "./_formula.ts";
import {
  letter,
  rounded,
  rules,
  shortRingName,
  writeExactly,
} from "./_handout_words.ts";
import { safetySentences } from "./caution_sentences.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";
import { writeSmall } from "./sag_words.ts";

/** Sphere, paraboloid, and which ring tells them apart. */
export function sphereOrNot(
  { unit, halfDiameter }: HandoutFigures,
  { atEdge }: HandoutRing,
): Markup {
  const [m, c] = [mi("m"), mi("c")];
  const at = (place: string): string => row(m, mo("("), place, mo(")"));
  const here = atEdge === undefined
    ? ""
    : `: ${writeSmall(atEdge.growth, unit)} at the edge with this ring`;
  return markup`<section><h2>Sphere or not?</h2><p>A sphere reads the same everywhere. Away from the centre a paraboloid reads longer by ${
    formula(growthFormula)
  }${here}. With ${formula(at(c))} the sag at distance ${letter("c")} and ${
    formula(at(mn(0)))
  } at the centre, surface error (peak to valley of a smooth shape) and conic constant are</p>
<div class="eq"><span>${formula(surfaceFormula)}</span><span>${
    formula(conicFormula)
  }</span></div>
<p>with ${letter("a")} half the clear diameter. The ring for this has half of ${
    letter("a")
  }, ${
    writeExactly(halfDiameter / 2, unit, unit === "mm" ? 1 : 2)
  }, read half way out: there the difference of sag is the surface error itself. For the radius alone take the largest ring; for a narrow fault at the edge the smallest that still resolves it.</p>
<p><strong>Within</strong>: every pair of zones was shown to agree within the tolerance. <strong>Outside</strong>: two surely do not. All else is <strong>not decided</strong>: take more sets. “No difference found” is not “a sphere”.</p></section>`;
}

/** What three feet are blind to. */
export function blind(
  { unit }: HandoutFigures,
  { atEdge, ring }: HandoutRing,
): Markup {
  const share = (value: number): string => {
    const figures = Math.abs(value).toFixed(2);
    return Number(figures) === 0 ? "nothing" : `${figures} of its depth`;
  };
  const turned = atEdge &&
    markup`A turned edge ${rounded(atEdge.turned.width, unit)} wide shows ${
      share(atEdge.turned.footOut)
    } with ${shortRingName(ring)} at the edge and one foot out, ${
      share(atEdge.turned.feetOut)
    } with two feet out at the same place.`;
  return markup`<section><h2>What three feet cannot see</h2>${
    rules(
      markup`<strong>Astigmatism, however large:</strong> three feet measure the mean curvature under them. A verdict is always “a sphere, as far as three feet can tell”. A two-foot bar turned on the work, or an optical test, can see it.`,
      "Wear on one side (coma) shows as a difference between the two ends of a diameter: compare them before you average.",
      markup`A three-cornered surface (${
        formula(row(power(mi("ρ"), 3), mi("cos"), mn(3), mi("θ")))
      }) shows only when the gauge is turned on the work.`,
      ...(turned ? [turned] : []),
      "What is worn off equally everywhere. Pits are for the loupe.",
    )
  }</section>`;
}

/** The usual caution. */
export function safety(piece: Pick<Piece, "diameter">): Markup {
  return markup`<section><h2>Work safely: local rules come first</h2>${
    rules(
      ...safetySentences(piece),
      "Keep the edge bevelled and protect your eyes when you bevel. Wash down between grades. Hot pitch burns. No steel feet on a polished face unless its owner agrees.",
    )
  }</section>`;
}
