/** How often the intervals of zone differences hold the truth. */
import type { Random } from "sagbook/numerics/random.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { judge } from "sagbook/zones/sphericity.ts";
import {
  benchOf,
  PIECE,
  type SimulatedLine,
  throughCsv,
} from "./_zone_sessions.ts";

/** One cell of the design. Standard deviations in display steps. */
export interface CoverageCase {
  /** Scatter of a reading. */
  readonly scatter: number;
  /** Scatter between zeroings, common to a set. */
  readonly zeroing: number;
  /** Scatter between diameters, common to the zones off centre. */
  readonly diameter: number;
  /** Sets, each with a zeroing and a diameter of its own. */
  readonly sets: number;
  /**
   * True differences as parts of the tolerance at centre, half way and edge:
   * `slope` 0, ½, 1; `hump` 0, 1, 0.
   */
  readonly shape: "slope" | "hump";
}

/** Counts over sessions, and over single differences. */
export interface CoverageCounts {
  readonly sessions: number;
  readonly differences: number;
  /** Differences whose own 95 % interval holds the truth. */
  readonly single: number;
  /** Sessions whose simultaneous intervals all hold it. */
  readonly simultaneous: number;
  /** Sessions called within with the largest difference at the limit. */
  readonly within: number;
  /** Sessions called outside with none beyond it. */
  readonly outside: number;
  /** Sessions in which a reading is flagged though none slipped. */
  readonly flagged: number;
}

const STEP = 0.001;
const ZONES = ["centre", "50%", "edge"];
const SHAPES = { slope: [0, 0.5, 1], hump: [0, 1, 0] };

/** Simulates sessions, writes and reads them, and counts. */
export async function zoneCoverage(
  design: CoverageCase,
  sessions: number,
  random: Random,
): Promise<CoverageCounts> {
  const { scatter, zeroing, diameter, sets, shape } = design;
  const limits: number[] = [];
  function* lines(): Generator<SimulatedLine> {
    for (let session = 0; session < sessions; session++) {
      // Far beyond the scatter, so that "within" is decided at the limit alone.
      const limit = STEP *
        (12 * Math.hypot(scatter, diameter, 1) + random.uniform());
      limits.push(limit);
      const truth = 0.6 + STEP * random.uniform();
      for (let set = 0; set < sets; set++) {
        const zero = zeroing * random.normal();
        const turn = diameter * random.normal();
        for (let zone = 0; zone < 3; zone++) {
          const sag = truth + limit * SHAPES[shape][zone] + STEP * (zero +
                (zone > 0 ? turn : 0) + scatter * random.normal());
          yield {
            session,
            set,
            diameterDegrees: 180 * set / sets,
            zone: ZONES[zone],
            shown: STEP * Math.round(sag / STEP),
          };
        }
      }
    }
  }
  const read = await throughCsv(lines(), STEP, 3);
  const bench = benchOf(STEP);
  let [differences, single, simultaneous] = [0, 0, 0];
  let [within, outside, flagged] = [0, 0, 0];
  read.forEach((readings, session) => {
    const found = analyseSession(readings, PIECE, bench)!;
    const limit = limits[session];
    let all = true;
    for (const one of found.differences) {
      const truth = limit * (SHAPES[shape][one.first] -
        SHAPES[shape][one.second]);
      const { interval95, simultaneous95 } = one;
      differences++;
      if (truth >= interval95!.low && truth <= interval95!.high) single++;
      all &&= truth >= simultaneous95!.low && truth <= simultaneous95!.high;
    }
    if (all) simultaneous++;
    const { verdict } = judge(found.differences, found.ends, limit);
    if (verdict === "within") within++;
    if (verdict === "outside") outside++;
    if (found.outliers.length > 0) flagged++;
  });
  return {
    sessions,
    differences,
    single,
    simultaneous,
    within,
    outside,
    flagged,
  };
}
