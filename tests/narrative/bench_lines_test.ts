import { deepEqual, equal, match, ok } from "node:assert/strict";
import { benchAnswer } from "sagbook/narrative/bench_answer.ts";
import {
  benchAnswerLines,
  benchTargetLine,
} from "sagbook/narrative/bench_answer_lines.ts";
import { benchEcho } from "sagbook/narrative/bench_echo.ts";
import { gaugeScatter } from "sagbook/narrative/bench_scatter.ts";
import { benchSetLines, benchSets } from "sagbook/narrative/bench_set_lines.ts";
import { benchShown } from "sagbook/narrative/bench_shown_lines.ts";
import { benchTable } from "sagbook/narrative/bench_table.ts";
import { benchWarnings } from "sagbook/narrative/bench_warnings.ts";
import type { Bench } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { bench, piece } from "../zones/_session.ts";

const plain = (text: string): string =>
  text.replaceAll("\u00a0", " ").replaceAll("\u202f", "");

/** Readings of tidy lines after `session,zeroing,diameter_deg,zone,`. */
async function readings(
  lines: readonly string[],
  context: { piece?: Piece; bench?: Bench } = {},
): Promise<Reading[]> {
  const found: Reading[] = [];
  await scanReadings(
    `session,zeroing,diameter_deg,zone,reading,unit\n${lines.join("\n")}\n`,
    {
      file: "readings.csv",
      piece: context.piece ?? piece(),
      bench: context.bench ?? bench(),
    },
    (reading) => found.push(reading),
  );
  return found;
}

Deno.test("benchAnswer() agrees with every figure worked out by hand", async () => {
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"]);
  const answer = benchAnswer(reading, piece(), bench())!;
  // (3600 + 0.715²)/(2 × 0.715) + 3
  ok(Math.abs(answer.radius - 2520.8400174825) < 1e-6);
  ok(Math.abs(answer.focalRatio! - answer.radius / 420) < 1e-12);
  equal(answer.power, undefined);
  const tooling = benchAnswer(reading, piece(), bench(), { index: 1.53 })!;
  ok(Math.abs(tooling.power! + 530 / answer.radius) < 1e-12);
  const R = answer.radius;
  ok(Math.abs(answer.surfaceSag! - (R - Math.sqrt(R * R - 105 * 105))) < 1e-9);
  const wanted = 2520 - Math.sqrt(2520 * 2520 - 105 * 105);
  ok(Math.abs(answer.target!.toGo - (wanted - answer.surfaceSag!)) < 1e-9);
  // ±8 mm about 0.8 mm off: no tolerance is stated that it could be inside of.
  equal(answer.target!.state, "not decided");
  equal(answer.covers, "but repeating");
});

Deno.test("benchAnswer() calls a target reached only where all of the interval is inside the tolerance", async () => {
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"]);
  const said = (tolerance: number, radius = 2520): string[] => {
    const wanted = piece({
      target: {
        radius: mm(radius),
        tolerance: mm(tolerance),
        statedAs: "radius",
      },
    });
    const answer = benchAnswer(reading, wanted, bench())!;
    return [answer.target!.state, plain(benchTargetLine(answer, wanted)!)];
  };
  const half = benchAnswer(reading, piece(), bench())!.expanded!;
  // R is 0.84 mm above 2520 mm.
  const [wide, reached] = said(Math.ceil(half + 0.85));
  equal(wide, "within");
  match(
    reached,
    /^Target R 2520 ± \d+ mm: reached, as far as one reading can tell/,
  );
  const [narrow, open] = said(Math.floor(half));
  equal(narrow, "not decided");
  match(
    open,
    /^Target R 2520 ± \d+ mm: one reading cannot decide whether it is reached; at its best value the centre lies 0\.7 ± /,
  );
  equal(said(3, 2520.84 + half + 2)[0], "not decided");
  equal(said(3, 2520.84 + half + 4)[0], "shorter");
  equal(said(3, 2520.84 - half - 4)[0], "longer");
});

Deno.test("benchAnswer() counts the scatter of zeroing once earlier sessions showed it", async () => {
  const earlier = await readings(
    [0.715, 0.718, 0.713, 0.716].map((sag, k) => `S1,${k},0,centre,${sag},mm`),
  );
  const { zeroing } = gaugeScatter(earlier, "ring 60", piece(), bench());
  equal(zeroing?.dof, 3);
  // Standard deviation of 715, 718, 713, 716 µm: √(13/3).
  ok(Math.abs(zeroing!.standardDeviation - Math.sqrt(13 / 3) / 1000) < 1e-9);
  const [reading] = await readings(["S2,1,0,centre,0.715,mm"]);
  const alone = benchAnswer(reading, piece(), bench())!;
  const known = benchAnswer(reading, piece(), bench(), { scatter: zeroing! })!;
  equal(known.covers, "everything");
  const width = (one: typeof alone): number =>
    one.expanded ?? (one.interval!.high! - one.interval!.low) / 2;
  ok(width(known) > 2 * width(alone));
});

