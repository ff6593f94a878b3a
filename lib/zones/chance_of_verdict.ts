/**
 * The chance of each verdict on a planned session whose truth is known.
 *
 * @module
 */
import type {
  PlannedPlace,
  SessionScatter,
} from "../geometry/simulate_session.ts";
import type { Random } from "../numerics/random.ts";
import type { Reading } from "../records/reading.ts";
import { millimetres } from "../units/length.ts";
import { compareZones } from "./compare_zones.ts";
import { correctDrift } from "./drift.ts";
import { type Place, placesOf } from "./place.ts";
import { setTable } from "./set_table.ts";
import { judge } from "./sphericity.ts";
import { compareEnds } from "./two_ends.ts";

/** A planned session with three ball feet, its truth known; lengths in mm. */
export interface VerdictPlan {
  /** Directions of the diameters in degrees, one set and zeroing each. */
  readonly diameters: readonly number[];
  /** Places of a set in the order read, looks at the flat included. */
  readonly places: readonly PlannedPlace[];
  /** How foot 1 points off centre. */
  readonly foot: "foot out" | "feet out";
  /**
   * Sag without scatter, a row for each set and a column for each place; only
   * differences matter, and what stands for the flat is not used.
   */
  readonly sags: readonly (readonly number[])[];
  /** What makes readings differ. */
  readonly scatter: SessionScatter;
  /** Display step, at least 0. */
  readonly step: number;
  /** Largest good difference of sag, above 0. */
  readonly tolerance: number;
}

/** How often each verdict comes out; the three add up to 1. */
export interface VerdictChances {
  /** Chance of "within". */
  readonly within: number;
  /** Chance of "outside", by zones or by ends. */
  readonly outside: number;
  /** Chance of "undecided". */
  readonly undecided: number;
  /** How many sessions were simulated. */
  readonly sessions: number;
}

/** Sessions simulated unless stated. */
const SESSIONS = 2000;

/** The readings of a plan but for their sags, and where they were taken. */
interface Layout {
  readonly blank: readonly Reading[];
  readonly onWork: readonly number[];
  readonly places: readonly Place[];
  readonly placeOf: readonly number[];
}

function layoutOf(plan: VerdictPlan): Layout {
  const blank = plan.diameters.flatMap((diameterDegrees, set) =>
    plan.places.map(({ zone, offset }, k): Reading => ({
      file: "",
      line: 0,
      order: set * plan.places.length + k,
      session: "",
      ring: "",
      zeroing: `${set}`,
      diameterDegrees,
      foot: { kind: plan.foot },
      on: zone === "flat" ? "flat" : "work",
      zone: { label: zone, distance: millimetres(Math.abs(offset)) },
      offset,
      sag: millimetres(0),
      unit: "mm",
    }))
  );
  const onWork = blank.flatMap(({ on }, k) => on === "work" ? [k] : []);
  const { places, placeOf } = placesOf(onWork.map((k) => blank[k]), "balls");
  return { blank, onWork, places, placeOf };
}

/** One session: differences, ends and the verdict on them. */
function judgedOnce(
  { blank, onWork, places, placeOf }: Layout,
  shown: readonly number[],
  step: number,
  tolerance: number,
): {
  readonly verdict: "within" | "outside" | "undecided";
  readonly zones: number;
  readonly ends: number;
} {
  const readings = blank.map((one, k) => ({
    ...one,
    sag: millimetres(shown[k]),
  }));
  const { sag, progress, left } = correctDrift(readings, step);
  const sets = setTable(
    onWork.map((k) => readings[k]),
    onWork.map((k) => sag[k]),
    places,
    placeOf,
    onWork.map((k) => progress[k]),
  );
  const scope = "any diameter";
  const statements = places.length * (places.length - 1) / 2 + 1;
  const ends = compareEnds(sets, places, step, statements, scope, left);
  const differences = compareZones(
    sets,
    places.length,
    step,
    scope,
    ends === undefined ? 0 : 1,
    left,
  );
  return {
    verdict: judge(differences, ends, tolerance).verdict,
    zones: Math.max(0, ...differences.map(({ mean }) => Math.abs(mean))),
    ends: ends?.amplitude ?? 0,
  };
}

/**
 * Finds how far a planned session's surface truly is from a sphere, as its
 * readings would show it if nothing scattered and no display rounded.
 *
 * @param plan The session.
 * @returns The largest difference of sag between two zones and between the two
 * ends of a diameter, in mm, both at least 0.
 *
 * @example
 * ```ts
 * import { trueDepartures } from "sagbook/zones/chance_of_verdict.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const none = { repeat: mm(0), zeroing: mm(0), diameter: mm(0) };
 * const plan = {
 *   diameters: [0, 90],
 *   places: [{ zone: "centre", offset: mm(0) }, { zone: "edge", offset: mm(60) }],
 *   foot: "foot out", sags: [[0.75, 0.5], [0.75, 0.5]],
 *   scatter: none, step: 0, tolerance: 0.01,
 * } as const;
 * deepEqual(trueDepartures(plan), { zones: 0.25, ends: 0 });
 * ```
 */
