/** What correcting the drift of the zero does to differences of zones. */
import type { Random } from "sagbook/numerics/random.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import {
  benchOf,
  PIECE,
  type SimulatedLine,
  throughCsv,
} from "./_zone_sessions.ts";

/** One case. Lengths in display steps. */
export interface DriftCase {
  /** Scatter of a reading and of a look at the flat. */
  readonly scatter: number;
  /** Mean move of the zero from zeroing to closing look. */
  readonly drift: number;
  /** How much that differs from set to set, a standard deviation. */
  readonly wander: number;
  readonly sets: number;
  /** Whether the flat is looked at after each set. */
  readonly looks: boolean;
}

/** What came of it. */
export interface DriftCounts {
  /** Share of 95 % intervals, edge less centre, that hold the truth. */
  readonly covered: number;
  /** Mean half width in display steps. */
  readonly halfWidth: number;
  /** Mean error of the difference in display steps. */
  readonly bias: number;
  /** Share of sessions in which anything was taken out. */
  readonly corrected: number;
}

const STEP = 0.001;
const ZONES = ["centre", "50%", "edge"];

/** Simulates sessions, writes and reads them, and counts. */
export async function zoneDrift(
  design: DriftCase,
  sessions: number,
  random: Random,
): Promise<DriftCounts> {
  const { scatter, drift, wander, sets, looks } = design;
  const truths: number[] = [];
  function* lines(): Generator<SimulatedLine> {
    for (let session = 0; session < sessions; session++) {
      const truth = STEP * random.uniform();
      truths.push(truth);
      const level = 0.6 + STEP * random.uniform();
      for (let set = 0; set < sets; set++) {
        const move = drift + wander * random.normal();
        // Where the zero stood between two marks when it was pressed.
        const phase = random.uniform() - 0.5;
        const pressed = scatter * random.normal();
        const show = (sag: number, order: number): number => {
          const seen = sag / STEP + move * order / 4 +
            scatter * random.normal();
          return STEP *
            (Math.round(phase + seen) - Math.round(phase + pressed));
        };
        const line = (zone: string, shown: number): SimulatedLine => ({
          session,
          set,
          diameterDegrees: 180 * set / sets,
          zone,
          shown,
        });
        for (let zone = 0; zone < 3; zone++) {
          yield line(
            ZONES[zone],
            show(level + (zone === 2 ? truth : 0), zone + 1),
          );
        }
        if (looks) yield line("flat", show(0, 4));
      }
    }
  }
  const read = await throughCsv(lines(), STEP, 3);
  const bench = benchOf(STEP);
  let [covered, width, bias, corrected] = [0, 0, 0, 0];
  read.forEach((readings, session) => {
    const found = analyseSession(readings, PIECE, bench)!;
    const one = found.differences.find(({ first, second }) =>
      first === 0 && second === 2
    )!;
    const truth = -truths[session];
    const { low, high } = one.interval95!;
    if (truth >= low && truth <= high) covered++;
    width += (high - low) / 2 / STEP;
    bias += (one.mean - truth) / STEP;
    if (found.drifts.some(({ treatment }) => treatment !== "carried")) {
      corrected++;
    }
  });
  return {
    covered: covered / sessions,
    halfWidth: width / sessions,
    bias: bias / sessions,
    corrected: corrected / sessions,
  };
}
