/**
 * The rings of a bench in one table.
 *
 * @module
 */
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import type { Ring } from "../records/bench.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { RingCalibration } from "../uncertainty/ring_calibration.ts";
import type { RingFit, Stand } from "../uncertainty/ring_fit.ts";
import type { RingOnRecord } from "../uncertainty/rings_on_record.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { twoFigures } from "./plan_words.ts";

/** A ring's fit with its name. */
export interface NamedFit {
  /** The ring's id. */
  readonly ring: string;
  /** How it stands. */
  readonly fit: RingFit;
}

/**
 * Tabulates what is known of each ring: size used, calibrations, where it
 * stands, and when it is due.
 *
 * @param rings The rings of the bench.
 * @param records What is on record about them, in the same order.
 * @param fits How they stand on flat and work; empty when no radius is known.
 * @param unit The user's unit.
 * @returns A table a cell may return. Columns that are empty for every ring
 * are left out.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function ringRecordsTable(
  rings: readonly Ring[],
  records: readonly RingOnRecord[],
  fits: readonly NamedFit[],
  unit: LengthUnit,
): Displayable {
  const rows = rings.map((ring, k): Readonly<Record<string, string>> => {
    const { sizes, history } = records[k];
    const fit = fits.find(({ ring: id }) => id === ring.id)?.fit;
    const reach = fit?.reach;
    return {
      ring: ring.id,
      "radius used": usedSize(ring, unit),
      "standard uncertainty": doubt(ring, unit),
      "by caliper": sizes.map(({ bySpacings }) => measured(bySpacings, unit))
        .join(""),
      "by known surfaces": sizes.map(({ bySurfaces }) =>
        measured(bySurfaces, unit)
      ).filter((text) => text !== "").join("; "),
      "stands on": standsOn(fit, unit),
      reach: reach === undefined || !fit?.work.fits
        ? ""
        : reach > 0
        ? twoFigures(reach, unit)
        : "centre only",
      "due again": history === undefined
        ? ""
        : history.daysLeft < 0
        ? `overdue since ${history.dueOn}`
        : history.dueOn,
    };
  });
  const columns = Object.keys(rows[0] ?? {}).filter((column) =>
    rows.some((row) => row[column] !== "")
  );
  return table(rows, {
    columns,
    caption:
      "The rings: radius used, calibrations at 95 %, and how far they may leave the centre (reach).",
  });
}

/** Words for where a ring stands, and the diameter it lacks elsewhere. */
function standsOn(fit: RingFit | undefined, unit: LengthUnit): string {
  if (fit === undefined) return "";
  const surfaces: readonly (readonly [string, Stand | undefined])[] = [
    ["work", fit.work],
    ["flat", fit.flat],
  ];
  const known = surfaces.flatMap(([name, stand]) =>
    stand?.available === undefined ? [] : [[name, stand] as const]
  );
  const [yes, no] = [true, false].map((fits) =>
    known.filter(([, stand]) => stand.fits === fits)
  );
  return [
    ...(yes.length === 0 ? [] : [yes.map(([name]) => name).join(" and ")]),
    ...no.map(([name, { needed }]) =>
      `not the ${name} (needs ${twoFigures(needed, unit)})`
    ),
  ].join(", ");
}

function measured(
  calibration: RingCalibration | undefined,
  unit: LengthUnit,
): string {
  return calibration === undefined ? "" : formatWithUncertainty(
    millimetres(calibration.circleRadius.value),
    millimetres(calibration.expanded),
    unit,
  );
}

/** The uncertainty of the size, marked where it is assumed. */
function doubt(ring: Ring, unit: LengthUnit): string {
  const { radiusUncertainty: u, radiusUncertaintyAssumed: assumed } = ring;
  return u === 0
    ? "none stated"
    : `${twoFigures(u, unit)}${assumed ? ", assumed" : ""}`;
}

/** The size the analyses use, with the figures its uncertainty supports. */
function usedSize(
  { shape, radiusUncertainty: u }: Ring,
  unit: LengthUnit,
): string {
  const radii = shape.kind === "balls"
    ? [shape.circleRadius]
    : shape.kind === "bar"
    ? [shape.span / 2]
    : [shape.innerRadius, shape.outerRadius];
  const places = u === 0
    ? 3
    : Math.max(0, decimalsFor(amountIn(millimetres(u), unit)));
  return radii.map((radius) => formatLength(millimetres(radius), unit, places))
    .join(" and ");
}