Deno.test("benchAnswerLines() says for a convex surface what goes down at the edge, and gives no focal length", async () => {
  const convex = piece({
    form: "convex",
    target: { radius: mm(2400), statedAs: "radius" },
    startingRadius: mm(2600),
  });
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"], {
    piece: convex,
  });
  const answer = benchAnswer(reading, convex, bench())!;
  const text = plain(benchAnswerLines(answer, convex).join("\n"));
  ok(!text.includes("ocal length"), text);
  match(text, /Target R 2400 mm: .* still to go down at the edge/);
  ok(!text.includes("power"), text);
  const asked = benchAnswer(reading, convex, bench(), { index: 1.53 })!;
  match(
    plain(benchAnswerLines(asked, convex).join("\n")),
    /Surface power 0\.2107\d? D for an index of 1\.530\./,
  );
});

Deno.test("benchAnswer() gives the surface power of a lens for its own index, and of a gauge that shows power for the set one", async () => {
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"]);
  const lens = piece({
    lens: { index: 1.5168, indexUncertainty: 0, thickness: mm(9) },
  } as Partial<Piece>);
  const answer = benchAnswer(reading, lens, bench())!;
  ok(Math.abs(answer.power! + 516.8 / answer.radius) < 1e-12);
  match(
    plain(benchAnswerLines(answer, lens).join("\n")),
    /Surface power −0\.205\d* D for an index of 1\.5168\./,
  );
  const { gauge, ...rest } = bench();
  const shows = {
    kind: "power" as const,
    index: 1.6,
    circleRadius: mm(60),
    ballRadius: mm(3),
  };
  const shown = { ...rest, gauge: { ...gauge, shows } };
  equal(benchAnswer(reading, piece(), shown)!.index, 1.6);
});

Deno.test("benchShown() is what benchAnswer() turns back into the radius", async () => {
  for (const radius of [1500, 2520, 9000]) {
    const [{ shown }] = benchShown(mm(radius), piece(), bench());
    const [reading] = await readings([`S1,1,0,centre,${shown},mm`]);
    const answer = benchAnswer(reading, piece(), bench())!;
    ok(Math.abs(answer.radius / radius - 1) < 1e-9);
  }
});

Deno.test("benchTable() steps by the display in inches too, and refuses what is no sag", () => {
  const [ring] = bench().rings;
  const order = {
    from: 0.0281 * 25.4,
    to: 0.0282 * 25.4,
    step: 0.0127 / 10,
    unit: "in",
  } as const;
  const { rows } = benchTable(order, ring, "concave");
  deepEqual(rows.map(([, inches]) => inches), [
    "0.02810",
    "0.02815",
    "0.02820",
  ]);
  for (const from of [0, -1]) {
    let message = "";
    try {
      benchTable({ ...order, from }, ring, "concave");
    } catch (error) {
      message = String(error);
    }
    match(
      message,
      /RangeError: Cannot make a table as its sags must be above 0 mm/,
    );
  }
});

Deno.test("benchEcho() keeps the figures that were typed and shows no more of R than the display supports", async () => {
  const [centre, edge, flat] = await readings([
    "S1,1,0,centre,0.7150,mm",
    "S1,1,0,-edge,0.7141,mm",
    "S1,1,0,flat,-0.002,mm",
  ]);
  const [ring] = bench().rings;
  const echo = (one: Reading, set: Reading[], typed?: string): string =>
    plain(benchEcho(one, set, piece(), ring, typed));
  equal(echo(centre, [], "0.7150"), "centre 0.7150 mm: R 2520.8 mm.");
  equal(
    echo(edge, [centre]),
    "−edge 0.7141 mm: R 2524.0 mm, −0.9 µm from the centre of this set.",
  );
  equal(
    echo(flat, [centre, edge]),
    "flat −0.002 mm: the zero has moved −2.0 µm.",
  );
});

