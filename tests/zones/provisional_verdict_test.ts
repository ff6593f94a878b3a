import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { Random } from "sagbook/numerics/random.ts";
import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
import type { Place } from "sagbook/zones/place.ts";
import {
  nominalLevel,
  provisionalVerdict,
} from "sagbook/zones/provisional_verdict.ts";
import type { MeasuredSet } from "sagbook/zones/set_table.ts";
import { stoppingUsers } from "../studies/_stopping_user.ts";

const placesOf = (count: number): readonly Place[] =>
  Array.from({ length: count }, (_, k) => ({
    distance: 20 * k,
  })) as unknown as readonly Place[];

/** Sets of sags in µm, each on a diameter of its own. */
function sets(rows: readonly (readonly (number | undefined)[])[]) {
  return rows.map((sags, k): MeasuredSet => ({
    label: `${k}`,
    zeroing: `${k}`,
    diameterDegrees: 12 * k,
    cells: sags.map((sag) =>
      sag === undefined ? undefined : { sag: sag / 1000, readings: 1 }
    ),
  }));
}

Deno.test("provisionalVerdict() is within exactly where Student's t at the nominal level says so", () => {
  // Differences 1, 2, 3, 2: mean 2, s² = 2/3, standard error √(1/6) µm.
  const four = sets([[715, 714], [716, 714], [717, 714], [716, 714]]);
  const t = studentTQuantile(nominalLevel({ first: 3, last: 8 }), 3, "upper");
  const limit = (2 + t * Math.sqrt(1 / 6)) / 1000;
  const verdict = (tolerance: number) =>
    provisionalVerdict(four, { places: placesOf(2), tolerance, step: 0 });
  equal(verdict(limit * 1.0001).verdict, "within");
  equal(verdict(limit * 0.9999).verdict, "undecided");
  ok(Math.abs(verdict(1).agreeWithin! - limit) < 1e-12);
});

Deno.test("provisionalVerdict() is outside where the simultaneous interval, shared by all looks, lies beyond", () => {
  // Differences 31, 32, 33, 32 µm.
  const four = sets([[745, 714], [746, 714], [747, 714], [746, 714]]);
  const t = studentTQuantile(0.025 / 6, 3, "upper");
  const nearest = (32 - t * Math.sqrt(1 / 6)) / 1000;
  const verdict = (tolerance: number) =>
    provisionalVerdict(four, { places: placesOf(2), tolerance, step: 0 })
      .verdict;
  equal(verdict(nearest * 0.9999), "outside");
  equal(verdict(nearest * 1.0001), "undecided");
});

Deno.test("provisionalVerdict() asks for more than the verdict at a planned number, and says nothing before set 3 and after the last", () => {
  const rows = [[715, 714], [716, 715], [715, 714], [716, 715], [715, 714]];
  const ground = { places: placesOf(2), tolerance: 0.1, step: 0.001 };
  const looks = { first: 3, last: 4 } as const;
  deepEqual(
    [1, 2, 3, 4, 5].map((n) =>
      provisionalVerdict(sets(rows.slice(0, n)), ground, looks).verdict
    ),
    ["early", "early", "within", "within", "over"],
  );
  // A set with one place only tells no difference and is no look.
  const lone = sets([[715, 714], [716, undefined], [715, 714]]);
  equal(provisionalVerdict(lone, ground).sets, 2);
});

Deno.test("provisionalVerdict() is never within while some pair of places was not read together", () => {
  const apart = sets([
    ...[[715, 714, undefined], [715, 714, undefined], [716, 715, undefined]],
    ...[[715, undefined, 714], [715, undefined, 714], [716, undefined, 715]],
  ]);
  const found = provisionalVerdict(apart, {
    places: placesOf(3),
    tolerance: 0.1,
    step: 0,
  });
  equal(found.verdict, "undecided");
  equal(found.agreeWithin, undefined);
});

Deno.test("provisionalVerdict() does not call a lopsided surface within", () => {
  const lopsided = [0, 60, 120, 30].map((degrees, k): MeasuredSet => {
    const lean = 0.02 * Math.cos(degrees * Math.PI / 180);
    const plus = 0.714 + lean + 0.0001 * k;
    const minus = 0.714 - lean;
    return {
      label: "",
      zeroing: `${k}`,
      diameterDegrees: degrees,
      cells: [
        { sag: 0.714, readings: 1 },
        { sag: (plus + minus) / 2, readings: 2, plus, minus },
      ],
    };
  });
  const ground = { places: placesOf(2), tolerance: 0.01, step: 0 };
  const found = provisionalVerdict(lopsided, ground);
  equal(found.verdict, "outside");
  equal(found.byEnds, true);
  const wide = provisionalVerdict(lopsided, { ...ground, tolerance: 0.1 });
  equal(wide.verdict, "within");
});

Deno.test("nominalLevel() falls with the number of looks and keeps the error of a stopping user at 5 %", () => {
  const levels = Array.from(
    { length: 18 },
    (_, k) => nominalLevel({ first: 3, last: k + 3 }),
  );
  equal(levels[0], 0.05);
  ok(levels.every((level, k) => k === 0 || level < levels[k - 1]));
  // Bonferroni's bound would be needlessly strict.
  ok(levels.every((level, k) => level >= 0.05 / (k + 1)));
  const users = 1500;
  const { within, plainWithin } = stoppingUsers(
    {
      scatter: 1,
      diameter: 0,
      diameters: 8,
      departures: [0, 1],
      rounds: false,
      looks: { first: 3, last: 8 },
    },
    users,
    new Random(4).fork("stopping"),
  );
  // Three simulation errors about 5 %, and well above it without the rule.
  ok(Math.abs(within / users - 0.05) < 3 * Math.sqrt(0.0475 / users));
  ok(plainWithin / users > 0.09);
});

Deno.test("provisionalVerdict() refuses looks that were not planned for and a tolerance of 0", () => {
  const ground = { places: placesOf(2), tolerance: 0.01, step: 0 };
  for (const last of [2, 21, 5.5]) {
    throws(() => provisionalVerdict([], ground, { first: 3, last }), {
      name: "RangeError",
      message:
        `Cannot plan looks as the last must be a whole number of sets from 3 to 20: current value is ${last}`,
    });
  }
  throws(() => provisionalVerdict([], { ...ground, tolerance: 0 }), {
    name: "RangeError",
    message:
      "Cannot judge sets as the tolerance must be above 0 mm: current value is 0 mm",
  });
});
