import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { deepEqual, equal, match } from "node:assert/strict";
import { historyPoints } from "sagbook/narrative/history_points.ts";
import { openGaugeStudy } from "sagbook/narrative/gauge_report.ts";
import { planSheet, sheetTable } from "sagbook/narrative/gauge_tables.ts";
import { mainOfTwo } from "sagbook/narrative/main_session.ts";
import { ringDisagreement } from "sagbook/narrative/ring_disagreement.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

const ring = (id: string, radius: number) => ({
  id,
  radius: `${radius} mm`,
  radius_uncertainty: "0.01 mm",
  ball_diameter: "10 mm",
  foot: "feet out",
});
const PIECE = {
  name: "invented convex",
  form: "convex",
  diameter: "90 mm",
  bevel: "0.5 mm",
  target: { radius: "640 mm", tolerance: "6 mm" },
  sphericity_tolerance: { sag: "3.5 µm" },
};
// Sag of R 642 mm: q 647 mm; 15²/(2q) and 25²/(2q), and a little more.
const SAGS = { "30": [0.1739, 0.1739], "50": [0.4832, 0.4832] } as const;

/** Sessions that read the same places as often with both rings. */
function shop(grades: readonly string[], gauge: Record<string, unknown>) {
  const lines = grades.flatMap((grade, k) =>
    (["30", "50"] as const).flatMap((id) =>
      [0, 60, 120, 30].flatMap((diameter, set) =>
        ["centre", "50% reach"].map((zone, z) => {
          const sag = SAGS[id][z] + [0, 0.001, 0, -0.001][set];
          return `S${k},${id},${id}-${set},${diameter},${zone},${
            sag.toFixed(4)
          } mm,${grade}`;
        })
      )
    )
  );
  return {
    piece: PIECE,
    bench: { gauge, rings: [ring("30", 15), ring("50", 25)] },
    files: {
      "readings.csv": `session,ring,zeroing,diameter_deg,zone,reading,grade\n${
        lines.join("\n")
      }\n`,
    },
  };
}
const COARSE = { unit: "in", display_step: "0.0001 in" };

Deno.test("mainOfTwo() rests the answer on the ring that is clearly surer where both read as much", async () => {
  await withFolder(shop(["F500"], COARSE), async (path) => {
    const report = await openPiece(path);
    equal(report.sessions.length, 2);
    equal(report.session!.ring.id, "50");
    match(report.reasons[0], /with ring 50 \(/);
    const [small, large] = report.sessions;
    const { piece, bench } = report.folder;
    equal(mainOfTwo(small, large, piece, bench), large);
    equal(mainOfTwo(large, small, piece, bench), large);
    // More places, then more sets, count before that.
    const fewer = { ...large, sets: large.sets.slice(1) };
    equal(mainOfTwo(small, fewer, piece, bench), small);
    equal(mainOfTwo(small, small, piece, bench), small);
    const [point] = historyPoints(report.folder);
    equal(point.session.ring.id, "50");
  });
});

Deno.test("planSheet() is for the work as it stands: ring, grade and unit of the gauge", async () => {
  const files = shop(["F120", "F220", "F500"], COARSE);
  await withFolder(files, async (path) => {
    const report = await openGaugeStudy(path, { studies: 200 });
    equal(report.main!.ring, "50");
    equal(report.main!.grade, "F500");
    const sheet = planSheet(report)!;
    equal(sheet.ring, "50");
    equal(sheet.grade, "F500");
    // A gauge in inches is read in inches, whatever the answers are given in.
    equal(report.folder.piece.unit, "mm");
    equal(sheet.unit, "in");
    const { "text/plain": text } = await sheetTable(sheet)[jupyterDisplay]();
    match(String(text), /^The plan with ring 50, step by step/);
  });
});

Deno.test("ringDisagreement() puts rings that read one surface differently into the answer", async () => {
  const FINE = { unit: "mm", display_step: "0.001 mm" };
  const files = shop(["F500"], FINE);
  const agreeing = await withFolder(files, openPiece);
  const { session, sessions, folder: { piece, bench } } = agreeing;
  deepEqual(ringDisagreement(session!, sessions, piece, bench), []);
  // Ring 30 is really one of 31 mm: R comes out 7 % short.
  const rings = [ring("30", 14.5), ring("50", 25)];
  const wrong = await withFolder(
    { ...files, bench: { ...files.bench, rings } },
    openPiece,
  );
  const plain = wrong.answer.map((one) => one.replaceAll("\u00a0", " "));
  match(
    plain[1],
    /^Ring 30 says otherwise: with it R is 42\.4 ± \d\.\d mm shorter, more than both can be off/,
  );
  match(
    plain.at(-1)!,
    /^Next: find out which ring is wrong .* before any more/,
  );
  const alone = wrong.sessions.filter((one) => one === wrong.session);
  deepEqual(ringDisagreement(wrong.session!, alone, piece, bench), []);
});
