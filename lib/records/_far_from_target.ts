/**
 * Sessions that are farther off than grinding goes, and what may be behind it.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { near, turnOf } from "./_odd_levels.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { saidRadius, saidSag } from "./_said_length.ts";
import {
  meanSize,
  NEAR_RING,
  radiusOf,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";

/** The smallest and the largest sag that the piece is meant to have, in mm. */
type Range = readonly [number, number];

/** Past the target by less is an honest overshoot. */
const OVERSHOOT = 1.05;

/** True where a sag lies beyond what the piece should pass through. */
function beyond(
  sag: number,
  [low, high]: Range,
  { startingRadius }: Piece,
  by: number,
): boolean {
  return sag > high * by || (startingRadius !== undefined && sag < low / by);
}

/**
 * Says where a session differs from the one before by the full turn of a dial,
 * and is past the target by it.
 */
export function turnBetweenSessions(
  group: SessionGroup,
  before: SessionGroup | undefined,
  nominal: Range,
  piece: Piece,
): Problem[] {
  if (before === undefined || before.session === group.session) return [];
  const [mean, earlier] = [meanSize(group), meanSize(before)];
  const step = Math.max(group.levels.step, before.levels.step);
  const turn = turnOf(mean - earlier, group.unit, Math.max(3 * step, 0.003));
  if (turn === undefined || !beyond(mean, nominal, piece, OVERSHOOT)) return [];
  const { form, unit } = piece;
  const feet = effectiveFeet(group.ring.shape, form);
  return [suspicion(
    group,
    "turn-of-the-dial",
    group.line,
    `session ${group.session} reads ${saidSag(turn, unit)} ${
      mean > earlier ? "more" : "less"
    } than session ${before.session}, a round amount such as a full turn of a dial, and that takes it past the target: as entered R is ${
      saidRadius(radiusOf(mean, feet, form), unit)
    }, without the turn ${
      saidRadius(
        radiusOf(mean > earlier ? mean - turn : mean + turn, feet, form),
        unit,
      )
    }`,
    "count the turns of the small hand and read again; nothing was changed",
    group.count,
  )];
}

/** A sag the display may have meant, one turn of a dial away. */
function turnsAway(
  mean: number,
  [low, high]: Range,
): { sag: number; turn: number; how: string } | undefined {
  for (const turn of [1, 0.5, 0.2]) {
    const found = [
      { sag: mean - turn, how: "one turn too many was counted" },
      { sag: mean + turn, how: "one turn was not counted" },
      { sag: turn - mean, how: "the dial runs backward" },
    ].find(({ sag }) => sag >= 0.98 * low && sag <= 1.02 * high);
    if (found !== undefined) return { ...found, turn };
  }
  return undefined;
}

/**
 * Says where a session lies far beyond the target, and names what would
 * explain it: a focal length taken for a radius or the other way round, a turn
 * of the dial.
 */
export function farFromTarget(
  group: SessionGroup,
  radius: number,
  nominal: Range,
  piece: Piece,
  far: number,
): Problem[] {
  const { form, unit, target } = piece;
  const wanted = target?.radius;
  const mean = meanSize(group);
  const say = (code: string, message: string, mend: string): Problem[] => [
    suspicion(group, code, group.line, message, mend, group.count),
  ];
  if (wanted !== undefined && near(radius, 2 * wanted, NEAR_RING)) {
    return target?.statedAs !== "radius" ? [] : say(
      "focal-for-radius",
      `session ${group.session} gives R ${
        saidRadius(radius, unit)
      }, twice the target of ${
        saidRadius(wanted, unit)
      }: is the target's radius really a focal length? The focal length is half the radius`,
      'if so, write it as "focal_length" in the target of piece.json; if the work is only half way there, state "starting_radius"',
    );
  }
  if (!beyond(mean, nominal, piece, far)) return [];
  const gives = `session ${group.session} gives R ${saidRadius(radius, unit)}`;
  if (
    wanted !== undefined && target?.statedAs !== "radius" &&
    near(radius, wanted / 2, NEAR_RING)
  ) {
    return say(
      "focal-for-radius",
      `${gives}, half of the ${
        saidRadius(wanted, unit)
      } that the stated focal length or ratio asks for: was the target's radius given as its focal length? The radius is twice the focal length`,
      'if so, write it as "radius" in the target of piece.json',
    );
  }
  const turn = turnsAway(mean, nominal);
  const feet = effectiveFeet(group.ring.shape, form);
  const limits = [
    radiusOf(nominal[1], feet, form),
    radiusOf(nominal[0], feet, form),
  ];
  const [low, high] = limits.map((one) => saidRadius(one, unit));
  return say(
    "far-from-target",
    `${gives}, far beyond ${
      low === high ? `the target of ${low}` : `the range of ${low} to ${high}`
    }${
      turn === undefined
        ? ""
        : `; if ${turn.how} (${saidSag(turn.turn, unit)}), the sag is ${
          saidSag(turn.sag, unit)
        } and R ${saidRadius(radiusOf(turn.sag, feet, form), unit)}`
    }`,
    `check unit, ring, zero and the turns of the dial, or the target in piece.json; if the radius is right and work starts anew from there, state it: "starting_radius": "${
      saidRadius(radius, unit)
    }" in piece.json; nothing was changed`,
  );
}
