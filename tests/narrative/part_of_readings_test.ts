import { deepEqual, equal } from "node:assert/strict";
import { fewSessions, lastReadings } from "sagbook/narrative/mod.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";

const folder = await readPieceFolder(
  new URL("../../data/metric-250", import.meta.url).pathname,
);
const { readings } = folder;

Deno.test("lastReadings() starts with a whole zeroing and leaves everything else as it is", () => {
  for (const most of [1, 7, 12, readings.length - 1]) {
    const part = lastReadings(folder, most);
    const kept = part.folder.readings;
    deepEqual(kept, readings.slice(readings.length - kept.length));
    const before = readings[readings.length - kept.length - 1];
    const isWhole = before.zeroing !== kept[0].zeroing;
    equal(isWhole || kept.length === most, true);
    equal(kept.length <= most, true);
    equal(part.folder.lines, folder.lines);
    equal(part.notes.length, 1);
  }
});

Deno.test("fewSessions() keeps the first session and the last ones, in order", () => {
  const names = [...new Set(readings.map(({ session }) => session))];
  const { folder: part, notes } = fewSessions(folder, 2);
  deepEqual(
    [...new Set(part.readings.map(({ session }) => session))],
    [names[0], names[names.length - 1]],
  );
  deepEqual(
    part.readings.map(({ order }) => order),
    part.readings.map(({ order }) => order).toSorted((a, b) => a - b),
  );
  equal(notes.length, 1);
  equal(fewSessions(folder, names.length).folder, folder);
});
