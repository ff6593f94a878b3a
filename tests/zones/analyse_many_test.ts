import { equal } from "node:assert/strict";
import { isLazy, lazyList } from "sagbook/numerics/lazy_list.ts";
import { Random } from "sagbook/numerics/random.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { analyseSession } from "sagbook/zones/analyse_session.ts";
import { splitSessions } from "sagbook/zones/split_sessions.ts";

const DATA = new URL("../../data/", import.meta.url);

Deno.test("analyseSession() finds of a session in columns what it finds of one in objects, to the last digit", async () => {
  const { piece, bench } = await readPieceFolder(
    new URL("metric-250", DATA).pathname,
  );
  const random = new Random(11);
  const zones = ["flat", "centre", "50% reach", "-50% reach", "edge", "flat"];
  const lines = Array.from({ length: 20_400 }, (_, i) => {
    const set = Math.floor(i / 6);
    const zone = zones[i % 6];
    const slip = i === 9_001 ? 0.02 : 0;
    const sag = (zone === "flat" ? i % 6 / 5000 : 0.416) + slip +
      0.001 * random.normal();
    return `1,${set},${20 * set % 180},foot out,${zone},${sag.toFixed(3)}`;
  });
  const readings: Reading[] = [];
  await scanReadings(
    "session,zeroing,diameter_deg,foot_deg,zone,reading\n" + lines.join("\n"),
    { file: "readings.csv", piece, bench },
    (reading) => readings.push(reading),
  );
  equal(readings.length, lines.length);
  const lazy = lazyList(readings.length, (index) => ({ ...readings[index] }));
  const [group] = splitSessions(lazy);
  equal(isLazy(group), true);
  for (const scope of ["any diameter", "these diameters"] as const) {
    const [plain, columns] = [readings, group].map((given) =>
      analyseSession(given, piece, bench, { scope })
    );
    equal(isLazy(columns!.sets), true);
    equal(plain!.outliers.length > 0, true);
    equal(plain!.drifts.length > 0 && plain!.ends !== undefined, true);
    equal(JSON.stringify(columns), JSON.stringify(plain));
  }
});
