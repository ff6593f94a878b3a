/**
 * The rate of grinding, from sessions of one setting.
 *
 * @module
 */
import { leastSquares } from "../numerics/least_squares.ts";
import { findRoot } from "../numerics/root.ts";
import { chiSquareQuantile } from "../statistics/chi_square_distribution.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { fQuantile } from "../statistics/f_distribution.ts";
import { checkedRuns, type ProgressDesign } from "./_progress_design.ts";
import type { ProgressRun, WorkScatter } from "./progress_session.ts";
import { filterWork, squaresLeft } from "./_work_filter.ts";

/** A line of progress, and how sure it is. */
export interface ProgressFit {
  /** Change of sag for one unit of work, in mm; shared errors by id. */
  readonly rate: Estimate;
  /** Sag after the last session's work, in mm; shared errors by id. */
  readonly level: Estimate;
  /** Covariance of the own parts of the two, in mm² per unit of work. */
  readonly covariance: number;
  /** How the work departs from an even rate. */
  readonly scatter: {
    /** The model. */
    readonly model: WorkScatter;
    /**
     * Variance for one unit of work (`accumulates`) or one session, in mm², at
     * the upper 60 % limit, which is what predictions reckon with; undefined
     * where no residual tells of it.
     */
    readonly variance?: number;
    /** Its best value, 0 where the readings' own scatter explains all. */
    readonly best?: number;
  };
  /** Standard uncertainty of a typical session of its own, in mm. */
  readonly typicalOwn: number;
  /** Sessions fitted. */
  readonly sessions: number;
  /** Sessions less coefficients; 0 where the line goes through all. */
  readonly dof: number;
  /** Sum of squares left over those the sessions' own scatter explains. */
  readonly chiSquare: number;
  /** Work at the last session, on the scale of the sessions. */
  readonly lastWork: number;
  /** Own departure of each session from the line, in mm. */
  readonly residuals: readonly number[];
}

/** How a line of progress is fitted. */
export interface ProgressOptions {
  /** How the work departs from an even rate; `accumulates` unless stated. */
  readonly scatter?: WorkScatter;
}

/** Where the process scatter is taken: its upper limit at this confidence. */
const SCATTER_LIMIT = 0.6;

/**
 * Below this chance the sessions agree better than their own scatter lets
 * them, and that scatter is not scaled down further.
 */
const TOO_GOOD = 0.02;

/**
 * Fits a straight line of sag against work by generalised least squares.
 *
 * Each session has its own uncertainty; to it comes the scatter of the work,
 * found from what is left over (the value at which the weighted squares equal
 * their degrees of freedom; for standard errors its upper 60 % limit). Errors
 * that sessions share, such as the ring's, are carried through the fit by id
 * and never enter the weights: they do not average out.
 *
 * Several runs of one setting, with other work between them, share the rate
 * and have each their own start. Standard errors go with Student's t at the
 * stated degrees of freedom. With no degrees of freedom left the errors are
 * those of the readings alone, and the scatter of the work is not known.
 *
 * Coverage of what is predicted from the fit is simulated in
 * `tests/studies`: 93 to 97 % from no scatter of the work to nothing else.
 *
 * @param runs Runs in order; at least one has two sessions with work between.
 * @param options Model of the scatter.
 * @returns The line.
 * @throws {RangeError} If a number is not finite, work decreases within a run,
 * or there is no work between any two sessions.
 *
 * @see A. C. Aitken (1935), Proceedings of the Royal Society of Edinburgh 55,
 * 42-48 (weights); R. C. Paule, J. Mandel (1982), Journal of Research of the
 * National Bureau of Standards 87, 377-385 (scatter); W. Viechtbauer (2007),
 * Statistics in Medicine 26, 37-52 (its limit).
 *
 * @example
 * ```ts
 * import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sag = (value: number) => ({ value, own: 0.001, dof: Infinity, common: {} });
 * const fit = fitProgress([[
 *   { session: "S1", work: 0, sag: sag(3.60) },
 *   { session: "S2", work: 10, sag: sag(3.64) },
 *   { session: "S3", work: 20, sag: sag(3.68) },
 * ]]);
 * equal(fit.rate.value.toFixed(6), "0.004000");
 * equal(fit.dof, 1);
 * ```
 */
