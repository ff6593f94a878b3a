/**
 * Components of balanced chains of factors, by analysis of variance.
 *
 * @module
 */
import type { MeanSquareTerm } from "../statistics/anova_table.ts";
import { nestedAnova } from "../statistics/nested_anova.ts";
import {
  satterthwaiteInterval,
  varianceInterval,
} from "../statistics/variance_interval.ts";
import type { CodedReadings, FactorCodes } from "./_factor_codes.ts";
import { type RawFigure, type RawFigures, rootOf } from "./_raw_figure.ts";
import { relationsOf } from "./_relations.ts";
import type { Separability } from "./_separability.ts";
import type { ScatterSource } from "./source.ts";
import type { VarianceRow } from "./surface_components.ts";

/** Sources that can stand in a chain, each inside the one before. */
const CHAIN: readonly ScatterSource[] = [
  "session",
  "operator",
  "zeroing",
  "zone × zeroing",
];

/**
 * Factors from the outermost to the innermost, where each lies inside the one
 * before and all groups of a kind are equally large; undefined otherwise.
 */
export function balancedChain(
  coded: CodedReadings,
  { fitted }: Separability,
): readonly FactorCodes[] | undefined {
  if (fitted.some(({ source }) => !CHAIN.includes(source))) return undefined;
  if (coded.cellCount !== coded.zones.length) return undefined;
  const chain = [...fitted].sort((a, b) => a.names.length - b.names.length);
  const nested = relationsOf(chain).every(({ relation }) =>
    relation === "nested"
  );
  if (!nested || !cellsEqual(coded)) return undefined;
  const equal = chain.every(({ codes, names }) => {
    const counts = new Array<number>(names.length).fill(0);
    for (const code of codes) counts[code]++;
    return counts.every((count) => count === counts[0]);
  });
  return equal && chain.length > 0 ? chain : undefined;
}

/** Whether every zeroing read every zone equally often. */
function cellsEqual({ readings, cells, cellCount }: CodedReadings): boolean {
  const counts = new Map<string, number[]>();
  readings.forEach(({ zeroing }, index) => {
    let row = counts.get(zeroing);
    if (!row) counts.set(zeroing, row = new Array<number>(cellCount).fill(0));
    row[cells[index]]++;
  });
  const all = [...counts.values()].flat();
  return all.every((count) => count === all[0]);
}

/**
 * Estimates the components of a balanced chain.
 *
 * The zones' means are taken out first; being crossed with every zeroing they
 * touch only the stratum just inside the zeroings, which loses their degrees
 * of freedom.
 */
export function byAnova(
  coded: CodedReadings,
  separability: Separability,
  chain: readonly FactorCodes[],
  sag: readonly number[],
  confidence: number,
): RawFigures & { readonly table: readonly VarianceRow[] } {
  const { cells, cellCount } = coded;
  const zoneMeans = new Float64Array(cellCount);
  const perZone = sag.length / cellCount;
  sag.forEach((value, i) => zoneMeans[cells[i]] += value / perZone);
  const table = nestedAnova(
    sag.map((value, i) => value - zoneMeans[cells[i]]),
    chain.map(({ source, codes }) => ({ name: source, labels: codes })),
  );
  const rows = table.sources.map(({ name, dof, sumOfSquares }, at) => {
    const outer = chain[at - 1]?.source;
    const left = dof - (outer === "zeroing" ? cellCount - 1 : 0);
    const source: ScatterSource = name === "residual"
      ? "repeat"
      : name as ScatterSource;
    const size = table.sources[at].expected[name];
    return { source, dof: left, size, meanSquare: sumOfSquares / left };
  });
  const held = new Map(separability.stands.map(({ source, holds }) => [
    source,
    [source, ...holds.keys()],
  ]));
  const term = (at: number, coefficient: number): MeanSquareTerm => ({
    coefficient,
    meanSquare: rows[at].meanSquare,
    dof: rows[at].dof,
  });
  const figures = rows.map(({ source, size, meanSquare, dof }, at) => {
    const inner = rows[at + 1];
    const variance = inner
      ? (meanSquare - inner.meanSquare) / size
      : meanSquare;
    const terms = inner
      ? [term(at, 1 / size), term(at + 1, -1 / size)]
      : [term(at, 1)];
    return {
      sources: held.get(source) ?? [source],
      levels: chain[at]?.names.length ?? sag.length,
      variance,
      ...(inner ? satterthwaite(terms, variance) : { dof }),
      interval: rootOf(varianceInterval(terms, confidence)),
    };
  });
  const total = totalOf(
    rows.map((_, at) => term(at, 1)),
    rows.map(({ size }) => size),
    confidence,
  );
  const zone = cellCount > 1 ? zoneRow(zoneMeans, perZone, rows, chain) : [];
  return {
    figures: figures.reverse(),
    total: {
      sources: figures.flatMap(({ sources }) => sources),
      levels: sag.length,
      ...total,
    },
    table: [
      ...zone,
      ...rows.map(({ source, dof, meanSquare }, at) => ({
        source,
        dof,
        meanSquare: meanSquare * 1e-6,
        expected: expectedFrom(rows, at),
      })),
    ],
  };
}

