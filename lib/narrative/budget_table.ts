/**
 * The budget of a radius as a table.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import { averagesOut } from "./plan_words.ts";
import type { PlanReport } from "./plan_report.ts";

const INCH = 25.4;
/** A smaller share of the variance is left out. */
const LEAST = 1e-9;

/** The power of length in a budget's unit: mm, 1/mm, or none. */
function lengthPower(unit: string): number {
  return unit === "mm" ? 1 : unit === "1/mm" ? -1 : 0;
}

/** Shapes in the words of the trade. */
const SHAPES: Readonly<Record<string, string>> = { student: "Student's t" };

/** Three figures; very large or small numbers as a product. */
function figures(value: number): string {
  if (value === 0) return "0";
  const [mantissa, power] = value.toExponential(2).split("e");
  const plain = Math.abs(value) >= 1e-4 && Math.abs(value) < 1e5;
  const raised = [...power.replace("+", "")].map((sign) =>
    sign === "-" ? "⁻" : "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(sign)]
  ).join("");
  const text = plain
    ? Number(value.toPrecision(3)).toString()
    : `${mantissa}\u00a0×\u00a010${raised}`;
  return text.replace("-", "−");
}

/**
 * Tabulates the budget of the radius in the GUM's form, in the piece's unit.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function budgetTable(
  { budget, session, folder: { piece } }: PlanReport,
): Displayable {
  if (!budget) return table([], { caption: "There is no budget yet." });
  const ofRadius = budget.estimate !== undefined;
  const result = ofRadius ? "mm" : "1/mm";
  const inUnit = (value: number, unit: string, per = "") =>
    piece.unit === "mm"
      ? value
      : value * INCH ** (lengthPower(per) - lengthPower(unit));
  const named = (unit: string) => unit.replace(/mm$/, piece.unit);
  return table(
    budget.lines.filter(({ share }) => share > LEAST).sort((a, b) =>
      b.share - a.share
    ).map((line) => ({
      source: budget.assumed.includes(line.source)
        ? `${line.source} (assumed)`
        : line.source,
      shape: SHAPES[line.distribution] ?? line.distribution,
      "standard uncertainty": `${
        figures(inUnit(line.standardUncertainty, line.unit))
      } ${named(line.unit)}`.trim(),
      "degrees of freedom": Number.isFinite(line.dof)
        ? figures(line.dof)
        : "known",
      sensitivity: figures(inUnit(line.sensitivity, result, line.unit)),
      [ofRadius ? "moves R by" : "moves 1/R by"]: `${
        figures(Math.abs(inUnit(line.contribution, result)))
      } ${named(result)}`,
      "share of the variance": line.share < 0.005
        ? "below 1 %"
        : `${Math.round(100 * line.share)} %`,
      "more sets help": !averagesOut(line)
        ? "no"
        : session.radius?.people !== undefined && line.source === "repetition"
        ? "by more people"
        : "yes",
    })),
    {
      caption:
        "What makes the radius uncertain, the largest source first (budget after JCGM 100, the guide to uncertainty).",
    },
  );
}
