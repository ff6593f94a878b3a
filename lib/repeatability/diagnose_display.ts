/**
 * Does the display step hide the scatter?
 *
 * @module
 */
import { findRoot } from "../numerics/root.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import type { Reading } from "../records/reading.ts";
import { type RoundedCell, roundedLikelihood } from "./_rounded_likelihood.ts";

/** The scatter behind rounded readings, all lengths in mm of sag. */
export interface RoundedScatter {
  /** Standard deviation of a reading before it was rounded. */
  readonly deviation: number;
  /** Lower end of its interval; 0 where no scatter at all fits as well. */
  readonly low: number;
  /** Upper end of its interval. */
  readonly high: number;
  /** Standard deviation of the readings as shown, rounding included. */
  readonly shown: number;
  /** Degrees of freedom of that. */
  readonly dof: number;
}

/** What the display step does to a study, lengths in mm of sag. */
export interface DisplayDiagnosis {
  /**
   * `limited`: the scatter is below half a step, so that averaging does not
   * help and the step is the limit. `coarse`: below two steps, so that
   * intervals that allow for the step cover more than they state. `fine`: two
   * steps or more. `unknown`: see `reason`.
   */
  readonly verdict: "limited" | "coarse" | "fine" | "unknown";
  /** Why nothing can be said. */
  readonly reason?: "no display step" | "no repeated readings";
  /** Display step; the largest where readings have several. */
  readonly step?: number;
  /** Least standard uncertainty of one reading from rounding it and its zero. */
  readonly floor?: number;
  /** Number of places read more than once on one zero. */
  readonly repeatedCells: number;
  /** Whether every repeated reading equals the others of its place. */
  readonly allEqual: boolean;
  /** The scatter behind the rounding. */
  readonly scatter?: RoundedScatter;
  /**
   * Share of the rounding error that stays however often a reading is
   * averaged, 0 to 1, if the scatter is as estimated.
   */
  readonly survives?: number;
}

/** Scatter in steps below which the likelihood no longer changes. */
const LEAST = 0.02;

/**
 * Finds the scatter behind rounded readings and whether the step dominates it.
 *
 * Each shown value says that the reading lay within half a step of it. The
 * likelihood of the scatter is the product of those probabilities, with the
 * expectation of every repeated place integrated out (one expectation for two
 * readings, estimated by maximum likelihood, would halve the variance). It
 * agrees with the usual pooled variance less step²/12 where the scatter is
 * above a step, and goes on working where all readings are equal: then the
 * estimate is 0 and the upper end of the interval is what the readings leave
 * possible. Interval by the likelihood ratio with Bartlett's factor for few
 * degrees of freedom; below half a step it comes from a few counts, so that
 * its coverage wavers by some per cent with ten pairs.
 *
 * @param readings Readings of one ring and grade; looks at the flat are left
 * out.
 * @param options Corrected sags in mm, in the order of the readings, and the
 * confidence of the interval.
 * @returns The diagnosis.
 *
 * @see Heitjan (1989), Statistical Science 4, 164-179, on grouped continuous
 * data; Sheppard (1898) for the correction of step²/12.
 *
 * @example Three equal readings say little, but not nothing
 * ```ts
 * import { diagnoseDisplay } from "sagbook/repeatability/diagnose_display.ts";
 * import { equal, ok } from "node:assert/strict";
 *
 * const readings = [0.715, 0.715, 0.715].map((sag) => ({
 *   on: "work", zeroing: "1", zone: { label: "centre" }, offset: 0, step: 0.001,
 *   foot: { kind: "unknown" }, sag,
 * } as unknown as Parameters<typeof diagnoseDisplay>[0][number]));
 * const { verdict, scatter } = diagnoseDisplay(readings);
 * equal(verdict, "limited");
 * equal(scatter?.deviation, 0);
 * ok(scatter.high > 0.0004 && scatter.high < 0.001);
 * ```
 */
