import { deepEqual, equal, match, ok } from "node:assert/strict";
import { heatCautions } from "sagbook/narrative/heat_cautions.ts";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { PIECE, withFolder } from "../records/_bench_of_cases.ts";

const warm = (work?: number, air?: number, bench?: number) =>
  [0, 1, 2].map((order) =>
    ({
      order,
      session: "S1",
      on: "work",
      takenAt: `2031-05-17T19:0${order}`,
      temperatureWork: work,
      temperatureAir: air,
      temperatureBench: bench,
    }) as unknown as Reading
  );
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, " ");
const DISC = { form: "concave", unit: "mm" } as const;
const GLASS = {
  ...DISC,
  glass: "borosilicate",
  thickness: mm(40),
} as const;

Deno.test("heatCautions() speaks of work and bench that were 2 K or more off the air", () => {
  deepEqual(heatCautions(warm(), DISC, 2520), []);
  deepEqual(heatCautions(warm(19.5, 18), DISC, 2520), []);
  deepEqual(heatCautions(warm(29), DISC, 2520), []);
  const said = heatCautions(warm(29, 18, 14), DISC, 2520);
  equal(said.length, 2);
  match(plain(said[0]), /^The work was 11\.0 K warmer than the air/);
  match(plain(said[1]), /^The bench was 4\.0 K colder than the air/);
});

Deno.test("heatCautions() gives the radius's error, with its sign, where glass and thickness are known", () => {
  // Warm work loses heat upward: its face is the colder one, a concave R
  // reads shorter. 40 mm of borosilicate: about 0.1 mm for each kelvin.
  const [concave] = heatCautions(warm(29, 18), GLASS, 3000);
  match(
    plain(concave),
    /^The work was 11\.0 K warmer than the air .* the radius reads up to 1\.2 mm too short\.$/,
  );
  const [convex] = heatCautions(
    warm(29, 18),
    { ...GLASS, form: "convex" },
    3000,
  );
  match(plain(convex), /up to 1\.2 mm too long\.$/);
  deepEqual(heatCautions(warm(18.1, 18), GLASS, 3000), []);
});

Deno.test("sessionReport() holds the temperatures of the log against its radius", async () => {
  const folder = await withFolder({
    piece: PIECE,
    files: {
      "readings.csv":
        "session,zeroing,zone,reading,unit,temperature_work,temperature_air\n" +
        "S1,1,centre,0.715,mm,29,18\nS1,2,centre,0.716,mm,29,18\n",
    },
  }, readPieceFolder);
  ok(
    sessionReport(folder).cautions.some((one) =>
      one.startsWith("The work was 11.0\u00a0K warmer") ||
      one.startsWith("The work was 11.0 K warmer")
    ),
  );
});
