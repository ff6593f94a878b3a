import { equal, ok, throws } from "node:assert/strict";
import type { Bench, Gauge } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { shownByGauge } from "sagbook/records/shown_by_gauge.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const SET = { circleRadius: mm(59.5), ballRadius: mm(2.5) };
const SHOWS: readonly Gauge["shows"][] = [
  { kind: "sag" },
  { kind: "radius", ...SET },
  { kind: "power", index: 1.53, ...SET },
];

function gaugeOf(
  shows: Gauge["shows"],
  countsUpOn: Gauge["countsUpOn"],
): Gauge {
  return {
    id: "gauge",
    shows,
    countsUpOn,
    unit: "mm",
    steps: {},
    scaleUncertainty: 0,
    ...(shows.kind === "sag" ? { tiltDegrees: 3 } : {}),
  };
}

Deno.test("shownByGauge() is read back as the same sag, whatever the gauge shows and however it counts", async () => {
  for (const shows of SHOWS) {
    for (const form of ["concave", "convex"] as const) {
      for (const counts of ["concave", "convex", "declared surface"] as const) {
        const gauge = gaugeOf(shows, counts);
        const piece: Piece = {
          name: "invented",
          form,
          diameter: mm(210),
          bevel: mm(1.5),
          margin: mm(0.5),
          unit: "mm",
          invented: true,
        };
        const bench: Bench = {
          gauge,
          rings: [{
            id: "A",
            shape: {
              kind: "balls",
              circleRadius: mm(60),
              ballRadius: mm(3),
              probeOffset: mm(0),
            },
            radiusUncertainty: mm(0.02),
            radiusUncertaintyAssumed: false,
            ballRadiusUncertainty: mm(0.005),
            expansion: 11.5e-6,
            foot: { kind: "unknown" },
          }],
        };
        const shown = shownByGauge(mm(0.715), gauge, form);
        const up = counts === "declared surface" || counts === form;
        equal(Math.sign(shown), up ? 1 : -1);
        const found: Reading[] = [];
        await scanReadings(
          `session,zeroing,zone,reading\nS1,1,centre,${shown}\n`,
          { file: "readings.csv", piece, bench },
          (reading) => found.push(reading),
        );
        ok(Math.abs(found[0].sag - 0.715) < 1e-9, `${shown}: ${found[0].sag}`);
      }
    }
  }
});

Deno.test("shownByGauge() shows 0 of a flat in sag and power, and refuses a radius of it", () => {
  equal(shownByGauge(mm(0), gaugeOf(SHOWS[0], "convex"), "concave"), 0);
  equal(shownByGauge(mm(0), gaugeOf(SHOWS[2], "convex"), "concave"), 0);
  throws(
    () => shownByGauge(mm(0), gaugeOf(SHOWS[1], "convex"), "concave"),
    RangeError,
  );
});
