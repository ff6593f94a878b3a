import Papa from "papaparse";
import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const LINES = 1_000_000;
const piece: Piece = {
  name: "invented",
  form: "concave",
  diameter: mm(300),
  bevel: mm(1.5),
  margin: mm(0.5),
  target: { radius: mm(3000), statedAs: "radius" },
  unit: "mm",
  invented: true,
};
const bench: Bench = {
  gauge: {
    id: "gauge",
    shows: { kind: "sag" },
    countsUpOn: "declared surface",
    unit: "mm",
    steps: { mm: mm(0.001) },
    scaleUncertainty: 0,
  },
  rings: [{
    id: "A",
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(6.35),
      probeOffset: mm(0),
    },
    radiusUncertainty: mm(0.02),
    radiusUncertaintyAssumed: false,
    ballRadiusUncertainty: mm(0.005),
    expansion: 11.5e-6,
    foot: { kind: "feet out" },
  }],
};

/** A million tidy lines of eleven columns: sessions of eight sets of three. */
function tidyText(): string {
  const zones = ["centre", "50%", "edge"];
  const parts = [
    "session,taken_at,grade,ring,zeroing,diameter_deg,zone,offset,reading,unit,note\n",
  ];
  for (let i = 0; i < LINES; i++) {
    const set = Math.floor(i / 3);
    const reading = (0.601 + ((i * 7919) % 13 - 6) / 1000).toFixed(3);
    parts.push(
      `S${Math.floor(set / 8)},2031-05-17T10:20,9 micron,A,${set % 8 + 1},${
        set % 8 * 45
      },${zones[i % 3]},,${reading},mm,\n`,
    );
  }
  return parts.join("");
}

const text = tidyText();

Deno.bench("a million lines, Papa Parse alone", {
  group: "readings",
  baseline: true,
  n: 5,
  warmup: 1,
}, () => {
  Papa.parse(text, { header: false });
});

Deno.bench("a million lines, scanReadings() to zone means and variances", {
  group: "readings",
  n: 5,
  warmup: 1,
}, async () => {
  const zones = new Map<string, { n: number; mean: number; square: number }>();
  const { account } = await scanReadings(
    text,
    { file: "readings.csv", piece, bench },
    (reading) => {
      let zone = zones.get(reading.zone.label);
      if (zone === undefined) {
        zones.set(reading.zone.label, zone = { n: 0, mean: 0, square: 0 });
      }
      const step = reading.sag - zone.mean;
      zone.mean += step / ++zone.n;
      zone.square += step * (reading.sag - zone.mean);
    },
  );
  if (account.used !== LINES) {
    throw new Error(`${account.used} of ${LINES} lines were used`);
  }
});
