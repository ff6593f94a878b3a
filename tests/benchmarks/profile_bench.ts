/**
 * The profile of a surface from its zones, beside NumPy's least squares with
 * SciPy's t.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { fitProfile } from "sagbook/zones/profile.ts";
import type { MeasuredSet } from "sagbook/zones/set_table.ts";
import { benchProgram } from "./_program.ts";
import { sideBySide } from "./_side_by_side.ts";

/** The same in _peer_profile.py. */
const DISTANCES = [0, 18, 36, 54, 72, 88];
const RING = 60;
const HALF = 150;

/** Sags of sets, in mm, made from a seed; the peer reads the same. */
function sags(sets: number): number[][] {
  const random = new Random(5);
  return Array.from({ length: sets }, () => {
    const zero = 0.001 * random.normal();
    return DISTANCES.map((c) =>
      0.6 + zero - 1e-7 * c * c + 0.0005 * random.normal()
    );
  });
}

if (import.meta.main) {
  await benchProgram({
    ours: (n) => {
      const sets = sags(n).map((row, k): MeasuredSet => ({
        label: String(k),
        zeroing: String(k),
        cells: row.map((sag) => ({ sag, readings: 1 })),
      }));
      const places = DISTANCES.map((distance) => ({
        id: String(distance),
        label: String(distance),
        distance: mm(distance),
        foot: "foot out" as const,
        threefold: 1,
      }));
      return () => {
        const profile = fitProfile(sets, places, {
          contactCircle: RING,
          halfDiameter: HALF,
          radius: mm(3000),
          step: 0,
          scope: "any diameter",
        })!;
        // In nm, so that the comparison with the peer is not of noughts.
        return [
          ...profile.coefficients,
          ...profile.points.map(({ departure }) => departure),
        ].flatMap(({ value, interval95 }) =>
          [value, interval95!.low, interval95!.high].map((x) => 1e6 * x)
        );
      };
    },
    run: async (size) => {
      const folder = await Deno.makeTempDir({ prefix: "profile-" });
      try {
        const sizes = size === "tiny" ? [10] : [10, 100, 1000];
        for (const n of sizes) {
          await Deno.writeTextFile(`${folder}/${n}`, JSON.stringify(sags(n)));
        }
        const { row, apart } = await sideBySide({
          program: import.meta.url,
          what: "Profile with its intervals, 1,000 sets of six places",
          grows: "sets",
          sizes,
          runs: () => size === "tiny" ? 1 : 30,
          rounds: size === "tiny" ? 1 : 3,
          agree: 1e-7,
          peer: {
            name: "NumPy and SciPy",
            needs: "python3 with scipy",
            command: (n, runs) => [
              "python3",
              "-B",
              fileURLToPath(import.meta.resolve("./_peer_profile.py")),
              String(n),
              String(runs),
              `${folder}/${n}`,
            ],
          },
        });
        const [small] = row.growth!;
        return {
          title: "Profile of a surface",
          about:
            `Three even terms through six places, one fit for each set, and the 95 % interval of the coefficients and of 41 points from the scatter over sets. The peer is the same in vectorised Python: \`numpy.linalg.lstsq\` on all sets at once, \`scipy.stats.t\`. Ours works out the conic and its intervals besides.`,
          rows: [
            ...(size === "tiny" ? [] : [{
              what: "Profile with its intervals, 10 sets of six places",
              ours: small.ours,
              peer: {
                ...row.peer!,
                ...(small.peer === undefined ? {} : { value: small.peer }),
              },
              memory: { ours: small.ourMemory, peer: small.peerMemory },
            }]),
            row,
          ],
          ...(apart === undefined ? {} : {
            details:
              `Coefficients, points and their intervals differ by at most ${
                apart.toExponential(0)
              } of 1 nm, or of themselves where larger.`,
          }),
        };
      } finally {
        await Deno.remove(folder, { recursive: true });
      }
    },
  });
}
