/**
 * Readings from a table's text to zone means, beside Papa Parse alone.
 *
 * @module
 */
import Papa from "papaparse";
import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { benchProgram } from "./_program.ts";
import { sideBySide } from "./_side_by_side.ts";

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

/** Tidy lines of eleven columns: sessions of eight sets of three. */
function tidyText(lines: number): string {
  const zones = ["centre", "50%", "edge"];
  const parts = [
    "session,taken_at,grade,ring,zeroing,diameter_deg,zone,offset,reading,unit,note\n",
  ];
  for (let i = 0; i < lines; i++) {
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

/** Mean and sum of squares of the sags of a zone, as readings come. */
async function scan(text: string, lines: number): Promise<number[]> {
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
  if (account.used !== lines) {
    throw new Error(`${account.used} of ${lines} lines were used`);
  }
  return [account.used];
}

if (import.meta.main) {
  await benchProgram({
    ours: (lines) => {
      const text = tidyText(lines);
      return () => scan(text, lines);
    },
    peer: (lines) => {
      const text = tidyText(lines);
      // Without the heading and the empty line at the end.
      return () => [Papa.parse(text, { header: false }).data.length - 2];
    },
    run: async (size) => {
      const isTiny = size === "tiny";
      const { row } = await sideBySide({
        program: import.meta.url,
        what: "10⁶ lines of readings, checked, to zone means",
        grows: "lines",
        sizes: isTiny ? [1000] : [10_000, 100_000, 1_000_000],
        runs: (n) => isTiny ? 1 : n < 1e6 ? 5 : 2,
        rounds: isTiny ? 1 : 2,
        agree: 0,
        peer: { name: "Papa Parse alone", needs: "papaparse" },
      });
      const version = /npm:papaparse@([\d.]+)/.exec(
        await Deno.readTextFile(new URL("../../deno.json", import.meta.url)),
      )?.[1];
      return {
        title: "Reading a table",
        about:
          "A text of eleven columns in memory. Ours finds the layout, checks every cell, keeps the account of lines and hands over each reading, of which the means and variances of the zones are formed. The peer only splits the text into strings.",
        rows: [{
          ...row,
          peer: { ...row.peer!, ...(version === undefined ? {} : { version }) },
        }],
      };
    },
  });
}
