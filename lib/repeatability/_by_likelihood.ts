/**
 * Components of any design, by restricted likelihood.
 *
 * @module
 */
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import { levelColumns } from "../statistics/design_columns.ts";
import { fitMixedModel } from "../statistics/fit_mixed_model.ts";
import type { MixedModel, RandomShifts } from "../statistics/mixed_model.ts";
import { profileDeviations } from "../statistics/profile_intervals.ts";
import type { CodedReadings } from "./_factor_codes.ts";
import { type RawFigure, type RawFigures, rootOf } from "./_raw_figure.ts";
import type { Separability } from "./_separability.ts";
import type { ScatterSource } from "./source.ts";

/**
 * Estimates the components that a design can tell apart; undefined where the
 * zones' means meet every reading.
 *
 * A level that stands for "no such shift" (the diameter at the centre) is
 * fitted as a level like any other: the means of the cells take its shift up,
 * so that the restricted likelihood does not see it.
 */
export function byLikelihood(
  coded: CodedReadings,
  separability: Separability,
  sag: readonly number[],
  confidence: number,
): RawFigures & { readonly shiftOf: readonly number[] } | undefined {
  const { fitted, stands } = separability;
  const model: MixedModel = {
    response: sag,
    fixed: levelColumns("cell", coded.cells),
    random: fitted.map(({ source, codes }) => ({
      name: source,
      labels: codes,
    })),
  };
  const fit = fitMixedModel(model);
  if (fit.status !== "fitted") return undefined;
  const profiles = new Map(
    profileDeviations(model, confidence, "restricted", "small sample").map((
      { name, interval },
    ) => [
      name,
      interval,
    ]),
  );
  const figures = stands.map(({ source, holds }): RawFigure => {
    const name = source === "repeat" ? "residual" : source;
    const found = fit.components.find((one) => one.name === name);
    const variance = found?.variance ?? 0;
    const error = found?.standardError;
    const factor = fitted.find((one) => one.source === source);
    const interval = profiles.get(name);
    return {
      sources: [source, ...holds.keys()],
      levels: factor
        ? factor.names.length - (factor.spared === undefined ? 0 : 1)
        : sag.length,
      variance,
      ...(variance > 0 && error !== undefined && error > 0
        ? { dof: 2 * (variance / error) ** 2 }
        : {}),
      ...(interval === undefined ? {} : { interval }),
    };
  });
  return {
    figures,
    total: totalOf(figures, fit.curvature, confidence),
    shiftOf: shiftsBySet(coded, fit.shifts),
  };
}

/** Sources whose shifts a whole set shares. */
const OF_A_SET: readonly string[] = ["session", "operator", "zeroing"];

/** Predicted shift of every reading's set, in µm. */
function shiftsBySet(
  coded: CodedReadings,
  shifts: readonly RandomShifts[],
): readonly number[] {
  const sums = new Array<number>(coded.readings.length).fill(0);
  for (const { name, shifts: values, labels } of shifts) {
    if (!OF_A_SET.includes(name)) continue;
    const factor = coded.factors.find(({ source }) => source === name);
    const byLabel = new Map(labels.map((label, k) => [label, values[k]]));
    factor?.codes.forEach((code, index) =>
      sums[index] += byLabel.get(String(code)) ?? 0
    );
  }
  return sums;
}

/** The work's own scatter, which is no fault of the gauge. */
const OF_THE_WORK: ScatterSource = "diameter";

/** All figures of the gauge together, with Satterthwaite's interval. */
function totalOf(
  figures: readonly RawFigure[],
  curvature: {
    readonly names: readonly string[];
    readonly covariance: readonly (readonly number[])[];
  },
  confidence: number,
): RawFigure {
  const gauge = figures.filter(({ sources }) =>
    sources.length > 1 || sources[0] !== OF_THE_WORK
  );
  const names = new Set(
    gauge.map(({ sources: [source] }) =>
      source === "repeat" ? "residual" : source as string
    ),
  );
  const variance = gauge.reduce((sum, one) => sum + one.variance, 0);
  const used = curvature.names.map((name) => names.has(name) ? 1 : 0);
  let spread = 0;
  curvature.covariance.forEach((row, i) =>
    row.forEach((value, j) => spread += used[i] * used[j] * value)
  );
  const dof = spread > 0 ? 2 * variance ** 2 / spread : undefined;
  const end = (tail: "lower" | "upper", nu: number): number =>
    nu * variance / chiSquareQuantile((1 - confidence) / 2, nu, tail);
  return {
    sources: gauge.flatMap(({ sources }) => sources),
    levels: Math.max(...figures.map(({ levels }) => levels)),
    variance,
    ...(dof === undefined ? {} : {
      dof,
      interval: rootOf({ low: end("upper", dof), high: end("lower", dof) }),
    }),
  };
}
