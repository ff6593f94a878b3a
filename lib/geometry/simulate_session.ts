/**
 * Invented bench sessions by exact contact, with the truth known.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { ContactGauge } from "./contact_gauge.ts";
import { contactSag } from "./contact_sag.ts";
import type { ContactSurface } from "./contact_surface.ts";
import type { SurfaceForm } from "./feet.ts";

/** Where the gauge is set down within a set. */
export interface PlannedPlace {
  /** The zone's name, `flat` for a look at the reference flat. */
  readonly zone: string;
  /** Signed distance along the diameter in mm; 0 on the flat. */
  readonly offset: Millimetres;
}

/** How the scatter of the diameters falls on the zones off centre. */
export type DiameterPattern = "common" | "by zone" | "opposite ends";

/** Standard deviations of what makes readings differ, all in mm of sag. */
export interface SessionScatter {
  /** From reading to reading. */
  readonly repeat: Millimetres;
  /** From zeroing to zeroing, common to a set. */
  readonly zeroing: Millimetres;
  /** From diameter to diameter, off centre. */
  readonly diameter: Millimetres;
  /** How the diameters' scatter falls on the zones; `common` by default. */
  readonly diameterPattern?: DiameterPattern;
  /** Creep from one reading to the next within a set, the same each time. */
  readonly driftPerReading?: Millimetres;
}

/** Everything a session is simulated from. */
export interface SessionPlan {
  /** The work, its height towards the gauge in mm. */
  readonly surface: ContactSurface;
  /** The declared form. */
  readonly form: SurfaceForm;
  /** The gauge as it truly is. */
  readonly gauge: ContactGauge;
  /** Directions of the diameters in degrees, one set (and zeroing) each. */
  readonly diameters: readonly number[];
  /** Places of a set, in the order in which they are read. */
  readonly places: readonly PlannedPlace[];
  /** How foot 1 points: with the rim, or at an angle fixed in the work. */
  readonly foot: "foot out" | "feet out" | number;
  /** Scatter, in mm of sag. */
  readonly scatter: SessionScatter;
  /** Display step in mm of sag; 0 for a display that shows everything. */
  readonly step: Millimetres;
}

/** One simulated reading, with what it would have been. */
export interface SimulatedReading {
  /** Running number of the set, from 0. */
  readonly set: number;
  /** Direction of the diameter in degrees. */
  readonly diameterDegrees: number;
  /** Direction of foot 1 in the work's axes, in degrees from 0 to 360. */
  readonly footDegrees: number;
  /** The zone's name. */
  readonly zone: string;
  /** Signed distance along the diameter in mm. */
  readonly offset: Millimetres;
  /** What the display shows, in mm of sag: a whole number of steps. */
  readonly shown: Millimetres;
  /** The sag without any scatter, in mm. */
  readonly truth: Millimetres;
}

function footDegrees(
  foot: SessionPlan["foot"],
  diameter: number,
  offset: number,
): number {
  const outward = diameter + (offset < 0 ? 180 : 0);
  const direction = foot === "foot out"
    ? outward
    : foot === "feet out"
    ? outward + 180
    : foot;
  return ((direction % 360) + 360) % 360;
}

/** The scatter of one diameter at one place. */
function diameterShift(
  plan: SessionPlan,
  work: Random,
  diameter: number,
  { zone, offset }: PlannedPlace,
): number {
  if (offset === 0) return 0;
  const { diameter: sd, diameterPattern: pattern = "common" } = plan.scatter;
  const own = work.fork(`diameter ${((diameter % 180) + 180) % 180}`);
  const draw = pattern === "by zone"
    ? own.fork(`${zone} ${offset}`).normal()
    : own.normal();
  return sd * (pattern === "opposite ends" && offset < 0 ? -draw : draw);
}

/**
 * Simulates the readings of a session.
 *
 * The sag of each place comes from exact contact. To it are added the zeroing
 * (common to the set), the diameter (off centre; the same diameter read again
 * keeps its own), the creep and the repeat. The display counts whole steps
 * from wherever the zero fell between two of them, so that reading and zero
 * are both rounded.
 *
 * @param plan The work, the gauge, the places and the scatter.
 * @param random Where the session's chance comes from; each source has a
 * branch of its own, so changing one leaves the draws of the others.
 * @param work Where the diameters' scatter comes from; give one stream to all
 * sessions on the same surface, whose diameters stay as they are.
 * @returns The readings in the order in which they were taken.
 * @throws {RangeError} If the gauge cannot rest at a place.
 *
 * @example One set without scatter
 * ```ts
 * import { conicSurface, ringGauge, simulateSession } from "sagbook/geometry/mod.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const [reading] = simulateSession({
 *   surface: conicSurface(2502.75, 0),
 *   form: "concave",
 *   gauge: ringGauge(50, 2.5),
 *   diameters: [0],
 *   places: [{ zone: "centre", offset: mm(0) }],
 *   foot: "foot out",
 *   scatter: { repeat: mm(0), zeroing: mm(0), diameter: mm(0) },
 *   step: mm(0),
 * }, new Random(1));
 * equal(reading.shown.toFixed(9), "0.500000000");
 * ```
 */
export function simulateSession(
  plan: SessionPlan,
  random: Random,
  work: Random = random,
): SimulatedReading[] {
  const { scatter, step } = plan;
  const repeat = random.fork("repeat");
  const zeroing = random.fork("zeroing");
  const phase = random.fork("phase of the zero");
  const readings: SimulatedReading[] = [];
  plan.diameters.forEach((diameter, set) => {
    const zero = scatter.zeroing * zeroing.normal();
    const start = phase.uniform() * step;
    plan.places.forEach((place, order) => {
      const { zone, offset } = place;
      const foot = footDegrees(plan.foot, diameter, offset);
      const along = diameter * Math.PI / 180;
      const onFlat = zone === "flat";
      const truth = onFlat ? 0 : contactSag(
        plan.surface,
        plan.form,
        plan.gauge,
        {
          x: offset * Math.cos(along),
          y: offset * Math.sin(along),
          footDegrees: foot,
        },
      );
      const seen = truth + zero +
        (onFlat ? 0 : diameterShift(plan, work, diameter, place)) +
        (scatter.driftPerReading ?? 0) * (order + 1) +
        scatter.repeat * repeat.normal();
      const shown = step === 0
        ? seen
        : (Math.round((start + seen) / step) - Math.round(start / step)) * step;
      readings.push({
        set,
        diameterDegrees: diameter,
        footDegrees: foot,
        zone,
        offset,
        shown: millimetres(shown),
        truth: millimetres(truth),
      });
    });
  });
  return readings;
}
