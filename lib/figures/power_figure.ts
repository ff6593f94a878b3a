/**
 * How many zeroings decide the question?
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyLine, keyOf, keyShape } from "./_key.ts";
import { path, points, uprightBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import type { Axis } from "./_panel.ts";
import { finite, some } from "./_refuse.ts";
import { shapeOf } from "./_symbols.ts";
import { ink, seriesRole } from "./_theme.ts";
import { linearTicks, written } from "./_ticks.ts";

/** One plan, with more and more zeroings. */
export interface PowerFigurePlan {
  /** What the plan is: `2 diameters, 1 repeat`. */
  readonly label: string;
  /** Chance of a decision for each number of zeroings, 0 to 1. */
  readonly points: readonly {
    readonly zeroings: number;
    readonly power: number;
    /** Simulation error either way, as a share; 0 where left out. */
    readonly error?: number;
  }[];
}

/** What `powerFigure` draws. */
export interface PowerFigureInput {
  /** The plans. */
  readonly plans: readonly PowerFigurePlan[];
  /** The chance that is wanted, 0 to 1. */
  readonly wanted: number;
  /** The number of zeroings that is proposed. */
  readonly chosen?: number;
}

const ACTION = "the power";
const DASHES = [undefined, "6 3", "2 3", "8 3 2 3"];

function share(value: number, what: string): number {
  finite(value, ACTION, what, "");
  if (value < 0 || value > 1) {
    throw new RangeError(
      `Cannot draw ${ACTION} as ${what} must be 0 to 1: current value is ${value}`,
    );
  }
  return value;
}

/**
 * Draws the chance of a decision against the number of zeroings, for one or
 * more plans, with the chance that is wanted.
 *
 * @param input Plans with chances from 0 to 1.
 * @param settings Title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no plan, or a chance is not 0 to 1.
 *
 * @example
 * ```ts
 * import { powerFigure } from "sagbook/figures/power_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await powerFigure({
 *   plans: [{
 *     label: "1 diameter",
 *     points: [{ zeroings: 3, power: 0.4 }, { zeroings: 6, power: 0.83 }],
 *   }],
 *   wanted: 0.8,
 * });
 * match(description, /1 diameter: 80 % from 6 zeroings/);
 * ```
 */
export async function powerFigure(
  input: PowerFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const plans = some(input.plans, ACTION, "plan");
  const wanted = share(input.wanted, "the wanted chance");
  for (const { label, points } of plans) {
    for (
      const { zeroings, power, error = 0 } of some(points, ACTION, "point")
    ) {
      finite(zeroings, ACTION, `a number of zeroings of ${label}`, "");
      share(power, `a chance of ${label}`);
      share(error, `a simulation error of ${label}`);
    }
  }
  const lines = plans.map((plan) => ({
    ...plan,
    data: [...plan.points].sort((a, b) => a.zeroings - b.zeroings)
      .map(({ zeroings, power, error = 0 }) => ({
        x: zeroings,
        y: 100 * power,
        y1: 100 * Math.max(0, power - error),
        y2: 100 * Math.min(1, power + error),
      })),
  }));
  const numbers = lines.flatMap(({ data }) => data.map(({ x }) => x))
    .concat(input.chosen ?? []);
  const ticks = linearTicks(Math.min(...numbers), Math.max(...numbers), 6, 1);
  const x: Axis = {
    domain: ticks.domain,
    ticks: ticks.values.filter(Number.isInteger),
    label: (value) => written(value, 0),
  };
  const y: Axis = {
    domain: [0, 100],
    ticks: [0, 20, 40, 60, 80, 100],
    label: (value) => `${value} %`,
    grid: true,
  };
  const percent = `${written(100 * wanted, 0)} %`;
  const words = lines.map(({ label, data }) => {
    const first = data.find((point) => point.y >= 100 * wanted);
    return `${label}: ${
      first === undefined
        ? `${percent} is not reached`
        : `${percent} from ${first.x} zeroings`
    }`;
  });
  const withErrors = lines.flatMap(({ data }) =>
    data.filter(({ y1, y2 }) => y2 > y1)
  );
  return svgFigure(
    await drawPage({
      title: settings.title ?? "How many zeroings decide it",
      description: settings.description ??
        `Chance of a decision against the number of zeroings. ${
          words.join("; ")
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ...lines.map(({ label }, i) =>
          keyShape(label, shapeOf(i), { fill: seriesRole(i), size: 5 })
        ),
        keyLine(`wanted, ${percent}`, "bandEdge", { dash: "5 3" }),
        input.chosen !== undefined &&
          keyLine(`proposed, ${input.chosen} zeroings`, "ink", { dash: "2 3" }),
      ),
      panels: [{
        yTitle: "Chance that the readings decide",
        xTitle: "Number of zeroings",
        height: 240,
        x,
        y,
        marks: (Plot) => [
          Plot.ruleY([100 * wanted], {
            stroke: ink("bandEdge"),
            strokeDasharray: "5 3",
            strokeWidth: 1.8,
          }),
          input.chosen !== undefined && Plot.ruleX([input.chosen], {
            stroke: ink("ink"),
            strokeDasharray: "2 3",
            strokeWidth: 1.8,
          }),
          ...uprightBars(Plot, withErrors, { role: "quiet", width: 1.2 }),
          ...lines.flatMap(({ data }, i) => [
            path(Plot, data, seriesRole(i), {
              dash: DASHES[i % DASHES.length],
              width: 1.8,
            }),
            points(Plot, data, shapeOf(i), { fill: seriesRole(i), size: 4.5 }),
          ]),
        ],
      }],
    }),
  );
}
