/**
 * The likelihood of a mixed model and its derivatives.
 *
 * @module
 */
import { BorderedFactor } from "./_bordered_factor.ts";
import { type BorderedPattern, findPattern } from "./_bordered_pattern.ts";
import { invertBordered } from "./_bordered_inverse.ts";
import type { MixedDesign } from "./_mixed_design.ts";

/**
 * Minus twice the logarithm of the likelihood, less n ln 2π (n - p restricted),
 * as a function of the variances' ratios γ to the residual variance, and the
 * pieces its derivatives are made of.
 */
export interface LikelihoodPieces {
  /** ln|V/σ²|, restricted with ln|X'(V/σ²)⁻¹X| for orthonormal X. */
  readonly logDeterminant: number;
  /** S = σ² y'Py. */
  readonly squares: number;
  /** tr(Z'PZ) σ² by factor, or tr(Z'V⁻¹Z) σ² for the full likelihood. */
  readonly traces: readonly number[];
  /** |Z'Py|² σ⁴ by factor. */
  readonly scores: readonly number[];
  /** (Z_k'Py)'(Z_k'PZ_l)(Z_l'Py) σ⁶ by pair of factors. */
  readonly weights: readonly (readonly number[])[];
  /** Σ (Z_k'PZ_l)² σ⁴ by pair, where everything is dense; else undefined. */
  readonly crossTraces: readonly (readonly number[])[] | undefined;
}

/** Evaluates one model's likelihood at one set of ratios after another. */
export class MixedLikelihood {
  /** Sums of products of the model. */
  readonly design: MixedDesign;
  /** Whether the restricted likelihood is meant. */
  readonly restricted: boolean;
  /** n - p restricted, n full. */
  readonly weightOfSquares: number;
  /** Where the factor has entries. */
  readonly pattern: BorderedPattern;
  /** The factor for the ratios evaluated last. */
  readonly factor: BorderedFactor;
  /** Factor that each place belongs to. */
  readonly owner: Int32Array;
  /** How many times the equations were factored. */
  evaluations = 0;

  constructor(design: MixedDesign, restricted: boolean) {
    this.design = design;
    this.restricted = restricted;
    const rank = design.fixed.basis.length;
    this.weightOfSquares = design.observations - (restricted ? rank : 0);
    this.pattern = findPattern(design);
    this.factor = new BorderedFactor(design, this.pattern);
    const ownerOfNode = new Int32Array(design.nodes);
    design.factors.forEach((factor, k) => {
      const from = design.offsets[k];
      ownerOfNode.fill(k, from, from + factor.labels.length);
    });
    this.owner = this.pattern.order.map((node) => ownerOfNode[node]);
  }

  /** Factors the equations; the two numbers the likelihood is made of. */
  value(
    ratios: readonly number[],
  ): { logDeterminant: number; squares: number } | undefined {
    this.evaluations++;
    if (!this.factor.factor(ratios.map((gamma) => Math.sqrt(gamma)))) {
      return undefined;
    }
    const { levels, fixed } = this.factor.logDeterminants();
    return {
      logDeterminant: this.restricted ? levels + fixed : levels,
      squares: this.factor.leftSquares(),
    };
  }

  /** Value and pieces of the derivatives; ratios of 0 get pieces of 0. */
  pieces(ratios: readonly number[]): LikelihoodPieces | undefined {
    const value = this.value(ratios);
    if (!value) return undefined;
    const { owner, factor, pattern } = this;
    const count = ratios.length;
    const nodes = owner.length;
    const { diagonal, dense, size } = invertBordered(factor, this.restricted);
    const traces = new Array<number>(count).fill(0);
    for (let at = 0; at < nodes; at++) traces[owner[at]] += 1 - diagonal[at];
    const solution = factor.solveReadings();
    const scores = new Array<number>(count).fill(0);
    for (let at = 0; at < nodes; at++) {
      scores[owner[at]] += solution[at] * solution[at];
    }
    const weights: number[][] = [];
    for (let k = 0; k < count; k++) {
      const right = new Float64Array(solution.length);
      const row = new Array<number>(count).fill(0);
      weights.push(row);
      if (ratios[k] === 0) continue;
      for (let at = 0; at < nodes; at++) {
        if (owner[at] === k) right[at] = solution[at];
      }
      factor.solve(right);
      for (let at = 0; at < nodes; at++) {
        const l = owner[at];
        const own = l === k ? solution[at] : 0;
        row[l] += (own - right[at]) * solution[at];
      }
      for (let l = 0; l < count; l++) {
        row[l] = ratios[l] === 0 ? 0 : row[l] / (ratios[k] * ratios[l]);
      }
    }
    const perRatio = (sum: number, k: number) =>
      ratios[k] === 0 ? 0 : sum / ratios[k];
    return {
      ...value,
      traces: traces.map(perRatio),
      scores: scores.map(perRatio),
      weights,
      crossTraces: pattern.sparse === 0
        ? this.#crossTraces(ratios, dense, size)
        : undefined,
    };
  }

  /** Sums of squares over the blocks of I - C⁻¹, each over its ratios. */
  #crossTraces(
    ratios: readonly number[],
    dense: Float64Array,
    size: number,
  ): number[][] {
    const { owner } = this;
    const sums = ratios.map(() => new Array<number>(ratios.length).fill(0));
    for (let a = 0; a < owner.length; a++) {
      const row = sums[owner[a]];
      const at = a * size;
      for (let b = 0; b < owner.length; b++) {
        const entry = (a === b ? 1 : 0) - dense[at + b];
        row[owner[b]] += entry * entry;
      }
    }
    return sums.map((row, k) =>
      row.map((sum, l) =>
        ratios[k] === 0 || ratios[l] === 0 ? 0 : sum / (ratios[k] * ratios[l])
      )
    );
  }
}
