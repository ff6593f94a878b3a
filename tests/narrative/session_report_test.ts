import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  budgetReasons,
  coverageFactorOf,
  differencesTable,
  drawPlan,
  drawProfile,
  drawReadings,
  drawZones,
  endsInWords,
  isCentre,
  limitSentences,
  openPiece,
  problemsTable,
  radiusReasons,
  radiusSentence,
  reportResults,
  sentences,
  type SessionReport,
  sessionReport,
  sessionsTable,
  showAnswer,
  smallUnit,
  sphericitySentence,
  stateRadius,
  stateZoneRadius,
  writeColumn,
  writeRadii,
  writeTolerance,
  type WrittenRadius,
  zoneInWords,
  zonesTable,
} from "sagbook/narrative/mod.ts";
import type { Piece } from "sagbook/records/piece.ts";
import type { Problem } from "sagbook/records/problem.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { bench, piece, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

function report(
  readings: readonly Reading[],
  changes: Partial<Piece> = {},
  problems: readonly Problem[] = [],
): SessionReport {
  return sessionReport(
    {
      path: "invented",
      piece: piece({
        sphericity: { statedAs: "sag", amount: mm(0.003) },
        ...changes,
      }),
      bench: bench(),
      readings,
      lines: { read: readings.length, used: readings.length, reported: 0 },
      problems,
    } as SessionReport["folder"],
  );
}

const SPHERE = [[715, 715, 715], [716, 716, 715], [714, 714, 714], [
  715,
  716,
  715,
]];
const HOLE = [[730, 715, 702], [731, 716, 703], [729, 715, 702]];
const words = ({ answer }: SessionReport): string => plain(answer.join(" "));

Deno.test("sessionReport() calls no radius on target by an interval that leaves the tolerance, even or not", () => {
  const target = {
    radius: mm(2520),
    tolerance: mm(10),
    statedAs: "radius",
  } as const;
  const loose = (doubt: number) => {
    const { folder } = report(session(SPHERE), { target });
    const [ring] = folder.bench.rings;
    const rings = [{ ...ring, radiusUncertainty: mm(doubt) }];
    return sessionReport({ ...folder, bench: { ...folder.bench, rings } });
  };
  const uneven = loose(1);
  equal(uneven.radius?.expanded, undefined);
  equal(uneven.next?.kind, "near target");
  const because = (one: SessionReport): string => plain(one.reasons.join(" "));
  ok(!/± [\d.]+ mm is/.test(because(uneven)), because(uneven));
  match(words(uneven), /whether the radius is within that is not decided/);
  match(
    words(uneven),
    /\(\d{4} mm to \d{4} mm\), so it may be reached or not; .* measure the ring better first — more sets do little/,
  );
  const even = loose(0.1);
  const [, half] = /± ([\d.]+ mm) \(95 % sure\)/.exec(words(even))!;
  ok(because(even).includes(`± ${half} is `), because(even));
  ok(even.radius!.expanded! > 8);
  equal(even.next?.kind, "near target");
  equal(loose(0.01).next?.kind, "on target");
});

Deno.test("sessionReport() states one radius, a sphere and what to do for a sphere on target", () => {
  const found = report(session(SPHERE), {
    target: { radius: mm(2520), tolerance: mm(20), statedAs: "radius" },
  });
  match(
    words(found),
    /^The radius of curvature is 2520\.8 ± \d\.\d mm \(95 % sure\), a focal length of 1260\.\d ± \d\.\d mm; the target is 2520 ± 20 mm, and the radius is within that\./,
  );
  match(
    words(found),
    /It is a sphere within 3\.0 µm of sag, as far as three feet can tell/,
  );
  match(
    words(found),
    /Next: go on to the next grade once the loupe shows no pits; the radius is on target\.$/,
  );
});

