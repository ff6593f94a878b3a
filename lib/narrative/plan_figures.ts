/**
 * Figures and tables of what is known before the next session.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import { budgetFigure } from "../figures/budget_figure.ts";
import { densityFigure } from "../figures/density_figure.ts";
import type { Figure } from "../figures/figure.ts";
import { ringChoiceFigure } from "../figures/ring_choice_figure.ts";
import type { BudgetLine } from "../uncertainty/budget.ts";
import type { RadiusBudget } from "../uncertainty/radius_budget.ts";
import { RESULTS_VERSION } from "./results_version.ts";
import { VERSION } from "../version.ts";
import { plainJson } from "./plain_json.ts";
import type { PlanReport } from "./plan_report.ts";
import {
  averagesOut,
  twoFigures,
  whyNone,
  writeDetectable,
} from "./plan_words.ts";
import { sheetCsv } from "./gauge_tables.ts";
import { answerBlock } from "./show.ts";

/**
 * Draws the sources of the radius's uncertainty, the largest first.
 *
 * @param report The report.
 * @returns The figure; undefined without a budget in radius.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawBudget(
  { budget, folder: { piece } }: PlanReport,
): Promise<Figure | undefined> {
  if (!budget?.standardUncertainty) return undefined;
  return await budgetFigure({
    lines: counting(budget).map((line) => ({
      source: line.source,
      contribution: Math.abs(line.contribution),
      common: !averagesOut(line),
    })),
    standardUncertainty: budget.standardUncertainty,
  }, { unit: piece.unit });
}

/** The lines that count: a share too small for any figure is left out. */
function counting({ lines }: RadiusBudget): readonly BudgetLine[] {
  return lines.filter(({ share }) => share > 1e-9);
}

