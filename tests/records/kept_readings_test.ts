import { deepEqual, equal } from "node:assert/strict";
import { KeptReadings, MOST_OBJECTS } from "sagbook/records/_kept_readings.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { isLazy } from "sagbook/numerics/lazy_list.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";

const DATA = new URL("../../data/", import.meta.url);

/** The readings of a demo piece, again and again, with cells of every kind. */
async function manyReadings(count: number): Promise<Reading[]> {
  const { piece, bench } = await readPieceFolder(
    new URL("metric-250", DATA).pathname,
  );
  const zones = ["centre", "50% reach", "-50% reach", "edge", "flat"];
  const lines = Array.from({ length: count }, (_, i) => {
    const zone = zones[i % 5];
    const minute = String(i % 60).padStart(2, "0");
    return [
      `evening ${i % 3}`,
      i % 7 === 0 ? "" : `2031-05-17T19:${minute}`,
      i % 4 === 0 ? "" : "F500",
      i >> 3,
      (i >> 3) * 20 % 180,
      i % 5 === 0 ? "foot out" : i % 5 === 1 ? "" : "15",
      zone,
      i % 11 === 0 ? "0.001" : "",
      zone === "flat" ? "0.000" : (0.41 + i % 13 / 1000).toFixed(3),
      i % 6 === 0 ? "A. B." : "",
      i % 9 === 0 ? "19.5" : "",
      `note ${i % 1000}`,
      i % 10 === 0 ? "pencil" : "",
    ].join(",");
  });
  const readings: Reading[] = [];
  await scanReadings(
    "session,taken_at,grade,zeroing,diameter_deg,foot_deg,zone,zero_before,reading,operator,temperature_air,note,written with\n" +
      lines.join("\n"),
    { file: "readings.csv", piece, bench },
    (reading) => readings.push(reading),
  );
  return readings;
}

Deno.test("KeptReadings gives back from its columns every reading as it was, key for key", async () => {
  const given = await manyReadings(MOST_OBJECTS + 500);
  equal(given.length > MOST_OBJECTS, true);
  const kept = new KeptReadings();
  for (const reading of given) kept.add(reading);
  const list = kept.list();
  equal(isLazy(list), true);
  equal(kept.length, given.length);
  list.forEach((reading, index) => {
    // JSON of every one, the whole object of some: deepEqual is slow.
    equal(JSON.stringify(reading), JSON.stringify(given[index]));
    if (index % 97 === 0) deepEqual(reading, given[index]);
  });
});

Deno.test("KeptReadings keeps few readings as the objects they are", async () => {
  const given = await manyReadings(40);
  const kept = new KeptReadings();
  for (const reading of given) kept.add(reading);
  equal(isLazy(kept.list()), false);
  equal(kept.list()[7], given[7]);
});
