/**
 * What a session's mean sag would make more sense as.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Feet } from "../geometry/feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Bench, Ring } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { farFromTarget, turnBetweenSessions } from "./_far_from_target.ts";
import { INCH, near, NEAR_INCH } from "./_odd_levels.ts";
import { saidRadius, saidSag, saidSize } from "./_said_length.ts";
import {
  meanSize,
  NEAR_RING,
  radiusOf,
  type SessionGroup,
  suspicion,
} from "./_session_group.ts";

/** How near where the ring is in the other unit: there is no other reason. */
const NEAR_UNIT = 0.6;
/** A sag within this factor of a nominal one raises no suspicion. */
const PLAUSIBLE = 1.35;

/** What a number may have been written down in, with its size. */
const OTHER_UNITS = {
  mm: [
    { name: "inches", factor: INCH },
    { name: "micrometres", factor: 1e-3 },
    { name: "thousandths of an inch", factor: INCH / 1000 },
  ],
  in: [
    { name: "millimetres", factor: 1 / INCH },
    { name: "thousandths of an inch", factor: 1e-3 },
    { name: "micrometres", factor: 1e-3 / INCH },
  ],
} as const;

/** Sags of the nominal radii under a ring, smallest and largest. */
function nominalSags(
  piece: Piece,
  feet: Feet,
): readonly [number, number] | undefined {
  const sags: number[] = [];
  for (const radius of [piece.target?.radius, piece.startingRadius]) {
    if (radius === undefined) continue;
    try {
      sags.push(sagFromRadius(radius, feet, piece.form));
    } catch {
      // A ring wider than the sphere: places say so, line by line.
    }
  }
  return sags.length === 0 ? undefined : [Math.min(...sags), Math.max(...sags)];
}

function otherUnit(
  group: SessionGroup,
  other: { readonly name: string; readonly factor: number },
  unlike: SessionGroup | undefined,
  feet: Feet,
  { form, unit }: Piece,
): Problem {
  const mean = meanSize(group);
  const asOther = mean * other.factor;
  const times = unlike === undefined ? 1 : meanSize(unlike) / mean;
  const compared = unlike === undefined
    ? ""
    : `, ${Math.max(times, 1 / times).toFixed(2)} times away from ${
      unlike.session === group.session
        ? "the session's other readings"
        : `session ${unlike.session}`
    }`;
  return suspicion(
    group,
    "other-unit",
    group.line,
    `session ${group.session} reads like ${other.name} written down as ${
      group.unit === "mm" ? "millimetres" : "inches"
    }${compared}: as entered the mean sag is ${saidSag(mean, unit)} (R ${
      saidRadius(radiusOf(mean, feet, form), unit)
    }), as ${other.name} ${saidSag(asOther, unit)} (R ${
      saidRadius(radiusOf(asOther, feet, form), unit)
    })`,
    "say which: write the right unit into the unit column; nothing was changed",
    group.count,
  );
}

function tooDeep(group: SessionGroup, feet: Feet, { unit }: Piece): Problem[] {
  return [suspicion(
    group,
    "impossible-sag",
    group.line,
    `the mean of session ${group.session}, ${
      saidSag(meanSize(group), unit)
    }, is more than the foot circle's radius of ${
      saidSize(feet.circleRadius, unit)
    }: no sphere has such a sag under ${ringName(group.ring.id)}`,
    "check unit and ring; nothing was changed",
    group.count,
  )];
}

const RING_SIZES = [
  [1 / INCH ** 2, 1 / INCH, "in inches", "inches for millimetres"],
  [INCH ** 2, INCH, "in millimetres", "millimetres for inches"],
  [4, 2, "its foot circle's diameter", "the diameter for the radius"],
  [3, Math.sqrt(3), "the spacing of its feet", "the spacing for the radius"],
  [
    1 / 4,
    1 / 2,
    "half its foot circle's radius",
    "half the radius for the radius",
  ],
] as const;

