import { Random } from "sagbook/numerics/random.ts";
import type { Study, StudyRow } from "./_study.ts";
import { zoneDrift } from "./_zone_drift.ts";

const SESSIONS = 1000;

async function rowsOf(
  sets: number,
  scatter: number,
  drift: number,
  seed: number,
): Promise<readonly StudyRow[]> {
  const name = `${sets} sets, σ = ${scatter}δ, drift ${drift}`;
  const design = {
    sets,
    scatter,
    drift: drift * Math.max(1, scatter),
    wander: drift * Math.max(1, scatter) / 4,
  };
  const random = new Random(seed).fork(name);
  const [blind, seen] = [
    await zoneDrift({ ...design, looks: false }, SESSIONS, random.fork("no")),
    await zoneDrift({ ...design, looks: true }, SESSIONS, random.fork("yes")),
  ];
  const row = (
    measure: string,
    value: number,
    more: Partial<StudyRow>,
  ): StudyRow => ({ case: name, measure, value, ...more });
  const share = { runs: SESSIONS };
  const none = drift === 0;
  return [
    row("coverage, nobody looked back", blind.covered, share),
    row("coverage, with looks", seen.covered, { ...share, atLeast: 0.94 }),
    row("half width with looks by without", seen.halfWidth / blind.halfWidth, {
      as: "number",
      ...(none ? { atMost: 1.25 } : {}),
    }),
    row("bias, nobody looked back, δ", blind.bias, { as: "number" }),
    row("bias, with looks, δ", seen.bias, {
      as: "number",
      // Three errors of the mean over the sessions of one seed.
      ...(none ? { atLeast: -0.1 * scatter, atMost: 0.1 * scatter } : {}),
    }),
    row("sessions with anything taken out", seen.corrected, {
      ...share,
      // One test for the mean move and one for the largest, 5 % each.
      ...(none ? { atMost: 0.15 } : {}),
    }),
  ];
}

/** What is gained by looking back at the flat, and what it costs. */
export const study: Study = {
  title: "Looks back at the flat: drift is carried or taken out, never ignored",
  about: `
${SESSIONS} sessions for each case and seed. A set reads centre, half way and edge in
that order and then looks at the flat; by then the zero has moved by the drift
(a multiple of σ or δ, whichever is larger; it varies by a quarter of itself from
set to set). Counted is the 95 % interval of edge less centre, which half the
drift shifts the same way in every set. Where nobody looks back, nothing tells.
`,
  async run(seed) {
    const rows: StudyRow[] = [];
    for (const sets of [3, 6]) {
      for (const scatter of [0.2, 0.7, 2]) {
        for (const drift of [0, 1, 4]) {
          rows.push(...await rowsOf(sets, scatter, drift, seed));
        }
      }
    }
    return rows;
  },
};
