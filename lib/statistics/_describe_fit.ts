/**
 * Turns the optimum of a mixed model's likelihood into plain results.
 *
 * @module
 */
import { curvatureAt } from "./_component_curvature.ts";
import { componentRows, fixedRows, plainComponentRows } from "./_fit_rows.ts";
import { estimateFixed } from "./_fixed_estimates.ts";
import type { Identifiability } from "./_identifiability.ts";
import { invertBordered } from "./_bordered_inverse.ts";
import type { MixedDesign } from "./_mixed_design.ts";
import type { MixedLikelihood } from "./_mixed_likelihood.ts";
import type {
  FitStatus,
  LikelihoodKind,
  MixedModel,
  MixedModelFit,
  RandomShifts,
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
  /** A residual variance that stands for 0, if there is no residual scatter. */
  readonly vanishing?: number;
}

/** Describes a fit; without an optimum, what can be said without one. */
export function describeFit(pieces: FitPieces): MixedModelFit {
  const { design, status, likelihood, system, ratios, vanishing } = pieces;
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
      components: plainComponentRows(pieces),
      fixed: fixedRows(pieces, design.plainCoefficients, [], {
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
  const value = system.value(ratios);
  if (!value) {
    throw new RangeError(
      `Cannot describe a fit as its equations must be positive definite: current value is ${
        ratios.join(", ")
      }`,
    );
  }
  const m = system.weightOfSquares;
  const residual = vanishing ?? value.squares / m;
  const variances = ratios.map((ratio) => ratio * residual);
  const fixed = estimateFixed(system, ratios, residual);
  const { coefficients, slopes } = fixed;
  // What stands for no residual is taken off again.
  const share = vanishing ?? 0;
  const covariance = fixed.covariance.map((row, c) =>
    row.map((entry, d) => entry - share * slopes[slopes.length - 1][c][d])
  );
  const shifts = shiftsOf(system, ratios, residual);
  const isKnown = vanishing !== undefined;
  const curvature = curvatureAt(system, ratios, residual, isKnown, slopes);
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
    logLikelihood: isKnown ? undefined : logLikelihood,
    components: componentRows(
      pieces,
      variances,
      isKnown ? 0 : residual,
      curvature,
    ),
    fixed: fixedRows(pieces, coefficients, covariance, curvature),
    fixedCovariance: covariance,
    shifts,
    curvature,
    evaluations: system.evaluations,
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
  const { diagonal } = invertBordered(factor, true);
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