function ringSize(
  group: SessionGroup,
  feet: Feet,
  radius: Millimetres,
  wanted: Millimetres,
  { form, unit }: Piece,
): Problem[] {
  const ratio = radius / wanted;
  return RING_SIZES.filter(([factor]) =>
    near(ratio, factor, factor < 0.01 || factor > 100 ? NEAR_UNIT : NEAR_RING)
  ).map(
    ([, part, what, words]) => {
      const circleRadius = millimetres(feet.circleRadius / part);
      const ballRadius = what.startsWith("in ")
        ? millimetres(feet.ballRadius / part)
        : feet.ballRadius;
      const then = radiusOf(
        meanSize(group),
        { circleRadius, ballRadius },
        form,
      );
      return suspicion(
        group,
        "ring-size",
        group.line,
        `with ${ringName(group.ring.id)} session ${group.session} gives R ${
          saidRadius(radius, unit)
        }, ${
          ratio < 0.01 ? ratio.toPrecision(2) : ratio.toFixed(2)
        } times the nominal ${
          saidRadius(wanted, unit)
        }: is the radius given for the ring (${
          saidSize(feet.circleRadius, unit)
        }) really ${what}? Then r is ${saidSize(circleRadius, unit)} and R ${
          saidRadius(then, unit)
        }`,
        `look whether bench.json takes ${words} of ${
          ringName(group.ring.id)
        }; nothing was changed`,
      );
    },
  );
}

function otherRing(
  group: SessionGroup,
  radius: Millimetres,
  wanted: Millimetres,
  { form, unit }: Piece,
  rings: readonly Ring[],
): Problem[] {
  return rings.filter((ring) => ring !== group.ring).flatMap((ring) => {
    const feet = effectiveFeet(ring.shape, form);
    const then = radiusOf(meanSize(group), feet, form);
    if (then === undefined || !near(then, wanted, NEAR_RING)) return [];
    return [suspicion(
      group,
      "other-ring",
      group.line,
      `with ${ringName(group.ring.id)} session ${group.session} gives R ${
        saidRadius(radius, unit)
      }; with ${ringName(ring.id)} it would be ${
        saidRadius(then, unit)
      }, close to the nominal ${saidRadius(wanted, unit)}`,
      "look which ring was on the gauge; nothing was changed",
    )];
  });
}

/** Whether a sag under a ring fits what the piece should have. */
export function fitterOf(ring: Ring, piece: Piece): (sag: number) => boolean {
  const nominal = nominalSags(piece, effectiveFeet(ring.shape, piece.form));
  return (sag) =>
    nominal !== undefined && sag >= nominal[0] / PLAUSIBLE &&
    sag <= nominal[1] * PLAUSIBLE;
}

/**
 * Looks whether a session's sag fits better in the other unit, under another
 * ring, or under the same ring with its size misread.
 *
 * A sag that fits the target, the starting radius or anything between raises
 * no suspicion. Where the piece states neither, only two sessions under one
 * ring that stand about 25.4 times apart do.
 */
export function unitOrRing(
  group: SessionGroup,
  extremes: readonly (SessionGroup | undefined)[],
  before: SessionGroup | undefined,
  piece: Piece,
  bench: Bench,
): Problem[] {
  const { form } = piece;
  const mean = meanSize(group);
  const feet = effectiveFeet(group.ring.shape, form);
  const nominal = nominalSags(piece, feet);
  const fits = fitterOf(group.ring, piece);
  if (mean === 0) return [];
  const turned = nominal === undefined
    ? []
    : turnBetweenSessions(group, before, nominal, piece);
  if (fits(mean) || turned.length > 0) return turned;
  const [swapped, ...rest] = OTHER_UNITS[group.unit];
  const unlike = extremes.find((one) =>
    one !== undefined && one !== group &&
    near(meanSize(one) / mean, swapped.factor, NEAR_INCH)
  );
  const other = nominal === undefined
    ? unlike === undefined ? undefined : swapped
    : [swapped, ...rest].find(({ factor }) => fits(mean * factor));
  if (other !== undefined) {
    const against = other === swapped ? unlike : undefined;
    return [otherUnit(group, other, against, feet, piece)];
  }
  if (mean > feet.circleRadius) return tooDeep(group, feet, piece);
  const radius = radiusOf(mean, feet, form);
  const wanted = piece.target?.radius ?? piece.startingRadius;
  if (radius === undefined || wanted === undefined) return [];
  const found = [
    ...ringSize(group, feet, radius, wanted, piece),
    ...otherRing(group, radius, wanted, piece, bench.rings),
  ];
  return found.length > 0 || nominal === undefined
    ? found
    : farFromTarget(group, radius, nominal, piece, PLAUSIBLE);
}
