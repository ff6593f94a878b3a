/**
 * Which place on the work a reading belongs to.
 *
 * @module
 */
import { relativeFootDegrees } from "../geometry/foot_direction.ts";
import type { RingShape } from "../geometry/ring.ts";
import { type ItemMaker, itemMaker } from "../numerics/lazy_list.ts";
import type { Reading } from "../records/reading.ts";
import { type Millimetres, millimetres } from "../units/length.ts";

/**
 * How the feet stood as seen from the rim that is nearest.
 *
 * `foot out`: one foot points to it, or a bar lies along the radius; `feet
 * out`: two do; `across`: a bar lies across the radius; `turned`: none of
 * these; `unknown`: nobody wrote it down; `any`: it does not matter, at the
 * centre or with a ring that has no separate feet.
 */
export type FootClass =
  | "any"
  | "foot out"
  | "feet out"
  | "across"
  | "turned"
  | "unknown";

/** A place on the work where the gauge stood, in one way of standing. */
export interface Place {
  /** Unique within a session. */
  readonly id: string;
  /** The user's word for it, with the feet's direction where two differ. */
  readonly label: string;
  /** Distance of the gauge's axis from the centre of the work, in mm. */
  readonly distance: Millimetres;
  /** How the feet stood. */
  readonly foot: FootClass;
  /**
   * Mean cosine of three times the angle between a foot and the outward
   * radius, on which even terms of the surface depend: 1 one foot out, -1 two
   * feet out. Absent where the direction of some reading is unknown.
   */
  readonly threefold?: number;
}

/** Within how many degrees a foot counts as pointing straight out. */
const FOOT_TOLERANCE_DEGREES = 15;

/** Distances from the centre closer than this, in mm, are one. */
export const SAME_DISTANCE = 0.5;

/**
 * Says how the feet of one reading stood as seen from the nearest rim.
 *
 * Foot 1 is given in the work's own axes and three feet repeat each 120°, so
 * the same ring turned by nothing stands foot out at one end of a diameter and
 * feet out at the other. Directions within 15° count as straight.
 *
 * @param reading A reading of the work.
 * @param kind The kind of ring; a sharp edge has no feet to turn.
 * @returns The class; `any` at the centre and for a ring without feet.
 *
 * @example One ring, left as it is, at both ends of the same diameter
 * ```ts
 * import { footClass } from "sagbook/zones/place.ts";
 * import { equal } from "node:assert/strict";
 *
 * const at = (offset: number) => ({
 *   offset,
 *   diameterDegrees: 30,
 *   foot: { kind: "angle", degrees: 30 },
 * } as unknown as Parameters<typeof footClass>[0]);
 * equal(footClass(at(60), "balls"), "foot out");
 * equal(footClass(at(-60), "balls"), "feet out");
 * ```
 */
export function footClass(
  reading: Pick<Reading, "offset" | "diameterDegrees" | "foot">,
  kind: RingShape["kind"],
): FootClass {
  if (kind === "edge" || reading.offset === 0) return "any";
  const { foot, diameterDegrees, offset } = reading;
  const relative = relativeFootDegrees(foot, diameterDegrees, offset);
  if (relative === undefined) return "unknown";
  const period = kind === "bar" ? 180 : 120;
  const turn = relative % period;
  if (Math.min(turn, period - turn) <= FOOT_TOLERANCE_DEGREES) {
    return "foot out";
  }
  if (Math.abs(turn - period / 2) > FOOT_TOLERANCE_DEGREES) return "turned";
  return kind === "bar" ? "across" : "feet out";
}

/**
 * Sorts readings of the work into the places they were taken at.
 *
 * Readings at the same distance from the centre (within 0.5 mm) belong
 * together whatever they are called, and apart when the feet stood otherwise,
 * since a fault of the edge shows differently then. The two ends of a diameter
 * are one place here; they are compared before they are averaged.
 *
 * @param readings Readings of the work, of one session and ring.
 * @param kind The kind of ring.
 * @returns The places from the centre outward, and the place of each reading
 * in the order given.
 *
 * @example
 * ```ts
 * import { placesOf } from "sagbook/zones/place.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const at = (offset: number, label: string) => ({
 *   offset,
 *   diameterDegrees: 0,
 *   foot: { kind: "foot out" },
 *   zone: { label, distance: Math.abs(offset) },
 * } as unknown as Parameters<typeof placesOf>[0][number]);
 * const { places } = placesOf([at(40, "edge"), at(0, "centre")], "balls");
 * deepEqual(places.map((place) => place.label), ["centre", "edge"]);
 * ```
 */
export function placesOf(
  readings: readonly Pick<
    Reading,
    "offset" | "diameterDegrees" | "foot" | "zone"
  >[],
  kind: RingShape["kind"],
): { places: readonly Place[]; placeOf: readonly number[] } {
  const at = itemMaker(readings);
  const count = readings.length;
  const distances = new Float64Array(count);
  const classes: FootClass[] = [];
  for (let index = 0; index < count; index++) {
    const reading = at(index);
    distances[index] = reading.zone.distance;
    classes.push(footClass(reading, kind));
  }
  const order = classes.map((_, index) => index).sort((a, b) =>
    distances[a] - distances[b] ||
    (classes[a] < classes[b] ? -1 : classes[a] > classes[b] ? 1 : a - b)
  );
  const found: { first: number; foot: FootClass; members: number[] }[] = [];
  for (const index of order) {
    const distance = distances[index];
    const home = found.find((place) =>
      place.foot === classes[index] &&
      distance - distances[place.first] <= SAME_DISTANCE
    );
    if (home) home.members.push(index);
    else {
      found.push({ first: index, foot: classes[index], members: [index] });
    }
  }
  const placeOf = new Array<number>(count);
  const places = found.map(({ first, foot, members }, number): Place => {
    for (const member of members) placeOf[member] = number;
    const distance = distances[first];
    const earliest = members.reduce((a, b) => Math.min(a, b));
    const label = at(earliest).zone.label;
    const threefold = meanThreefold(at, members);
    const split = found.some((other, at) =>
      at !== number && other.foot !== foot &&
      Math.abs(distances[other.first] - distance) <= SAME_DISTANCE
    );
    return {
      id: `${distance.toFixed(2)} ${foot}`,
      label: split ? `${label} (${foot})` : label,
      distance: millimetres(distance),
      foot,
      ...(threefold === undefined ? {} : { threefold }),
    };
  });
  return { places, placeOf };
}

function meanThreefold(
  at: ItemMaker<Pick<Reading, "offset" | "diameterDegrees" | "foot">>,
  members: readonly number[],
): number | undefined {
  let sum = 0;
  for (const member of members) {
    const { foot, diameterDegrees, offset } = at(member);
    const relative = relativeFootDegrees(foot, diameterDegrees, offset);
    if (relative === undefined) return undefined;
    sum += Math.cos(3 * relative * Math.PI / 180);
  }
  return sum / members.length;
}
