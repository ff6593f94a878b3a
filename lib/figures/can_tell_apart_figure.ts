/**
 * What the gauge can tell apart, for a beginner.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyLine, keyOf } from "./_key.ts";
import { axisAround, plainLength, smallLength } from "./_length_axis.ts";
import { drawPage, WIDTH } from "./_page.ts";
import { positive, some } from "./_refuse.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { ROW, rowsAxis } from "./_rows.ts";
import { fitText } from "./_text_width.ts";
import { ink } from "./_theme.ts";

/** One length to compare. */
export interface CanTellApartFigureBar {
  /** What it is: `display step`, `one stretch of work`. */
  readonly label: string;
  /** Its size in mm of sag, above 0. */
  readonly amount: number;
  /** Something the gauge does by itself, or something the user asks about. */
  readonly kind: "gauge" | "question";
}

/** What `canTellApartFigure` draws. */
export interface CanTellApartFigureInput {
  /** The lengths, in the order they are shown. */
  readonly bars: readonly CanTellApartFigureBar[];
  /** The smallest change the gauge can tell, in mm of sag. */
  readonly smallest: number;
  /** Change of the radius for one mm of sag, in mm, either sign. */
  readonly radiusPerSag?: number;
}

const ACTION = "what the gauge can tell apart";

/**
 * Draws what the gauge does by itself and what it is asked about as bars on
 * one scale, with the smallest change it can tell as a line: a question whose
 * bar stays left of the line cannot be answered.
 *
 * @param input Lengths in mm of sag.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no bar, or a length is not above 0.
 *
 * @example
 * ```ts
 * import { canTellApartFigure } from "sagbook/figures/can_tell_apart_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await canTellApartFigure({
 *   bars: [
 *     { label: "display step", amount: 0.001, kind: "gauge" },
 *     { label: "one hour of work", amount: 0.004, kind: "question" },
 *     { label: "tolerance", amount: 0.0015, kind: "question" },
 *   ],
 *   smallest: 0.002,
 * });
 * match(description, /one hour of work 4 µm, can be told; tolerance 1.5 µm, cannot/);
 * ```
 */
export async function canTellApartFigure(
  input: CanTellApartFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const bars = some(input.bars, ACTION, "bar");
  for (const { label, amount } of bars) positive(amount, ACTION, label);
  const smallest = positive(input.smallest, ACTION, "the smallest change");
  const { unit = "mm" } = settings;
  const [small, plain] = [smallLength(unit), plainLength(unit)];
  const k = small.perMillimetre;
  const rows = bars.map((bar, row) => ({
    ...bar,
    row,
    y1: row - 0.28,
    y2: row + 0.28,
    x: bar.amount * k,
    text: small.text(bar.amount) +
      (input.radiusPerSag === undefined
        ? ""
        : ` =\u00a0${
          plain.text(bar.amount * Math.abs(input.radiusPerSag))
        }\u00a0of\u00a0R`),
  }));
  const axis = axisAround([0, smallest * k, ...rows.map(({ x }) => x)], {
    pad: 0.01,
    count: 4,
    fromZero: true,
  });
  const room = Math.min(215, (settings.width ?? WIDTH) / 2);
  const y = rowsAxis(
    rows.map(({ label, text }) =>
      [...fitText(label, TEXT_SIZE, room, 2), text].join("\n")
    ),
    room,
    4,
  );
  const most = Math.max(...y.ticks.map((i) => y.label(i).split("\n").length));
  const verdict = (bar: CanTellApartFigureBar) =>
    bar.kind === "gauge"
      ? ""
      : bar.amount >= smallest
      ? ", can be told"
      : ", cannot be told";
  const ofKind = (kind: string) => rows.filter((row) => row.kind === kind);
  return svgFigure(
    await drawPage({
      title: settings.title ?? "What this gauge can tell apart",
      description: settings.description ??
        `The smallest change of sag it can tell is ${small.text(smallest)}. ${
          bars.map((bar) =>
            `${bar.label} ${small.text(bar.amount)}${verdict(bar)}`
          ).join("; ")
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ofKind("gauge").length > 0 &&
          keyArea("the gauge itself", "quiet", "quiet"),
        ofKind("question").length > 0 &&
          keyArea("what you ask about", "band", "bandEdge"),
        keyLine(`smallest change it can tell, ${small.text(smallest)}`, "ink", {
          dash: "6 3",
          width: 2.2,
        }),
      ),
      notes: input.radiusPerSag === undefined
        ? []
        : ["R is the radius of curvature."],
      panels: [{
        xTitle: `Change of sag (${small.unit})`,
        height: Math.max(ROW, 20 * most + 12) * rows.length,
        x: { ...axis, grid: true },
        y,
        marks: (Plot) => [
          ...(["gauge", "question"] as const).map((kind) =>
            Plot.rect(ofKind(kind), {
              x1: 0,
              x2: "x",
              y1: "y1",
              y2: "y2",
              fill: ink(kind === "gauge" ? "quiet" : "band"),
              stroke: ink(kind === "gauge" ? "quiet" : "bandEdge"),
              strokeWidth: 1.5,
            })
          ),
          Plot.ruleX([smallest * k], {
            stroke: ink("ink"),
            strokeWidth: 2.2,
            strokeDasharray: "6 3",
          }),
        ],
      }],
    }),
  );
}
