import { deepEqual, equal, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { BENCH, PIECE, withFolder } from "./_bench_of_cases.ts";

const ZONES = ["centre", "50% reach", "edge"];
const GOOD = [[0.715, 0.715, 0.714], [0.716, 0.715, 0.715], [
  0.715,
  0.714,
  0.715,
]];
// Mean of the nine: 6.434 / 9 = 0.714889 mm, R 2521.231 mm.

type Sheet = readonly (readonly number[])[];

const rows = (sheet: Sheet, session = "S1", unit = "mm") =>
  sheet.flatMap((set, k) =>
    set.map((sag, zone) =>
      `${session},${k + 1},${60 * k},${ZONES[zone]},${sag},${unit}\n`
    )
  ).join("");
const HEADER = "session,zeroing,diameter_deg,zone,reading,unit\n";
const each = (change: (sag: number) => number): Sheet =>
  GOOD.map((set) => set.map((sag) => Number(change(sag).toFixed(6))));
const but = (set: number, zone: number, sag: number): Sheet =>
  GOOD.map((one, k) =>
    one.map((typed, z) => k === set && z === zone ? sag : typed)
  );

const [RING] = BENCH.rings;
const ringOf = (change: Record<string, unknown>) => ({
  ...BENCH,
  rings: [{ ...RING, ...change }],
});

async function doubts(
  readings: string,
  { piece = {}, bench = BENCH as Record<string, unknown> } = {},
) {
  const { problems, lines, readings: kept } = await withFolder({
    piece: { ...PIECE, ...piece },
    bench,
    files: { "readings.csv": HEADER + readings },
  }, readPieceFolder);
  equal(lines.read, lines.used + lines.reported);
  equal(kept.length, lines.used);
  return problems.filter(({ severity }) => severity === "warning");
}

/** One warning, at that line, of that kind, with those words. */
async function one(
  readings: string,
  line: number,
  code: string,
  words: RegExp,
  options = {},
) {
  const found = await doubts(readings, options);
  deepEqual(found.map((problem) => `${problem.line} ${problem.code}`), [
    `${line} ${code}`,
  ]);
  match(found[0].message, words);
}

Deno.test("readPieceFolder() has no doubt about a good session, a shape or honest progress", async () => {
  deepEqual(await doubts(rows(GOOD)), []);
  // A zone that always reads so is shape, up to a seventh of the sag.
  const shape = GOOD.map(([a, b, c]) => [a, b + 0.03, c + 0.1]);
  deepEqual(await doubts(rows(shape)), []);
  const turnedLike = GOOD.map(([a, b, c]) => [a, b, c + 0.1003]);
  deepEqual(await doubts(rows(turnedLike)), []);
  // Two evenings of grinding that are a round amount apart.
  deepEqual(
    await doubts(rows(each((s) => s - 0.2)) + rows(GOOD, "S2"), {
      piece: { starting_radius: "4000 mm" },
    }),
    [],
  );
  // A coarse display: neighbouring values are far apart as parts.
  const coarse = { ...BENCH.gauge, display_step: "0.01 mm" };
  deepEqual(
    await doubts(
      rows([[0.06, 0.07, 0.05], [0.06, 0.06, 0.07], [0.07, 0.06, 0.06]]),
      {
        piece: { target: { radius: "30000 mm" } },
        bench: { ...BENCH, gauge: coarse },
      },
    ),
    [],
  );
});

Deno.test("readPieceFolder() names the odd reading, whichever comes first, and what the others say", async () => {
  const inches =
    /^1 of 9 readings of session S1 differs from its others \(0\.7149 mm\) by about 25\.4 times, the mark of inches taken for millimetres: 0\.0282 mm, with the other unit 0\.7163 mm\. Without it the mean sag is 0\.7149 mm \(R 252/;
  for (const [set, zone] of [[0, 0], [1, 1], [2, 2]]) {
    const line = 2 + 3 * set + zone;
    await one(rows(but(set, zone, 0.0282)), line, "other-unit", inches);
  }
  const half = [GOOD[0], [0.0282, 0.0281, 0.0281], [0.0281, 0.0281, 0.0282], [
    ...GOOD[2],
  ]];
  await one(rows(half), 5, "other-unit", /^6 of 12 readings/);
  await one(
    rows(but(1, 1, 28.13)),
    6,
    "other-unit",
    /about 39\.4 times, the mark of thousandths of an inch/,
  );
  await one(
    rows(but(1, 1, 0.0715)),
    6,
    "far-off-reading",
    /0\.0715 mm is about 10 times smaller/,
  );
  await one(
    rows(but(1, 1, 0.751)),
    6,
    "far-off-reading",
    /stands far from what was read there otherwise \(0\.7145 mm\): 0\.751 mm/,
  );
});

Deno.test("readPieceFolder() names a turn of the dial in one reading, one set and one session", async () => {
  for (const turn of [1, 0.5, 0.2, 0.1, -0.2, -0.5]) {
    await one(
      rows(but(1, 1, Number((0.7145 + turn).toFixed(4)))),
      6,
      "turn-of-the-dial",
      new RegExp(
        `by ${Math.abs(turn)} mm, a round amount such as a full turn of a dial`,
      ),
    );
  }
  await one(
    rows(GOOD.map((set, k) => k === 1 ? set.map((s) => s + 0.2) : set)),
    5,
    "turn-of-the-dial",
    /^3 of 9 readings of session S1, all of one zeroing, differ .* Without them the mean sag is 0\.7147 mm \(R 2522 mm\)/,
  );
  await one(
    rows(GOOD) + rows(each((s) => s + 0.2), "S2"),
    11,
    "turn-of-the-dial",
    /session S2 reads 0\.2 mm more than session S1, .* as entered R is 1970\.9 mm, without the turn 2521\.2 mm/,
  );
  await one(
    rows(each((s) => s + 1)),
    2,
    "far-from-target",
    /R 1053\.5 mm, far beyond the target of 2520 mm; if one turn too many was counted \(1 mm\), the sag is 0\.7149 mm and R 2521\.2 mm/,
  );
  await one(
    rows(each((s) => 1 - s)),
    2,
    "far-from-target",
    /if the dial runs backward \(1 mm\), the sag is 0\.7149 mm/,
    { piece: { starting_radius: "4000 mm" } },
  );
});

Deno.test("readPieceFolder() asks about a sign in the words of the file, and gives advice that fits it", async () => {
  const said = async (readings: string, counts?: "concave" | "convex") => {
    const bench = counts === undefined
      ? BENCH
      : { ...BENCH, gauge: { ...BENCH.gauge, counts_up_on: counts } };
    const found = await doubts(readings, { bench });
    deepEqual(found.map(({ code }) => code), ["negative-sag"]);
    return [found[0].message, found[0].mend!];
  };
  const minus = each((sag) => -sag);
  for (const counts of [undefined, "concave"] as const) {
    const [message, mend] = await said(rows(minus), counts);
    match(message, /is negative, but sag .* count down on concave work, or/);
    match(mend, /^if the gauge counts down .* "counts_up_on": "convex"/);
  }
  const [message, mend] = await said(rows(GOOD), "convex");
  match(
    message,
    /^every reading of session S1 is positive, but “counts_up_on” of bench\.json says that the gauge counts down on concave work: does it count up there, or is the work convex\? Turned round/,
  );
  match(mend, /^if the gauge counts up .* "counts_up_on": "concave"/);
  // Another session with the usual sign: turning the gauge would spoil it.
  const [, both] = await said(rows(GOOD) + rows(minus, "S2"));
  match(both, /^session S1 has the other sign: .* one way in all sessions; /);
  const [, turned] = await said(rows(minus) + rows(GOOD, "S2"), "convex");
  match(turned, /^session S1 has the other sign: /);
});

Deno.test("readPieceFolder() asks about signs that are mixed and about a zero pressed on the work", async () => {
  await one(
    rows(GOOD.map((set, k) => k === 1 ? set.map((s) => -s) : set)),
    5,
    "negative-sag",
    /^3 of 9 readings of session S1, all of one zeroing, have the other sign than its others \(0\.7147 mm\)/,
  );
  // What stands in the file, also where the gauge counts down on such work.
  await one(
    rows(GOOD.map((set, k) => k === 1 ? set : set.map((s) => -s))),
    5,
    "negative-sag",
    /have the other sign than its others \(-0\.7147 mm\): 0\.71\d+ mm/,
    { bench: { ...BENCH, gauge: { ...BENCH.gauge, counts_up_on: "convex" } } },
  );
  const nought = [[0, 0.001, -0.001], [0, 0, 0.001], [0, -0.001, 0.001]];
  await one(
    rows(nought),
    2,
    "zero-reading",
    /as near as the display can tell: was zero pressed on the work instead of the flat\?$/,
  );
  const found = await doubts(`${rows(nought)}S1,3,120,flat,-0.716,mm\n`);
  deepEqual(found.map(({ code }) => code), ["zero-reading", "zero-jumped"]);
  match(found[1].message, /Then the sag is 0\.716 mm and R 2517\.3 mm/);
});

Deno.test("readPieceFolder() does not take a jump of the zero for its creep", async () => {
  const look = (shown: number) =>
    `${rows(GOOD.slice(0, 2))}S1,2,60,flat,${shown},mm\n${
      rows(GOOD.slice(2), "S1").replace("S1,1", "S1,3")
    }`;
  for (const creep of [0.005, -0.012, 0.014]) {
    deepEqual(await doubts(look(creep)), [], String(creep));
  }
  const jumps: [number, RegExp][] = [
    [0.021, /far more than warmth does: was the gauge knocked/],
    [0.2, /a round amount such as a full turn of a dial/],
    [-1, /or a turn not counted\?/],
    [0.715, /as much as the work: was the work read, not the flat\?/],
  ];
  for (const [shown, words] of jumps) {
    const found = await doubts(look(shown));
    deepEqual(found.map(({ line, code }) => `${line} ${code}`), [
      "8 zero-jumped",
    ]);
    match(found[0].message, words);
  }
});

Deno.test("readPieceFolder() asks whether a focal length was given for the radius, or the other way round", async () => {
  await one(
    rows(GOOD),
    2,
    "focal-for-radius",
    /R 2521\.2 mm, twice the target of 1260 mm: is the target's radius really a focal length\?/,
    { piece: { target: { radius: "1260 mm" } } },
  );
  await one(
    rows(GOOD),
    2,
    "focal-for-radius",
    /half of the 5040 mm that the stated focal length or ratio asks for/,
    { piece: { target: { focal_length: "2520 mm" } } },
  );
  // On the way from a stated start nothing is odd about twice the target.
  deepEqual(
    await doubts(rows(GOOD), {
      piece: { target: { radius: "1260 mm" }, starting_radius: "5000 mm" },
    }),
    [],
  );
});

Deno.test("readPieceFolder() asks whether a ring was given in the other unit", async () => {
  await one(
    rows(GOOD),
    2,
    "ring-size",
    /R 4\.3775 mm, 0\.0017 times the nominal 2520 mm: is the radius given for the ring \(2\.362 mm\) really in inches\? Then r is 59\.995 mm and R 2520\.8 mm/,
    { bench: ringOf({ radius: "2.362 mm", ball_radius: "0.118 mm" }) },
  );
});

Deno.test("readPieceFolder() says the session's other readings where they have the other unit", async () => {
  const typed = rows(GOOD) +
    rows([[0.715]], "S1", "in").replace("S1,1", "S1,4");
  const found = await doubts(typed);
  deepEqual(found.map(({ line, code }) => `${line} ${code}`), [
    "11 other-unit",
  ]);
  match(
    found[0].message,
    /25\.40 times away from the session's other readings: as entered the mean sag is 18\.161 mm/,
  );
});

Deno.test("readPieceFolder() names a turn of a dial in inches, and does not take scatter for a slip without a step", async () => {
  const inches = {
    ...BENCH,
    gauge: { unit: "in", display_step: "0.0001 in", scale_uncertainty: 0.0005 },
  };
  const good = [[0.0281, 0.0281, 0.0282], [0.0282, 0.0281, 0.0281], [
    0.0281,
    0.0282,
    0.0281,
  ]];
  deepEqual(await doubts(rows(good, "S1", "in"), { bench: inches }), []);
  const slipped = good.map((set, k) =>
    k === 1 ? [0.0282, 0.0381, 0.0281] : set
  );
  await one(
    rows(slipped, "S1", "in"),
    6,
    "turn-of-the-dial",
    /by 0\.254 mm, a round amount/,
    { bench: inches },
  );
  const stepless = {
    ...BENCH,
    gauge: { unit: "mm", scale_uncertainty: 0.0005 },
  };
  const small = [[0.05, 0.051, 0.047], [0.053, 0.051, 0.049], [
    0.047,
    0.05,
    0.052,
  ]];
  deepEqual(
    await doubts(rows(small), {
      piece: { target: { radius: "36000 mm" } },
      bench: stepless,
    }),
    [],
  );
});

Deno.test("readPieceFolder() says how a radius far past the target is answered, and is satisfied by that answer", async () => {
  // 1.4 times the sag: R 1801.8 mm, where 2520 mm was wanted.
  const past = rows(each((sag) => 1.4 * sag));
  const [doubt, ...rest] = await doubts(past);
  deepEqual([doubt.code, rest.length], ["far-from-target", 0]);
  const stated = /"starting_radius": "([^"]+)"/.exec(doubt.mend ?? "")?.[1];
  match(stated ?? "", /^180\d(\.\d)? mm$/);
  deepEqual(
    await doubts(past, { piece: { starting_radius: stated } }),
    [],
  );
});
