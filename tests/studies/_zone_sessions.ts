/** Simulated sessions that pass through display, CSV text and reader. */
import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** An invented 300 mm disc, f/5. */
export const PIECE: Piece = {
  name: "invented disc 300",
  form: "concave",
  diameter: mm(300),
  bevel: mm(1),
  margin: mm(1),
  target: { radius: mm(3000), statedAs: "radius" },
  unit: "mm",
  invented: true,
};

/** Its bench: a ring of 60 mm and a gauge with a display step in mm. */
export function benchOf(step: number): Bench {
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
      id: "ring 120",
      shape: {
        kind: "balls",
        circleRadius: mm(60),
        ballRadius: mm(6.35),
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

/** One line of a simulated file. */
export interface SimulatedLine {
  /** Running number of the session. */
  readonly session: number;
  /** Running number of the set, which has one zeroing and one diameter. */
  readonly set: number;
  /** Direction of the diameter in degrees. */
  readonly diameterDegrees: number;
  /** `foot out` unless stated. */
  readonly foot?: string;
  /** The zone's name, `flat` for a look at the flat. */
  readonly zone: string;
  /** Offset in mm, left to the zone's name unless stated. */
  readonly offset?: number;
  /** What the display shows, in mm. */
  readonly shown: number;
}

/**
 * Writes the lines as a tidy file and reads it again.
 *
 * @returns The readings of each session.
 */
export async function throughCsv(
  lines: Iterable<SimulatedLine>,
  step: number,
  digits = 4,
): Promise<readonly (readonly Reading[])[]> {
  const rows = [
    "session,zeroing,diameter_deg,foot_deg,zone,offset,reading,unit\n",
  ];
  let written = 0;
  for (const line of lines) {
    const { session, set, diameterDegrees, foot = "foot out", zone } = line;
    const offset = line.offset === undefined ? "" : line.offset.toFixed(4);
    rows.push(
      `${session},${set + 1},${diameterDegrees},${foot},${zone},${offset},${
        line.shown.toFixed(digits)
      },mm\n`,
    );
    written++;
  }
  const sessions = new Map<string, Reading[]>();
  const { account } = await scanReadings(
    rows.join(""),
    { file: "readings.csv", piece: PIECE, bench: benchOf(step) },
    (reading) => {
      const session = sessions.get(reading.session);
      if (session) session.push(reading);
      else sessions.set(reading.session, [reading]);
    },
  );
  if (account.used !== written) {
    throw new RangeError(
      `Cannot use a simulated file as every line must be read: current value is ${account.used} of ${written} lines`,
    );
  }
  return [...sessions.values()];
}