/**
 * The sum of the components, those below 0 left out, with its interval: by
 * modified large samples where all mean squares add, by Satterthwaite where
 * one that was left out takes some away.
 */
function totalOf(
  squares: readonly MeanSquareTerm[],
  sizes: readonly number[],
  confidence: number,
): Pick<RawFigure, "variance" | "dof" | "interval"> {
  const coefficients = squares.map(() => 0);
  squares.forEach(({ meanSquare }, at) => {
    const inner = squares[at + 1];
    if (inner && meanSquare < inner.meanSquare) return;
    coefficients[at] += 1 / sizes[at];
    if (inner) coefficients[at + 1] -= 1 / sizes[at];
  });
  const terms = squares.map((one, at) => ({
    ...one,
    coefficient: coefficients[at],
  })).filter(({ coefficient }) => Math.abs(coefficient) > 1e-12);
  const variance = terms.reduce(
    (sum, { coefficient, meanSquare }) => sum + coefficient * meanSquare,
    0,
  );
  const interval = terms.every(({ coefficient }) => coefficient > 0)
    ? varianceInterval(terms, confidence)
    : satterthwaiteInterval(terms, confidence)?.interval;
  return {
    variance,
    ...satterthwaite(terms, variance),
    ...(interval === undefined ? {} : { interval: rootOf(interval) }),
  };
}

/** Degrees of freedom of a combination, where it is above 0. */
function satterthwaite(
  terms: readonly MeanSquareTerm[],
  variance: number,
): { dof?: number } {
  const spread = terms.reduce(
    (sum, { coefficient, meanSquare, dof }) =>
      sum + (coefficient * meanSquare) ** 2 / dof,
    0,
  );
  return variance > 0 && spread > 0 ? { dof: variance ** 2 / spread } : {};
}

/** The row of the fixed zones. */
function zoneRow(
  means: Float64Array,
  perZone: number,
  rows: readonly { source: ScatterSource; size: number }[],
  chain: readonly FactorCodes[],
): VarianceRow[] {
  const grand = means.reduce((sum, mean) => sum + mean, 0) / means.length;
  const squares = means.reduce((sum, mean) => sum + (mean - grand) ** 2, 0);
  const dof = means.length - 1;
  const inside = chain.findIndex(({ source }) => source === "zeroing") + 1;
  return [{
    source: "zone",
    dof,
    meanSquare: perZone * squares / dof * 1e-6,
    expected: expectedFrom(rows, inside),
  }];
}

function expectedFrom(
  rows: readonly { source: ScatterSource; size: number }[],
  at: number,
): VarianceRow["expected"] {
  return Object.fromEntries(
    rows.slice(at).map(({ source, size }) => [source, size]),
  );
}
