import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
import { forecastTarget } from "sagbook/fabrication/forecast_target.ts";
import {
  predictProgress,
  progressLimits,
} from "sagbook/fabrication/predict_progress.ts";
import type {
  ProgressSession,
  WorkScatter,
} from "sagbook/fabrication/progress_session.ts";
import type { Random } from "sagbook/numerics/random.ts";

/** How invented pieces are ground and measured. */
export interface ProgressCase {
  /** Scatter of one zeroing, in µm of sag over the half diameter. */
  readonly zeroing: number;
  /** Scatter of one stretch of work, in µm. */
  readonly work: number;
  /** How the work truly departs from an even rate. */
  readonly truth: WorkScatter;
  /** What the fit takes it for; the truth unless stated. */
  readonly fitted?: WorkScatter;
  /** Sessions of the stretch, least and most. */
  readonly sessions: readonly [number, number];
  /** Whether sessions have one to five zeroings in place of three each. */
  readonly unequal: boolean;
}

/** What came of many pieces. */
export interface ProgressCounts {
  pieces: number;
  forecasts: number;
  covered: number;
  sagCovered: number;
  passed: number;
  stops: number;
}

/** Sag per wet, in mm; 4 µm. */
const RATE = 0.004;
/** Relative standard uncertainty of the ring's sag, 2 u(r)/r. */
const RING = 0.0006;
/** Sag at the beginning, in mm. */
const BEGINNING = 3.4;

/** Grinds, measures and forecasts pieces; the truth is known. */
export function progressCoverage(
  design: ProgressCase,
  pieces: number,
  random: Random,
): ProgressCounts {
  const found: ProgressCounts = {
    pieces,
    forecasts: 0,
    covered: 0,
    sagCovered: 0,
    passed: 0,
    stops: 0,
  };
  for (let k = 0; k < pieces; k++) onePiece(design, random.fork(k), found);
  return found;
}

function onePiece(
  {
    zeroing,
    work: scatter,
    truth,
    fitted = truth,
    sessions: [fewest, mostSessions],
    unequal,
  }: ProgressCase,
  random: Random,
  found: ProgressCounts,
): void {
  const count = fewest + random.integer(mostSessions - fewest + 1);
  const ring = RING * random.normal();
  const stretch = 6 + 6 * random.uniform();
  const perStretch = scatter / 1000;
  let [work, walk, shift] = [0, 0, 0];
  const go = (step: number): number => {
    work += step;
    if (truth === "accumulates") {
      walk += perStretch * Math.sqrt(step / stretch) * random.normal();
    } else shift = perStretch * random.normal();
    return BEGINNING + RATE * work + walk + shift;
  };
  const sessions: ProgressSession[] = [];
  for (let i = 0; i < count; i++) {
    const sag = go(i === 0 ? 0 : stretch * (0.6 + 0.8 * random.uniform()));
    const zeroings = unequal ? 1 + random.integer(5) : 3;
    const read = Array.from(
      { length: zeroings },
      () => sag + zeroing / 1000 * random.normal(),
    );
    const mean = read.reduce((sum, y) => sum + y, 0) / zeroings;
    const squares = read.reduce((sum, y) => sum + (y - mean) ** 2, 0);
    // The ring shows every sag larger or smaller by one factor.
    const shown = mean * (1 + ring);
    sessions.push({
      session: `S${i + 1}`,
      work,
      zeroings,
      sag: {
        value: shown,
        own: zeroings === 1
          ? 0
          : Math.sqrt(squares / (zeroings - 1) / zeroings),
        dof: Math.max(1, zeroings - 1),
        common: { ring: RING * shown },
      },
    });
  }
  const fit = fitProgress([sessions], { scatter: fitted });
  const aim = BEGINNING +
    RATE * (work + stretch * (0.5 + 2.5 * random.uniform()));
  const target = { value: aim, own: 0, dof: Infinity, common: {} };
  const forecast = forecastTarget(fit, target, { from: BEGINNING });
  if (forecast.kind !== "forecast") return;
  found.forecasts++;
  // One path of work onward: to the most work, to either end of the interval.
  const { interval, most } = forecast;
  const stops = [
    { at: most, what: "most" },
    { at: interval.low, what: "low" },
    { at: stretch, what: "stretch" },
    ...(interval.high === undefined
      ? []
      : [{ at: interval.high, what: "high" }]),
  ].sort((a, b) => a.at - b.at);
  let covered = true;
  let done = 0;
  for (const { at, what } of stops) {
    const sag = go(at - done);
    done = at;
    if (what === "most" && at > 0) {
      found.stops++;
      if (sag > aim) found.passed++;
    }
    if (what === "low" && at > 0 && sag > aim) covered = false;
    if (what === "high" && sag < aim) covered = false;
    if (what === "stretch") {
      const ends = progressLimits(predictProgress(fit, at));
      if (sag >= ends.low && sag <= ends.high) found.sagCovered++;
    }
  }
  if (covered) found.covered++;
}