Deno.test("sessionReport() gives no one radius and no forecast for a hole in the middle", () => {
  const text = words(report(session(HOLE)));
  match(
    text,
    /^There is no one radius: it is 2469\.1 ± \d\.\d mm at centre and 2566\.2 ± \d\.\d mm at edge \(95 % sure each\)\./,
  );
  match(
    text,
    /It is not a sphere within 3\.0 µm of sag: centre reads 27\.7 ± \d\.\d µm more sag than edge \(95 %, all pairs of zones together\)\./,
  );
  match(
    text,
    /Next: bring it to a sphere first, since the centre is deep and the edge long/,
  );
  ok(!/2517\.7/.test(text), "the mean of all zones is no radius of the piece");
});

Deno.test("sessionReport() calls neither centre nor edge deep where the zone between stands apart", () => {
  // Centre and edge differ by 0.4 µm, which no reading can tell from 0.
  const rows = [[715, 707, 715], [716, 708, 715], [714, 706, 714], [
    715,
    707,
    714,
  ], [714, 706, 714]];
  const text = words(report(session(rows)));
  match(
    text,
    /^There is no one radius: it is 252\d\.\d ± \d\.\d mm at centre and 25[45]\d\.\d ± \d\.\d mm at 50% \(95 % sure each\)\./,
  );
  match(
    text,
    /Next: bring it to a sphere first, since 50% stands apart from the centre and the edge — strokes of a quarter to a third, no overhang, changing position until it is spherical; then read again\./,
  );
  ok(!/deep|long/.test(text), text);
});

Deno.test("sessionReport() advises reading, never a stroke, while the verdict is open", () => {
  const rows = [[715, 714, 712], [716, 716, 711], [714, 714, 713]];
  const text = words(report(session(rows)));
  match(text, /is not decided/);
  match(text, /Next: measure with a ring that shows more of it/);
  ok(!/stroke|on top/.test(text), text);
});

Deno.test("sessionReport() turns the strokes round for convex work and leaves the focal length out", () => {
  const long = {
    radius: mm(2400),
    tolerance: mm(5),
    statedAs: "radius" as const,
  };
  const concave = words(report(session(SPHERE), { target: long }));
  const convex = words(
    report(session(SPHERE), { target: long, form: "convex" }),
  );
  match(concave, /mirror on top, the usual stroke shortens it/);
  match(convex, /tool on top, the usual stroke shortens it/);
  ok(!/focal/.test(convex));
  match(convex, /^The radius of curvature is 2514\.8/);
});

Deno.test("sessionReport() says when the target has been passed", () => {
  const first = session([[640]]).map((one) => ({ ...one, session: "S1" }));
  const last = session([[725], [726], [725.5]]).map((one) => ({
    ...one,
    session: "S3",
  }));
  match(
    words(report([...first, ...last])),
    /2484\.4 ± \d\.\d mm .*; that is 35\.6 mm shorter than the target of 2520 mm, past it\./,
  );
});

Deno.test("sessionReport() puts a doubt about the readings before the answer", () => {
  const problem: Problem = {
    severity: "warning",
    code: "other-unit",
    file: "readings.csv",
    line: 4,
    message: "session S2 reads like inches",
  };
  match(
    words(report(session(SPHERE), {}, [problem])),
    /^Check before you trust this: session S2 reads like inches \(readings\.csv, line 4\)\. The radius/,
  );
});

Deno.test("sessionReport() says why no radius belongs to a negative sag", () => {
  const text = words(report(session([[-715], [-716], [-714]])));
  match(text, /^No radius can be worked out: the mean sag is −0\.7150 mm/);
});

Deno.test("sessionReport() says what to read when there is nothing, one zone, one set", () => {
  match(words(report([])), /nothing to answer yet/);
  match(
    words(report(session([[715], [716], [715]]))),
    /Only centre was read.*read 50% \(half way to the rim; 50% reach where .*\) and edge as well/,
  );
  match(
    words(report(session([[715, 714, 713]]))),
    /One set cannot tell.*at least three sets/,
  );
});

Deno.test("sessionReport() offers the tolerance that would pass when none is stated", () => {
  const found = report(session(SPHERE), { sphericity: undefined });
  match(
    words(found),
    /No tolerance for a sphere was stated; these readings would pass one of \d\.\d µm of sag or more/,
  );
});