/**
 * Draws the radii that drawing every source at random gives.
 *
 * @param report The report.
 * @returns The figure; undefined where the radius has no mean.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawDensity(
  { distribution, budget, folder: { piece } }: PlanReport,
): Promise<Figure | undefined> {
  if (!distribution?.shortest || distribution.histogramOf !== "radius") {
    return undefined;
  }
  const { histogram, shortest, draws } = distribution;
  const { lower, upper } = budget ?? {};
  return await densityFigure({
    bins: histogram.counts.flatMap((count, k) =>
      count === 0 ? [] : [{
        low: histogram.start + k * histogram.width,
        high: histogram.start + (k + 1) * histogram.width,
        share: count / draws,
      }]
    ),
    value: budget?.radius ?? distribution.mean!,
    interval: { low: shortest.lower, high: shortest.upper },
    ...(lower === undefined || upper === undefined
      ? {}
      : { firstOrder: { low: lower, high: upper } }),
    confidence: distribution.confidence,
  }, { unit: piece.unit });
}

const LABELS = {
  radius: "radius of curvature",
  conic: "departure from a sphere",
  "edge fault": "turned edge",
} as const;

/**
 * Draws the smallest amount that shows against the size of the ring.
 *
 * @param report The report.
 * @returns The figure; undefined when rings cannot be compared.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawRingChoice(
  { choices, edgeWidth, folder: { piece, bench } }: PlanReport,
): Promise<Figure | undefined> {
  const rings = bench.rings.map(({ id }) => id);
  const radius = piece.target?.radius ?? piece.startingRadius;
  const half = piece.diameter / 2 - piece.bevel;
  const questions = choices.flatMap(
    ({ question, curve, rings: answers, best, amount }) => {
      if (question === "astigmatism") return [];
      // A conic constant is shown as the surface error it stands for.
      const size = amount !== "conic constant"
        ? 1
        : radius === undefined
        ? undefined
        : half ** 4 / (32 * radius ** 3);
      if (size === undefined || curve.length === 0) return [];
      const point = (circle: number, detectable: number) => ({
        ringRadius: circle,
        detectable: detectable * size,
      });
      const label = question === "edge fault"
        ? `${LABELS[question]}, ${twoFigures(edgeWidth, piece.unit)} wide`
        : LABELS[question];
      return [{
        label,
        scale: question === "radius" ? "radius" as const : "surface" as const,
        curve: curve.map((one) => point(one.circleRadius, one.detectable)),
        owned: answers.flatMap(({ circleRadius, detectable }, ring) =>
          detectable === undefined
            ? []
            : [{ ...point(circleRadius, detectable), ring }]
        ),
        ...(best ? { best: point(best.circleRadius, best.detectable) } : {}),
      }];
    },
  );
  if (questions.length === 0) return undefined;
  return await ringChoiceFigure({ rings, questions }, { unit: piece.unit });
}

/**
 * Tabulates for each ring and question the smallest amount that shows.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function ringsTable(
  { choices, folder: { bench, piece: { unit } } }: PlanReport,
): Displayable {
  const HEADS = {
    radius: "the radius itself",
    conic: "from a sphere",
    "edge fault": "a turned edge",
    astigmatism: "astigmatism",
  } as const;
  // A column that says "none" for every ring is a sentence elsewhere.
  const seen = choices.filter(({ question, rings }) =>
    question !== "astigmatism" ||
    rings.some(({ detectable }) => detectable !== undefined)
  );
  return table(
    bench.rings.map(({ id }, k) => ({
      ring: id,
      ...Object.fromEntries(
        seen.map(({ question, rings, amount, recommended }) => {
          const { detectable, reason } = rings[k];
          const words = detectable === undefined
            ? whyNone(reason)
            : writeDetectable(amount, detectable, unit);
          return [
            HEADS[question],
            recommended === id ? `${words} ← best` : words,
          ];
        }),
      ),
    })),
    {
      caption:
        "The smallest amount each ring shows with 80 % chance. (A sphere has the conic constant 0, a paraboloid −1.)",
    },
  );
}

/**
 * Shows the answer of a plan, with the results as JSON.
 *
 * @param report The report.
 * @returns A value a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showPlanAnswer(report: PlanReport): Displayable {
  const { answer, folder: { piece }, choices, budget, distribution } = report;
  return answerBlock(answer, piece.invented, planResults());

  function planResults(): Readonly<Record<string, unknown>> {
    return plainJson({
      program: "sagbook",
      version: VERSION,
      results_version: RESULTS_VERSION,
      units: { length: "mm", angle: "degree" },
      invented: piece.invented,
      piece: { name: piece.name, form: piece.form, diameter: piece.diameter },
      answer,
      reasons: report.reasons,
      budget: budget && {
        radius: budget.radius,
        standard_uncertainty: budget.standardUncertainty,
        expanded: budget.expanded,
        coverage_factor: budget.factor,
        dof: budget.dof,
        lines: budget.lines,
      },
      monte_carlo: distribution && {
        draws: distribution.draws,
        settled: distribution.settled,
        shortest: distribution.shortest,
        symmetric: distribution.symmetric,
        mean: distribution.mean,
        standard_uncertainty: distribution.standardUncertainty,
      },
      rings: choices.map(({ curve: _, ...choice }) => choice),
      differences: report.differences,
      ring_records: report.records.map(({ ring, sizes, history, twin }) => ({
        ring,
        due_on: history?.dueOn,
        twin,
        sizes: sizes.map(({ size, stated, verdict, best }) => ({
          size,
          stated,
          verdict,
          method: best.method,
          radius: best.circleRadius.value,
          standard_uncertainty: best.standardUncertainty,
          expanded: best.expanded,
        })),
      })),
      heat: report.heat,
      heat_warnings: report.thermal,
      lens: report.lens && {
        power: report.lens.surface?.estimate.value,
        index: report.lens.surface?.power.index,
        focal_length: report.lens.lens?.focalLength?.value,
        focal_length_expanded: report.lens.lens?.focalLength?.expanded,
        by_test_plate: report.lens.plate?.radius.value,
      },
      plans: report.gauge.plans.map(({ about, answer }) => ({
        about,
        ...answer,
      })),
      sheet_csv: sheetCsv(report.gauge),
    });
  }
}
