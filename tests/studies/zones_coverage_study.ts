import { Random } from "sagbook/numerics/random.ts";
import type { Study, StudyRow } from "./_study.ts";
import { type CoverageCase, zoneCoverage } from "./_zone_coverage.ts";

const SESSIONS = 2000;
/** The design: standard deviations in steps. */
const DESIGNS: readonly Omit<CoverageCase, "shape">[] = [
  ...[0, 1].flatMap((other) =>
    [3, 5, 8].flatMap((sets) =>
      [0.05, 0.2, 0.5, 1, 2, 5].map((scatter) => ({
        scatter,
        zeroing: other,
        diameter: other,
        sets,
      }))
    )
  ),
  // The centre stands still while the other zones wander: the hardest case.
  ...[0.05, 0.5].map((scatter) => ({
    scatter,
    zeroing: 0,
    diameter: 1,
    sets: 8,
  })),
];

function named({ scatter, zeroing, diameter, sets }: CoverageCase): string {
  const others = diameter === 0
    ? "no other scatter"
    : zeroing === 0
    ? "diameter 1δ"
    : "zeroing and diameter 1δ";
  return `σ = ${scatter}δ, ${sets} sets, ${others}`;
}

async function rowsOf(
  design: CoverageCase,
  seed: number,
): Promise<readonly StudyRow[]> {
  const name = named(design);
  const random = new Random(seed).fork(name).fork(design.shape);
  const found = await zoneCoverage(design, SESSIONS, random);
  const runs = SESSIONS;
  if (design.shape === "hump") {
    return [{
      case: `${name}, two differences at the limit`,
      measure: "false OUT",
      value: found.outside / runs,
      runs,
      atMost: 0.05,
    }];
  }
  const clear = design.scatter >= 2;
  return [
    {
      case: name,
      measure: "coverage of single 95 % intervals",
      value: found.single / found.differences,
      // The three differences of a session are not independent.
      runs,
      ...(clear ? { atLeast: 0.93, atMost: 0.97 } : { atLeast: 0.95 }),
    },
    {
      case: name,
      measure: "coverage of simultaneous 95 % intervals",
      value: found.simultaneous / runs,
      runs,
      atLeast: 0.94,
    },
    {
      case: name,
      measure: "false WITHIN at the limit",
      value: found.within / runs,
      runs,
      atMost: 0.05,
    },
    {
      case: name,
      measure: "false OUT",
      value: found.outside / runs,
      runs,
      atMost: 0.05,
    },
    ...(design.sets < 4 ? [] : [{
      case: name,
      measure: "a reading flagged though none slipped",
      value: found.flagged / runs,
      runs,
      atMost: 0.05,
    }]),
  ];
}

/** Coverage of zone differences, and the errors of the verdict. */
export const study: Study = {
  title:
    "Intervals of zone differences cover, and verdicts err in no more than 5 %",
  about: `
${SESSIONS} sessions for each case and seed, written as a tidy file and read again.
δ is the display step; the true sag is uniform over one step, and so is the
difference at the limit. Three zones; half way departs by half the tolerance and
the edge by all of it, or (two differences at the limit) half way alone by all.
The limit is 12 times the scatter and more, so that "within" is decided there: the
two one-sided tests then err in exactly 5 % where rounding plays no part. (The
highest such row, σ = 5δ with 3 sets, was run on with 40,000 sessions of seeds 100
to 109: 5.1 % ± 0.1 %.)
`,
  async run(seed) {
    const rows: StudyRow[] = [];
    for (const design of DESIGNS) {
      rows.push(...await rowsOf({ ...design, shape: "slope" }, seed));
      const { scatter, sets } = design;
      if ((scatter === 0.2 || scatter === 2) && sets !== 5) {
        rows.push(...await rowsOf({ ...design, shape: "hump" }, seed));
      }
    }
    return rows;
  },
};
