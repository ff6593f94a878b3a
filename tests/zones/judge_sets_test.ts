import { deepEqual, equal, ok } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import { judgeSets, type VerdictGround } from "sagbook/zones/judge_sets.ts";
import type { FootClass, Place } from "sagbook/zones/place.ts";
import { near, piece, setsOf } from "./_session.ts";

const place = (distance: number, foot: FootClass = "foot out"): Place => ({
  id: "",
  label: `${distance}`,
  distance: mm(distance),
  foot,
});

const ground = (changes: Partial<VerdictGround> = {}): VerdictGround => ({
  places: [place(0, "any"), place(20), place(42)],
  ends: undefined,
  piece: piece({ sphericity: { statedAs: "sag", amount: mm(0.003) } }),
  feet: { circleRadius: mm(60), ballRadius: mm(3) },
  kind: "balls",
  step: 0.001,
  scope: "any diameter",
  seed: 1,
  ...changes,
});

const GOOD = [[715, 715, 715], [716, 716, 715], [714, 715, 714], [
  716,
  715,
  716,
]];

Deno.test("judgeSets() says why there is no verdict, the first cause first", () => {
  const one = ground({ places: [place(0, "any")] });
  equal(judgeSets(setsOf([[715], [716]]), one).sphericity.reason, "one zone");
  const apart = setsOf([[715, undefined, undefined], [
    undefined,
    714,
    undefined,
  ]]);
  equal(judgeSets(apart, ground()).sphericity.reason, "no common sets");
  equal(
    judgeSets(setsOf(GOOD.slice(0, 1)), ground()).sphericity.reason,
    "one set",
  );
  const open = ground({ piece: piece() });
  equal(judgeSets(setsOf(GOOD), open).sphericity.reason, "no tolerance");
  const surface = { statedAs: "surface" as const, amount: mm(0.001) };
  const centre = ground({
    places: [place(0, "any"), place(0, "any")],
    piece: piece({ sphericity: surface }),
  });
  equal(
    judgeSets(setsOf([[715, 715], [716, 716]]), centre).sphericity.reason,
    "tolerance needs an off-centre zone",
  );
});

Deno.test("judgeSets() states the smallest tolerance these sets would pass, and passes it", () => {
  const { agreeWithin } = judgeSets(setsOf(GOOD), ground()).sphericity;
  const at = (amount: number) =>
    judgeSets(
      setsOf(GOOD),
      ground({
        piece: piece({ sphericity: { statedAs: "sag", amount: mm(amount) } }),
      }),
    ).sphericity.verdict;
  equal(at(agreeWithin!), "within");
  equal(at(agreeWithin! * 0.999), "undecided");
});

Deno.test("judgeSets() claims no agreement of zones, or of ends, that were not compared", () => {
  const apart = [[715, 715, undefined], [716, 716, undefined], [
    715,
    undefined,
    715,
  ], [
    716,
    undefined,
    716,
  ]];
  const found = judgeSets(setsOf(apart), ground()).sphericity;
  equal(found.verdict, "undecided");
  equal(found.agreeWithin, undefined);
  const ends = { pairs: 2, dof: 0, amplitude: 0, allDirections: true };
  const open = judgeSets(setsOf(GOOD), ground({ ends })).sphericity;
  equal(open.verdict, "undecided");
  equal(open.byEnds, true);
  equal(open.agreeWithin, undefined);
  deepEqual(open.setsNeeded, { kind: "more ends" });
});

Deno.test("judgeSets() does not ask two ways of standing at one distance to meet in one set", () => {
  const places = [
    place(0, "any"),
    place(42, "foot out"),
    place(42.2, "feet out"),
  ];
  const rows = [715, 716, 714, 715, 716, 714, 715, 716].map((um, k) =>
    k % 2 === 0 ? [um, um, undefined] : [um, undefined, um]
  );
  const found = judgeSets(setsOf(rows), ground({ places }));
  equal(found.differences.length, 2);
  equal(found.sphericity.verdict, "within");
});

