import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  drawFocalLength,
  finishedTable,
  focalAnswer,
  focalNotes,
  type FocalReport,
  focalReport,
  focalResults,
  isPiece,
  measuredHow,
  openFocal,
  shopPiece,
  showFocalAnswer,
} from "sagbook/narrative/mod.ts";
import { readFinishedPieces } from "sagbook/records/finished_pieces.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { studentTQuantile } from "sagbook/statistics/student_t_distribution.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const words = (list: readonly string[]): string => plain(list.join("\n"));
const PIECE = "data/history-300";

async function reportOn(csv: string): Promise<FocalReport> {
  return focalReport(
    await readPieceFolder(PIECE),
    await readFinishedPieces(csv, "finished.csv", "mm"),
  );
}

async function show(
  value: { [jupyterDisplay](): unknown },
): Promise<Record<string, string>> {
  return await value[jupyterDisplay]() as Record<string, string>;
}

const HEADER =
  "piece,diameter,ground_radius,ground_radius_uncertainty,focal_length,focal_length_uncertainty,method\n";

Deno.test("openFocal() foretells by a dozen pieces, with the chance of landing and where to leave", async () => {
  const report = await openFocal(PIECE, "data/shop-twelve");
  equal(report.used.length, 12);
  const { prediction, landing, aim, habit } = report;
  equal(habit!.used, "mean ratio");
  equal(prediction!.dof, 11);
  ok(landing! > 0.8 && landing! < 1);
  ok(aim!.window!.low < aim!.radius && aim!.radius < aim!.window!.high);
  // The simulation's habit, −1.2 ‰, lies within three standard errors.
  const { value, standardError } = habit!.mean;
  ok(Math.abs(value + 0.0012) < 3 * standardError);
  const text = words(report.answer);
  match(
    text,
    /From a ground radius of 300\d\.\d ± \d\.\d mm, this shop's 12 finished pieces foretell a focal length of 1499\.\d ± 5\.\d mm \(95 %\)\./,
  );
  match(
    text,
    /The target is 1500\.0 mm; from here the chance of landing within 5\.0 mm of it is 93 %\./,
  );
  match(
    text,
    /To land on 1500\.0 mm, leave the fine grinding at 3003\.\d mm; anywhere from/,
  );
});

Deno.test("openFocal() says how wide little history is, and what geometry would say", async () => {
  const report = await openFocal(PIECE, "data/shop-two");
  const text = words(report.answer);
  match(
    text,
    /this shop's 2 finished pieces foretell a focal length of 1500 ± \d\d mm \(95 %\)\./,
  );
  match(
    text,
    /That is wider than geometry alone, 1500\.\d ± 3\.\d mm \(95 %\): so few pieces say little about the shop's habit/,
  );
  match(text, /no radius gives 90 %/);
});

Deno.test("focalReport() with none or one finished piece gives geometry alone, and says what is missing", async () => {
  const none = await openFocal(PIECE, "data/history-300");
  equal(none.prediction, undefined);
  match(
    words(none.answer),
    /geometry alone foretells a focal length of 1500\.\d ± 3\.\d mm/,
  );
  match(
    words(none.answer),
    /It became 1499\.\d ± 1\.0 mm \(centre of curvature, zone at 105 mm, source moves\)\./,
  );
  match(
    words(none.answer),
    /No finished piece tells what polishing does in this shop/,
  );
  const one = await reportOn(HEADER + "a,300,3000,2,1498,1,star\n");
  match(words(one.answer), /One finished piece tells what polishing does/);
  ok(one.geometry !== undefined);
});

Deno.test("focalReport() does not use focal lengths in another unit or as f-number, and says which", async () => {
  const report = await reportOn(
    HEADER +
      "a,300,3000,2,1498,1,star\n" +
      "b,300,3010,2,59.1,0.1,star\n" +
      "c,300,2990,2,5,0.1,star\n" +
      "d,300,2980,2,f/5,1,star\n" +
      "e,250,2500,2,1249,1,lamp at 100 m\n",
  );
  deepEqual(report.used.map(({ piece }) => piece), ["a", "e"]);
  const text = words(report.notes);
  match(text, /1 of 5 lines of finished\.csv were refused: line 5, “f\/5”/);
  match(
    text,
    /Line 3 \(b\) is not used: .* it looks like inches, which would be 1501\.1 mm\. Mend the line if so\./,
  );
  match(
    text,
    /Line 4 \(c\) is not used: .* it looks like an f-number, which would be 1500\.0 mm/,
  );
  match(
    text,
    /Line 6 \(e\) was measured by a lamp: the file does not say that the lamp's distance was corrected for/,
  );
  const { "text/plain": table } = await show(finishedTable(report));
  equal(
    plain(table).split("\n").filter((line) => /\bno$/.test(line)).length,
    2,
  );
});

