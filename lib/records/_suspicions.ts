/**
 * What a session's mean sag would make more sense as.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Feet, SurfaceForm } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Bench, Ring } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { saidRadius, saidSag, saidSize } from "./_said_length.ts";
import { meanSize, type SessionGroup, suspicion } from "./_session_group.ts";

/** Millimetres in an inch. */
export const INCH = 25.4;
/** How near a factor must come to 25.4 to be the mark of inches. */
export const NEAR_INCH = 0.15;
/** How near a factor must come to a ring mix-up's. */
const NEAR_RING = 0.03;
/** A sag within this factor of a nominal one raises no suspicion. */
const PLAUSIBLE = 1.35;

/** A picometre: below it a surface is flat to any gauge, and R overflows. */
export const SMALLEST_SAG = 1e-9;

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

/** True when a ratio is within a part of a factor. */
export function near(ratio: number, factor: number, within: number): boolean {
  return Math.abs(ratio / factor - 1) <= within;
}

/** A radius, where the sag gives one. */
export function radiusOf(
  sag: number,
  feet: Feet,
  form: SurfaceForm,
): Millimetres | undefined {
  if (!(sag >= SMALLEST_SAG) || sag > feet.circleRadius) return undefined;
  return radiusFromSag(millimetres(sag), feet, form);
}

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
    : `, ${
      Math.max(times, 1 / times).toFixed(2)
    } times away from session ${unlike.session}`;
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

function tooDeep(group: SessionGroup, feet: Feet, { unit }: Piece): Problem {
  return suspicion(
    group,
    "impossible-sag",
    group.line,
    `the mean of session ${group.session}, ${
      saidSag(meanSize(group), unit)
    }, is more than the foot circle's radius of ${
      saidSize(feet.circleRadius, unit)
    }: no sphere has such a sag under ring ${group.ring.id}`,
    "check unit and ring; nothing was changed",
    group.count,
  );
}

const RING_SIZES = [
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
  return RING_SIZES.filter(([factor]) => near(ratio, factor, NEAR_RING)).map(
    ([, part, what, words]) => {
      const circleRadius = millimetres(feet.circleRadius / part);
      const then = radiusOf(meanSize(group), { ...feet, circleRadius }, form);
      return suspicion(
        group,
        "ring-size",
        group.line,
        `with ring ${group.ring.id} session ${group.session} gives R ${
          saidRadius(radius, unit)
        }, ${ratio.toFixed(2)} times the nominal ${
          saidRadius(wanted, unit)
        }: is the radius given for the ring (${
          saidSize(feet.circleRadius, unit)
        }) really ${what}? Then r is ${saidSize(circleRadius, unit)} and R ${
          saidRadius(then, unit)
        }`,
        `look whether bench.json takes ${words} of ring ${group.ring.id}; nothing was changed`,
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
      `with ring ${group.ring.id} session ${group.session} gives R ${
        saidRadius(radius, unit)
      }; with ring ${ring.id} it would be ${
        saidRadius(then, unit)
      }, close to the nominal ${saidRadius(wanted, unit)}`,
      "look which ring was on the gauge; nothing was changed",
    )];
  });
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
  piece: Piece,
  bench: Bench,
): Problem[] {
  const { form } = piece;
  const mean = meanSize(group);
  const feet = effectiveFeet(group.ring.shape, form);
  const nominal = nominalSags(piece, feet);
  const fits = (sag: number) =>
    nominal !== undefined && sag >= nominal[0] / PLAUSIBLE &&
    sag <= nominal[1] * PLAUSIBLE;
  if (mean === 0 || fits(mean)) return [];
  const [swapped, ...rest] = OTHER_UNITS[group.unit];
  const unlike = extremes.find((one) =>
    one !== undefined && one !== group &&
    near(meanSize(one) / mean, swapped.factor, NEAR_INCH)
  );
  const other = nominal === undefined
    ? unlike === undefined ? undefined : swapped
    : [swapped, ...rest].find(({ factor }) => fits(mean * factor));
  if (other !== undefined) {
    return [
      otherUnit(
        group,
        other,
        other === swapped ? unlike : undefined,
        feet,
        piece,
      ),
    ];
  }
  if (mean > feet.circleRadius) return [tooDeep(group, feet, piece)];
  const radius = radiusOf(mean, feet, form);
  const wanted = piece.target?.radius ?? piece.startingRadius;
  if (radius === undefined || wanted === undefined) return [];
  return [
    ...ringSize(group, feet, radius, wanted, piece),
    ...otherRing(group, radius, wanted, piece, bench.rings),
  ];
}