Deno.test("judgeSets() finds how many sets would decide from the sets that read most, those already read included", () => {
  const rows = [[715, 716, 717], [716, 715, 719], [714, 716, 716], [
    715,
    717,
    717,
  ]];
  const needed = (sets: ReturnType<typeof setsOf>) => {
    const { setsNeeded } = judgeSets(sets, ground()).sphericity;
    ok(setsNeeded?.kind === "sets", JSON.stringify(setsNeeded));
    return setsNeeded;
  };
  const plain = needed(setsOf(rows));
  ok(plain.sets > 4 && plain.chance >= 0.8 && plain.atBest <= plain.sets);
  // A set without the centre tells nothing of how many whole ones it takes,
  // but it has been read.
  const more = needed(setsOf([...rows, [undefined, 716, 718]]));
  equal(more.sets, plain.sets + 1);
  equal(more.chance, plain.chance);
  // A second set on a diameter is no further diameter.
  const twice = needed(setsOf([...rows, rows[3]], [0, 20, 40, 60, 60]));
  equal(twice.sets, plain.sets + 1);
});

Deno.test("judgeSets() holds the answer for these diameters to their repeats alone", () => {
  // Diameters differ by 20 µm at the edge and repeat to 1 µm.
  const rows = [[715, 715, 735], [715, 716, 734], [715, 715, 715], [
    716,
    715,
    716,
  ]];
  const sets = setsOf(rows, [0, 0, 90, 90]);
  const edge = (scope: VerdictGround["scope"]) => {
    const { differences } = judgeSets(sets, ground({ scope }));
    const { low, high } = differences[1].interval95!;
    return high - low;
  };
  ok(edge("any diameter") > 0.2);
  ok(edge("these diameters") < 0.01);
});

Deno.test("judgeSets() takes a surface tolerance by what the outermost place shows, a bar's own", () => {
  const surface = { statedAs: "surface" as const, amount: mm(0.001) };
  const sag = (changes: Partial<VerdictGround>) =>
    judgeSets(
      setsOf(GOOD),
      ground({ piece: piece({ sphericity: surface }), ...changes }),
    ).sphericity.tolerance!.sag;
  // By hand: 16 c² r² / a⁴ with c = 42, r = 60, a = 103.5 mm.
  near(sag({}), 0.001 * 16 * (42 * 60) ** 2 / 103.5 ** 4, 1e-12);
  near(sag({ kind: "bar" }), 1.5 * sag({}), 1e-12);
  const across = [place(0, "any"), place(20, "across"), place(42, "across")];
  near(sag({ kind: "bar", places: across }), 0.5 * sag({}), 1e-12);
});

/** Two evenings' worth of one sphere, read on three diameters or on six. */
const FEW = [
  [365, 365, 363],
  [363, 364, 363],
  [362, 366, 364],
  [
    364,
    364,
    365,
  ],
  [364, 364, 365],
  [361, 363, 362],
];
const two = piece({ sphericity: { statedAs: "sag", amount: mm(0.002) } });
const onDiameters = (degrees: readonly number[]) =>
  setsOf(FEW).map((set, k) => ({ ...set, diameterDegrees: degrees[k] }));

Deno.test("judgeSets() asks for sets on other diameters where few diameters limit, about as many as of sets that never shared one", () => {
  const given = ground({ piece: two });
  const needed = (degrees: readonly number[]) =>
    judgeSets(onDiameters(degrees), given).sphericity.setsNeeded!;
  const shared = needed([0, 60, 120, 0, 60, 120]);
  const apart = needed([0, 30, 60, 90, 120, 150]);
  ok(shared.kind === "sets", `${shared.kind}`);
  ok(apart.kind === "sets");
  equal(shared.diameters, 3);
  equal(apart.diameters, undefined);
  // Three of the six sets came twice; the rest is the noise of the estimate.
  const extra = shared.sets - apart.sets;
  ok(extra >= 1 && extra <= 8, `${shared.sets}, ${apart.sets}`);
});

Deno.test("judgeSets() has no practical number only where thirty sets on thirty diameters decide with less than the wanted chance, and tells it", () => {
  const given = ground({ piece: two });
  const close = FEW.map(([a, b, c]) => [a, b + 0.9, c]);
  const sets = setsOf(close).map((set, k) => ({
    ...set,
    diameterDegrees: [0, 60, 120, 0, 60, 120][k],
  }));
  const { setsNeeded } = judgeSets(sets, given).sphericity;
  ok(setsNeeded?.kind === "no practical number");
  equal(setsNeeded.moreThan, 30);
  ok(setsNeeded.chance > 0 && setsNeeded.chance < 0.8, `${setsNeeded.chance}`);
});
