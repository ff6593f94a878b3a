/**
 * Which source of uncertainty matters: a ranked budget.
 *
 * @module
 */
import { decimalsFor, roundDecimal } from "../units/round_decimal.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyOf } from "./_key.ts";
import { axisAround, plainLength } from "./_length_axis.ts";
import { words } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { finite, positive, some } from "./_refuse.ts";
import { ROW, rowsAxis } from "./_rows.ts";
import { textWidth } from "./_text_width.ts";
import { ink } from "./_theme.ts";

/** One source of uncertainty. */
export interface BudgetFigureLine {
  /** Its name. */
  readonly source: string;
  /** Its contribution to the standard uncertainty of the radius, in mm. */
  readonly contribution: number;
  /** True where more readings do not make it smaller: ring, flat, scale. */
  readonly common?: boolean;
}

/** What `budgetFigure` draws. */
export interface BudgetFigureInput {
  /** The sources, in any order. */
  readonly lines: readonly BudgetFigureLine[];
  /** The combined standard uncertainty of the radius, in mm. */
  readonly standardUncertainty: number;
}

const ACTION = "the budget";
/** Sources beyond these are drawn as one. */
const MOST_ROWS = 9;

function ranked(lines: readonly BudgetFigureLine[]): BudgetFigureLine[] {
  const sorted = lines.map((line) => ({
    ...line,
    contribution: Math.abs(line.contribution),
  })).sort((a, b) => b.contribution - a.contribution);
  if (sorted.length <= MOST_ROWS) return sorted;
  const rest = sorted.slice(MOST_ROWS - 1);
  return [...sorted.slice(0, MOST_ROWS - 1), {
    source: `${rest.length} others together`,
    contribution: Math.hypot(...rest.map(({ contribution }) => contribution)),
    common: rest.every(({ common }) => common === true),
  }];
}

/** An uncertainty with its unit, to two figures: 1.0 mm is not 1 mm. */
function twoFigures(amount: number, unit: string): string {
  const decimals = amount === 0 ? 0 : decimalsFor(amount, 2);
  return `${roundDecimal(amount, decimals)} ${unit}`;
}

/**
 * Draws what each source adds to the uncertainty of the radius, the largest
 * first, and the combined uncertainty below.
 *
 * Contributions add as squares, so the bars do not add up to the last one.
 * From the tenth on, sources are drawn as one bar.
 *
 * @param input Contributions in mm of radius; a sign is ignored.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no source, a contribution is not finite, or
 * the combined uncertainty is not above 0.
 *
 * @example
 * ```ts
 * import { budgetFigure } from "sagbook/figures/budget_figure.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { description } = await budgetFigure({
 *   lines: [
 *     { source: "repeat", contribution: 3 },
 *     { source: "ring radius", contribution: 4, common: true },
 *   ],
 *   standardUncertainty: 5,
 * });
 * equal(
 *   description,
 *   "Standard uncertainty of the radius 5.0 mm: ring radius 4.0 mm; repeat 3.0 mm.",
 * );
 * ```
 */
export async function budgetFigure(
  input: BudgetFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  for (const { source, contribution } of some(input.lines, ACTION, "source")) {
    finite(contribution, ACTION, `the contribution of ${source}`);
  }
  const total = positive(
    input.standardUncertainty,
    ACTION,
    "the combined uncertainty",
  );
  const plain = plainLength(settings.unit ?? "mm");
  const k = plain.perMillimetre;
  const said = (amount: number): string => twoFigures(amount * k, plain.unit);
  const sources = ranked(input.lines);
  const rows = [
    ...sources.map((line) => ({
      label: line.source,
      amount: line.contribution,
      kind: line.common ? "common" : "own",
    })),
    { label: "combined", amount: total, kind: "total" },
  ].map((row, i) => ({
    ...row,
    row: i,
    x: row.amount * k,
    y1: i - 0.28,
    y2: i + 0.28,
    text: said(row.amount),
  }));
  const axis = axisAround([0, ...rows.map(({ x }) => x)], {
    pad: 0.01,
    count: 4,
    fromZero: true,
  });
  const looks = {
    own: ["first", "first"],
    common: ["paper", "second"],
    total: ["ink", "ink"],
  } as const;
  const ofKind = (kind: string) => rows.filter((row) => row.kind === kind);
  return svgFigure(
    await drawPage({
      title: settings.title ?? "What makes the radius uncertain",
      description: settings.description ??
        `Standard uncertainty of the radius ${said(total)}: ${
          sources.map(({ source, contribution }) =>
            `${source} ${said(contribution)}`
          ).join("; ")
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ofKind("own").length > 0 &&
          keyArea("smaller with more readings", ...looks.own),
        ofKind("common").length > 0 &&
          keyArea("the same in every reading", ...looks.common),
        keyArea("combined", ...looks.total),
      ),
      notes: ["Contributions add as squares: the largest one rules."],
      panels: [{
        xTitle: `Standard uncertainty of the radius (${plain.unit})`,
        height: ROW * rows.length,
        x: { ...axis, grid: true },
        y: rowsAxis(rows.map(({ label }) => label)),
        marks: (Plot, area) => [
          ...(["own", "common", "total"] as const).map((kind) =>
            Plot.rect(ofKind(kind), {
              x1: 0,
              x2: "x",
              y1: "y1",
              y2: "y2",
              fill: ink(looks[kind][0]),
              stroke: ink(looks[kind][1]),
              strokeWidth: 2,
            })
          ),
          ...rows.map(({ x, row, text, kind }) => {
            const room = area.width / axis.domain[1];
            const fits =
              x * room + textWidth(text, TEXT_SIZE) + 8 <= area.width;
            const dark = !fits && kind !== "common";
            return dark
              ? Plot.text([text], {
                x: [x],
                y: [row],
                dx: -6,
                textAnchor: "end",
                fontSize: TEXT_SIZE,
                fill: ink("paper"),
              })
              : words(Plot, text, x, row, {
                anchor: fits ? "start" : "end",
                dx: fits ? 7 : -6,
              });
          }),
        ],
      }],
    }),
  );
}