Deno.test("sessionReport() speaks inches to whoever works in them", () => {
  const text = words(report(session(HOLE), { unit: "in" }));
  match(text, /97\.21 ± 0\.\d+ in at centre/);
  match(text, /thou/);
  ok(!/ mm|µm/.test(text), text);
});

Deno.test("radiusReasons() shows the ball correction as a line of its own", () => {
  const found = report(session([[715], [716], [715]]), { form: "convex" });
  const text = plain(
    radiusReasons(found.session!, found.folder.piece).join(" "),
  );
  match(
    text,
    /\(r² \+ s²\)\/\(2s\) = 2516\.7 mm; the balls touch a convex surface .* R = 2516\.7 mm − 3\.000 mm = 2513\.7 mm/,
  );
});

Deno.test("radiusReasons() keeps the figures of a steep surface, and says what a step of sag is there", () => {
  // A ring of 60 mm on a dish of R about 120 mm: dR/ds = ½ − r²/(2s²).
  const found = report(session([[16000], [16001], [15999]]));
  const text = plain(
    radiusReasons(found.session!, found.folder.piece).join(" "),
  );
  // (3600 + 256)/32 = 120.5 mm; dR/ds is −6.53.
  match(text, /= 120\.500 mm; .* R = 120\.500 mm \+ 3\.000 mm = 123\.500 mm/);
  match(text, /One µm of sag is 6\.5 µm of radius here\./);
});

Deno.test("budgetReasons() ranks the sources and says what was not counted", () => {
  const found = report(session(SPHERE));
  const text = plain(budgetReasons(found.radius!, "mm").join(" "));
  match(text, /The uncertainty comes from .* %/);
  match(text, /standard uncertainties/);
  match(text, /Not counted/);
});

Deno.test("limitSentences() calls identical readings limited by the display", () => {
  const same = Array.from({ length: 4 }, () => [715, 715, 715]);
  const found = report(session(same));
  match(
    plain(limitSentences(found.session!, "mm").join(" ")),
    /limited by the display/,
  );
});

Deno.test("stateRadius(), radiusSentence() and sphericitySentence() agree with the report", () => {
  const found = report(session(SPHERE));
  const { session: main, folder } = found;
  deepEqual(stateRadius(main!, folder.piece, folder.bench), found.radius);
  const first = radiusSentence(main!, folder.piece, found.radius);
  equal(plain(first), plain(found.answer[0]));
  equal(plain(sphericitySentence(main!, "mm")), plain(found.answer[1]));
  equal(
    plain(writeTolerance(main!.sphericity.tolerance!, "mm")),
    "3.0 µm of sag",
  );
  equal(smallUnit("in"), "thou");
  // A zone's own radius, and where the zones differ, the two of the sentence.
  const hole = report(session(HOLE));
  const { session: holed, radius } = hole;
  const zone = (at: number) =>
    stateZoneRadius(holed!, hole.folder.piece, hole.folder.bench, at);
  equal(zone(0)?.radius, radius?.radius);
  deepEqual({ ...zone(2), zone: 2 }, radius?.other);
  equal(found.radius?.other, undefined);
  equal("outermost" in (reportResults(hole).radius as object), false);
});

const textOf = async (shown: { [jupyterDisplay](): unknown }) =>
  plain(
    (await shown[jupyterDisplay]() as Record<string, string>)["text/plain"],
  );