Deno.test("focalReport() says when a line earns its place, and when uncertainties are missing", async () => {
  const rows = Array.from({ length: 10 }, (_, i) => {
    const radius = 2000 + 300 * i;
    const focus = radius / 2 - 3 + 0.004 * (radius - 3000) + (i % 2) * 0.6;
    return `p${i},300,${radius},${i === 3 ? "" : "1.5"},${
      focus.toFixed(1)
    },0.5,star`;
  });
  const line = await reportOn(HEADER + rows.join("\n") + "\n");
  equal(line.habit!.used, "straight line");
  match(words(line.notes), /the straight line is used\./);
  match(words(line.notes), /1 uncertainties are missing in the file/);
  const bare = await reportOn(
    "piece,ground_radius,focal_length\na,3000,1498\nb,2500,1248.9\nc,2000,999.4\n",
  );
  match(words(bare.notes), /The file states no uncertainties/);
});

Deno.test("focalAnswer() asks for readings where there is no radius", async () => {
  await withFolder({}, async (path) => {
    const report = await openFocal(path, "data/shop-twelve");
    deepEqual(report.answer, [
      "There is no radius to start from: read the ground surface first.",
    ]);
    equal(report.prediction, undefined);
  });
});

Deno.test("focalNotes() and focalAnswer() speak of what was found", async () => {
  const report = await openFocal(PIECE, "data/shop-twelve");
  deepEqual(focalAnswer(report, 0.9), report.answer);
  deepEqual(focalNotes(report), report.notes);
  match(
    words(report.notes),
    /the mean ratio is used, since a line must be better by a fifth to earn its place/,
  );
});

Deno.test("drawFocalLength() draws pieces, band and this piece; showFocalAnswer() hands over focalResults()", async () => {
  const report = await openFocal(PIECE, "data/shop-twelve");
  match(
    (await drawFocalLength(report))!.description,
    /12 finished pieces\. Expected: 1499\.\d mm for this piece/,
  );
  const none = await openFocal(PIECE, "data/history-300");
  equal(await drawFocalLength(none), undefined);
  const bundle = await show(showFocalAnswer(report));
  const results = focalResults(report);
  deepEqual(bundle["application/vnd.sagbook.results+json"], results);
  equal(results.pieces_used, 12);
  equal(/null|NaN|Infinity/.test(JSON.stringify(results)), false);
});

Deno.test("focalReport() keeps this very piece out of the habit, and says whether it became what was foretold", async () => {
  const others =
    "a,300,3000,2,1498,1,star\nb,300,3010,2,1503,1,star\nc,300,2990,2,1493.5,1,star\n";
  const name = '"Disc 300,  f/5, from rough to polished"';
  const report = await reportOn(
    HEADER + others + `${name},300,3002.6,3.4,1499.5,0.5,star\n`,
  );
  deepEqual(report.used.map(({ piece }) => piece), ["a", "b", "c"]);
  equal(report.itself?.line, 5);
  match(
    words(report.answer),
    /It became 1499\.5 ± 1\.0 mm \(star\), as foretold\./,
  );
  match(
    words(report.notes),
    /Line 5 .* is this piece itself; it is not among those that foretell/,
  );
  const bare = await reportOn(HEADER + others);
  deepEqual(report.prediction, bare.prediction);
  const off = await reportOn(
    HEADER + others + `${name},300,3002.6,3.4,1530,0.5,star\n`,
  );
  match(
    words(off.answer),
    /It became 1530\.0 ± 1\.0 mm \(star\), which is not as foretold\./,
  );
  equal(isPiece({ piece: " DISC  1" }, "disc 1"), true);
  equal(isPiece({ piece: "disc 11" }, "disc 1"), false);
});

const READ =
  "piece,diameter,ground_radius,unit,method,focal_length,centre,zone,source,image,lamp,lamp_uncertainty,distance_uncertainty\n";