Deno.test("benchWarnings() finds nothing wrong with good sets of a noisy gauge, and every slip in them", async () => {
  const rows = [[715, 711, 717], [719, 717, 716], [712, 715, 713], [
    716,
    718,
    721,
  ]];
  const zones = ["centre", "25%", "edge"];
  const all = await readings(
    rows.flatMap((row, k) =>
      row.map((sag, z) => `S1,${k},${45 * k},${zones[z]},${sag / 1000},mm`)
    ),
  );
  const moment = {
    scatter: {},
    piece: piece(),
    bench: bench(),
    sinceFlat: { minutes: 2, readings: 3 },
  };
  const codes = (k: number, sag = all[k].sag as number): string[] =>
    benchWarnings({
      ...moment,
      reading: { ...all[k], sag: mm(sag) },
      before: all.slice(0, k),
    }).map(({ code }) => code);
  deepEqual(all.flatMap((_, k) => codes(k)), []);
  const at = all.length - 1;
  deepEqual(codes(at, 0.721 / 25.4), ["scale"]);
  deepEqual(codes(at, 0.721 * 25.4), ["scale"]);
  deepEqual(codes(at, 7.21), ["scale"]);
  deepEqual(codes(at, 0.0721), ["scale"]);
  deepEqual(codes(at, 721), ["scale"]);
  deepEqual(codes(at, 0.2), ["far-from-nominal"]);
  deepEqual(codes(at, 0.64), ["foot-off"]);
  deepEqual(codes(at, 0.78), ["unlike-before"]);
  deepEqual(codes(at - 2, 0.79), ["unlike-before"]);
  const late = { minutes: 16, readings: 4 };
  deepEqual(
    benchWarnings({
      ...moment,
      sinceFlat: late,
      reading: all[1],
      before: [all[0]],
    })
      .map(({ code }) => code),
    ["flat-long-ago"],
  );
});

Deno.test("benchSetLines() says provisional, what the rule is, and what three feet cannot see", async () => {
  const judged = piece({ sphericity: { statedAs: "sag", amount: mm(0.01) } });
  const lines = async (sets: number, edge: number): Promise<string> => {
    const all = await readings(
      Array.from({ length: sets }, (_, k) => [
        `S1,${k},${20 * k},centre,${0.715 + (k % 2) / 1000},mm`,
        `S1,${k},${20 * k},edge,${(edge + (k % 2)) / 1000},mm`,
      ]).flat(),
      { piece: judged },
    );
    const found = benchSets(all, judged, bench())!;
    return plain(benchSetLines(found, judged, bench()).join("\n"));
  };
  match(await lines(1, 714), /Shape: one set tells no difference from scatter/);
  match(
    await lines(2, 714),
    /Shape: the rule for sets 3 to 8 speaks after set 3/,
  );
  match(
    await lines(3, 714),
    /Provisional, by the rule for sets 3 to 8: within 10 µm of sag, .*astigmatism/,
  );
  match(
    await lines(4, 680),
    /Provisional, by the rule .*: not a sphere within 10 µm of sag; centre and edge differ by 35/,
  );
  match(
    await lines(3, 705),
    /Provisional, .*: within 10 µm of sag is not decided, centre and edge differ by 10/,
  );
  match(await lines(9, 714), /more sets than the 8 of the rule/);
});

Deno.test("benchTargetLine() puts the edge of a convex surface that is too strong below the target's, and one too weak above", async () => {
  // R shorter than wanted: more sag, so the edge falls away further.
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"], {
    piece: piece({ form: "convex" }),
  });
  const wide = (target: number): Piece =>
    piece({
      form: "convex",
      target: { radius: mm(target), tolerance: mm(400), statedAs: "radius" },
    });
  const said = (target: number): string => {
    const answer = benchAnswer(reading, wide(target), bench())!;
    equal(answer.target!.state, "within");
    return plain(benchTargetLine(answer, wide(target))!);
  };
  // R is (3600 + 0.715²)/1.43 − 3 = 2514.84 mm.
  match(said(2600), /at its best value the edge lies .* below the target's/);
  match(said(2400), /at its best value the edge lies .* above the target's/);
});

Deno.test("benchAnswer() gives a lens no mirror's focal length, and the power of its own index", async () => {
  const lens = piece({
    lens: { index: 1.6, indexUncertainty: 0, thicknessUncertainty: mm(0) },
  });
  const [reading] = await readings(["S1,1,0,centre,0.715,mm"], { piece: lens });
  const answer = benchAnswer(reading, lens, bench())!;
  equal(answer.index, 1.6);
  ok(Math.abs(answer.power! + 600 / answer.radius) < 1e-12);
  equal(benchAnswer(reading, lens, bench(), { index: 1.5 })!.index, 1.5);
  const text = plain(benchAnswerLines(answer, lens).join("\n"));
  ok(!text.includes("ocal length"), text);
  match(text, /for an index of 1\.600/);
});
