/**
 * From the name of a zone to millimetres on this piece under this ring.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import { contactCircleRadius } from "../geometry/contact_circle.ts";
import type { FootDirection } from "../geometry/feet.ts";
import { relativeFootDegrees } from "../geometry/foot_direction.ts";
import { reach } from "../geometry/reach.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Ring } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Zone } from "./reading.ts";
import { saidPlace } from "./_said_length.ts";
import { isMiddle, type ZoneName } from "./_zone_name.ts";

/** Where the gauge stood, or why it cannot have stood there. */
export type Place =
  | {
    readonly kind: "place";
    readonly zone: Zone;
    readonly offset: Millimetres;
    /** Where the zone's own name would be, when the offset says otherwise. */
    readonly named?: Millimetres;
    /** Why the place is doubtful though it is used. */
    readonly doubt?: string;
  }
  | {
    readonly kind: "refused";
    readonly code: "ring-too-large" | "beyond-reach" | "no-place";
    readonly message: string;
    readonly expected?: string;
    readonly mend: string;
  };

/** What a place is worked out from. */
export interface PlaceQuestion {
  readonly piece: Piece;
  readonly ring: Ring;
  /** A radius of curvature for the contact points; a nominal one will do. */
  readonly radius: Millimetres;
  readonly foot: FootDirection;
  readonly diameterDegrees?: number;
  /** What the zone cell says, if it names a place. */
  readonly name?: ZoneName;
  /** The zone cell as typed. */
  readonly typed: string;
  /** What the offset cell says. */
  readonly offset?: Millimetres;
}

const ZERO = millimetres(0);

/** Largest difference between name and offset that goes without a word, in mm. */
const SAME_PLACE = 1;

/** How far from the work's centre the outermost foot may stand, in mm. */
function outermostFoot(
  kind: Ring["shape"]["kind"],
  contact: number,
  size: number,
  relative: number | undefined,
): number {
  if (relative === undefined || kind === "edge") return size + contact;
  const turns = kind === "bar" ? [0, 180] : [0, 120, 240];
  return Math.max(...turns.map((turn) => {
    const along = Math.cos((relative + turn) * Math.PI / 180);
    return Math.sqrt(size ** 2 + contact ** 2 + 2 * size * contact * along);
  }));
}

function directionWords(foot: FootDirection): string {
  switch (foot.kind) {
    case "angle":
      return "with the feet as recorded";
    case "unknown":
      return "with the feet's direction unknown";
    default:
      return `with the ${foot.kind}`;
  }
}

/** What to do about a name that says no place. */
function mendOfName(typed: string): string {
  if (isMiddle(typed)) {
    return "it may be the centre or half way to the rim: write centre, or 50%";
  }
  if (/^[+-]?\d+$/.test(typed)) {
    return `write ${typed}% for a percentage, ${typed} mm for a length`;
  }
  return /^\d{1,2}[- ][a-z]{3}|^\d{4}-\d\d-\d\d|^\d{1,2}\/\d{1,2}\/\d/i.test(
      typed,
    )
    ? "a spreadsheet made a date of a fraction: write it as a percentage, such as 50%"
    : "write one of these, or give the offset";
}

function labelOf(question: PlaceQuestion, offset: Millimetres): string {
  const { name, typed, piece } = question;
  if (name?.kind === "edge") return "edge";
  if (name?.kind === "fraction") return name.label;
  if (name === undefined && typed !== "") return typed;
  if (offset === 0) return "centre";
  const size = piece.unit === "in"
    ? `${Number((Math.abs(offset) / 25.4).toFixed(4))} in`
    : `${Number(Math.abs(offset).toFixed(3))} mm`;
  return size;
}

/**
 * Why a named zone past the reach may still be right: nobody wrote down where
 * the feet pointed, and with two feet out they all stood on good surface. A
 * stated offset gets no such benefit of the doubt, for it can be corrected.
 */
function onlyWithFeetOut(
  question: PlaceQuestion,
  size: number,
  contact: number,
  usable: number,
  limit: number,
): string | undefined {
  const { piece, ring, radius, foot, diameterDegrees } = question;
  const said = (length: number) => saidPlace(length, piece.unit);
  const relative = relativeFootDegrees(
    foot,
    diameterDegrees,
    millimetres(size),
  );
  if (relative !== undefined) return undefined;
  const farthest = reach(
    ring.shape,
    piece.form,
    radius,
    millimetres(usable),
    ring.shape.kind === "bar" ? 90 : 180,
  );
  if (farthest === undefined || size > farthest * (1 + 1e-9)) return undefined;
  return `${said(size)} from the centre lies past the reach of ${
    ringName(ring.id)
  }, ${said(limit)} with one foot out (that foot would stand ${
    said(size + contact)
  } out, on the bevel or past it); it is within the ${
    said(farthest)
  } with two feet out, and nothing says how the feet stood`;
}