export function diagnoseDisplay(
  readings: readonly Reading[],
  options: { readonly sag?: readonly number[]; readonly confidence?: number } =
    {},
): DisplayDiagnosis {
  const cells = repeatedCells(readings, options.sag);
  const steps = readings.flatMap(({ on, step }) =>
    on === "work" && step !== undefined && step > 0 ? [step as number] : []
  );
  const repeats = cells.filter(({ values }) => values.length > 1);
  const allEqual = cells.length > 0 &&
    repeats.every(({ values }) => spreadOf(values) === 0);
  const base = { repeatedCells: repeats.length, allEqual };
  if (steps.length === 0) {
    return { ...base, verdict: "unknown", reason: "no display step" };
  }
  const step = Math.max(...steps);
  const known = { ...base, step, floor: step * Math.SQRT2 / Math.sqrt(12) };
  if (repeats.length === 0) {
    return { ...known, verdict: "unknown", reason: "no repeated readings" };
  }
  const scatter = scatterBehind(repeats, step, options.confidence ?? 0.95);
  return {
    ...known,
    verdict: scatter.deviation < step / 2
      ? "limited"
      : scatter.deviation < 2 * step
      ? "coarse"
      : "fine",
    scatter,
    survives: Math.exp(-2 * (Math.PI * scatter.deviation / step) ** 2),
  };
}

function repeatedCells(
  readings: readonly Reading[],
  sag: readonly number[] | undefined,
): RoundedCell[] {
  const cells = new Map<string, { values: number[]; halfSteps: number[] }>();
  readings.forEach((reading, index) => {
    if (reading.on !== "work") return;
    const { zeroing, zone, offset, diameterDegrees, foot, operator } = reading;
    const key = JSON.stringify([
      zeroing,
      zone.label,
      offset,
      offset === 0 ? 0 : diameterDegrees,
      foot,
      operator,
    ]);
    let cell = cells.get(key);
    if (!cell) cells.set(key, cell = { values: [], halfSteps: [] });
    cell.values.push(sag?.[index] ?? reading.sag);
    cell.halfSteps.push((reading.step ?? 0) / 2);
  });
  return [...cells.values()];
}

function spreadOf(values: readonly number[]): number {
  const spread = Math.max(...values) - Math.min(...values);
  // Corrected sags carry rounding of the arithmetic.
  return spread < 1e-9 ? 0 : spread;
}

function scatterBehind(
  cells: readonly RoundedCell[],
  step: number,
  confidence: number,
): RoundedScatter {
  let [squares, dof] = [0, 0];
  for (const { values } of cells) {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    dof += values.length - 1;
  }
  const shown = Math.sqrt(squares / dof);
  const likelihood = roundedLikelihood(cells);
  const lowest = LEAST * step;
  const highest = 20 * Math.max(step, shown);
  const grid = Array.from(
    { length: 25 },
    (_, k) => lowest * (highest / lowest) ** (k / 24),
  );
  const values = grid.map(likelihood);
  const best = values.indexOf(Math.max(...values));
  const atZero = best === 0;
  const deviation = atZero
    ? 0
    : peak(likelihood, grid[best - 1], grid[Math.min(best + 1, 24)]);
  const top = atZero ? values[0] : likelihood(deviation);
  // Bartlett's factor for few degrees of freedom.
  const drop = chiSquareQuantile(confidence, 1) / 2 * (1 + 1 / (3 * dof));
  const below = (sd: number): number =>
    Math.max(likelihood(sd) - top + drop, -1e6);
  const low = atZero || below(lowest) >= 0
    ? 0
    : findRoot(below, lowest, deviation, { tolerance: 1e-5 * deviation });
  const from = atZero ? lowest : deviation;
  let end = from * 2;
  while (below(end) > 0) end *= 2;
  const high = findRoot(below, from, end, { tolerance: 1e-5 * from });
  return { deviation, low, high, shown: spread0(shown), dof };
}

/** Rounding of the arithmetic is no scatter. */
function spread0(value: number): number {
  return value < 1e-9 ? 0 : value;
}

/** Highest place of a function with one peak, by golden section. */
function peak(f: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [p, q] = [b - golden * (b - a), a + golden * (b - a)];
  let [fp, fq] = [f(p), f(q)];
  while (b - a > 1e-6 * b) {
    if (fp < fq) {
      [a, p, fp] = [p, q, fq];
      q = a + golden * (b - a);
      fq = f(q);
    } else {
      [b, q, fq] = [q, p, fp];
      p = b - golden * (b - a);
      fp = f(p);
    }
  }
  return (a + b) / 2;
}