Deno.test("shopPiece() finds the focal length from what was read, and measuredHow() says how", async () => {
  const { pieces } = await readFinishedPieces(
    READ +
      "a,300,3003,mm,,,3003.75,150,moves,,,,1\n" +
      "b,300,3003,mm,,,3007.5,150,fixed,,,,1\n" +
      "c,300,3003,mm,lamp,,,,,1522.843,100 m,1 m,1.5\n" +
      "d,300,3003,mm,star,,,,,1500,,,\n" +
      "e,300,3003,mm,by eye,1500,,,,,,,\n" +
      "f,300,3003,mm,,,100,150,moves,,,,1\n",
    "finished.csv",
  );
  const found = pieces.map(shopPiece);
  for (const one of found.slice(0, 5)) {
    ok(Math.abs(one!.focalLength - 1500) < 0.01, `${one!.focalLength}`);
  }
  // A zone wider than its own distance allows belongs to no paraboloid.
  equal(found[5], undefined);
  // Half of 1 mm; the lamp's: (f/image)² · 1.5 and (f/lamp)² · 1000 mm.
  deepEqual(
    found.slice(0, 4).map((one) => one!.focalLengthUncertainty?.toFixed(2)),
    [
      "0.50",
      "0.50",
      Math.hypot((1500 / 1522.843) ** 2 * 1.5, 0.225).toFixed(2),
      undefined,
    ],
  );
  deepEqual(pieces.map((one) => plain(measuredHow(one, "mm") ?? "")), [
    "centre of curvature, zone at 150 mm, source moves",
    "centre of curvature, zone at 150 mm, source fixed",
    "lamp at 100 m, corrected",
    "star",
    "by eye",
    "centre of curvature, zone at 150 mm, source moves",
  ]);
  equal(plain(measuredHow(pieces[2], "in")!), "lamp at 328 ft, corrected");
  const report = await reportOn(
    READ +
      "a,300,3003,mm,,,3003.75,150,moves,,,,1\nf,300,3003,mm,,,100,150,moves,,,,1\n",
  );
  deepEqual(report.used.map(({ piece }) => piece), ["a"]);
  match(
    words(report.notes),
    /Line 3 \(f\) is not used: no focal length belongs to its distances\./,
  );
});

Deno.test("focalNotes() never lets the Sun pass without a word", async () => {
  const report = await reportOn(
    HEADER + "a,300,3000,2,1498,1,image of the Sun\n",
  );
  match(words(report.notes), /Line 2 \(a\) names the Sun: never do that again/);
});

Deno.test("focalAnswer() sends convex work elsewhere, and knows a sphere from a paraboloid", async () => {
  const folder = await readPieceFolder(PIECE);
  const finished = await readFinishedPieces("", "finished.csv", "mm");
  const convex = focalReport(
    { ...folder, piece: { ...folder.piece, form: "convex" } },
    finished,
  );
  match(words(convex.answer), /A convex surface makes no focus of its own/);
  const sphere = focalReport(folder, finished, { figure: "sphere" });
  const { low, high } = sphere.geometry!.range;
  equal(low, high);
  equal(high, sphere.radius!.radius / 2);
});

Deno.test("focalAnswer() never makes geometry surer than half of the radius, nor a chance certain", async () => {
  // Three sets: the radius has few degrees of freedom, and so has its half.
  const { folder, finished } = await openFocal(
    "data/history-300",
    "data/shop-twelve",
  );
  const [last] = folder.readings.slice(-1);
  const few = folder.readings.filter(({ session }) => session === last.session)
    .slice(0, 12);
  const wanted = { radius: mm(2000), tolerance: mm(1), statedAs: "radius" };
  const report = focalReport(
    {
      ...folder,
      readings: few,
      piece: { ...folder.piece, target: wanted },
    } as typeof folder,
    finished,
  );
  const { radius, geometry, prediction } = report;
  const half = geometry!.standardUncertainty *
    studentTQuantile(0.025, geometry!.dof, "upper");
  const { standardUncertainty, factor } = radius!.budget;
  ok(half > factor * standardUncertainty! / 2, `${half}`);
  ok(prediction!.dof <= 11, `${prediction!.dof}`);
  match(
    plain(report.answer.join(" ")),
    /the chance of landing within 0\.50 mm of it is less than 1 %/,
  );
});
