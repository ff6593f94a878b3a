/**
 * Looks back at the flat that no creep of the zero explains.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { turnOf } from "./_odd_levels.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { saidRadius, saidSag } from "./_said_length.ts";
import {
  meanSize,
  radiusOf,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";

/** Warmth moves a zero by fewer display steps than these within a set. */
const MOST_STEPS = 15;
/** A finer display than this, in mm, does not make hands or feet any better. */
const FINEST = 0.001;
/** And by less than this part of the sag. */
const MOST_PART = 0.02;
/** A look this near the readings of the work was not a look at the flat. */
const LIKE_WORK = 0.05;

/**
 * Says which look at the flat is no creep: zero pressed on the work, the work
 * read for the flat, a turn of the dial, a knock.
 */
export function flatLooks(group: SessionGroup, piece: Piece): Problem[] {
  const { form, unit } = piece;
  const { flat, flatLine, levels, session, zeroShown } = group;
  const shown = Math.abs(zeroShown);
  // The work then reads nothing beyond what "the flat" showed.
  if (shown > MOST_STEPS * levels.step && meanSize(group) < LIKE_WORK * shown) {
    return [
      suspicion(
        group,
        "zero-jumped",
        group.zeroShownLine,
        `the flat shows ${
          saidSag(zeroShown, unit)
        } in session ${session}, as much as the work after it: was the work read, not the flat?`,
        "write the zone that was read, or look at the flat again",
      ),
    ];
  }
  const size = Math.abs(flat);
  const work = meanSize(group);
  const { step } = levels;
  const most = MOST_STEPS * Math.max(step, FINEST);
  if (size <= most || size <= MOST_PART * work) return [];
  const say = (message: string, mend: string): Problem[] => [
    suspicion(group, "zero-jumped", flatLine, message, mend),
  ];
  if (work < size * LIKE_WORK) {
    const radius = radiusOf(-flat, effectiveFeet(group.ring.shape, form), form);
    return say(
      `the work reads about 0 in session ${session} and the flat ${
        saidSag(flat, unit)
      }: was zero pressed on the work?${
        radius === undefined
          ? ""
          : ` Then the sag is ${saidSag(-flat, unit)} and R ${
            saidRadius(radius, unit)
          }`
      }`,
      "zero the gauge on the flat and read again; nothing is worked out of readings the other way round",
    );
  }
  if (Math.abs(size - work) < LIKE_WORK * work) {
    return say(
      `the look at the flat in session ${session} shows ${
        saidSag(flat, unit)
      }, as much as the work: was the work read, not the flat?`,
      "write the zone that was read, or look at the flat again",
    );
  }
  const turn = turnOf(size, group.unit, Math.max(3 * step, 0.003));
  return say(
    `the zero moved by ${saidSag(flat, unit)} in session ${session}, ${
      turn === undefined
        ? "far more than warmth does: was the gauge knocked, or is something under a foot?"
        : "a round amount such as a full turn of a dial: was the gauge knocked, or a turn not counted?"
    } Taking it out in proportion would be wrong`,
    "wipe feet and flat, zero again and read the set again; withdraw its lines",
  );
}
