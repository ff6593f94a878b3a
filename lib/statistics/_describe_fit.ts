/**
 * Turns the optimum of a mixed model's likelihood into plain results.
 *
 * @module
 */
import { invertSmall } from "./_dense_factor.ts";
import { inRatios } from "./_highest_likelihood.ts";
import type { Identifiability } from "./_identifiability.ts";
import type { MixedDesign } from "./_mixed_design.ts";
import type { MixedLikelihood } from "./_mixed_likelihood.ts";
import { satterthwaiteDof } from "./_satterthwaite.ts";
import type {
  FitStatus,
  FixedEffect,
  LikelihoodKind,
  MixedModel,
  MixedModelCurvature,
  MixedModelFit,
  RandomShifts,
  VarianceComponent,
} from "./mixed_model.ts";

/** What a fit is described from. */
export interface FitPieces {
  readonly model: MixedModel;
  readonly design: MixedDesign;
  readonly status: FitStatus;
  readonly likelihood: LikelihoodKind;
  readonly identifiability?: Identifiability;
  readonly system?: MixedLikelihood;
  readonly ratios?: readonly number[];
}

/** Describes a fit; without an optimum, what can be said without one. */
export function describeFit(pieces: FitPieces): MixedModelFit {
  const { design, status, likelihood, system, ratios } = pieces;
  const common = {
    status,
    observations: design.observations,
    rank: design.fixed.basis.length,
    likelihood,
  };
  if (!system || !ratios) {
    return {
      ...common,
      logLikelihood: undefined,
      components: plainComponents(pieces),
      fixed: fixedEffects(pieces, design.plainCoefficients, [], {
        names: [],
        covariance: [],
        slopes: [],
      }),
      fixedCovariance: [],
      shifts: [],
      curvature: { names: [], covariance: [], slopes: [] },
      evaluations: 0,
    };
  }
  const curvatureInRatios = curvatureOf(system, ratios);
  const value = system.value(ratios);
  if (!value) {
    throw new RangeError(
      `Cannot describe a fit as its equations must be positive definite: current value is ${
        ratios.join(", ")
      }`,
    );
  }
  const m = system.weightOfSquares;
  const residual = value.squares / m;
  const variances = ratios.map((ratio) => ratio * residual);
  const { coefficients, covariance, slopes } = fixedPart(
    system,
    ratios,
    residual,
  );
  const curvature = curvatureInVariances(
    system,
    ratios,
    residual,
    curvatureInRatios,
    covariance,
    slopes,
  );
  const { upper } = design.fixed;
  const logUpper = upper.reduce(
    (sum, column, j) => sum + Math.log(column[j]),
    0,
  );
  const logLikelihood = -0.5 *
    (m * (Math.log(2 * Math.PI * residual) + 1) + value.logDeterminant +
      (system.restricted ? 2 * logUpper : 0));
  return {
    ...common,
    logLikelihood,
    components: components(pieces, variances, residual, curvature),
    fixed: fixedEffects(pieces, coefficients, covariance, curvature),
    fixedCovariance: covariance,
    shifts: shiftsOf(system, ratios, residual),
    curvature,
    evaluations: system.evaluations,
  };
}

/** Second derivatives by the ratios, of the criterion profiled over σ². */
function curvatureOf(
  system: MixedLikelihood,
  ratios: readonly number[],
): number[][] | undefined {
  const pieces = system.pieces(ratios);
  if (!pieces) return undefined;
  const m = system.weightOfSquares;
  const { slopes, curvature } = inRatios(pieces, m);
  if (pieces.crossTraces) return curvature;
  const free = [...ratios.keys()].filter((k) => ratios[k] > 0);
  const result = curvature.map((row) => row.map(() => 0));
  for (const k of free) {
    const step = 1e-5 * ratios[k];
    const moved = system.pieces(ratios.map((r, l) => l === k ? r + step : r));
    if (!moved) return undefined;
    const after = inRatios(moved, m).slopes;
    for (const l of free) {
      const second = (after[l] - slopes[l]) / step;
      result[k][l] += second / 2;
      result[l][k] += second / 2;
    }
  }
  return result;
}

/** Coefficients, their covariance and its derivatives by the variances. */
function fixedPart(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
): { coefficients: number[]; covariance: number[][]; slopes: number[][][] } {
  const { design, factor, owner } = system;
  const { upper } = design.fixed;
  const rank = upper.length;
  const nodes = owner.length;
  const solution = factor.solveReadings();
  const change = Array.from(solution.subarray(nodes));
  const backed = solveColumns(upper, [change])[0];
  const coefficients = design.plainCoefficients.map((b, c) => b + backed[c]);
  const units = Array.from({ length: rank }, (_, c) => {
    const right = new Float64Array(nodes + rank);
    right[nodes + c] = 1;
    return factor.solve(right);
  });
  const symmetric = (inner: (a: Float64Array, b: Float64Array) => number) => {
    const inBasis = units.map((a) => units.map((b) => inner(a, b)));
    const half = solveColumns(upper, inBasis);
    return solveColumns(upper, transpose(half));
  };
  const covariance = symmetric((a, b) => a[nodes + units.indexOf(b)])
    .map((row) => row.map((entry) => entry * residual));
  const slopes = ratios.map((ratio, k) =>
    ratio === 0
      ? covariance.map((row) => row.map(() => 0))
      : symmetric((a, b) => {
        let sum = 0;
        for (let at = 0; at < nodes; at++) {
          if (owner[at] === k) sum += a[at] * b[at];
        }
        return sum / ratio;
      })
  );
  slopes.push(covariance.map((row, c) =>
    row.map((entry, d) => {
      let rest = entry;
      ratios.forEach((ratio, k) => rest -= ratio * residual * slopes[k][c][d]);
      return rest / residual;
    })
  ));
  return { coefficients, covariance, slopes };
}

