import { deepEqual, equal, match, ok, throws } from "node:assert/strict";
import {
  astigmatism,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { contactSag } from "sagbook/geometry/contact_sag.ts";
import {
  conicSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { surfaceErrorFactor } from "sagbook/geometry/asphericity.ts";
import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { benchCard, benchCardTable } from "sagbook/narrative/bench_card.ts";
import { handoutFigures } from "sagbook/narrative/handout_figures.ts";
import {
  handoutSheet,
  handoutSubject,
} from "sagbook/narrative/handout_sheet.ts";
import type { Bench, Gauge, Ring } from "sagbook/records/bench.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { RingShape } from "sagbook/geometry/ring.ts";
import { sagShown } from "../../lib/records/_gauge_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** An invented piece, gauge and ring; what a test is about is named by it. */
const piece = (changes: Partial<Piece> = {}): Piece => ({
  name: "disc",
  form: "concave",
  diameter: mm(300),
  bevel: mm(1),
  margin: mm(1),
  target: { radius: mm(3000), statedAs: "radius" },
  unit: "mm",
  invented: true,
  ...changes,
});
const ring = (id: string, shape: RingShape): Ring => ({
  id,
  shape,
  radiusUncertainty: mm(0.01),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.001),
  expansion: 11.5e-6,
  foot: { kind: "foot out" },
});
const balls = (id: string, circle: number, ball = 6.35): Ring =>
  ring(id, {
    kind: "balls",
    circleRadius: mm(circle),
    ballRadius: mm(ball),
    probeOffset: mm(0),
  });
const EDGE = ring("edge", {
  kind: "edge",
  innerRadius: mm(24),
  outerRadius: mm(25),
});
const BAR = ring("bar", { kind: "bar", span: mm(40), ballRadius: mm(1) });
const bench = (rings: readonly Ring[], gauge: Partial<Gauge> = {}): Bench => ({
  gauge: {
    id: "gauge",
    shows: { kind: "sag" },
    countsUpOn: "declared surface",
    steps: { mm: mm(0.001) },
    scaleUncertainty: 0,
    ...gauge,
  },
  rings,
});
const INCH: Partial<Gauge> = { unit: "in", steps: { in: mm(0.00127) } };

/** How far a rounded number may lie from the true one. */
const half = (text: string): number =>
  0.5000001 * 10 ** -(text.split(".")[1] ?? "").length;

for (
  const [words, changes, gauge] of [
    ["mm, concave", {}, {}],
    ["mm, convex", { form: "convex" }, {}],
    ["inches, concave", {}, INCH],
    ["inches, convex", { form: "convex", unit: "in" }, INCH],
    ["steps of 0.01 mm", {}, { steps: { mm: mm(0.01) } }],
    ["steps of 0.0001 mm", {}, { steps: { mm: mm(0.0001) } }],
    ["a stem that leans", {}, { tiltDegrees: 3 }],
  ] as const
) {
  Deno.test(`benchCardTable() goes by the display's step and agrees with the library in mm and inches: ${words}`, () => {
    const rings = [balls("60", 60), balls("35", 35, 3), EDGE, BAR];
    const figures = handoutFigures(piece(changes), bench(rings, gauge));
    const lean = Math.cos(
      ((gauge as Partial<Gauge>).tiltDegrees ?? 0) * Math.PI / 180,
    );
    const { form, radius, step, unit } = figures;
    equal(figures.rings.length, 4);
    for (const one of figures.rings) {
      const feet = effectiveFeet(one.ring.shape, form);
      equal(one.sag, sagFromRadius(radius, feet, form));
      const { headings, rows, nearest } = benchCardTable(figures, one);
      const other = unit === "mm" ? "in" : "mm";
      deepEqual(
        headings,
        [`sag ${unit}`, `sag ${other}`, `R ${unit}`, `R ${other}`],
      );
      // A sheet full, or all from half the sag to twice it.
      const whole = Math.round(one.sag / lean / step);
      const per = { mm: 1, in: 25.4 };
      const first = Math.round(Number(rows[0][0]) * per[unit] / step);
      const last = first + rows.length - 1;
      ok(first >= whole / 2 && first <= whole && whole <= last);
      ok(rows.length === 150 ? last <= 2 * whole : last === 2 * whole);
      // Work deepens the sag: two thirds of a full sheet come before.
      if (rows.length === 150 && whole > 200) equal(nearest, 100);
      rows.forEach(([sag, sagOther, r, rOther], k) => {
        const seen = (first + k) * step;
        // The first column is the display's, to its last figure.
        ok(Math.abs(Number(sag) * per[unit] - seen) < 1e-9, sag);
        ok(Math.abs(Number(sagOther) - seen / per[other]) < half(sagOther));
        const truth = radiusFromSag(mm(seen * lean), feet, form);
        ok(Math.abs(Number(r) - truth / per[unit]) < half(r), r);
        ok(Math.abs(Number(rOther) - truth / per[other]) < half(rOther));
      });
      // Neighbours stay apart wherever R is within a tenth of that asked for.
      for (let k = 1; k < rows.length; k++) {
        const near = Math.abs(Number(rows[k][2]) * per[unit] / radius - 1);
        if (near > 0.1) continue;
        for (const c of [0, 1, 2, 3]) ok(rows[k][c] !== rows[k - 1][c]);
      }
      const shown = Number(rows[nearest][0]) * per[unit] * lean;
      ok(Math.abs(shown - one.sag) <= step / 2 + 1e-9);
    }
  });
}

Deno.test("benchCardTable() gives what is worked out by hand", () => {
  // A sharp edge of 25 mm on concave work: (25² + 0.5²)/(2 · 0.5) = 625.25.
  const target = { radius: mm(625), statedAs: "radius" } as const;
  const figures = handoutFigures(piece({ target }), bench([EDGE]));
  const { rows } = benchCardTable(figures, figures.rings[0]);
  deepEqual(rows.find(([sag]) => sag === "0.500"), [
    "0.500",
    "0.019685",
    "625.2",
    "24.616",
  ]);
  // Convex work touches the inner edge: (24² + 0.5²)/(2 · 0.5) = 576.25.
  const convex = handoutFigures(
    piece({ target, form: "convex" }),
    bench([EDGE]),
  );
  const found = benchCardTable(convex, convex.rings[0]).rows
    .find(([sag]) => sag === "0.500");
  equal(found?.[2], "576.2");
});

Deno.test("benchCardTable() stays within the ring and above a sag of 0", () => {
  // A steep dish under a coarse display: the ring's radius ends the table.
  const steep = handoutFigures(
    piece({ diameter: mm(60), target: { radius: mm(24), statedAs: "radius" } }),
    bench([balls("20", 20, 2)], { steps: { mm: mm(0.2) } }),
  );
  const { rows, nearest } = benchCardTable(steep, steep.rings[0]);
  equal(rows.at(-1)?.[0], "20.0");
  ok(nearest < rows.length);
  // A nearly flat dish: the first row is one step.
  const flat = handoutFigures(
    piece({ target: { radius: mm(1e7), statedAs: "radius" } }),
    bench([balls("60", 60)]),
  );
  equal(benchCardTable(flat, flat.rings[0]).rows[0][0], "0.001");
});

Deno.test("benchCardTable() shows beside the sag what a gauge of radius or power shows", () => {
  const set = { circleRadius: mm(60), ballRadius: mm(6.35) };
  for (
    const shows of [
      { kind: "radius", ...set },
      { kind: "power", index: 1.53, ...set },
    ] as const
  ) {
    const figures = handoutFigures(
      piece(),
      bench([balls("59.9", 59.9)], { shows, steps: { mm: mm(1) } }),
    );
    equal(figures.stepKnown, false);
    const [one] = figures.rings;
    const { headings, rows } = benchCardTable(figures, one);
    equal(headings[0], shows.kind === "power" ? "shows D" : "shows mm");
    equal(rows.length, 100);
    for (const [shown, sag, , radius] of rows) {
      const saw = sagShown(Number(shown), figures.gauge, "concave");
      // Half a millimetre of radius, or 0.0005 D, is less than this of sag.
      ok(Math.abs(saw - Number(sag)) < 0.003, `${shown}: ${saw}, ${sag}`);
      const truth = radiusFromSag(mm(Number(sag)), one.feet, "concave");
      ok(Math.abs(Number(radius) - truth) < half(radius));
    }
    match(
      benchCard(piece(), figures, one, "").html,
      new RegExp(`The gauge shows ${shows.kind}, worked out with the ring`),
    );
  }
});

Deno.test("handoutFigures() gives for a turned edge what exact contact gives", () => {
  const figures = handoutFigures(piece(), bench([balls("60", 60)]));
  const [{ sag, reach, atEdge }] = figures.rings;
  ok(atEdge);
  const { width, footOut, feetOut } = atEdge.turned;
  const depth = 0.01;
  const surface = withDepartures(
    conicSurface(mm(3000), 0),
    turnedEdge({ halfDiameter: figures.halfDiameter, width, depth }),
  );
  const gauge = ringGauge(mm(60), mm(6.35));
  for (const [footDegrees, share] of [[0, footOut], [180, feetOut]] as const) {
    const read = contactSag(surface, "concave", gauge, {
      x: reach,
      y: 0,
      footDegrees,
    });
    const found = (read - sag) / depth;
    ok(Math.abs(found - share) < 0.005, `${found}, ${share}`);
  }
});

Deno.test("handoutFigures() names the rings that do not stand, and says what is missing", () => {
  const rings = [balls("60", 60), balls("149", 149), balls("180", 180)];
  const { rings: found, tooLarge } = handoutFigures(piece(), bench(rings));
  deepEqual(found.map(({ ring }) => ring.id), ["60"]);
  deepEqual(tooLarge, ["149", "180"]);
  // A ring wider than the sphere itself.
  const short = piece({ target: { radius: mm(50), statedAs: "radius" } });
  throws(() => handoutFigures(short, bench([balls("60", 60)])), {
    name: "RangeError",
    message:
      "Cannot make a handout as a ring must stand on a disc of 300 mm with a radius of 50 mm: current value is 60",
  });
  // Balls need more room in a dish than on a dome.
  const near = { radius: mm(62), statedAs: "radius" } as const;
  const stands = (form: "concave" | "convex"): number =>
    handoutFigures(
      piece({ form, target: near }),
      bench([balls("60", 60), balls("30", 30)]),
    ).rings.length;
  deepEqual([stands("concave"), stands("convex")], [1, 2]);
  const { target: _none, ...aimless } = piece();
  throws(() => handoutFigures(aimless, bench([balls("60", 60)])), {
    name: "RangeError",
    message:
      "Cannot make a handout as there must be a radius to make it for: current value is no target in piece.json and no --radius",
  });
  equal(
    handoutFigures(aimless, bench([balls("60", 60)]), mm(900)).radius,
    900,
  );
});

Deno.test("handoutFigures() takes the unit of the display, and a usual step where none is known", () => {
  const of = (gauge: Partial<Gauge>, unit: "mm" | "in" = "mm") => {
    const found = handoutFigures(
      piece({ unit }),
      bench([balls("60", 60)], gauge),
    );
    return [found.unit, found.step, found.stepKnown];
  };
  deepEqual(of({}), ["mm", 0.001, true]);
  deepEqual(of(INCH), ["in", 0.00127, true]);
  deepEqual(of({ steps: { in: mm(0.00254) } }), ["in", 0.00254, true]);
  deepEqual(of({ steps: {} }), ["mm", 0.001, false]);
  deepEqual(of({ steps: {} }, "in"), ["in", 0.00127, false]);
  deepEqual(of({ unit: "in", steps: { mm: mm(0.001) } }), [
    "in",
    0.00127,
    false,
  ]);
});

/** The words of a sheet, formulas and marks left out. */
const wordsOf = (html: string): string =>
  html.replace(/<(svg|math)[\s\S]*?<\/\1>/g, "·").replace(/<[^>]+>/g, " ")
    .replace(/[\s\u00a0]+/g, " ");

Deno.test("handoutSheet() teaches each thing that the class needs, in numbers of the ring at hand", () => {
  const figures = handoutFigures(
    piece(),
    bench([balls("60", 60), balls("100", 100), EDGE, BAR]),
  );
  const words = wordsOf(handoutSheet(piece(), figures).html);
  const told = [
    /The balls add on concave work and take off on convex/,
    /0\.601 mm of sag is · 3001\.7 mm/,
    /1 µm of sag is 5\.0 mm of radius/,
    /10 µm of ring radius 1\.0 mm/,
    /at least its step · \(here 0\.29 µm\)/,
    /Identical readings prove that the scatter is small, not that the reading is right/,
    /Average sags, never radii/,
    /A wrong zero moves all readings of its set together/,
    /the probe is then 88 mm from the centre, and the feet are 148, 78, 78 mm/,
    /with two feet out at the same place 129, 129, 28 mm/,
    /Half way is 75 mm/,
    /times the scatter 9\.0 2\.5 1\.2 0\.8 0\.6/,
    /a paraboloid reads longer by ·: 2\.6 mm at the edge/,
    /has half of ·, 74\.5 mm, read half way out/,
    /Astigmatism, however large/,
    /A two-foot bar turned on the work/,
    /Wear on one side \(coma\)/,
    /shows only when the gauge is turned/,
    /nothing with two feet out at the same place/,
    /not decided : take more sets/,
    /silica dust/,
    /Never aim a polished or wet surface at the Sun/,
    /local rules come first/,
    /two people to lift it/,
  ];
  for (const one of told) match(words, one);
  // r, b, sag, R by 1 µm of sag and by 0.01 mm of r, edge, growth, factor.
  match(words, / 60 60\.00 6\.35 0\.601 5\.0 1\.0 88 2\.6 mm 1\.10 /);
  // NIST/SEMATECH e-Handbook, table of t at 0.975: 12.706, 4.303, 2.776,
  // 2.365 and 2.201 for 1, 2, 4, 7 and 11 degrees of freedom.
  const factors = [[2, 12.706], [3, 4.303], [5, 2.776], [8, 2.365], [12, 2.201]]
    .map(([sets, t]) => (t / Math.sqrt(sets)).toFixed(1)).join(" ");
  ok(words.includes(`times the scatter ${factors}`), factors);
});

Deno.test("handoutSheet() says of grit, a wrong sign, the half-diameter ring and astigmatism what the library computes", () => {
  const figures = handoutFigures(piece(), bench([balls("60", 60)]));
  const words = wordsOf(handoutSheet(piece(), figures).html);
  const [{ sag, feet }] = figures.rings;
  match(words, /the wrong one is out by two ball radii/);
  const wrong = radiusFromSag(sag, feet, "concave") -
    radiusFromSag(sag, feet, "convex");
  ok(Math.abs(wrong - 2 * feet.ballRadius) < 1e-9);
  match(words, /grit under one foot moves the reading by a third of its size/);
  const place = {
    circleRadius: mm(60),
    offset: mm(0),
    diameterDegrees: 0,
    footDegrees: 0,
  };
  const grit = threeFootMean((x) => x > 50 ? 0.003 : 0, place);
  ok(Math.abs(grit - 0.001) < 1e-12);
  match(words, /there the difference of sag is the surface error itself/);
  const a = figures.halfDiameter;
  equal(surfaceErrorFactor(a, mm(a / 2), mm(a / 2)), 1);
  match(words, /Astigmatism, however large: three feet measure the mean/);
  const saddle = withDepartures(
    conicSurface(mm(3000), 0),
    astigmatism(0.005 / a ** 2),
  );
  for (const [x, footDegrees] of [[0, 0], [70, 20], [-88, 45]]) {
    const gauge = ringGauge(mm(60), mm(6.35));
    const read = contactSag(saddle, "concave", gauge, { x, y: 0, footDegrees });
    ok(Math.abs(read - sag) < 0.005e-3, `${x}: ${read - sag}`);
  }
});

Deno.test("handoutSheet() tabulates five rings, says what it leaves out, and shows numbers of three feet for three feet alone", () => {
  const many = Array.from({ length: 7 }, (_, k) => balls(`${40 + k}`, 40 + k));
  const rings = [EDGE, BAR, ...many, balls("wide", 200)];
  const figures = handoutFigures(piece(), bench(rings));
  const { html } = handoutSheet(piece(), figures);
  equal(html.match(/<th scope="row">(?!sets|times)/g)?.length, 5);
  match(
    html,
    /The rings at hand\. 4 more are on the bench cards\. Too large for this surface: wide\./,
  );
  match(html, /<th scope="row">bar<\/th>(<td>[\d.]+<\/td>){6}(<td>–<\/td>){2}/);
  match(html, /<th scope="row">edge<\/th><td>25\.00<\/td><td>–<\/td>/);
  const only = (one: Ring) =>
    wordsOf(handoutSheet(piece(), handoutFigures(piece(), bench([one]))).html);
  match(only(BAR), /“Edge” is as far out as every foot/);
  // Just room to stand, none to move.
  const tight = balls("tight", 148 * (3000 - 6.35) / 3000 - 1e-9);
  match(only(tight), /ring tight fits at the centre only|0 mm from the centre/);
});

Deno.test("handoutSheet() and benchCard() show a name as typed, and cut a long one", () => {
  const named = piece({ name: `<b>"disc" & more</b> ${"long ".repeat(30)}` });
  const figures = handoutFigures(named, bench([balls("<i>ring</i>", 60)]));
  match(handoutSubject(named, figures), /^Numbers are for <b>"disc" & more/);
  ok(handoutSubject(named, figures).length < 200);
  const card = benchCard(named, figures, figures.rings[0], "").html;
  const sheet = handoutSheet(named, figures).html;
  for (const html of [card, sheet]) {
    ok(!/<i>ring|<b>"disc/.test(html));
    match(html, /&lt;i&gt;ring&lt;\/i&gt;/);
  }
});

Deno.test("handoutSubject() names the drawing's unit beside the gauge's where they differ", () => {
  const drawn = piece({ diameter: mm(210) });
  const subject = (unit: "mm" | "in") =>
    handoutSubject(
      drawn,
      handoutFigures(drawn, bench([balls("60", 60)], { unit })),
    ).replace(/\s/g, " ");
  match(
    subject("in"),
    /concave, 8\.27 in \(210 mm\) across, R [\d.]+ in \(\d+ mm\)/,
  );
  match(subject("mm"), /concave, 210 mm across, R \d+ mm/);
});

Deno.test("benchCard() writes the formula with the sign of the balls, and what the gauge does", () => {
  const sign = (form: "concave" | "convex", one: Ring): string => {
    const own = piece({ form });
    const figures = handoutFigures(own, bench([one]));
    const { html } = benchCard(own, figures, figures.rings[0], "");
    return /<mo>=<\/mo><mfrac>.*?<\/mfrac>(<mo>.<\/mo><mi>b<\/mi>)?/.exec(html)
      ?.[1]?.replace(/<[^>]+>/g, "") ?? "none";
  };
  equal(sign("concave", balls("60", 60)), "+b");
  equal(sign("convex", balls("60", 60)), "−b");
  equal(sign("concave", EDGE), "none");
  const card = (gauge: Partial<Gauge>): string => {
    const figures = handoutFigures(piece(), bench([balls("60", 60)], gauge));
    return benchCard(piece(), figures, figures.rings[0], "Foot.").html;
  };
  match(card({ countsUpOn: "convex" }), /shows the sag with a minus/);
  match(card({ tiltDegrees: 2 }), /The stem&#39;s lean of 2° is counted in/);
  match(card({ steps: {} }), /no display step in this unit: a row for each/);
  ok(!/a row for each/.test(card({})));
});
