import { ok } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import {
  PROFILE_CASES,
  profileCoverage,
} from "../studies/_profile_coverage.ts";
import { errorAt } from "../studies/_study.ts";
import { twoEnds } from "../studies/_two_ends.ts";
import { zoneDrift } from "../studies/_zone_drift.ts";

const SESSIONS = 300;

/** Three simulation errors: a small study must not fail by chance. */
const slack = (share: number): number => 3 * errorAt(share, SESSIONS);

Deno.test("fitProfile() holds the conic, or the polynomial that reads the same, in 93 to 97 %", async () => {
  const random = new Random(1);
  for (const design of [PROFILE_CASES[0], PROFILE_CASES[3]]) {
    const found = await profileCoverage(design, SESSIONS, random);
    for (const [measure, share] of Object.entries(found)) {
      const what = `${design.name}, ${measure}: ${share}`;
      ok(share >= 0.93 - slack(0.93), what);
      ok(share <= 0.97 + slack(0.97), what);
    }
  }
});

Deno.test("compareEnds() errs in 5 % at the limit and finds coma of twice the limit", async () => {
  const design = { diameters: 6, scatter: 1, opposite: 1, tolerance: 28 };
  const limit = await twoEnds(
    { ...design, amplitude: 28 },
    SESSIONS,
    new Random(1),
  );
  ok(limit.within <= 0.05 + slack(0.05), `within ${limit.within}`);
  ok(limit.outside <= 0.05 + slack(0.05), `outside ${limit.outside}`);
  const coma = await twoEnds(
    { ...design, amplitude: 56 },
    SESSIONS,
    new Random(2),
  );
  ok(coma.outside >= 0.95, `found ${coma.outside}`);
});

Deno.test("correctDrift() keeps coverage that drift takes from sessions without looks, for a fifth of width", async () => {
  const still = { sets: 6, scatter: 0.7, drift: 0, wander: 0, looks: true };
  const moving = { ...still, drift: 4, wander: 1 };
  const random = new Random(1);
  const [plain, blind, idle, seen] = [
    await zoneDrift({ ...still, looks: false }, SESSIONS, random),
    await zoneDrift({ ...moving, looks: false }, SESSIONS, random),
    await zoneDrift(still, SESSIONS, random),
    await zoneDrift(moving, SESSIONS, random),
  ];
  ok(idle.covered >= 0.95 - slack(0.95), `${idle.covered}`);
  ok(idle.halfWidth < 1.25 * plain.halfWidth, `${idle.halfWidth}`);
  ok(Math.abs(idle.bias) < 0.15, `${idle.bias}`);
  ok(blind.covered < 0.3, `${blind.covered}`);
  ok(seen.covered >= 0.95 - slack(0.95), `${seen.covered}`);
  ok(Math.abs(seen.bias) < 0.3, `${seen.bias}`);
});
