/**
 * Components and coefficients of a fit, one row each.
 *
 * @module
 */
import type { Identifiability } from "./_identifiability.ts";
import type { MixedDesign } from "./_mixed_design.ts";
import { satterthwaiteDof } from "./_satterthwaite.ts";
import type {
  FitStatus,
  FixedEffect,
  MixedModel,
  MixedModelCurvature,
  VarianceComponent,
} from "./mixed_model.ts";

/** What rows are made from. */
export interface RowPieces {
  readonly model: MixedModel;
  readonly design: MixedDesign;
  readonly status: FitStatus;
  readonly identifiability?: Identifiability;
}

/** Components in the order of the model, the residual last. */
export function componentRows(
  { model, design, identifiability }: RowPieces,
  variances: readonly number[],
  residual: number,
  curvature: MixedModelCurvature,
): VarianceComponent[] {
  const dropped = identifiability?.dropped ??
    new Map<number, readonly string[]>();
  const standIns = (name: string) =>
    [...dropped].filter(([, names]) => names.includes(name))
      .map(([k]) => model.random[k].name);
  const errorOf = (name: string) => {
    const at = curvature.names.indexOf(name);
    const variance = curvature.covariance[at]?.[at];
    return variance === undefined ? undefined : Math.sqrt(variance);
  };
  const result = model.random.map(({ name }, k): VarianceComponent => {
    const at = design.factors.findIndex((factor) => factor.name === name);
    if (at < 0) {
      return {
        name,
        levels: new Set(Array.from(model.random[k].labels, String)).size,
        variance: undefined,
        standardDeviation: undefined,
        standardError: undefined,
        atBoundary: false,
        confoundedWith: dropped.get(k) ?? [],
      };
    }
    return {
      name,
      levels: design.factors[at].labels.length,
      variance: variances[at],
      standardDeviation: Math.sqrt(variances[at]),
      standardError: errorOf(name),
      atBoundary: variances[at] === 0,
      confoundedWith: standIns(name),
    };
  });
  result.push({
    name: "residual",
    levels: design.observations,
    variance: residual,
    standardDeviation: Math.sqrt(residual),
    standardError: errorOf("residual"),
    atBoundary: residual === 0,
    confoundedWith: standIns("residual"),
  });
  return result;
}

/** Components where nothing was fitted: 0 without scatter, else unknown. */
export function plainComponentRows(
  { design, status }: RowPieces,
): VarianceComponent[] {
  const variance = status === "no scatter" ? 0 : undefined;
  const plain = (name: string, levels: number): VarianceComponent => ({
    name,
    levels,
    variance,
    standardDeviation: variance,
    standardError: undefined,
    atBoundary: variance === 0,
    confoundedWith: [],
  });
  return [
    ...design.factors.map(({ name, labels }) => plain(name, labels.length)),
    plain("residual", design.observations),
  ];
}

/** Coefficients in the order of the model. */
export function fixedRows(
  { model, design, status }: RowPieces,
  coefficients: readonly number[],
  covariance: readonly (readonly number[])[],
  curvature: MixedModelCurvature,
): FixedEffect[] {
  const { kept, aliases } = design.fixed;
  return model.fixed.map(({ name }, position): FixedEffect => {
    const at = kept.indexOf(position);
    if (at < 0) {
      return {
        name,
        estimate: undefined,
        standardError: undefined,
        dof: undefined,
        aliasedWith: aliases.get(position) ?? [],
      };
    }
    const weights = coefficients.map((_, c) => c === at ? 1 : 0);
    return {
      name,
      estimate: coefficients[at],
      standardError: status === "saturated"
        ? undefined
        : status === "no scatter"
        ? 0
        : Math.sqrt(Math.max(0, covariance[at][at])),
      dof: covariance.length > 0
        ? satterthwaiteDof(weights, covariance, curvature)
        : undefined,
      aliasedWith: [],
    };
  });
}
