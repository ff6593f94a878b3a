/**
 * From `bench.json` as written to a bench in millimetres.
 *
 * @module
 */
import type { Bench, ReferenceFlat } from "./bench.ts";
import type { BenchFile, FlatFile } from "./bench_file.ts";
import type { FileLengths } from "./_file_lengths.ts";
import { gaugeOfFile } from "./_gauge_of_file.ts";
import { ringOfFile } from "./_ring_of_file.ts";
import { workOfFile } from "./_work_of_file.ts";

function flat(file: FlatFile, read: FileLengths): ReferenceFlat {
  const size = read.length(file.size, "flat.size");
  const flatness = read.length(file.flatness, "flat.flatness", "0 or more");
  return {
    id: file.id ?? "flat",
    ...(size === undefined ? {} : { size }),
    ...(flatness === undefined ? {} : { flatness }),
  };
}

/** Makes a bench; `undefined` when something that it needs was refused. */
export function benchOfFile(
  file: BenchFile,
  read: FileLengths,
): Bench | undefined {
  const before = read.refusals;
  const dial = gaugeOfFile(file.gauge, read);
  const rings = file.rings.map((one, i) => ringOfFile(one, `rings.${i}`, read));
  const ids = new Set<string>();
  file.rings.forEach((one, i) => {
    const id = one.id.toLowerCase();
    if (ids.has(id)) {
      read.say(
        "refused",
        "repeated-ring",
        `rings.${i}.id`,
        "two rings have this name",
        { value: one.id, mend: "give each ring a name of its own" },
      );
    }
    ids.add(id);
  });
  file.rings.forEach(({ id, calibration }, i) => {
    const twin = calibration?.twin;
    if (twin === undefined) return;
    const other = twin.toLowerCase();
    if (other !== id.toLowerCase() && ids.has(other)) return;
    read.say(
      "refused",
      "unknown-ring",
      `rings.${i}.calibration.twin`,
      "a twin is another ring of this bench",
      { value: twin, mend: "write the name that the other ring has here" },
    );
  });
  const plane = file.flat === undefined ? undefined : flat(file.flat, read);
  const work = file.work === undefined
    ? undefined
    : workOfFile(file.work, read);
  if (dial === undefined || read.refusals > before) return undefined;
  return {
    gauge: dial,
    rings: rings.filter((one) => one !== undefined),
    ...(plane === undefined ? {} : { flat: plane }),
    ...(work === undefined ? {} : { work }),
    ...(file.decimal_mark === undefined
      ? {}
      : { decimalMark: file.decimal_mark }),
  };
}
