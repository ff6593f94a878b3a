/**
 * Runs of sessions as the columns of a fit.
 *
 * @module
 */
import { leastSquares } from "../numerics/least_squares.ts";
import { ownVariances } from "./_own_variances.ts";
import type { ProgressRun, ProgressSession } from "./progress_session.ts";
import type { FilterPoint } from "./_work_filter.ts";

/** Everything a fit of progress starts from. */
export interface ProgressDesign {
  /** All sessions in order. */
  readonly sessions: readonly ProgressSession[];
  /** The same for the filter. */
  readonly points: readonly FilterPoint[];
  /** A start for each run, then the work of the setting up to now. */
  readonly columns: readonly (readonly number[])[];
  /** The columns at the last session. */
  readonly now: readonly number[];
  /** Sags less a first straight line, in mm. */
  readonly response: readonly number[];
  /** What that line has at the last session, and its rate. */
  readonly offset: { readonly level: number; readonly rate: number };
  /** Degrees of freedom of the sessions' own scatter. */
  readonly ownDof: number;
  /** The least variance a session is given, in mm². */
  readonly floor: number;
  /** Shared sources: their id, and the shift of each session. */
  readonly sources: readonly {
    readonly id: string;
    readonly shifts: readonly number[];
  }[];
}

/** A session is never surer than this part of the sags' spread. */
const LEAST_OWN = 1e-7;

/** Checks runs and turns them into columns. */
export function checkedRuns(runs: readonly ProgressRun[]): ProgressDesign {
  const action = "fit progress";
  const kept = runs.filter((run) => run.length > 0);
  const sessions = kept.flat();
  for (const { session, work, sag } of sessions) {
    if (![work, sag.value, sag.own].every(Number.isFinite) || sag.own < 0) {
      throw new RangeError(
        `Cannot ${action} as work, sag and its own uncertainty must be finite and the uncertainty 0 or more: current value at ${session} is ${work}, ${sag.value} mm and ${sag.own} mm`,
      );
    }
  }
  const { variances, dof: ownDof } = ownVariances(sessions);
  const steps: number[] = [];
  const first: boolean[] = [];
  const done: number[] = [];
  let sum = 0;
  for (const run of kept) {
    run.forEach(({ session, work }, i) => {
      const step = i === 0 ? 0 : work - run[i - 1].work;
      if (step < 0) {
        throw new RangeError(
          `Cannot ${action} as work must not decrease from session to session: current value at ${session} is ${work} after ${
            run[i - 1].work
          }`,
        );
      }
      sum += step;
      steps.push(step);
      first.push(i === 0);
      done.push(sum);
    });
  }
  if (!(sum > 0)) {
    throw new RangeError(
      `Cannot ${action} as there must be two sessions with work between them: current value of the work is ${sum}`,
    );
  }
  const work = done.map((value) => value - sum);
  let run = -1;
  const runOf = first.map((start) => start ? ++run : run);
  const columns = [
    ...kept.map((_, k) => runOf.map((own) => own === k ? 1 : 0)),
    work,
  ];
  const now = columns.map((column) => column[column.length - 1]);
  const sags = sessions.map(({ sag }) => sag.value);
  const plain = leastSquares(
    sags.map((_, i) => columns.map((column) => column[i])),
    sags,
  );
  const spread = Math.max(...sags) - Math.min(...sags) ||
    Math.abs(sags[0]) || 1;
  const floor = (LEAST_OWN * spread) ** 2;
  const ids = new Set(sessions.flatMap(({ sag }) => Object.keys(sag.common)));
  return {
    sessions,
    points: sessions.map((_, i) => ({
      step: steps[i],
      first: first[i],
      variance: Math.max(variances[i], floor),
    })),
    columns,
    now,
    response: plain.residuals,
    offset: {
      level: plain.coefficients.reduce((s, value, c) => s + value * now[c], 0),
      rate: plain.coefficients[plain.coefficients.length - 1],
    },
    ownDof,
    floor,
    sources: [...ids].sort().map((id) => ({
      id,
      shifts: sessions.map(({ sag }) => sag.common[id] ?? 0),
    })),
  };
}
