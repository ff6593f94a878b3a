import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** The invented piece of the hard inputs, in millimetres. */
export const PIECE: Piece = {
  name: "blank 7",
  form: "concave",
  diameter: mm(210),
  bevel: mm(1.5),
  margin: mm(0.5),
  target: { radius: mm(2520), statedAs: "radius" },
  unit: "mm",
  invented: true,
};

/** A ring of three balls. */
export const ring = (
  id: string,
  radius: number,
): Bench["rings"][number] => ({
  id,
  shape: {
    kind: "balls",
    circleRadius: mm(radius),
    ballRadius: mm(3),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0.02),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.005),
  expansion: 11.5e-6,
  foot: { kind: "unknown" },
});

/** The invented bench of the hard inputs, in millimetres. */
export const BENCH: Bench = {
  gauge: {
    id: "gauge",
    shows: { kind: "sag" },
    countsUpOn: "declared surface",
    unit: "mm",
    steps: { mm: mm(0.001) },
    scaleUncertainty: 0.0005,
  },
  rings: [ring("A", 60)],
};

/** Scans a text and keeps its readings. */
export async function scan(
  content: string | Uint8Array,
  context: { piece?: Piece; bench?: Bench; file?: string } = {},
) {
  const readings: Reading[] = [];
  const { account, problems } = await scanReadings(content, {
    file: context.file ?? "readings.csv",
    piece: context.piece ?? PIECE,
    bench: context.bench ?? BENCH,
  }, (reading) => readings.push(reading));
  const of = (severity: string) =>
    problems.filter((one) => one.severity === severity)
      .map((one) => `${one.line ?? "-"} ${one.code}`);
  return { readings, account, problems, of };
}

/** The header of a plain tidy file. */
export const HEADER = "session,zeroing,zone,reading,unit";
