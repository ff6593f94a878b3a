/** How often profile and conic constant hold the surface that was measured. */
import { evenTerm, turnedEdge } from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import {
  conicSurface,
  type ContactSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import {
  type SessionPlan,
  simulateSession,
} from "sagbook/geometry/simulate_session.ts";
import type { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import type { FittedValue, SurfaceProfile } from "sagbook/zones/profile.ts";
import {
  benchOf,
  PIECE,
  type SimulatedLine,
  throughCsv,
} from "./_zone_sessions.ts";

const STEP = 0.0002;

/** A surface, and how its feet stand. */
export interface ProfileCase {
  readonly name: string;
  readonly surface: ContactSurface;
  readonly foot: "foot out" | "feet out";
  /** The conic constant that was put in, where one was. */
  readonly conic?: number;
  readonly sets: number;
  /** Places as zone and offset in mm. */
  readonly places: readonly (readonly [string, number])[];
}

const THREE = [["centre", 0], ["50%", 75], ["edge", 87.8]] as const;
const FOUR = [["centre", 0], ["30%", 45], ["50%", 75], ["edge", 87.8]] as const;
const edge = turnedEdge({ halfDiameter: 150, width: 14, depth: 0.007 });

/** The surfaces of the study; R = 3000 mm, half diameter 150 mm. */
export const PROFILE_CASES: readonly ProfileCase[] = [
  {
    name: "paraboloid, one foot out",
    surface: conicSurface(3000, -1),
    foot: "foot out",
    conic: -1,
    sets: 6,
    places: THREE,
  },
  {
    name: "hyperboloid K = -4, two feet out",
    surface: conicSurface(3000, -4),
    foot: "feet out",
    conic: -4,
    sets: 8,
    places: FOUR,
  },
  {
    name: "oblate ellipsoid K = 3, two zones",
    surface: conicSurface(3000, 3),
    foot: "foot out",
    conic: 3,
    sets: 3,
    places: [THREE[0], THREE[2]],
  },
  {
    name: "turned edge, one foot out",
    surface: withDepartures(conicSurface(3000, 0), edge),
    foot: "foot out",
    sets: 6,
    places: FOUR,
  },
  {
    name: "turned edge on a zone of a6, one foot out",
    surface: withDepartures(
      conicSurface(3000, 0),
      edge,
      evenTerm(6, 0.002 / 150 ** 6),
    ),
    foot: "foot out",
    sets: 5,
    places: THREE,
  },
];

/** Shares of sessions whose interval holds what was measured. */
export interface ProfileCounts {
  readonly conic: number;
  /** The conic constant that was put in, where one was. */
  readonly trueConic?: number;
  readonly peakToValley: number;
  /** The last, highest coefficient. */
  readonly coefficient: number;
  /** The profile at the rim and half way. */
  readonly rim: number;
  readonly half: number;
}

function holds({ interval95 }: FittedValue, truth: number): boolean {
  return interval95!.low <= truth && truth <= interval95!.high;
}

function planOf(design: ProfileCase): SessionPlan {
  const { surface, foot, sets, places } = design;
  return {
    surface,
    form: "concave",
    gauge: ringGauge(60, 6.35),
    diameters: Array.from({ length: sets }, (_, set) => 180 * set / sets),
    places: places.map(([zone, offset]) => ({ zone, offset: mm(offset) })),
    foot,
    scatter: { repeat: mm(0.0006), zeroing: mm(0.001), diameter: mm(0.0003) },
    step: mm(STEP),
  };
}

async function profilesOf(
  plan: SessionPlan,
  sessions: number,
  random: Random,
  digits: number,
): Promise<readonly SurfaceProfile[]> {
  function* lines(): Generator<SimulatedLine> {
    for (let session = 0; session < sessions; session++) {
      for (const one of simulateSession(plan, random.fork(session))) {
        const { foot } = plan;
        yield { ...one, session, foot: `${foot}` };
      }
    }
  }
  const bench = benchOf(plan.step);
  const read = await throughCsv(lines(), plan.step, digits);
  return read.map((readings) =>
    analyseSession(readings, PIECE, bench)!.profile!
  );
}

/**
 * Simulates sessions by exact contact, writes and reads them, and counts.
 *
 * What was measured is the even polynomial that reads the same at these zones:
 * the fit to one set without scatter and without a display step.
 */
export async function profileCoverage(
  design: ProfileCase,
  sessions: number,
  random: Random,
): Promise<ProfileCounts> {
  const plan = planOf(design);
  const still = { repeat: mm(0), zeroing: mm(0), diameter: mm(0) };
  const [truth] = await profilesOf(
    { ...plan, scatter: still, step: mm(0), diameters: [0] },
    1,
    random,
    12,
  );
  const found = await profilesOf(plan, sessions, random, 4);
  const share = (
    value: (profile: SurfaceProfile) => FittedValue,
    wanted = value(truth).value,
  ): number =>
    found.filter((profile) => holds(value(profile), wanted)).length / sessions;
  const { conic } = design;
  return {
    conic: share((profile) => profile.conic),
    ...(conic === undefined
      ? {}
      : { trueConic: share((profile) => profile.conic, conic) }),
    peakToValley: share((profile) => profile.peakToValley),
    coefficient: share(({ coefficients }) => coefficients.at(-1)!),
    rim: share(({ points }) => points.at(-1)!.departure),
    half: share(({ points }) => points[points.length >> 1].departure),
  };
}
