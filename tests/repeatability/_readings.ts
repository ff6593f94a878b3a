/** Readings for the tests of repeatability, from rows and from the case files. */
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import type { PieceFolder } from "sagbook/records/folder.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** The bench that the case files share, unless the case says otherwise. */
const PIECE = {
  name: "invented disc",
  form: "concave",
  diameter: "210 mm",
  bevel: "1.5 mm",
  target: { radius: "2520 mm" },
};
const BENCH = {
  gauge: { unit: "mm", display_step: "0.001 mm" },
  rings: [{ id: "ring 60", radius: "60 mm", ball_radius: "3 mm" }],
};

/** Reads a case file as a piece's only sheet. */
export async function readCase(name: string): Promise<PieceFolder> {
  const source = new URL(`../cases/${name}.csv`, import.meta.url);
  return await readSheet(await Deno.readTextFile(source));
}

/** Reads a tidy CSV text as a piece's only sheet. */
export async function readSheet(text: string): Promise<PieceFolder> {
  const path = await Deno.makeTempDir();
  try {
    const write = (file: string, value: unknown): Promise<void> =>
      Deno.writeTextFile(`${path}/${file}`, JSON.stringify(value));
    await write("piece.json", PIECE);
    await write("bench.json", BENCH);
    await Deno.writeTextFile(`${path}/readings.csv`, text);
    return await readPieceFolder(path);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
}

/** One reading of the work at the centre; sag in mm. */
export function reading(changes: Partial<Reading> = {}): Reading {
  return {
    file: "readings.csv",
    line: 2,
    order: 0,
    session: "S1",
    ring: "ring 60",
    zeroing: "S1 / 1",
    foot: { kind: "unknown" },
    on: "work",
    zone: { label: "centre", distance: mm(0) },
    offset: mm(0),
    sag: mm(0.715),
    step: mm(0.001),
    unit: "mm",
    ...changes,
  };
}

/** What one line of a table of readings says. */
export interface Row {
  session?: string;
  zeroing?: number;
  zone?: "centre" | "50%" | "edge";
  end?: 1 | -1;
  diameter?: number;
  foot?: number;
  operator?: string;
  sag?: number;
}

const DISTANCE = { centre: 0, "50%": 20, edge: 42 } as const;

/** Readings from rows; sags in µm from 715 µm, 0 unless stated. */
export function readingsOf(rows: readonly Row[]): Reading[] {
  return rows.map((row, order) => {
    const { session = "S1", zone = "centre", end = 1 } = row;
    const distance = DISTANCE[zone];
    return reading({
      order,
      line: order + 2,
      session,
      zeroing: `${session} / ${row.zeroing ?? 1}`,
      zone: { label: zone, distance: mm(distance) },
      offset: mm(end * distance),
      sag: mm(Number((0.715 + (row.sag ?? 0) / 1000).toFixed(9))),
      ...(row.diameter === undefined ? {} : { diameterDegrees: row.diameter }),
      ...(row.foot === undefined
        ? {}
        : { foot: { kind: "angle", degrees: row.foot } as const }),
      ...(row.operator === undefined ? {} : { operator: row.operator }),
    });
  });
}