/**
 * Turns the name of a zone and an offset into a place on the work.
 *
 * A fraction is of the half diameter unless it says reach; edge is the reach
 * for the feet's direction; a stated offset wins over the name. A place at
 * which a foot may hang over the bevel is refused, and so is every place
 * under a ring larger than the work.
 */
export function resolvePlace(question: PlaceQuestion): Place {
  const { piece, ring, radius, foot, diameterDegrees, name } = question;
  const said = (length: number) => saidPlace(length, piece.unit);
  const half = piece.diameter / 2;
  const usable = half - piece.bevel - piece.margin;
  const contact = contactCircleRadius(ring.shape, piece.form, radius);
  const reachTowards = (sign: number) =>
    usable <= 0 ? undefined : reach(
      ring.shape,
      piece.form,
      radius,
      millimetres(usable),
      relativeFootDegrees(foot, diameterDegrees, millimetres(sign)),
    );
  if (reachTowards(1) === undefined) {
    return {
      kind: "refused",
      code: "ring-too-large",
      message: `${ringName(ring.id)} is larger than the work: its feet touch ${
        said(contact)
      } from the gauge's axis, but good surface ends ${
        said(Math.max(usable, 0))
      } from the centre (half diameter ${said(half)}, bevel ${
        said(piece.bevel)
      }, margin ${said(piece.margin)})`,
      mend:
        "use a smaller ring, or correct the diameter in piece.json or the ring in bench.json",
    };
  }
  const reachOf = (sign: number) => reachTowards(sign) as Millimetres;
  let named: number | undefined;
  if (name?.kind === "edge") named = name.sign * reachOf(name.sign);
  else if (name?.kind === "fraction") {
    named = name.fraction *
      (name.of === "reach" ? reachOf(Math.sign(name.fraction)) : half);
  }
  const offset = question.offset ??
    (named === undefined ? undefined : millimetres(named));
  if (offset === undefined) {
    return {
      kind: "refused",
      code: "no-place",
      message: question.typed === ""
        ? "neither zone nor offset says where the gauge stood"
        : "this names no place on the work",
      expected:
        "centre, 50%, edge, 70% reach, a signed fraction such as -0.5, flat, or an offset",
      mend: mendOfName(question.typed),
    };
  }
  const limit = reachOf(Math.sign(offset) || 1);
  // One part in a thousand million: rounding, and nothing a ruler can see.
  if (Math.abs(offset) > limit * (1 + 1e-9)) {
    const size = Math.abs(offset);
    const doubt = question.offset === undefined
      ? onlyWithFeetOut(question, size, contact, usable, limit)
      : undefined;
    if (doubt !== undefined) {
      return {
        kind: "place",
        zone: {
          label: labelOf(question, offset),
          distance: millimetres(size),
        },
        offset,
        doubt,
      };
    }
    const relative = relativeFootDegrees(foot, diameterDegrees, offset);
    return {
      kind: "refused",
      code: "beyond-reach",
      message: `at ${said(size)} from the centre a foot may stand ${
        said(outermostFoot(ring.shape.kind, contact, size, relative))
      } out, on the bevel or past it: ${ringName(ring.id)} reaches ${
        said(limit)
      } ${directionWords(foot)} (half diameter ${said(half)}, bevel ${
        said(piece.bevel)
      }, margin ${said(piece.margin)})`,
      mend: foot.kind === "unknown"
        ? "if two feet pointed outwards, write “feet out” under foot_deg; otherwise read nearer the centre"
        : "read nearer the centre, or correct the offset",
    };
  }
  const zone = {
    label: labelOf(question, offset),
    distance: millimetres(Math.abs(offset)),
  };
  const disagrees = question.offset !== undefined && named !== undefined &&
    Math.abs(Math.abs(named) - Math.abs(offset)) > SAME_PLACE;
  return {
    kind: "place",
    zone,
    offset: offset === 0 ? ZERO : offset,
    ...(disagrees ? { named: millimetres(named as number) } : {}),
  };
}
