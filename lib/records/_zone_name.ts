/**
 * The name of a place on the work, as people write it.
 *
 * @module
 */

/** What the name of a zone says, before the ring and the piece are known. */
export type ZoneName =
  | { readonly kind: "flat" }
  | { readonly kind: "edge"; readonly sign: 1 | -1 }
  | {
    readonly kind: "fraction";
    /** The label without its sign, such as `50%` or `70% reach`. */
    readonly label: string;
    /** Signed part of the half diameter or of the reach, from -1 to 1. */
    readonly fraction: number;
    readonly of: "half diameter" | "reach";
    /** True where nothing but a number was typed. */
    readonly bare: boolean;
  }
  | { readonly kind: "length"; readonly text: string };

const CENTRE = /^(?:centre|center|centr|vertex|ctr|c)$/;
/** Between centre and edge it is half way out; alone it may be the centre. */
const MIDDLE = /^[+-]? ?mid(?:dle)?(?: ?[(#]?[0-9]\)?)?$/;
const BARE_NUMBER = /^[+-]? ?[0-9]+(?:[.,][0-9]+)?$/;
const FLAT = /^(?:reference )?flat(?: (?:before|after|again|[0-9]+))?$/;
const EDGE = /^([+-]?) ?(?:edge|rim)(?: ?([+-]))?$/;
const HALF = /^([+-]?) ?half(?:[ -]?way)?$/;
const NUMBER = /^([+-]?) ?([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+) ?(%)? ?(reach)?$/;
const LENGTH =
  /^[+-]? ?[0-9.,]+ ?(?:mm|millimet(?:re|er)s?|cm|in|inch|inches|")$/;

function fractionLabel(fraction: number, of: "half diameter" | "reach") {
  const size = Math.abs(fraction);
  if (size === 0) return "centre";
  const percent = Number((size * 100).toPrecision(12));
  if (of === "reach") return percent === 100 ? "edge" : `${percent}% reach`;
  return `${percent}%`;
}

/** A name of a place as it is compared. */
function plain(typed: string): string {
  return typed.normalize("NFKC").toLowerCase()
    .replace(/[\u2212\u2010-\u2015\uFE63\uFF0D]/g, "-")
    .replace(/[\s_]+/g, " ").trim();
}

/** True for a name that may mean two places: `middle`. */
export function isMiddle(typed: string): boolean {
  return MIDDLE.test(plain(typed));
}

/** True for what is meant as a place and names none for certain. */
export function isUnclearPlace(typed: string): boolean {
  const text = plain(typed);
  return MIDDLE.test(text) ||
    BARE_NUMBER.test(text) && parseZoneName(text) === undefined;
}

/**
 * Reads the name of a zone; `undefined` for a name that says no place.
 *
 * Known: centre, edge, half, a percentage or a signed fraction (of the half
 * diameter unless it says reach), a length such as `40 mm`, and flat. A
 * leading or trailing sign gives the end of the diameter. A repeat number
 * after the name (`centre 2`) is allowed.
 */
export function parseZoneName(typed: string): ZoneName | undefined {
  const text = plain(typed);
  if (text === "") return undefined;
  if (FLAT.test(text)) return { kind: "flat" };
  if (LENGTH.test(text)) return { kind: "length", text };
  const part = /^([+-]?) ?(\d{1,2}) ?\/ ?(\d{1,2})$/.exec(text);
  if (part !== null) {
    const size = Number(part[2]) / Number(part[3]);
    if (!(size <= 1)) return undefined;
    const fraction = part[1] === "-" && size !== 0 ? -size : size;
    const of = "half diameter";
    const label = fractionLabel(fraction, of);
    return { kind: "fraction", label, fraction, of, bare: true };
  }
  const number = NUMBER.exec(text);
  if (number !== null) {
    const [, sign, digits, percent, ofReach] = number;
    const value = Number(digits.replace(",", "."));
    const size = percent ? value / 100 : value;
    if (size > 1) return undefined;
    const fraction = (sign === "-" && size !== 0 ? -1 : 1) * size;
    const of = ofReach ? "reach" : "half diameter";
    if (of === "reach" && size === 1) {
      return { kind: "edge", sign: fraction < 0 ? -1 : 1 };
    }
    return {
      kind: "fraction",
      label: fractionLabel(fraction, of),
      fraction,
      of,
      bare: percent === undefined && ofReach === undefined,
    };
  }
  const word = text.replace(/ ?[(#]?[0-9]\)?$/, "").trim();
  if (CENTRE.test(word)) {
    return {
      kind: "fraction",
      label: "centre",
      fraction: 0,
      of: "half diameter",
      bare: false,
    };
  }
  const edge = EDGE.exec(word);
  if (edge !== null) {
    return { kind: "edge", sign: (edge[1] || edge[2]) === "-" ? -1 : 1 };
  }
  const half = HALF.exec(word);
  if (half !== null) {
    return {
      kind: "fraction",
      label: "50%",
      fraction: half[1] === "-" ? -0.5 : 0.5,
      of: "half diameter",
      bare: false,
    };
  }
  return undefined;
}
