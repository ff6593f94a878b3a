/**
 * A bench card: radius against sag for one ring, a sheet to hang up.
 *
 * @module
 */
import { type Markup, markup } from "../display/markup.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import type { LengthUnit, Piece } from "../records/piece.ts";
import { shownByGauge } from "../records/shown_by_gauge.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { stepDecimals } from "./_bench_step_decimals.ts";
import { formula, radiusFormula } from "./_formula.ts";
import {
  rounded,
  shortName,
  shortRingName,
  writeExactly,
  writeRadius,
  writeStep,
} from "./_handout_words.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";

/** Rows of one column of a card. */
const ROWS = 50;

/** Columns of a card: fewer where the display shows something else than sag. */
const COLUMNS = { sag: 3, other: 2 } as const;

/** How much of a card lies before the radius asked for: work deepens the sag. */
const BEFORE = 2 / 3;

/** A coarse display gets fewer rows: none beyond twice or half the sag. */
const WIDEST = 2;

/** A bench card as data. */
export interface BenchCardTable {
  /** What stands over the columns, the display's own unit first. */
  readonly headings: readonly string[];
  /** Cells as text. */
  readonly rows: readonly (readonly string[])[];
  /** The row nearest to the radius asked for. */
  readonly nearest: number;
}

/** Figures after the point that tell a tenth of a change, within limits. */
function decimalsForTenth(change: number, most: number): number {
  const place = Math.ceil(-Math.log10(change / 10) - 1e-9);
  return Math.min(most, Math.max(0, place));
}

/**
 * Tabulates R against sag for one ring: one sheet full, a row for each display
 * step, two thirds of it before the radius asked for and a third beyond, and
 * nothing beyond half or twice the sag.
 *
 * R and the sag in the other unit are written to about a tenth of a step: what
 * a reading supports is less, and the ring's own error is in none of the rows.
 *
 * @param figures The gauge and its step.
 * @param one The ring.
 * @returns Headings, cells as text, and the row nearest to the radius.
 *
 * @example
 * ```ts
 * import { benchCardTable } from "sagbook/narrative/bench_card.ts";
 * import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/gauge-study");
 * const figures = handoutFigures(piece, bench);
 * const { headings, rows, nearest } = benchCardTable(figures, figures.rings[0]);
 * deepEqual(headings, ["sag mm", "sag in", "R mm", "R in"]);
 * deepEqual(rows[nearest], ["0.601", "0.023661", "3001.7", "118.18"]);
 * ```
 */
export function benchCardTable(
  { step, unit, form, gauge }: HandoutFigures,
  { feet, sag, perSag }: HandoutRing,
): BenchCardTable {
  const other: LengthUnit = unit === "mm" ? "in" : "mm";
  const { shows } = gauge;
  const count = ROWS * (shows.kind === "sag" ? COLUMNS.sag : COLUMNS.other);
  const lean = shows.kind === "sag"
    ? Math.cos((gauge.tiltDegrees ?? 0) * Math.PI / 180)
    : 1;
  const most = Math.floor(feet.circleRadius / (step * lean));
  const middle = Math.min(most, Math.max(1, Math.round(sag / (step * lean))));
  const first = Math.max(
    Math.ceil(middle / WIDEST),
    middle - Math.round(BEFORE * count),
  );
  const last = Math.min(most, WIDEST * middle, first + count - 1);
  const amount = (length: number, to: LengthUnit): number =>
    amountIn(millimetres(length), to);
  const sagPlaces: Record<LengthUnit, number> = {
    [unit]: stepDecimals(step, unit),
    [other]: decimalsForTenth(amount(step, other), 9),
  } as Record<LengthUnit, number>;
  const radiusPlaces = (to: LengthUnit): number =>
    decimalsForTenth(amount(perSag * step, to), to === "mm" ? 2 : 3);
  const order = [unit, other] as const;
  const shown = (of: number): readonly string[] => {
    if (shows.kind === "sag") return [];
    const value = shownByGauge(millimetres(of), gauge, form);
    const text = shows.kind === "power" ? roundDecimal(value, 3) : roundDecimal(
      amount(value, unit),
      stepDecimals(gauge.steps[unit] ?? millimetres(1), unit),
    );
    return [text.replace("-", "−")];
  };
  const rows = Array.from({ length: last - first + 1 }, (_, k) => {
    const seen = (first + k) * step;
    const radius = radiusFromSag(millimetres(seen * lean), feet, form);
    return [
      ...shown(seen),
      ...order.map((to) => roundDecimal(amount(seen, to), sagPlaces[to])),
      ...order.map((to) => roundDecimal(amount(radius, to), radiusPlaces(to))),
    ];
  });
  const heading = shows.kind === "sag"
    ? []
    : [shows.kind === "power" ? "shows D" : `shows ${unit}`];
  return {
    headings: [
      ...heading,
      ...order.map((to) => `sag ${to}`),
      ...order.map((to) => `R ${to}`),
    ],
    rows,
    nearest: middle - first,
  };
}