Deno.test("a page gives one quantity one ±, one sign and equal decimals, and says what each ± holds", async () => {
  const found = report(session([
    [730, 715.3, 702],
    [731, 717, 703],
    [729, 714.2, 702],
    [730, 716, 702],
  ]));
  const zones = await textOf(zonesTable(found));
  const pairs = await textOf(differencesTable(found));
  const every = await textOf(sessionsTable(found));
  // The radii of the first sentence are those of both tables.
  const stated = [...words(found).matchAll(/([\d.]+ ± [\d.]+ mm) at/g)]
    .map(([, radius]) => radius);
  equal(stated.length, 2);
  match(words(found), /\(95 % sure each\)/);
  for (const radius of stated) {
    ok(zones.includes(radius), `${radius}: ${zones}`);
  }
  ok(every.includes(stated[0]), every);
  // Outer less inner everywhere, and the ± of the sentence in the table.
  const [, size] =
    /centre reads ([\d.]+ ± [\d.]+ µm) more sag than edge \(95 %, all pairs of zones together\)/
      .exec(words(found))!;
  match(zones, /sag less centre/);
  ok(zones.includes(`−${size}`), zones);
  const [, outer] = /edge less centre +4 +−([\d.]+) µm/.exec(pairs)!;
  equal(Number(outer).toFixed(1), size.split(" ± ")[0]);
  ok(!/centre less/.test(pairs), pairs);
  match(pairs, /is it within\? 90 % \(µm\)/);
  const decimalsOf = (column: RegExp): string[] => [
    ...new Set(
      [...zones.matchAll(column)].map(([, value, half]) =>
        `${value.split(".")[1]?.length ?? 0} ${half.split(".")[1]?.length ?? 0}`
      ),
    ),
  ];
  const sag = decimalsOf(/(0\.\d+) ± ([\d.]+) mm/g);
  const apart = decimalsOf(/(\d+(?:\.\d+)?) ± ([\d.]+) µm/g);
  equal(sag.length, 1, zones);
  equal(apart.length, 1, zones);
  for (const both of [...sag, ...apart]) {
    equal(both.split(" ")[0], both.split(" ")[1]);
  }
});

Deno.test("writeColumn() and writeRadii() keep equal decimals, signs and empty cells", () => {
  const given = [{ value: 0.0092, half: 0.0123 }, {
    value: -0.0041,
    half: 0.00092,
  }];
  deepEqual(
    writeColumn([...given, undefined], "µm", 1, true).map((text) =>
      text && plain(text)
    ),
    ["+9.2 ± 12.3 µm", "−4.1 ± 0.9 µm", undefined],
  );
  deepEqual(
    writeColumn([{ value: 0.5 }, { value: 1 }], "mm", 3).map((text) =>
      plain(text!)
    ),
    ["0.500 mm", "1.000 mm"],
  );
  const wide: WrittenRadius = {
    radius: mm(2200),
    interval: { low: 2100, high: 2330 },
  };
  deepEqual(
    writeRadii([wide, { radius: mm(2200), expanded: mm(12) }, undefined], "mm")
      .map(plain),
    ["2200 mm (2100 mm to 2330 mm)", "2200 ± 12 mm", "none"],
  );
});

Deno.test("sessionReport() says nothing of the shape while the readings are in doubt or have no radius", async () => {
  const doubt = (code: string): Problem => ({
    severity: "warning",
    code,
    file: "readings.csv",
    message: "every reading is negative",
  });
  const shape = /sphere|more sag|agree/;
  const turned = report(
    session(HOLE.map((row) => row.map((sag) => -sag))),
    {},
    [doubt("sign")],
  );
  ok(!shape.test(words(turned)), words(turned));
  match(words(turned), /the mean sag at the centre is −0\.7300 mm/);
  ok(!shape.test(words(report(session(HOLE), {}, [doubt("unit")]))));
  const flat = report(session([[0, 0, 0], [0, 0, 0], [0, 0, 0]]), {}, [
    doubt("flat"),
  ]);
  match(
    words(flat),
    /the work reads like the flat, as near as the display can tell/,
  );
  ok(!shape.test(words(flat)), words(flat));
  match(await textOf(sessionsTable(flat)), /no radius/);
  const figure = await drawZones(flat);
  ok(!figure!.svg.includes("agree within"), "title of the figure");
  ok((await drawZones(report(session(SPHERE))))!.svg.includes("agree within"));
});

