import { Random } from "sagbook/numerics/random.ts";
import type { Study, StudyRow } from "./_study.ts";
import { twoEnds } from "./_two_ends.ts";

const SESSIONS = 1000;

async function rowsOf(
  diameters: number,
  scatter: number,
  opposite: number,
  seed: number,
): Promise<readonly StudyRow[]> {
  const others = opposite === 0
    ? "diameters alike"
    : `diameters differ by ${opposite}δ`;
  const name = `${diameters} diameters, σ = ${scatter}δ, ${others}`;
  const random = new Random(seed).fork(name);
  const tolerance = 20 * Math.hypot(scatter, opposite, 0.3);
  const design = { diameters, scatter, opposite, tolerance };
  const limit = await twoEnds(
    { ...design, amplitude: tolerance },
    SESSIONS,
    random.fork("limit"),
  );
  const found = await twoEnds(
    { ...design, amplitude: 2 * tolerance },
    SESSIONS,
    random.fork("coma"),
  );
  const row = (
    measure: string,
    value: number,
    more: Partial<StudyRow>,
  ): StudyRow => ({ case: name, measure, value, runs: SESSIONS, ...more });
  return [
    row("false WITHIN at the limit", limit.within, { atMost: 0.05 }),
    row("false OUT at the limit", limit.outside, { atMost: 0.05 }),
    row("coma of twice the limit found", found.outside, {
      // With two degrees of freedom the factor is 14: honest and nearly blind.
      ...(diameters > 4 ? { atLeast: 0.9 } : {}),
    }),
    row("its direction off by, degrees", found.turned, {
      as: "number",
      atMost: 10,
    }),
  ];
}

/** The two ends of a diameter: errors and power. */
export const study: Study = {
  title: "The two ends of a diameter: lopsided wear is found, and not invented",
  about: `
${SESSIONS} sessions for each case and seed, five places on each diameter, coma-like
wear in a direction drawn each time. The limit is 20 times the scatter. Where
diameters differ, they do so with opposite signs at their two ends, the same at
half way as at the edge, which is what is hardest to tell from coma.
`,
  async run(seed) {
    const rows: StudyRow[] = [];
    for (const diameters of [4, 6, 9]) {
      for (const scatter of [0.2, 2]) {
        for (const opposite of [0, 1]) {
          rows.push(...await rowsOf(diameters, scatter, opposite, seed));
        }
      }
    }
    return rows;
  },
};
