/** Whether the stated number of sets decides as often as it says. */
import type { Random } from "sagbook/numerics/random.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { judge } from "sagbook/zones/sphericity.ts";
import type { SetModel } from "sagbook/zones/chance_to_decide.ts";
import {
  benchOf,
  PIECE,
  type SimulatedLine,
  throughCsv,
} from "./_zone_sessions.ts";

/** A surface and a gauge; lengths in display steps. */
export interface DecisionCase {
  readonly name: string;
  /** Sag at centre, half way and edge. */
  readonly means: readonly [number, number, number];
  /** Scatter of a reading, of the zeroings, and of the diameters. */
  readonly scatter: number;
  readonly zeroing: number;
  readonly diameter: number;
  readonly tolerance: number;
}

const STEP = 0.001;
const ZONES = ["centre", "50%", "edge"];

/** What the planner is told: the truth. */
export function modelOf(design: DecisionCase): SetModel {
  const { means, scatter, zeroing, diameter, tolerance } = design;
  const covariance = means.map((_, i) =>
    means.map((_, j) =>
      STEP * STEP * (zeroing ** 2 + (i > 0 && j > 0 ? diameter ** 2 : 0) +
        (i === j ? scatter ** 2 : 0))
    )
  );
  return {
    means: means.map((mean) => mean * STEP),
    covariance,
    step: STEP,
    tolerance: tolerance * STEP,
  };
}

/** Share of fresh sessions, through display and CSV text, that are decided. */
export async function decidedShare(
  design: DecisionCase,
  sets: number,
  sessions: number,
  random: Random,
): Promise<number> {
  const { means, scatter, zeroing, diameter, tolerance } = design;
  function* lines(): Generator<SimulatedLine> {
    for (let session = 0; session < sessions; session++) {
      const level = 600 + random.uniform();
      for (let set = 0; set < sets; set++) {
        const zero = zeroing * random.normal();
        const turn = diameter * random.normal();
        for (let zone = 0; zone < 3; zone++) {
          const sag = level + means[zone] + zero + (zone > 0 ? turn : 0) +
            scatter * random.normal();
          yield {
            session,
            set,
            diameterDegrees: 180 * set / sets,
            zone: ZONES[zone],
            shown: STEP * Math.round(sag),
          };
        }
      }
    }
  }
  const bench = benchOf(STEP);
  let decided = 0;
  for (const readings of await throughCsv(lines(), STEP, 3)) {
    const { differences, ends } = analyseSession(readings, PIECE, bench)!;
    const { verdict } = judge(differences, ends, tolerance * STEP);
    if (verdict !== "undecided") decided++;
  }
  return decided / sessions;
}