export function trueDepartures(
  plan: VerdictPlan,
): { readonly zones: number; readonly ends: number } {
  const layout = layoutOf(plan);
  const shown = layout.blank.map(({ on, order }) =>
    on === "flat" ? 0 : sagAt(plan, order)
  );
  const { zones, ends } = judgedOnce(layout, shown, 0, plan.tolerance);
  return { zones, ends };
}

function sagAt({ sags, places }: VerdictPlan, order: number): number {
  return sags[Math.floor(order / places.length)][order % places.length];
}

/** What one simulated session's display shows, in mm. */
function shownOnce(
  plan: VerdictPlan,
  { blank }: Layout,
  random: Random,
): number[] {
  const { scatter, step, places } = plan;
  const { driftPerReading = 0, diameterPattern = "common" } = scatter;
  let [zero, start, turn] = [0, 0, 0];
  return blank.map(({ on, offset, order }) => {
    const inSet = order % places.length;
    if (inSet === 0) {
      zero = scatter.zeroing * random.normal();
      turn = scatter.diameter * random.normal();
      start = step * random.uniform();
    }
    const own = offset === 0
      ? 0
      : diameterPattern === "by zone"
      ? scatter.diameter * random.normal()
      : diameterPattern === "opposite ends"
      ? Math.sign(offset) * turn
      : turn;
    const seen = (on === "flat" ? 0 : sagAt(plan, order) + own) + zero +
      driftPerReading * (inSet + 1) + scatter.repeat * random.normal();
    return step === 0
      ? seen
      : (Math.round((start + seen) / step) - Math.round(start / step)) * step;
  });
}

/**
 * Finds the chance of each verdict on a planned session.
 *
 * Whole sessions are simulated from the sags given, with every source of
 * scatter, the drift of the zero and the looks at the flat, each reading
 * rounded by the display; each is then judged by the very rule of the report:
 * drift out, ends of diameters compared, zones compared within sets. The
 * standard error of a chance is at most 1.1 points at the default number of
 * sessions.
 *
 * Diameters must differ from set to set: each draws its own scatter here.
 *
 * @param plan The session and the truth.
 * @param random Where chance comes from.
 * @param sessions How many sessions to simulate, at least 1.
 * @returns Chances between 0 and 1.
 * @throws {RangeError} If the sags do not fit the sets and places, or a
 * diameter comes twice.
 *
 * @see The stated chances are held against fresh sessions by exact contact in
 * `tests/studies/RESULTS.md`.
 *
 * @example An edge 20 tolerances low does not stay hidden
 * ```ts
 * import { chanceOfVerdict } from "sagbook/zones/chance_of_verdict.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const plan = {
 *   diameters: [0, 45, 90, 135],
 *   places: [{ zone: "centre", offset: mm(0) }, { zone: "edge", offset: mm(60) }],
 *   foot: "foot out", sags: new Array(4).fill([0.75, 0.65]),
 *   scatter: { repeat: mm(0.001), zeroing: mm(0.002), diameter: mm(0) },
 *   step: 0.001, tolerance: 0.005,
 * } as const;
 * equal(chanceOfVerdict(plan, new Random(1), 50).outside, 1);
 * ```
 */
export function chanceOfVerdict(
  plan: VerdictPlan,
  random: Random,
  sessions: number = SESSIONS,
): VerdictChances {
  const { diameters, places, sags, step, tolerance } = plan;
  if (
    sags.length !== diameters.length ||
    sags.some((row) => row.length !== places.length)
  ) {
    throw new RangeError(
      `Cannot find the chance of a verdict as there must be a sag for each of ${diameters.length} sets and ${places.length} places: current value is ${sags.length} rows`,
    );
  }
  if (new Set(diameters.map((one) => one % 180)).size < diameters.length) {
    throw new RangeError(
      `Cannot find the chance of a verdict as every set must have a diameter of its own: current value is ${
        diameters.join(", ")
      } degrees`,
    );
  }
  const layout = layoutOf(plan);
  let [within, outside] = [0, 0];
  for (let session = 0; session < sessions; session++) {
    const shown = shownOnce(plan, layout, random);
    const { verdict } = judgedOnce(layout, shown, step, tolerance);
    if (verdict === "within") within++;
    else if (verdict === "outside") outside++;
  }
  return {
    within: within / sessions,
    outside: outside / sessions,
    undecided: (sessions - within - outside) / sessions,
    sessions,
  };
}
