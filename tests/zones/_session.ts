/** Sessions written as tables of sags in µm, for the tests of zones. */
import { ok } from "node:assert/strict";
import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import type { MeasuredSet } from "sagbook/zones/set_table.ts";
import type { FootDirection } from "sagbook/geometry/feet.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** An invented 210 mm concave disc. */
export function piece(changes: Partial<Piece> = {}): Piece {
  return {
    name: "invented disc",
    form: "concave",
    diameter: mm(210),
    bevel: mm(1.5),
    margin: mm(0.5),
    target: { radius: mm(2520), statedAs: "radius" },
    unit: "mm",
    invented: true,
    ...changes,
  };
}

/** A bench with one invented ring of 60 mm foot circle radius, 3 mm balls. */
export function bench(step = 0.001): Bench {
  return {
    gauge: {
      id: "gauge",
      shows: { kind: "sag" },
      countsUpOn: "declared surface",
      unit: "mm",
      steps: { mm: mm(step) },
      scaleUncertainty: 0,
    },
    rings: [{
      id: "ring 60",
      shape: {
        kind: "balls",
        circleRadius: mm(60),
        ballRadius: mm(3),
        probeOffset: mm(0),
      },
      radiusUncertainty: mm(0.02),
      radiusUncertaintyAssumed: false,
      ballRadiusUncertainty: mm(0.001),
      expansion: 11.5e-6,
      foot: { kind: "unknown" },
    }],
  };
}

/** Labels and offsets in mm of the usual three places on the disc. */
export const PLACES = [["centre", 0], ["50%", 20], ["edge", 42]] as const;

/** One reading; sag in mm. */
export function reading(
  changes: Partial<Reading> & { sag: Reading["sag"] },
): Reading {
  return {
    file: "readings.csv",
    line: 2,
    order: 0,
    session: "S1",
    ring: "ring 60",
    zeroing: "S1 / 1",
    foot: { kind: "foot out" },
    on: "work",
    zone: { label: "centre", distance: mm(0) },
    offset: mm(0),
    step: mm(0.001),
    unit: "mm",
    ...changes,
  };
}

/**
 * A session of one zeroing and one diameter for each row of sags in µm, at
 * centre, 50% and edge; `undefined` leaves a place out.
 */
export function session(
  rows: readonly (readonly (number | undefined)[])[],
  options: {
    diameters?: readonly (number | undefined)[];
    foot?: FootDirection;
    places?: readonly (readonly [string, number])[];
  } = {},
): Reading[] {
  const { foot = { kind: "foot out" }, places = PLACES } = options;
  const diameters = options.diameters ?? rows.map((_, k) => 60 * k);
  let order = 0;
  return rows.flatMap((row, set) =>
    row.flatMap((sag, place) => {
      if (sag === undefined) return [];
      const [label, offset] = places[place];
      const diameterDegrees = diameters[set];
      return [reading({
        sag: mm(sag / 1000),
        order: order++,
        zeroing: `S1 / ${set + 1}`,
        ...(diameterDegrees === undefined ? {} : { diameterDegrees }),
        foot,
        zone: { label, distance: mm(Math.abs(offset)) },
        offset: mm(offset),
      })];
    })
  );
}

/** The readings of a case file, read against the piece and bench above. */
export async function readCase(
  name: string,
  changes: Partial<Piece> = {},
): Promise<Reading[]> {
  const source = new URL(`../cases/${name}.csv`, import.meta.url);
  return await readText(await Deno.readTextFile(source), changes);
}

/** The readings of a text, every line of which must be used. */
export async function readText(
  text: string,
  changes: Partial<Piece> = {},
): Promise<Reading[]> {
  const readings: Reading[] = [];
  const { account } = await scanReadings(
    text,
    { file: "S1.csv", piece: piece(changes), bench: bench() },
    (reading) => readings.push(reading),
  );
  if (account.reported > 0) {
    throw new TypeError(
      `Cannot use a case as every line must be read: current value is ${account.reported} lines refused`,
    );
  }
  return readings;
}

/** Sets of sags in µm, one zeroing and one diameter each. */
export function setsOf(
  rows: readonly (readonly (number | undefined)[])[],
  diameters: readonly (number | undefined)[] = rows.map((_, k) => 20 * k),
): MeasuredSet[] {
  return rows.map((row, k) => ({
    label: `${k + 1}`,
    zeroing: `${k + 1}`,
    ...(diameters[k] === undefined ? {} : { diameterDegrees: diameters[k] }),
    cells: row.map((um) =>
      um === undefined ? undefined : { sag: um / 1000, readings: 1 }
    ),
  }));
}

/** Asserts that two numbers agree. */
export function near(
  found: number | undefined,
  expected: number,
  within: number,
  what = "",
): void {
  ok(
    found !== undefined && Math.abs(found - expected) <= within,
    `${what} ${found}, not ${expected}`,
  );
}
