/**
 * What the tables of an analysis of variance share.
 *
 * @module
 */
import type {
  AnovaSource,
  MeanSquareTerm,
  MomentComponent,
} from "./anova_table.ts";
import { fProbability } from "./f_distribution.ts";

/** A source before it is tested. */
export interface PlainSource {
  readonly name: string;
  readonly dof: number;
  readonly sumOfSquares: number;
  readonly expected: Readonly<Record<string, number>>;
  readonly against?: string;
}

/** Adds mean squares, ratios and their chances. */
export function testSources(plain: readonly PlainSource[]): AnovaSource[] {
  const squareOf = ({ dof, sumOfSquares }: PlainSource) =>
    dof > 0 ? sumOfSquares / dof : undefined;
  return plain.map((source) => {
    const other = plain.find(({ name }) => name === source.against);
    const [own, base] = [squareOf(source), other && squareOf(other)];
    const f = own !== undefined && base !== undefined && base > 0
      ? own / base
      : undefined;
    return {
      name: source.name,
      dof: source.dof,
      sumOfSquares: source.sumOfSquares,
      meanSquare: own,
      expected: source.expected,
      against: source.against,
      f,
      p: f === undefined || !other
        ? undefined
        : fProbability(f, source.dof, other.dof, "upper"),
    };
  });
}

/** A component from shares of mean squares; undefined if one is missing. */
export function momentComponent(
  name: string,
  shares: readonly (readonly [coefficient: number, source: AnovaSource])[],
): MomentComponent | undefined {
  const terms: MeanSquareTerm[] = [];
  for (const [coefficient, { meanSquare, dof }] of shares) {
    if (meanSquare === undefined) return undefined;
    if (coefficient !== 0) terms.push({ coefficient, meanSquare, dof });
  }
  const estimate = terms.reduce(
    (sum, term) => sum + term.coefficient * term.meanSquare,
    0,
  );
  return { name, estimate, variance: Math.max(0, estimate), terms };
}

/** Only what is defined. */
export function present<Item>(items: readonly (Item | undefined)[]): Item[] {
  return items.filter((item): item is Item => item !== undefined);
}

/** Values less the first one, so that a large level costs no digits. */
export function lessFirst(values: ArrayLike<number>): Float64Array {
  const first = values[0];
  return Float64Array.from(values, (value) => value - first);
}

/** Positions of equal labels, in order of first appearance. */
export function groupPositions(
  labels: ArrayLike<string | number>,
): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  for (let i = 0; i < labels.length; i++) {
    const label = String(labels[i]);
    const group = groups.get(label);
    if (group) group.push(i);
    else groups.set(label, [i]);
  }
  return groups;
}

/** Mean of the values at the positions given. */
export function meanAt(
  values: ArrayLike<number>,
  positions: readonly number[],
): number {
  let sum = 0;
  for (const i of positions) sum += values[i];
  const mean = sum / positions.length;
  let rest = 0;
  for (const i of positions) rest += values[i] - mean;
  return mean + rest / positions.length;
}
