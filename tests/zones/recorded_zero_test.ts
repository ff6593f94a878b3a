import { deepEqual, equal, match, ok } from "node:assert/strict";
import { zeroSentences } from "sagbook/narrative/caution_sentences.ts";
import { sessionReport } from "sagbook/narrative/session_report.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { correctDrift, type RecordedZero } from "sagbook/zones/drift.ts";
import { BENCH, withFolder } from "../records/_bench_of_cases.ts";

const HEADER = "session,zeroing,zone,reading,unit\n";
const line = (zeroing: number, zone: string, mm: number) =>
  `S1,${zeroing},${zone},${mm},mm\n`;

async function read(...lines: string[]) {
  const folder = await withFolder({
    bench: BENCH,
    files: { "readings.csv": HEADER + lines.join("") },
  }, readPieceFolder);
  const report = sessionReport(folder);
  return {
    folder,
    report,
    warned: folder.problems.filter(({ severity }) => severity === "warning")
      .map(({ code }) => code),
    radius: report.radius?.radius.toFixed(3),
    cautions: report.cautions.join("\n").replace(/[\u00a0\u202f]/g, " "),
  };
}

Deno.test("correctDrift() counts readings from a zero that was written down instead of pressed", async () => {
  // 0.815 - 0.100 = 0.715: R = (3600 + 0.715²)/1.43 + 3 = 2520.840 mm.
  const looks = [
    [line(1, "flat", 0.1), line(1, "centre", 0.815)],
    [line(1, "flat", 0.1), line(1, "centre", 0.815), line(1, "flat", 0.1)],
    [line(1, "flat", 0.003), line(1, "centre", 0.718)],
    [line(1, "flat", 12.345), line(1, "centre", 13.06)],
    [line(1, "flat", -0.02), line(1, "centre", 0.695)],
  ];
  for (const lines of looks) {
    const { radius, warned, cautions } = await read(...lines);
    equal(radius, "2520.840", lines.join(""));
    deepEqual(warned, []);
    match(
      cautions,
      /The flat did not show 0 before the work was read in zeroing S1 \/ 1/,
    );
  }
});

Deno.test("correctDrift() takes out a creep on top of a written zero, and leaves the noise of a pressed one", async () => {
  // From 0.100 to 0.105 over five steps, one step a reading.
  const creeping = await read(
    line(1, "flat", 0.1),
    ...[0.815, 0.816, 0.817, 0.818].map((mm) => line(1, "centre", mm)),
    line(1, "flat", 0.105),
  );
  // The four stand at 0.714 each: R 2524.365 mm.
  equal(creeping.radius, "2524.365");
  const { folder } = creeping;
  const { zeros, sag } = correctDrift(folder.readings, 0.001);
  const expected: RecordedZero[] = zeros.map(({ zeroing }) => ({
    zeroing,
    zero: zeros[0].zero,
  }));
  deepEqual(zeros, expected);
  ok(sag.slice(1, 5).every((one) => Math.abs(one - 0.714) < 1e-12));
  const pressed = await read(
    line(1, "flat", 0.001),
    line(1, "centre", 0.715),
  );
  deepEqual([pressed.radius, pressed.report.session?.zeros], ["2520.840", []]);
  deepEqual(zeroSentences([], "mm"), []);
});

Deno.test("readPieceFolder() asks whether the work was read for the flat before it", async () => {
  const { warned, folder } = await read(
    line(1, "flat", 0.715),
    line(1, "centre", 0.715),
    line(1, "edge", 0.716),
  );
  ok(warned.includes("zero-jumped"));
  match(
    folder.problems.find(({ code }) => code === "zero-jumped")!.message,
    /the flat shows 0\.715 mm in session S1, as much as the work after it/,
  );
});