Deno.test("sessionReport() names the zone nearest the centre where the centre was not read, and the outermost where the edge was not", () => {
  const inner = report(
    session(HOLE.map((row) => row.slice(1)), {
      places: [["30 mm", 30], ["edge", 44]],
    }),
  );
  const text = words(inner);
  match(
    text,
    /since the zone nearest the centre, 30 mm, is deep and the edge long \(the centre itself was not read\)/,
  );
  ok(!/the centre is deep|at the centre/.test(text), text);
  const zone = (label: string, distance: number) => ({
    place: { label, distance: mm(distance) },
  });
  const both = endsInWords([zone("20%", 18), zone("60%", 54)]);
  equal(both.unread, "the centre and the edge themselves were not read");
  equal(both.outer, "the outermost zone read, 60%,");
  const all = endsInWords([zone("centre", 0), zone("edge (foot out)", 70)]);
  deepEqual(all, { inner: "the centre", outer: "the edge (foot out)" });
  equal(isCentre(zone("middle", 0.2)), true);
  equal(zoneInWords(zone("middle", 0.2)), "the centre");
  equal(zoneInWords(zone("20%", 18)), "20%");
});

Deno.test("the tables show zones, differences, sessions and problems, escaped", async () => {
  const problem: Problem = {
    severity: "refused",
    code: "ambiguous-number",
    file: "readings.csv",
    line: 6,
    column: "reading",
    value: "<b>1.430</b>",
    message: "this could be 1.430 or 1430",
    mend: "write it without a group",
  };
  const found = report(session(HOLE), {}, [problem]);
  const html = async (shown: { [jupyterDisplay](): unknown }) =>
    plain(
      String(
        (await shown[jupyterDisplay]() as Record<string, string>)["text/html"],
      ),
    );
  match(await html(zonesTable(found)), /50%.*2519\.7 ± /);
  match(await html(differencesTable(found)), /edge less centre.*out/);
  match(await html(sessionsTable(found)), /out of tolerance/);
  const problems = await html(problemsTable(found));
  match(problems, /readings\.csv, line 6/);
  ok(!problems.includes("<b>"), problems);
  match(
    await html(problemsTable(report(session(HOLE)))),
    /Nothing in the files looked odd/,
  );
  match(
    await html(sentences(["a < b"], "More")),
    /<h2>More<\/h2><ul><li>a &lt; b<\/li><\/ul>/,
  );
});

Deno.test("showAnswer() gives the sentences and hands the results over", async () => {
  const found = report(session(SPHERE));
  const bundle = await showAnswer(found, reportResults(found))
    [jupyterDisplay]();
  equal(
    bundle["text/plain"],
    [...found.answer, "Invented demonstration data: no such piece exists."]
      .join("\n"),
  );
  const results = bundle["application/vnd.sagbook.results+json"] as Record<
    string,
    unknown
  >;
  deepEqual(results.answer, found.answer);
});

Deno.test("reportResults() takes differences from the inner to the outer zone, as the pages do", async () => {
  const found = report(session(HOLE));
  const { differences } = reportResults(found).session as {
    differences: {
      from: string;
      to: string;
      mean: number;
      interval90: { low: number; high: number };
      simultaneous95: { low: number; high: number };
    }[];
  };
  const edge = differences.find(({ from, to }) =>
    from === "centre" && to === "edge"
  )!;
  // The edge reads 27.7 µm less.
  equal(edge.mean.toFixed(4), "-0.0277");
  for (const { low, high } of [edge.interval90, edge.simultaneous95]) {
    ok(low < edge.mean && edge.mean < high && high < 0);
  }
  const shown = plain(
    String(
      (await differencesTable(found)[jupyterDisplay]() as {
        "text/plain": string;
      })["text/plain"],
    ),
  );
  match(shown, /edge less centre.*−27\.7 µm/);
});

Deno.test("coverageFactorOf() is the stated U over u, so that the figures of a page and of results.json multiply", () => {
  const found = report(session(SPHERE), {
    target: { radius: mm(2520), tolerance: mm(20), statedAs: "radius" },
  });
  const radius = found.radius!;
  const json = reportResults(found).radius as Record<string, number>;
  equal(
    (json.coverage_factor * json.standard_uncertainty).toFixed(9),
    json.expanded.toFixed(9),
  );
  equal(json.coverage_factor, coverageFactorOf(radius));
  match(
    plain(budgetReasons(radius, "mm").join(" ")),
    new RegExp(`is ${json.coverage_factor.toFixed(2)} standard uncertainties`),
  );
  // Without a ± there is Student's t alone.
  const { expanded: _, ...uneven } = radius;
  equal(coverageFactorOf(uneven), radius.budget.factor);
});

