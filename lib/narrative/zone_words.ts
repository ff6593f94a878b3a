/**
 * Zones in words, with what was not read said.
 *
 * @module
 */
import { type Place, SAME_DISTANCE } from "../zones/place.ts";

/** A zone of a session as far as its words need it. */
export interface NamedZone {
  /** The place. */
  readonly place: Pick<Place, "label" | "distance">;
}

/**
 * Whether a zone is the centre of the work.
 *
 * @param zone The zone.
 * @returns True within half a millimetre of the centre.
 *
 * @example
 * ```ts
 * import { isCentre } from "sagbook/narrative/zone_words.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(isCentre({ place: { label: "20 %", distance: mm(18) } }), false);
 * ```
 */
export function isCentre({ place: { distance } }: NamedZone): boolean {
  return distance <= SAME_DISTANCE;
}

/** A zone in a sentence: the centre as that, another by its name. */
export function zoneInWords(zone: NamedZone): string {
  return isCentre(zone) ? "the centre" : zone.place.label;
}

/**
 * Names the two ends of the zones that were read.
 *
 * A session need not hold the centre or the edge; then the zones that stand for
 * them are named, and the words do not claim more.
 *
 * @param zones The zones from the centre outward, two or more.
 * @returns The inner and the outer one in words, and what was not read.
 *
 * @example
 * ```ts
 * import { endsInWords } from "sagbook/narrative/zone_words.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const zone = (label: string, distance: number) =>
 *   ({ place: { label, distance: mm(distance) } });
 * deepEqual(endsInWords([zone("25% reach", 17), zone("edge", 68)]), {
 *   inner: "the zone nearest the centre, 25% reach,",
 *   outer: "the edge",
 *   unread: "the centre itself was not read",
 * });
 * ```
 */
export function endsInWords(
  zones: readonly NamedZone[],
): { inner: string; outer: string; unread?: string } {
  const [first, last] = [zones[0], zones[zones.length - 1]];
  const { label } = last.place;
  const centre = isCentre(first);
  const edge = /^edge\b/.test(label);
  const unread = [
    ...(centre ? [] : ["the centre"]),
    ...(edge ? [] : ["the edge"]),
  ];
  return {
    inner: centre
      ? "the centre"
      : `the zone nearest the centre, ${first.place.label},`,
    outer: edge ? `the ${label}` : `the outermost zone read, ${label},`,
    ...(unread.length === 0 ? {} : {
      unread: `${unread.join(" and ")} itself was not read`
        .replace(/^(the centre and the edge) itself was/, "$1 themselves were"),
    }),
  };
}
