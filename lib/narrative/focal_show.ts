/**
 * A focal length foretold, as figure, table, answer and JSON.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import { predictFocalLength } from "../fabrication/predict_focal_length.ts";
import type { Figure } from "../figures/figure.ts";
import { focalLengthFigure } from "../figures/focal_length_figure.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { RESULTS_VERSION } from "./results_version.ts";
import { VERSION } from "../version.ts";
import type { FocalReport } from "./focal_report.ts";
import { plainJson } from "./plain_json.ts";
import { answerBlock } from "./show.ts";
import { measuredHow, shopPiece } from "./shop_piece.ts";

/** Points of the band. */
const STEPS = 40;

/** More rows than these help nobody on a page. */
const MOST_ROWS = 200;

/**
 * Draws later focal length against ground radius, with this piece.
 *
 * @param report The report.
 * @returns The figure; undefined where there is neither piece nor prediction.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawFocalLength(
  report: FocalReport,
): Promise<Figure | undefined> {
  const { used, habit, prediction, radius, folder: { piece } } = report;
  const radii = [
    ...used.map(({ groundRadius }) => groundRadius as number),
    ...(radius === undefined ? [] : [radius.radius as number]),
  ];
  if (used.length === 0 && prediction === undefined) return undefined;
  const [low, high] = [Math.min(...radii), Math.max(...radii)];
  const band = habit === undefined || !(high > low)
    ? []
    : Array.from({ length: STEPS + 1 }, (_, i) => {
      const at = low + (high - low) * i / STEPS;
      const { value, interval } = predictFocalLength(habit, at);
      return { radius: at, focalLength: value, ...interval };
    });
  return await focalLengthFigure({
    pieces: used.map((one) => ({
      radius: one.groundRadius,
      focalLength: one.focalLength,
      ...(one.groundRadiusUncertainty === undefined
        ? {}
        : { radiusUncertainty: 2 * one.groundRadiusUncertainty }),
      ...(one.focalLengthUncertainty === undefined
        ? {}
        : { focalLengthUncertainty: 2 * one.focalLengthUncertainty }),
    })),
    band,
    ...(prediction === undefined || radius === undefined ? {} : {
      thisPiece: {
        radius: radius.radius,
        focalLength: prediction.value,
        ...prediction.interval,
      },
    }),
  }, { unit: piece.unit });
}

/**
 * Tabulates the shop's finished pieces and whether they were used.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function finishedTable(report: FocalReport): Displayable {
  const { finished, used, folder: { piece: { unit } } } = report;
  const usable = new Set(used.map(({ line }) => line));
  const write = (
    value: Millimetres,
    uncertainty: Millimetres | undefined,
  ): string =>
    uncertainty === undefined
      ? formatLength(value, unit, unit === "mm" ? 1 : 3)
      : formatWithUncertainty(
        value,
        millimetres(2 * uncertainty),
        unit,
      );
  const rows = finished.pieces.map((one) => {
    const known = shopPiece(one);
    return {
      piece: one.piece ?? `line ${one.line}`,
      "ground radius": write(one.groundRadius, one.groundRadiusUncertainty),
      "focal length": known === undefined
        ? "—"
        : write(known.focalLength, known.focalLengthUncertainty),
      "against R/2": known === undefined
        ? "—"
        : signed(2000 * known.focalLength / one.groundRadius - 1000),
      "how measured": measuredHow(one, unit) ?? "—",
      used: usable.has(one.line) ? "yes" : "no",
    };
  });
  const shown = rows.slice(0, MOST_ROWS);
  const cut = shown.length < rows.length
    ? ` The first ${shown.length} of ${rows.length} pieces; finished.csv holds them all.`
    : "";
  return table(shown, {
    columns: [
      "piece",
      "ground radius",
      "focal length",
      "against R/2",
      "how measured",
      "used",
    ],
    caption:
      `Finished pieces; ± is two standard uncertainties as stated; against half the ground radius in parts in a thousand.${cut}`,
  });
}

/** Parts in a thousand with their sign; a difference too large to be one in whole. */
function signed(part: number): string {
  const digits = Math.abs(part) < 50 ? 2 : 0;
  const size = Math.abs(part).toFixed(digits);
  return `${part < 0 ? "−" : "+"}${size}\u00a0‰`;
}

/**
 * Shows the answer.
 *
 * @param report The report.
 * @returns A value a cell may return: text, HTML, and the results as JSON for
 * the program that runs the notebook.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showFocalAnswer(report: FocalReport): Displayable {
  return answerBlock(
    report.answer,
    report.folder.piece.invented,
    focalResults(report),
  );
}

/**
 * Gathers what was found, lengths in mm.
 *
 * @param report The report.
 * @returns Plain JSON without null, NaN or infinite numbers.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalResults(
  report: FocalReport,
): Readonly<Record<string, unknown>> {
  const { folder: { piece }, radius, habit, finished, suspicions } = report;
  return plainJson({
    program: "sagbook",
    version: VERSION,
    results_version: RESULTS_VERSION,
    units: { length: "mm" },
    invented: piece.invented,
    piece: { name: piece.name, form: piece.form, target: piece.target },
    answer: report.answer,
    radius: radius && {
      radius: radius.radius,
      expanded: radius.expanded,
      interval: radius.interval,
    },
    lines: finished.lines,
    pieces_used: report.used.length,
    not_used: suspicions,
    became: report.itself && {
      focal_length: report.itself.focalLength,
      uncertainty: report.itself.focalLengthUncertainty,
    },
    habit: habit && {
      form: habit.used,
      mean_ratio: habit.mean,
      line: habit.line,
      leave_one_out: habit.leaveOneOut,
    },
    prediction: report.prediction,
    geometry: report.geometry,
    wanted: report.wanted,
    tolerance: report.tolerance,
    probability_of_landing: report.landing,
    aim: report.aim,
    notes: report.notes,
  });
}