Deno.test("a tolerance has the same figures in the answer and under the table", async () => {
  const found = report(session(SPHERE), {
    sphericity: { statedAs: "sag", amount: mm(0.00094878) },
  });
  match(words(found), /0\.95 µm of sag/);
  const shown = await zonesTable(found)[jupyterDisplay]();
  match(plain(JSON.stringify(shown)), /Tolerance 0\.95 µm\./);
});

Deno.test("reportResults() holds no null, NaN or infinite number for awkward sessions", () => {
  for (
    const rows of [
      [[715, 715, 715], [715, 715, 715]],
      [[715]],
      [[715, 714]],
      HOLE,
    ]
  ) {
    const text = JSON.stringify(reportResults(report(session(rows))));
    ok(!/null|NaN|Infinity/.test(text), text.slice(0, 300));
  }
});

Deno.test("the figures are drawn, and left out where the readings carry none", async () => {
  const found = report(session(HOLE));
  for (const draw of [drawZones, drawReadings, drawPlan, drawProfile]) {
    const figure = await draw(found);
    ok(figure?.svg.startsWith("<svg"), draw.name);
  }
  const centre = report(session([[715], [716]]));
  equal(await drawZones(centre), undefined);
  equal(await drawProfile(centre), undefined);
  ok(await drawReadings(centre));
});

Deno.test("openPiece() reads a folder and answers", async () => {
  const found = await openPiece("data/inch-200");
  match(words(found), /not a sphere/);
});

Deno.test("sessionReport() withholds advice while the readings are in doubt", () => {
  const problem: Problem = {
    severity: "warning",
    code: "other-unit",
    file: "readings.csv",
    message: "session S1 reads like inches",
  };
  const text = words(report(session(SPHERE), {}, [problem]));
  match(
    text,
    /Next: settle that first; nothing here is safe to act on until then\.$/,
  );
  ok(!/stroke|on top/.test(text), text);
});

Deno.test("sessionReport() says that every line was refused, and the first reason", () => {
  const problem: Problem = {
    severity: "refused",
    code: "missing-column",
    file: "readings.csv",
    line: 1,
    message: "the header has no column zone",
    mend: "add a column zone",
  };
  const found = sessionReport({
    ...report([]).folder,
    problems: [problem],
    lines: { read: 15, used: 0, reported: 15 },
  });
  match(
    words(found),
    /^No reading could be used: all 15 lines were left out\. The first: the header has no column zone \(readings\.csv, line 1\)\. Next: add a column zone, and run this again\.$/,
  );
});

Deno.test("sessionReport() says on the first screen how many lines were refused", () => {
  const found = sessionReport({
    ...report(session(SPHERE)).folder,
    lines: { read: 15, used: 12, reported: 3 },
  });
  match(
    words(found),
    /3 of 15 readings were left out of this/,
  );
});

Deno.test("sessionReport() says that zones differ even without a tolerance", () => {
  const text = words(report(session(HOLE), { sphericity: undefined }));
  match(
    text,
    /The zones do differ: centre reads 27\.7 ± \d\.\d µm more sag than edge \(95 %, all pairs of zones together\)\./,
  );
  match(
    words(
      report(session(Array.from({ length: 4 }, () => [730, 715, 702])), {
        sphericity: undefined,
      }),
    ),
    /"sphericity_tolerance": \{"sag": "2 µm"\} in piece\.json/,
  );
});

Deno.test("limitSentences() shows the answer with and without a reading that stands apart", () => {
  const rows = [
    [715, 715, 715],
    [716, 716, 716],
    [715, 715, 715],
    [714, 714, 700],
    [715, 715, 715],
    [716, 716, 716],
    [714, 714, 714],
  ];
  const { cautions } = report(session(rows));
  match(
    plain(cautions.join(" ")),
    /In set 4 \(S1 \/ 4\) edge stands \d+(\.\d)? µm apart .* it is kept, and counts\. Without it the verdict would be “a sphere within the tolerance” instead of “not decided”, and the radius over all zones 252\d\.\d mm instead of 252\d\.\d mm/,
  );
});
