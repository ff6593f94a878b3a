/**
 * Whether the rate of grinding has changed.
 *
 * @module
 */
import { fProbability } from "../statistics/f_distribution.ts";
import { checkedRuns } from "./_progress_design.ts";
import { fitProgress, type ProgressOptions } from "./fit_progress.ts";
import type { ProgressRun } from "./progress_session.ts";
import { filterWork, squaresLeft } from "./_work_filter.ts";

/** Whether the rate has changed, and where. */
export type RateChange =
  /** Five sessions of one setting are the least that can tell. */
  | { readonly kind: "too few sessions" }
  /** No change shows. */
  | { readonly kind: "steady"; readonly p: number }
  /** The rate changed. */
  | {
    readonly kind: "changed";
    /** The session at which it did. */
    readonly at: string;
    /** Rate before, in mm for one unit of work. */
    readonly before: number;
    /** Rate after. */
    readonly after: number;
    /** Chance of so clear a change somewhere if there were none. */
    readonly p: number;
  };

const LEAST = 5;

/**
 * Looks for a session at which the rate changed.
 *
 * For each session with work on both sides a line with a bend there is fitted
 * beside the straight one, with the scatter that the straight line shows; the
 * clearest bend counts if its chance, times the number of places tried, is
 * below the level. With few sessions only a large change shows, and work that
 * scatters hides one: "steady" means that no change shows.
 *
 * @param runs Runs of one setting.
 * @param options Model of the scatter, and the level, 0.05 unless stated.
 * @returns Steady, changed, or too few sessions to tell.
 * @throws {RangeError} As {@link fitProgress}.
 *
 * @see N. R. Draper, H. Smith, Applied Regression Analysis (extra sum of
 * squares); the factor for several places is Bonferroni's.
 *
 * @example
 * ```ts
 * import { rateChange } from "sagbook/fabrication/rate_change.ts";
 * import { equal } from "node:assert/strict";
 *
 * const found = rateChange([
 *   [3.4, 3.44, 3.479, 3.52, 3.53, 3.541, 3.55].map((value, i) => ({
 *     session: `S${i + 1}`, work: 10 * i,
 *     sag: { value, own: 0.001, dof: Infinity, common: {} },
 *   })),
 * ]);
 * equal(found.kind === "changed" && found.at, "S4");
 * ```
 */
export function rateChange(
  runs: readonly ProgressRun[],
  options: ProgressOptions & { readonly level?: number } = {},
): RateChange {
  const { level = 0.05, scatter: model = "accumulates" } = options;
  const design = checkedRuns(runs);
  const { sessions, points, columns, response } = design;
  const dof = sessions.length - columns.length - 1;
  if (sessions.length < LEAST || dof < 1) return { kind: "too few sessions" };
  const fit = fitProgress(runs, options);
  const variance = fit.scatter.best ?? 0;
  const left = (more: readonly (readonly number[])[]) =>
    squaresLeft(
      filterWork(points, [response, ...columns, ...more], variance, model)
        .columns,
    );
  const straight = left([]);
  const work = columns[columns.length - 1];
  const bends = work.flatMap((at, i) => {
    const inside = at > work[0] && at < 0 && work.indexOf(at) === i;
    if (!inside) return [];
    const bend = work.map((value) => Math.max(0, value - at));
    return [{ i, bend, left: left([bend]) }];
  });
  if (bends.length === 0) return { kind: "too few sessions" };
  const clearest = bends.reduce((a, b) => b.left < a.left ? b : a);
  const ratio = (straight - clearest.left) / (clearest.left / dof);
  const p = Math.min(
    1,
    bends.length * fProbability(Math.min(ratio, 1e12), 1, dof, "upper"),
  );
  if (p > level) return { kind: "steady", p };
  const { before, after } = ratesAround(
    runs,
    sessions[clearest.i].session,
    options,
  );
  return {
    kind: "changed",
    at: sessions[clearest.i].session,
    before,
    after,
    p,
  };
}

/** The rates of both sides, each fitted alone. */
function ratesAround(
  runs: readonly ProgressRun[],
  session: string,
  options: ProgressOptions,
): { before: number; after: number } {
  const parts = { before: [] as ProgressRun[], after: [] as ProgressRun[] };
  let past = false;
  for (const run of runs) {
    const at = run.findIndex((one) => one.session === session);
    if (at < 0) parts[past ? "after" : "before"].push(run);
    else {
      parts.before.push(run.slice(0, at + 1));
      parts.after.push(run.slice(at));
      past = true;
    }
  }
  return {
    before: fitProgress(parts.before, options).rate.value,
    after: fitProgress(parts.after, options).rate.value,
  };
}