export function fitProgress(
  runs: readonly ProgressRun[],
  options: ProgressOptions = {},
): ProgressFit {
  const { scatter: model = "accumulates" } = options;
  const design = checkedRuns(runs);
  const { sessions, points, columns, response, offset, ownDof, sources } =
    design;
  const dof = sessions.length - columns.length;
  const left = (variance: number): number =>
    squaresLeft(
      filterWork(points, [response, ...columns], variance, model)
        .columns,
    );
  const chiSquare = left(0);
  const typicalOwn = Math.sqrt(
    points.length / points.reduce((sum, p) => sum + 1 / p.variance, 0),
  );
  const found = dof === 0 ? undefined : scatterOf(design, model, left, dof);
  const variance = found?.upper ?? 0;
  // Where the sessions agree better than expected, their scatter is scaled.
  const scale = dof === 0 || variance > 0 ? 1 : Math.max(
    chiSquare / dof,
    Number.isFinite(ownDof)
      ? fQuantile(TOO_GOOD, dof, ownDof)
      : chiSquareQuantile(TOO_GOOD, dof) / dof,
  );
  const filtered = filterWork(
    points,
    [response, ...columns, ...sources.map(({ shifts }) => shifts)],
    variance,
    model,
  );
  const rows = points.map((_, i) =>
    columns.map((_, c) => filtered.columns[c + 1][i])
  );
  const fit = leastSquares(rows, [...filtered.columns[0]]);
  const last = columns.length - 1;
  const at = (coefficients: readonly number[], column: number) => {
    const { departure } = filtered;
    const level = departure[column] + coefficients.reduce(
      (sum, value, c) => sum + value * (design.now[c] - departure[c + 1]),
      0,
    );
    return { level, rate: coefficients[last] };
  };
  const main = at(fit.coefficients, 0);
  const towards = design.now.map((x, c) => x - filtered.departure[c + 1]);
  const along = fit.inverseNormal.map((row) =>
    row.reduce((sum, value, c) => sum + value * towards[c], 0)
  );
  const levelVariance = scale * (filtered.departureVariance +
    along.reduce((sum, value, c) => sum + value * towards[c], 0));
  const common = { level: {}, rate: {} } as Record<
    "level" | "rate",
    Record<string, number>
  >;
  sources.forEach(({ id }, k) => {
    const column = columns.length + 1 + k;
    const { coefficients } = leastSquares(rows, [...filtered.columns[column]]);
    const shift = at(coefficients, column);
    common.level[id] = shift.level;
    common.rate[id] = shift.rate;
  });
  const effective = dof === 0 ? ownDof : dof;
  return {
    rate: {
      value: main.rate + offset.rate,
      own: Math.sqrt(scale * fit.inverseNormal[last][last]),
      dof: effective,
      common: common.rate,
    },
    level: {
      value: main.level + offset.level,
      own: Math.sqrt(levelVariance),
      dof: effective,
      common: common.level,
    },
    covariance: scale * along[last],
    scatter: {
      model,
      ...(found === undefined
        ? {}
        : { variance: found.upper, best: found.best }),
    },
    typicalOwn,
    sessions: sessions.length,
    dof,
    chiSquare,
    lastWork: sessions[sessions.length - 1].work,
    residuals: response.map((value, i) =>
      value -
      columns.reduce((sum, c, k) => sum + c[i] * fit.coefficients[k], 0)
    ),
  };
}

/** The scatter of the work: best value, and upper limit no larger than all. */
function scatterOf(
  { points, columns, response, floor }: ProgressDesign,
  model: WorkScatter,
  left: (variance: number) => number,
  dof: number,
): { best: number; upper: number } {
  const bare = points.map((point) => ({ ...point, variance: floor }));
  const unit = (response.reduce((sum, y) => sum + y * y, 0) / dof + floor) /
    (model === "accumulates" ? Math.max(...points.map(({ step }) => step)) : 1);
  const all = squaresLeft(
    filterWork(bare, [response, ...columns], unit, model).columns,
  ) * unit / dof;
  const solve = (aim: number): number => {
    if (left(0) <= aim) return 0;
    let high = Math.max(unit, all);
    while (left(high) > aim) high *= 8;
    const low = high * 1e-14;
    if (left(low) <= aim) return 0;
    const log = findRoot(
      (x) => left(Math.exp(x)) - aim,
      Math.log(low),
      Math.log(high),
      { tolerance: 1e-7 },
    );
    return Math.exp(log);
  };
  const best = solve(dof);
  const limit = solve(chiSquareQuantile(1 - SCATTER_LIMIT, dof));
  return { best, upper: Math.max(best, Math.min(limit, all)) };
}
