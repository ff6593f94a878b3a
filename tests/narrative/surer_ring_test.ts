import { doesNotMatch, match } from "node:assert/strict";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

const BENCH = {
  gauge: { unit: "mm", display_step: "0.001 mm", scale_uncertainty: 0.0005 },
  rings: [45, 75].map((radius) => ({
    id: `${2 * radius}`,
    radius: `${radius} mm`,
    ball_radius: "4 mm",
    radius_uncertainty: "0.01 mm",
    foot: "foot out",
  })),
};

/** Four sets of a sphere by one ring. */
const sets = (ring: number, radius: number, zones: readonly string[]) =>
  [0, 1, 0, 1].map((more, k) =>
    zones.map((zone, n) => {
      const sag = sagFromRadius(mm(radius), {
        circleRadius: mm(ring / 2),
        ballRadius: mm(4),
      }, "concave");
      return `E1,${ring},${ring}-${k + 1},${45 * k},${zone},${
        (sag + (more + n) % 2 / 1000).toFixed(3)
      }\n`;
    }).join("")
  ).join("");

const answer = (small: number, large: number) =>
  withFolder({
    piece: {
      name: "invented 280",
      form: "concave",
      diameter: "280 mm",
      bevel: "1.5 mm",
      target: { radius: "2800 mm", tolerance: "18 mm" },
      sphericity_tolerance: { sag: "3 µm" },
      invented: true,
    },
    bench: BENCH,
    files: {
      "readings.csv": "session,ring,zeroing,diameter_deg,zone,reading\n" +
        sets(90, small, ["centre", "50%", "edge"]) +
        sets(150, large, ["centre", "edge"]),
    },
  }, openPiece).then(({ answer }) =>
    answer.join("\n").replace(/[\u00a0\u202f]/g, " ")
  );

Deno.test("sessionReport() tells of a surer ring of the same session, and goes by it", async () => {
  const said = await answer(2815, 2808);
  match(
    said,
    /^The radius of curvature is 28\d\d\.\d ± \d\.\d mm .* not decided\.$/m,
  );
  match(
    said,
    /^Ring 150, read in the same session, is surer: 280\d\.\d ± [3-5]\.\d mm; the target is 2800 ± 18 mm, and the radius is within that\.$/m,
  );
  match(said, /^Next: go on to the next grade once the loupe/m);
});

Deno.test("sessionReport() does not go by a ring that contradicts the other, however sure", async () => {
  const said = await answer(2860, 2806);
  match(said, /^Ring 150 says otherwise: /m);
  doesNotMatch(said, /is surer|Next: go on to the next grade/);
});