/** Solves R x = b for each row b. */
function solveColumns(
  upper: readonly (readonly number[])[],
  rows: readonly (readonly number[])[],
): number[][] {
  return rows.map((row) => {
    const x = [...row];
    for (let j = x.length - 1; j >= 0; j--) {
      x[j] /= upper[j][j];
      for (let i = 0; i < j; i++) x[i] -= upper[j][i] * x[j];
    }
    return x;
  });
}

function transpose(matrix: readonly (readonly number[])[]): number[][] {
  return matrix.map((_, i) => matrix.map((row) => row[i]));
}

/** Covariance of the variances above 0, by the observed information. */
function curvatureInVariances(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
  profiled: readonly (readonly number[])[] | undefined,
  covariance: readonly (readonly number[])[],
  slopes: readonly (readonly (readonly number[])[])[],
): MixedModelCurvature {
  const { design, owner, factor } = system;
  const m = system.weightOfSquares;
  const free = [...ratios.keys()].filter((k) => ratios[k] > 0);
  const names = [...free.map((k) => design.factors[k].name), "residual"];
  const keptSlopes = [...free.map((k) => slopes[k]), slopes[slopes.length - 1]];
  const none = { names, covariance: [], slopes: keptSlopes };
  if (!profiled || covariance.length === 0 && free.length === 0) {
    return profiled
      ? { names, covariance: [[2 * residual ** 2 / m]], slopes: keptSlopes }
      : none;
  }
  const solution = factor.solveReadings();
  const scores = ratios.map((ratio, k) => {
    let sum = 0;
    for (let at = 0; at < owner.length; at++) {
      if (owner[at] === k) sum += solution[at] * solution[at];
    }
    return ratio === 0 ? 0 : sum / ratio;
  });
  // In (γ, σ²): second derivatives of m ln σ² + ln|.| + S/σ², halved.
  const information = free.map((k) => [
    ...free.map((l) =>
      (profiled[k][l] + scores[k] * scores[l] / (m * residual ** 2)) / 2
    ),
    scores[k] / residual ** 2 / 2,
  ]);
  information.push([
    ...free.map((k) => scores[k] / residual ** 2 / 2),
    m / residual ** 2 / 2,
  ]);
  const inverse = invertSmall(information);
  if (!inverse) return none;
  // σ_k² = γ_k σ²
  const jacobian = free.map((k, i) => [
    ...free.map((_, j) => i === j ? residual : 0),
    ratios[k],
  ]);
  jacobian.push([...free.map(() => 0), 1]);
  const moved = jacobian.map((row) =>
    inverse.map((column) => row.reduce((sum, x, i) => sum + x * column[i], 0))
  );
  return {
    names,
    covariance: moved.map((row) =>
      jacobian.map((other) => row.reduce((sum, x, i) => sum + x * other[i], 0))
    ),
    slopes: keptSlopes,
  };
}

/** Best linear unbiased predictions of the shifts. */
function shiftsOf(
  system: MixedLikelihood,
  ratios: readonly number[],
  residual: number,
): RandomShifts[] {
  const { design, factor, pattern } = system;
  const solution = factor.solveReadings();
  const { diagonal } = factor.invert(true);
  const shifts = new Float64Array(design.nodes);
  const errors = new Float64Array(design.nodes);
  pattern.order.forEach((node, at) => {
    const k = system.owner[at];
    shifts[node] = Math.sqrt(ratios[k]) * solution[at];
    errors[node] = Math.sqrt(ratios[k] * residual * Math.max(0, diagonal[at]));
  });
  return design.factors.map(({ name, labels }, k) => {
    const [from, to] = [design.offsets[k], design.offsets[k] + labels.length];
    return {
      name,
      labels,
      shifts: Array.from(shifts.subarray(from, to)),
      errors: Array.from(errors.subarray(from, to)),
    };
  });
}

/** Components in the order of the model, the residual last. */
function components(
  { model, design, identifiability }: FitPieces,
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
    atBoundary: false,
    confoundedWith: standIns("residual"),
  });
  return result;
}

/** Components where nothing was fitted: 0 without scatter, else unknown. */
function plainComponents({ design, status }: FitPieces): VarianceComponent[] {
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
function fixedEffects(
  { model, design, status }: FitPieces,
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
        : Math.sqrt(covariance[at][at]),
      dof: status === "fitted"
        ? satterthwaiteDof(weights, covariance, curvature)
        : undefined,
      aliasedWith: [],
    };
  });
}
