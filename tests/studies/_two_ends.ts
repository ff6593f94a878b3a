/** How the comparison of the two ends of diameters errs, and what it finds. */
import type { Random } from "sagbook/numerics/random.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import {
  benchOf,
  PIECE,
  type SimulatedLine,
  throughCsv,
} from "./_zone_sessions.ts";

/** One case; lengths in display steps. */
export interface EndsCase {
  /** Scatter of a reading. */
  readonly scatter: number;
  /** Scatter of the diameters, with opposite signs at the two ends. */
  readonly opposite: number;
  readonly diameters: number;
  /** Largest difference between the ends at the edge. */
  readonly amplitude: number;
  readonly tolerance: number;
}

/** Shares of sessions. */
export interface EndsCounts {
  /** The ends would let a verdict of "within" pass. */
  readonly within: number;
  /** The ends alone say "outside". */
  readonly outside: number;
  /** Mean error of the direction found, in degrees. */
  readonly turned: number;
}

const STEP = 0.001;
/** The reach of this ring with one foot out, in mm. */
const EDGE = 87.8727;
const PLACES = [
  ["centre", 0],
  ["50%", 75],
  ["-50%", -75],
  ["edge", EDGE],
  ["-edge", -EDGE],
] as const;

/** Simulates sessions with coma-like wear in a direction drawn each time. */
export async function twoEnds(
  design: EndsCase,
  sessions: number,
  random: Random,
): Promise<EndsCounts> {
  const { scatter, opposite, diameters, amplitude, tolerance } = design;
  const directions: number[] = [];
  function* lines(): Generator<SimulatedLine> {
    for (let session = 0; session < sessions; session++) {
      const direction = 360 * random.uniform();
      directions.push(direction);
      const level = 600 + random.uniform();
      for (let set = 0; set < diameters; set++) {
        const degrees = 180 * set / diameters;
        const own = opposite * random.normal();
        const along = Math.cos((degrees - direction) * Math.PI / 180);
        for (const [zone, offset] of PLACES) {
          const sag = level + offset / EDGE * amplitude / 2 * along +
            Math.sign(offset) * own + scatter * random.normal();
          yield {
            session,
            set,
            diameterDegrees: degrees,
            zone,
            shown: STEP * Math.round(sag),
          };
        }
      }
    }
  }
  const bench = benchOf(STEP);
  let [within, outside, turned] = [0, 0, 0];
  const read = await throughCsv(lines(), STEP, 3);
  read.forEach((readings, session) => {
    const { upper, lower, towardDegrees } = analyseSession(
      readings,
      PIECE,
      bench,
    )!.ends!;
    if (upper! <= tolerance * STEP) within++;
    if (lower! > tolerance * STEP) outside++;
    const off = Math.abs((towardDegrees ?? 0) - directions[session]) % 360;
    turned += Math.min(off, 360 - off);
  });
  return {
    within: within / sessions,
    outside: outside / sessions,
    turned: turned / sessions,
  };
}
