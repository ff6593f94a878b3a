import { ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { errorAt } from "../studies/_study.ts";
import { type CoverageCase, zoneCoverage } from "../studies/_zone_coverage.ts";

const SESSIONS = 400;

/** Three simulation errors: a small study must not fail by chance. */
const slack = (share: number): number => 3 * errorAt(share, SESSIONS);

const CASES: readonly [string, Omit<CoverageCase, "shape">][] = [
  ["steady readings", { scatter: 0.2, zeroing: 0, diameter: 0, sets: 3 }],
  ["scatter of a step", { scatter: 1, zeroing: 1, diameter: 1, sets: 5 }],
  ["scatter of two steps", { scatter: 2, zeroing: 0, diameter: 0, sets: 8 }],
];

for (const [name, design] of CASES) {
  Deno.test(`compareZones() covers what it states and judge() errs in 5 % at most: ${name}`, async () => {
    const random = new Random(1);
    const slope = await zoneCoverage(
      { ...design, shape: "slope" },
      SESSIONS,
      random,
    );
    const single = slope.single / slope.differences;
    ok(single >= 0.95 - slack(0.95), `single ${single}`);
    if (design.scatter >= 2) ok(single <= 0.97 + slack(0.97), `${single}`);
    const together = slope.simultaneous / SESSIONS;
    ok(together >= 0.94 - slack(0.94), `simultaneous ${together}`);
    const within = slope.within / SESSIONS;
    ok(within <= 0.05 + slack(0.05), `false within ${within}`);
    const hump = await zoneCoverage(
      { ...design, shape: "hump" },
      SESSIONS,
      random,
    );
    for (const { outside } of [slope, hump]) {
      ok(outside / SESSIONS <= 0.05 + slack(0.05), `false out ${outside}`);
    }
  });
}