/** What the reader of a card must know of the gauge. */
function gaugeWords({ gauge, form, step, stepKnown, unit }: HandoutFigures) {
  const { shows, countsUpOn, tiltDegrees } = gauge;
  const downward = countsUpOn !== "declared surface" && countsUpOn !== form;
  return [
    ...(downward && shows.kind === "sag"
      ? ["This gauge counts down here: it shows the sag with a minus."]
      : []),
    ...(stepKnown ? [] : [
      `${
        shows.kind === "sag"
          ? "bench.json gives no display step in this unit"
          : `The gauge shows ${shows.kind}, worked out with the ring size set in it`
      }: a row for each ${writeStep(step, unit)} of sag.`,
    ]),
    ...(shows.kind === "sag" && (tiltDegrees ?? 0) !== 0
      ? [`The stem's lean of ${tiltDegrees}° is counted in.`]
      : []),
  ];
}

/**
 * Writes the bench card of one ring: R for every display step of sag, in
 * millimetres and inches, the row nearest to the radius asked for set off.
 *
 * @param piece The piece.
 * @param figures Its numbers.
 * @param one The ring.
 * @param foot A line at the foot.
 * @returns One sheet, for the frame that {@link HANDOUT_STYLE} is made for.
 *
 * @see {@link benchCardTable}, whose rows these are.
 *
 * @example
 * ```ts
 * import { benchCard } from "sagbook/narrative/bench_card.ts";
 * import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { match } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceFolder("data/gauge-study");
 * const figures = handoutFigures(piece, bench);
 * const { html } = benchCard(piece, figures, figures.rings[0], "");
 * match(html, /<td>0.601<\/td><td>0.023661<\/td><td>3001.7<\/td>/);
 * ```
 */
export function benchCard(
  piece: Pick<Piece, "name" | "invented">,
  figures: HandoutFigures,
  one: HandoutRing,
  foot: string,
): Markup {
  const { step, unit, radius, form } = figures;
  const { headings, rows, nearest } = benchCardTable(figures, one);
  const { shape } = one.ring;
  const sign = shape.kind === "edge" || one.feet.ballRadius === 0
    ? ""
    : form === "concave"
    ? "+"
    : "−";
  const columns = Array.from(
    { length: Math.ceil(rows.length / ROWS) },
    (_, k) => [k * ROWS, Math.min(rows.length, (k + 1) * ROWS)] as const,
  );
  const name = shortRingName(one.ring, 40);
  const size = (length: number): string =>
    writeExactly(length, unit, unit === "mm" ? 4 : 5);
  const ball = sign === "" ? "" : `, b ${size(one.feet.ballRadius)}`;
  return markup`<article class="sheet"><h2>${name.charAt(0).toUpperCase()}${
    name.slice(1)
  }: radius against sag</h2>
<p class="about">For ${shortName(piece.name)}, ${form}, about R ${
    rounded(radius, unit)
  }. ${formula(radiusFormula(sign))} with r ${
    size(one.feet.circleRadius)
  }${ball}. ${writeStep(step, unit)} of sag is ${
    writeRadius(one.perSag * step, unit)
  } of R here. ${gaugeWords(figures).join(" ")}${
    piece.invented ? " Piece and ring are invented." : ""
  }</p>
<div class="card">${
    columns.map(([from, to], k) =>
      markup`<table aria-label="${`${name}, part ${k + 1}`}"><thead><tr>${
        headings.map((heading) => markup`<th scope="col">${heading}</th>`)
      }</tr></thead><tbody>${
        rows.slice(from, to).map((cells, row) =>
          markup`<tr${from + row === nearest ? markup` class="here"` : ""}>${
            cells.map((cell) => markup`<td>${cell}</td>`)
          }</tr>`
        )
      }</tbody></table>`
    )
  }</div>
<p class="about">The row set off is nearest to the radius asked for. The error of the ring and of the zero comes on top of every row. Zero on the flat before each set and look at it again after; average sags, never radii. ${foot}</p></article>`;
}
