/**
 * Readings as one normalised tidy file.
 *
 * @module
 */
import { zeroingLabel } from "./zeroing_label.ts";
import type { Bench } from "./bench.ts";
import { TIDY_COLUMNS, type TidyColumn } from "./tidy_columns.ts";
import { csvText } from "./csv_text.ts";
import type { Piece } from "./piece.ts";
import { MARK_UNKNOWN } from "./_read_cell.ts";
import type { Reading, ShownValue } from "./reading.ts";
import { PlaceCells } from "./_place_cells.ts";
import { writeAtomically } from "../files/write_atomically.ts";

/** What readings were taken of and with. */
export interface TidyContext {
  /** The piece that was measured. */
  readonly piece: Piece;
  /** The bench it was measured on. */
  readonly bench: Bench;
}

/** A line that was withdrawn gives no reading, so none is marked here. */
const COLUMNS = TIDY_COLUMNS.filter((name) => name !== "withdrawn");

const number = (value: number | undefined) =>
  value === undefined ? "" : String(value);

function shownOf(reading: Reading): ShownValue {
  return reading.shown ??
    (reading.unit === "in"
      ? { amount: reading.sag / 25.4, unit: "in" }
      : { amount: reading.sag, unit: "mm" });
}

function footText(reading: Reading): string {
  const { foot } = reading;
  return foot.kind === "angle" ? String(foot.degrees) : foot.kind;
}

/** Zone and offset cells that lead back to the reading's own place. */
function placeText(
  reading: Reading,
  places: PlaceCells,
  bench: Bench,
): { zone: string; offset: string } {
  if (reading.on === "flat") return { zone: "flat", offset: "" };
  const ring = bench.rings.find((one) => one.id === reading.ring);
  const { label } = reading.zone;
  const sign = reading.offset < 0 ? "-" : "";
  const zone = `${sign}${label}`;
  if (ring !== undefined) {
    const named = places.find(
      zone,
      "",
      "mm",
      ring,
      reading.diameterDegrees ?? NaN,
      reading.foot,
      reading.sag,
    );
    if (named.kind === "place" && named.offset === reading.offset) {
      const same = named.zone.label === label;
      return same
        ? { zone, offset: "" }
        : { zone: "", offset: `${reading.offset} mm` };
    }
  }
  return { zone: label, offset: `${reading.offset} mm` };
}

/**
 * Writes readings as a tidy file that reads back to the same readings.
 *
 * Every column of the tidy format stands in its order, with points for
 * decimals, commas between cells and the unit of each reading in its own
 * column; columns that nobody knows follow. Texts that a spreadsheet would
 * take for a formula are made harmless (see {@link csvText}).
 *
 * @param readings The readings, in the order they should have.
 * @param context The piece and the bench they were read against.
 * @returns The file's text.
 *
 * @example
 * ```ts
 * import { tidyText } from "sagbook/records/write_tidy.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * await Deno.writeTextFile(
 *   `${path}/piece.json`,
 *   '{ "name": "blank 7", "form": "concave", "diameter": "210 mm" }',
 * );
 * await Deno.writeTextFile(
 *   `${path}/bench.json`,
 *   '{ "gauge": {}, "rings": [{ "id": "A", "radius": "60 mm", "ball_radius": "3 mm" }] }',
 * );
 * await Deno.writeTextFile(
 *   `${path}/readings.csv`,
 *   "Session;Zeroing;Zone;Reading\nS1;1;centre;0,715 mm\n",
 * );
 * const folder = await readPieceFolder(path);
 * equal(
 *   tidyText(folder.readings, folder).split("\n")[1],
 *   "S1,,,A,1,,,unknown,centre,,0.715,mm,,,,,",
 * );
 * await Deno.remove(path, { recursive: true });
 * ```
 */
export function tidyText(
  readings: readonly Reading[],
  context: TidyContext,
): string {
  const { piece, bench } = context;
  const places = new PlaceCells(piece, bench, MARK_UNKNOWN);
  const others = [
    ...new Set(readings.flatMap((one) => Object.keys(one.other ?? {}))),
  ];
  const rows = readings.map((reading) => {
    const shown = shownOf(reading);
    const before = reading.zeroBeforeShown;
    // Two units in one line: each cell then carries its own.
    const mixed = before !== undefined && before.unit !== shown.unit;
    const own = (value: ShownValue) =>
      mixed ? `${value.amount} ${value.unit}` : String(value.amount);
    const cells: Record<Exclude<TidyColumn, "withdrawn">, string> = {
      session: reading.session,
      taken_at: reading.takenAt ?? "",
      grade: reading.grade ?? "",
      ring: reading.ring,
      zeroing: zeroingLabel(reading),
      zero_before: before === undefined ? "" : own(before),
      diameter_deg: number(reading.diameterDegrees),
      foot_deg: footText(reading),
      ...placeText(reading, places, bench),
      reading: own(shown),
      unit: mixed ? "" : shown.unit,
      operator: reading.operator ?? "",
      temperature_air: number(reading.temperatureAir),
      temperature_bench: number(reading.temperatureBench),
      temperature_work: number(reading.temperatureWork),
      note: reading.note ?? "",
    };
    return [
      ...COLUMNS.map((name) => cells[name]),
      ...others.map((name) =>
        reading.other !== undefined && Object.hasOwn(reading.other, name)
          ? reading.other[name]
          : ""
      ),
    ];
  });
  return csvText([[...COLUMNS, ...others], ...rows]);
}

/**
 * Writes readings as a tidy file, whole or not at all.
 *
 * The user's own files are left alone: give the copy a name of its own.
 *
 * @param path The file to write.
 * @param readings The readings, in the order they should have.
 * @param context The piece and the bench they were read against.
 *
 * @example
 * ```ts
 * import { writeTidy } from "sagbook/records/write_tidy.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { ok } from "node:assert/strict";
 *
 * const path = await Deno.makeTempFile();
 * const piece = {
 *   name: "blank 7",
 *   form: "concave",
 *   diameter: mm(210),
 *   bevel: mm(1.5),
 *   margin: mm(0.5),
 *   unit: "mm",
 *   invented: true,
 * } as const;
 * const gauge = {
 *   id: "gauge",
 *   shows: { kind: "sag" },
 *   countsUpOn: "declared surface",
 *   steps: {},
 *   scaleUncertainty: 0,
 * } as const;
 * await writeTidy(path, [], { piece, bench: { gauge, rings: [] } });
 * ok((await Deno.readTextFile(path)).startsWith("session,taken_at,"));
 * await Deno.remove(path);
 * ```
 */
export async function writeTidy(
  path: string,
  readings: readonly Reading[],
  context: TidyContext,
): Promise<void> {
  await writeAtomically(path, tidyText(readings, context));
}
