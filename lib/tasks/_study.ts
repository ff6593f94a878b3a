/**
 * What every study exports, and how a share is held against a bound.
 *
 * @module
 */

/** One thing counted or measured in one simulated case. */
export interface StudyRow {
  /** What was simulated, the same words for every seed. */
  readonly case: string;
  /** What was counted or measured, the same words for every seed. */
  readonly measure: string;
  /** The result; a share lies between 0 and 1. */
  readonly value: number;
  /** How it is written; a share as a percentage unless stated. */
  readonly as?: "share" | "number";
  /** How many repetitions a share rests on; bounds allow for its error. */
  readonly runs?: number;
  /** What the value must not fall below, simulation error apart. */
  readonly atLeast?: number;
  /** What the value must not exceed, simulation error apart. */
  readonly atMost?: number;
}

/** A study: a module `*_study.ts` of this folder exports one as `study`. */
export interface Study {
  /** A sentence that says what is proven. */
  readonly title: string;
  /** How it is simulated and what the bounds mean, in Markdown. */
  readonly about?: string;
  /** Runs it; the same seed gives the same rows in the same order. */
  run(seed: number): readonly StudyRow[] | Promise<readonly StudyRow[]>;
}

/** Simulation errors that a bound allows for. */
export const ALLOWED_ERRORS = 2;

/** Standard error of a share at its bound. */
export function errorAt(bound: number, runs: number): number {
  return Math.sqrt(bound * (1 - bound) / runs);
}

/** What a bound allows for simulation error; nothing where no share is held. */
export function slackAt(
  bound: number,
  { as = "share", runs }: StudyRow,
): number {
  return as === "share" && runs !== undefined && Number.isFinite(bound)
    ? ALLOWED_ERRORS * errorAt(bound, runs)
    : 0;
}

/** Whether a row keeps its bounds, two simulation errors allowed. */
export function holds(row: StudyRow): boolean {
  const { value, atLeast = -Infinity, atMost = Infinity } = row;
  return value >= atLeast - slackAt(atLeast, row) &&
    value <= atMost + slackAt(atMost, row);
}

/**
 * The rows of several seeds put together: shares and numbers are averaged.
 * The repetitions stay those of one seed, so that a bound allows as much for
 * all seeds together as for each: of hundreds of rows at their very bound some
 * would break a closer one by chance.
 */
export function pooled(
  bySeed: readonly (readonly StudyRow[])[],
): readonly StudyRow[] {
  return bySeed[0].map((first, k) => {
    const same = bySeed.map((rows) => rows[k]);
    for (const { case: name, measure } of same) {
      if (name !== first.case || measure !== first.measure) {
        throw new TypeError(
          `Cannot pool seeds as their rows must be the same: current value is ${name}, ${measure}`,
        );
      }
    }
    const runs = same.reduce((sum, row) => sum + (row.runs ?? 0), 0);
    const value = runs === 0
      ? same.reduce((sum, row) => sum + row.value, 0) / same.length
      : same.reduce((sum, row) => sum + row.value * row.runs!, 0) / runs;
    return {
      ...first,
      value,
      ...(runs === 0 ? {} : { runs: runs / same.length }),
    };
  });
}
