import { Random } from "sagbook/numerics/random.ts";
import { setsNeeded } from "sagbook/zones/sets_needed.ts";
import { decidedShare, type DecisionCase, modelOf } from "./_sets_needed.ts";
import type { Study, StudyRow } from "./_study.ts";

const SESSIONS = 2000;

const sphere = { means: [0, 0, 0], zeroing: 1, diameter: 0 } as const;

const CASES: readonly DecisionCase[] = [
  { ...sphere, name: "sphere, σ = 1δ, tolerance 2δ", scatter: 1, tolerance: 2 },
  { ...sphere, name: "sphere, σ = 2δ, tolerance 3δ", scatter: 2, tolerance: 3 },
  {
    name: "edge low by 0.5δ, σ = 0.5δ, diameters 0.5δ, tolerance 2δ",
    means: [0.5, 0.3, 0],
    scatter: 0.5,
    zeroing: 0.7,
    diameter: 0.5,
    tolerance: 2,
  },
  {
    name: "edge low by 5δ, σ = 2δ, tolerance 2δ",
    means: [5, 4.2, 0],
    scatter: 2,
    zeroing: 0,
    diameter: 0,
    tolerance: 2,
  },
  {
    name: "hill half way of 4δ, σ = 0.7δ, diameters 1δ, tolerance 2δ",
    means: [0, 4, 0],
    scatter: 0.7,
    zeroing: 1,
    diameter: 1,
    tolerance: 2,
  },
];

async function rowsOf(
  design: DecisionCase,
  seed: number,
): Promise<readonly StudyRow[]> {
  const found = setsNeeded(
    modelOf(design),
    { halfWidth: 0.001, dof: 4 },
    seed,
  );
  if (found.kind !== "sets") {
    throw new RangeError(
      `Cannot study a number of sets as there must be one: current value is ${found.kind} for ${design.name}`,
    );
  }
  const { sets } = found;
  const random = new Random(seed).fork(design.name);
  const share = (n: number): Promise<number> =>
    n < 2 ? Promise.resolve(0) : decidedShare(
      design,
      n,
      SESSIONS,
      random.fork(`${n}`),
    );
  const base = { case: design.name, runs: SESSIONS };
  return [
    { case: design.name, measure: "stated sets", value: sets, as: "number" },
    {
      ...base,
      measure: "decided with that many",
      value: await share(sets),
      atLeast: 0.77,
    },
    {
      ...base,
      measure: "decided with one fewer",
      value: await share(sets - 1),
      atMost: 0.83,
    },
  ];
}

/** The stated number of sets, tried. */
export const study: Study = {
  title: "The stated number of sets decides in 80 % of fresh sessions",
  about: `
The planner is told the truth and asked for the number of sets that decides with
80 % chance; ${SESSIONS} fresh sessions of that many sets, and of one fewer, are then
written as a tidy file, read and judged. The number is whole, so the chance jumps:
3 points either side are allowed.
`,
  async run(seed) {
    const rows: StudyRow[] = [];
    for (const design of CASES) rows.push(...await rowsOf(design, seed));
    return rows;
  },
};
