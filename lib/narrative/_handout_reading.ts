/**
 * Parts of a handout that tell how to read: formula, error, zero, places.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import { contactRadii } from "../geometry/contact_points.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { formatLength, groupFigures } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";
import {
  depthFormula,
  errorFormula,
  focalFormula,
  formula,
  mi,
  mo,
  radiusFormula,
  row,
  sagFormula,
  stepFormula,
} from "./_formula.ts";
import { planDrawing, sectionDrawing } from "./_handout_drawings.ts";
import {
  letter,
  rounded,
  rules,
  shortRingName,
  writeExactly,
  writeRadius,
  writeSize,
} from "./_handout_words.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";
import { writeSmall } from "./sag_words.ts";

/** Chord, sag and radius, with the ring at hand as the example. */
export function fromSag(figures: HandoutFigures, main: HandoutRing): Markup {
  const { unit, step, form } = figures;
  const { ring, feet, sag } = main;
  const [r, b, s] = ["r", "b", "s"].map(letter);
  const shown = millimetres(Math.max(1, Math.round(sag / step)) * step);
  const size = ring.shape.kind === "edge" || feet.ballRadius === 0
    ? markup`${r} ${writeSize(feet.circleRadius, unit)}`
    : markup`${r} ${writeSize(feet.circleRadius, unit)}, ${b} ${
      writeSize(feet.ballRadius, unit)
    }`;
  return markup`<section><h2>From sag to radius</h2>${
    sectionDrawing(form, ring.shape.kind !== "edge" && feet.ballRadius > 0)
  }<p class="tiny">Not to scale: the sag is drawn far too deep.</p>
<div class="eq"><span>concave: ${
    formula(radiusFormula("+"))
  }</span><span>convex: ${formula(radiusFormula("−"))}</span></div>
<p>${r} is the radius of the circle through the ball centres, ${b} the radius of the balls, ${s} the reading less the reading on the flat. The balls add on concave work and take off on convex; the wrong one is out by two ball radii. A sharp edge has no ${b}: concave work touches its outer radius, convex work its inner.</p>
<p>With ${shortRingName(ring)} (${size}) ${
    formatLength(shown, unit, stepDecimals(step, unit))
  } of sag is <strong>${letter("R")} ${
    writeRadius(radiusFromSag(shown, feet, form), unit)
  }</strong>, ${form}.</p>
<div class="eq"><span>back: ${formula(sagFormula)}</span><span>${
    formula(row(mi("q"), mo("="), mi("R"), mo("∓"), mi("b")))
  } (− concave, + convex)</span></div>
<div class="eq"><span>focal length ${
    formula(focalFormula)
  }</span><span>depth of the surface ${
    formula(depthFormula)
  }</span></div></section>`;
}

/** From an error of the reading to an error of the radius. */
export function howSure(figures: HandoutFigures, main: HandoutRing): Markup {
  const { unit, step, stepKnown } = figures;
  const small = unit === "mm" ? 0.001 : 0.00254;
  const circle = unit === "mm" ? 0.01 : 0.0254;
  const least = stepKnown
    ? markup` (here ${writeSmall(step / Math.sqrt(12), unit)})`
    : "";
  return markup`<section><h2>How sure is the radius?</h2><div class="eq"><span>${
    formula(errorFormula)
  }</span></div>
${
    rules(
      `With ${shortRingName(main.ring)}, ${
        writeSmall(small, unit, 1)
      } of sag is ${writeRadius(main.perSag * small, unit)} of radius, and ${
        unit === "mm"
          ? writeSmall(circle, unit, 2)
          : writeSmall(circle, unit, 1)
      } of ring radius ${
        writeRadius(main.perCircle * circle, unit)
      }. The ring's error is in every reading: averaging does not lessen it.`,
      markup`A display rounds: every reading and every zero carries at least its step ${
        formula(stepFormula)
      }${least}. Identical readings prove that the scatter is small, not that the reading is right.`,
      "Average sags, never radii.",
    )
  }</section>`;
}

/** Numbers of sets of which the sheet tells. */
const SETS = [2, 3, 5, 8, 12] as const;

/** Half of a 95 % interval of a mean of n, in standard deviations of one. */
export function widthOfMean(sets: number): number {
  return studentTQuantile(0.025, sets - 1, "upper") / Math.sqrt(sets);
}

/** Zeroing, sets, and how many of them. */
export function zeroAndSets(): Markup {
  return markup`<section><h2>Zero and sets</h2>${
    rules(
      "A set: zero on the flat, read centre, half way and edge (both ends of the diameter), look at the flat again. If the flat has moved, so has every reading between.",
      "A wrong zero moves all readings of its set together. So the differences within a set are free of it, and the shape comes from them; the radius comes from several sets, each with a new zero.",
      "Take another diameter for each set, but keep foot 1 pointing the same way on the work at both ends of a diameter.",
      markup`How many sets? A mean is known, 19 times in 20, to within this many times the scatter of one set:`,
    )
  }<table class="sets"><tbody><tr><th scope="row">sets</th>${
    SETS.map((sets) => markup`<td>${sets}</td>`)
  }</tr><tr><th scope="row">times the scatter</th>${
    SETS.map((sets) => markup`<td>${roundDecimal(widthOfMean(sets), 1)}</td>`)
  }</tr></tbody></table><p>Three is the least, five to eight are worth their time. Fix the number before you start: whoever stops at the first good answer is wrong more often than it says.</p></section>`;
}

/** Centre, half way and edge, and the points a reading really sees. */
export function places(figures: HandoutFigures, main: HandoutRing): Markup {
  const { unit, halfWay, radius, form } = figures;
  const { ring, reach } = main;
  if (main.atEdge === undefined) {
    return markup`<section><h2>Where a reading is taken</h2><p>${
      reach === 0
        ? `${shortRingName(ring)} fits at the centre only.`
        : `“Edge” is as far out as every foot still stands on good surface: ${
          rounded(reach, unit)
        } from the centre with ${shortRingName(ring)}.`
    } Write down where foot 1 points.</p></section>`;
  }
  const from = (relative: number): string =>
    contactRadii(ring.shape, form, radius, reach, relative).feet
      .map((length) =>
        groupFigures(
          roundDecimal(amountIn(length, unit), unit === "mm" ? 0 : 2),
        )
      ).join(", ");
  const place = writeExactly(halfWay, unit, unit === "mm" ? 1 : 2);
  const midway = halfWay <= reach
    ? `Half way is ${place}, “50%” in the files.`
    : `Half way, ${place}, lies beyond that: read “50% reach” instead.`;
  return markup`<section><h2>Centre, half way, edge</h2>${
    planDrawing(figures, main)
  }<p>“Edge” is as far out as every foot still stands on good surface: with ${
    shortRingName(ring)
  } and one foot out the probe is then ${
    rounded(reach, unit)
  } from the centre, and the feet are ${
    from(0)
  } ${unit} from it; with two feet out at the same place ${
    from(180)
  } ${unit}. ${midway} Write down where foot 1 points.</p></section>`;
}
