/**
 * The cells that say where the gauge stood.
 *
 * @module
 */
import { familyOf } from "../units/unit_family.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { FootDirection } from "../geometry/feet.ts";
import { radiusFromSag } from "../geometry/radius_from_sag.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Bench, Ring } from "./bench.ts";
import type { LineFaults } from "./_line_faults.ts";
import type { LengthUnit, Piece } from "./piece.ts";
import { saidPlace } from "./_said_length.ts";
import { type FileDecimal, readLength, unitOfWord } from "./_read_cell.ts";
import { type Place, resolvePlace } from "./_resolve_place.ts";
import { SMALLEST_SAG } from "./_session_group.ts";
import { parseZoneName } from "./_zone_name.ts";

/** A place on the work, on the flat, or none. */
export type AnyPlace = Place | { readonly kind: "flat" };

type Offset =
  | { readonly kind: "length"; readonly length?: Millimetres }
  | (Place & { readonly kind: "refused" });

/** For contact points where no radius is known: as good as a plane. */
const NEARLY_FLAT = millimetres(1e9);
const LARGEST = 50_000;
const FLAT = { kind: "flat" } as const;

function refused(message: string, mend: string): Offset & { kind: "refused" } {
  return { kind: "refused", code: "no-place", message, mend };
}

/** Says what is worth a word about a place that is used. */
export function remarkOnPlace(
  place: Place & { readonly kind: "place" },
  faults: LineFaults,
  zoneColumn: string,
  zone: string,
  offsetColumn: string,
  offset: string,
  unit: LengthUnit,
): void {
  if (place.named !== undefined) {
    faults.remark("note", offsetColumn, offset, {
      code: "offset-wins",
      message: `the offset wins over “${zone.slice(0, 40)}”, which would be ${
        saidPlace(place.named, unit)
      }`,
    });
  }
  if (place.doubt !== undefined) {
    faults.remark("warning", zoneColumn, zone, {
      code: "foot-unknown",
      message: place.doubt,
      mend:
        "write “feet out” under foot_deg (or as the ring's foot in bench.json) if two feet pointed outwards; if one did, take the reading out",
    });
  }
}

/** Turns zone and offset cells into places; works each out once. */
export class PlaceCells {
  readonly #piece: Piece;
  readonly #bench: Bench;
  readonly #decimal: FileDecimal;
  readonly #radii = new Map<string, Millimetres>();
  /** Places by what seldom changes, then by zone, then by diameter. */
  readonly #known = new Map<string, Map<string, Map<number, AnyPlace>>>();
  #size = 0;
  #last: Map<string, Map<number, AnyPlace>> | undefined;
  #lastRing: Ring | undefined;
  #lastFoot: FootDirection | undefined;
  #lastOffset = "";
  #lastUnit = "";

  /** Sets piece, bench and the file's decimal mark. */
  constructor(piece: Piece, bench: Bench, decimal: FileDecimal) {
    this.#piece = piece;
    this.#bench = bench;
    this.#decimal = decimal;
  }

  /** Finds the place; `degrees` is `NaN` where the diameter is unknown. */
  find(
    zone: string,
    offset: string,
    unit: string,
    ring: Ring,
    degrees: number,
    foot: FootDirection,
    sag: Millimetres | undefined,
  ): AnyPlace {
    let group = this.#last;
    if (
      group === undefined || ring !== this.#lastRing ||
      foot !== this.#lastFoot || offset !== this.#lastOffset ||
      unit !== this.#lastUnit
    ) {
      const direction = foot.kind === "angle" ? foot.degrees : foot.kind;
      const key = `${offset}\u0000${unit}\u0000${ring.id}\u0000${direction}`;
      group = this.#known.get(key);
      if (group === undefined) this.#known.set(key, group = new Map());
      this.#last = group;
      this.#lastRing = ring;
      this.#lastFoot = foot;
      this.#lastOffset = offset;
      this.#lastUnit = unit;
    }
    let ofZone = group.get(zone);
    if (ofZone === undefined) group.set(zone, ofZone = new Map());
    let place = ofZone.get(degrees);
    if (place === undefined) {
      place = this.#resolve(zone, offset, unit, ring, degrees, foot, sag);
      ofZone.set(degrees, place);
      if (++this.#size >= LARGEST) {
        this.#known.clear();
        this.#last = undefined;
        this.#size = 0;
      }
    }
    return place;
  }

  #resolve(
    zone: string,
    offsetTyped: string,
    unit: string,
    ring: Ring,
    degrees: number,
    foot: FootDirection,
    sag: Millimetres | undefined,
  ): AnyPlace {
    const name = parseZoneName(zone);
    if (name?.kind === "flat") return FLAT;
    const isLength = name?.kind === "length";
    const offset = this.#offset(
      isLength && offsetTyped === "" ? name.text : offsetTyped,
      unit,
    );
    if (offset.kind === "refused") return offset;
    return resolvePlace({
      piece: this.#piece,
      ring,
      radius: this.#radius(ring, sag),
      foot,
      diameterDegrees: Number.isNaN(degrees) ? undefined : degrees,
      name: isLength ? undefined : name,
      typed: isLength ? "" : zone,
      offset: offset.length,
    });
  }

  /** A radius for the contact points: nominal, or the first that was read. */
  #radius(ring: Ring, sag: Millimetres | undefined): Millimetres {
    const nominal = this.#piece.target?.radius ?? this.#piece.startingRadius ??
      this.#radii.get(ring.id);
    if (nominal !== undefined) return nominal;
    const feet = effectiveFeet(ring.shape, this.#piece.form);
    const size = Math.abs(sag ?? 0);
    if (size < SMALLEST_SAG || size > feet.circleRadius) return NEARLY_FLAT;
    const radius = radiusFromSag(millimetres(size), feet, this.#piece.form);
    this.#radii.set(ring.id, radius);
    return radius;
  }

  #offset(typed: string, lineUnit: string): Offset {
    if (typed === "") return { kind: "length" };
    const fallback = this.#bench.gauge.unit ?? this.#piece.unit;
    const read = readLength(
      typed,
      this.#decimal,
      unitOfWord(lineUnit) ?? fallback,
    );
    if (read.kind === "blank") return { kind: "length" };
    if (read.kind === "refused") {
      return refused(
        `the offset is not a length: ${read.reason}`,
        "type the distance from the centre of the work",
      );
    }
    if (read.kind === "ambiguous") {
      const [one, other] = read.amounts;
      return refused(
        `the offset can be read two ways: ${one} ${read.unit} or ${other} ${read.unit}`,
        "write it without a thousands mark",
      );
    }
    const family = familyOf(read.unit);
    const fine = !["mm", "in", "cm", "m"].includes(read.unit);
    if (read.unitAssumed && fine && read.amount !== 0) {
      return refused(
        `the line's unit is ${read.unit}: this is ${read.amount} ${read.unit} or ${read.amount} ${family}`,
        `write the unit into the cell: ${read.amount} ${family}`,
      );
    }
    return { kind: "length", length: read.value };
  }
}
