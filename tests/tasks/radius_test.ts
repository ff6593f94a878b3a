import { equal, match, ok } from "node:assert/strict";
import { copyPiece, runTask, type TaskRun } from "./_run_task.ts";
import { ROOT } from "./_run_task.ts";

const RING = ["--ring", "60", "--ball", "3", "--form", "concave"];

async function radius(...args: string[]): Promise<TaskRun> {
  return await runTask("radius", args);
}

/** Runs the task with lines on standard input. */
async function radiusOf(
  input: string,
  ...args: string[]
): Promise<string> {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-prompt", "lib/tasks/radius.ts", ...args],
    cwd: ROOT,
    stdin: "piped",
    stdout: "piped",
    stderr: "inherit",
  }).spawn();
  const writer = child.stdin.getWriter();
  await writer.write(new TextEncoder().encode(input));
  await writer.close();
  return new TextDecoder().decode((await child.output()).stdout);
}

Deno.test("task radius answers a reading with R, focal length, power, whole sag and depth", async () => {
  // By hand: (3600 + 0.715²)/1.43 + 3 = 2520.8400; f = R/2; D = −530/R;
  // S = R − √(R² − 105²) = 2.18772; S of the target 2.18845: 0.73 µm.
  const { code, out } = await radius(
    "0.715",
    ...RING,
    "--diameter",
    "210",
    "--target",
    "2520",
  );
  equal(code, 0);
  match(out, /^R 2520\.8 ± \d\.\d mm, concave\.$/m);
  match(out, /^Focal length 1260\.4 ± \d\.\d mm, f\/6\.00\d? over 210 mm\.$/m);
  // A mirror has no surface power; it is said where an index asks for it.
  ok(!out.includes("power"), out);
  const asked = await radius("0.715", ...RING, "--index", "1.53");
  match(
    asked.out,
    /^Surface power -0\.2102\d? D for an index of 1\.530\.$/m,
  );
  match(out, /^Sag of the whole surface 2\.1877 ± 0\.00\d\d mm over a half/m);
  match(
    out,
    /^Target R 2520 mm: one reading cannot decide .* 0\.7 ± \d\.\d µm above/m,
  );
  match(out, /^One display step is 3\.5 mm of R here\.$/m);
  match(out, /not counted, .*reference flat/);
  const cable = await radius("+0.715 mm", ...RING);
  match(cable.out, /^R 2520\.8 ± \d\.\d mm, concave\.$/m);
});

Deno.test("task radius takes the ball off on convex work and says longer, shorter and past in words", async () => {
  // By hand: 3600/1.43066… − 3: case of three convex readings, R 2513.667.
  const convex = await radius(
    "0.715333",
    "--ring",
    "60",
    "--ball",
    "3",
    "--form",
    "convex",
  );
  match(convex.out, /^R 2513\.7 ± \d\.\d mm, convex/m);
  const sized = [...RING, "--diameter", "210", "--target", "2520", "--step"];
  const longer = await radius("0.640", ...sized, "0.001");
  match(longer.out, /0\.2301 ± 0\.00\d\d mm still to go down at the centre/);
  const shorter = await radius("0.7255", ...sized, "0.001");
  // Whole-surface sag 2.21983 against 2.18845 mm wanted: 31.4 µm too deep.
  match(shorter.out, /R is shorter; at the centre the surface lies 31\.4 ± /);
  ok(!/-\d[\d.]* [µm]/.test(shorter.out), "no negative depth");
});

Deno.test("task radius says past the target, from the starting radius of a folder", async () => {
  const folder = await copyPiece("metric-250");
  const { out } = await radius("0.450", "--folder", folder);
  match(out, /Target R 3000 ± 10 mm: past it; at the centre the surface lies/);
  match(out, /earlier sessions/);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task radius shows what the gauge should show with every ring of a folder", async () => {
  const folder = await copyPiece("metric-250");
  const bench = JSON.parse(Deno.readTextFileSync(`${folder}/bench.json`));
  bench.rings.push({ id: "B", radius: "60 mm", ball_radius: "3 mm" });
  bench.gauge.counts_up_on = "convex";
  Deno.writeTextFileSync(`${folder}/bench.json`, JSON.stringify(bench));
  const { code, out } = await radius("--radius", "2520", "--folder", folder);
  equal(code, 0);
  // s = 3600/(q + √(q² − 3600)), q = 2517: 0.715239; this gauge counts down.
  match(
    out,
    /^ring B: -0\.7152 mm \(the display: -0\.715 mm; one step is 3\.5 mm/m,
  );
  match(out, /^ring 100: -0\.49/m);
  const spaced = await radius("--radius", "99.2", "in", "--folder", folder);
  match(spaced.out, /^ring B: -0\.7153 mm/m);
  const small = await radius("--radius", "50", "--folder", folder);
  match(
    small.out,
    /^ring B: no reading; the ring is wider than a concave sphere/m,
  );
  await Deno.remove(folder, { recursive: true });
});

Deno.test("task radius makes a table of R against sag at the display's step, in mm and inches", async () => {
  const { code, out } = await radius(
    "--table",
    "0.714",
    "0.716 mm",
    ...RING,
    "--step",
    "0.001",
    "--ring-uncertainty",
    "0.01",
  );
  equal(code, 0);
  const rows = out.trim().split("\n").map((line) =>
    line.trim().split(/\s{2,}/)
  );
  // R = (3600 + s²)/(2s) + 3 by hand; inches are 25.4 mm.
  equal(
    JSON.stringify(rows),
    JSON.stringify([
      ["sag mm", "sag in", "R mm", "R in"],
      ["0.714", "0.028110", "2524.4", "99.38"],
      ["0.715", "0.028150", "2520.8", "99.25"],
      ["0.716", "0.028189", "2517.3", "99.11"],
    ]),
  );
  const endless = await radius(
    "--table",
    "0.1",
    "9",
    ...RING,
    "--step",
    "0.001",
  );
  equal(endless.code, 1);
  match(endless.err, /no more than 2000 rows: current value is 8901 rows/);
});

Deno.test("task radius answers the lines of a cable, and says which are none", async () => {
  const input = await Deno.readTextFile(`${ROOT}tests/cases/A12-cable-log.txt`);
  const out = await radiusOf(input, ...RING);
  match(out, /no answer: a sag of 0 is a flat/);
  match(out, /^R 2520\.84? /m);
  match(out, /^R 2517\.32? /m);
  match(out, /no answer: the gauge reported an error: “ERR 2”/);
  match(out, /the reading is negative/);
  match(out, /no answer: the line is cut off \(it holds NUL bytes\)/);
  const cut = await radiusOf("+  0.71\n7150, MM\n\u0007\u0001\n", ...RING);
  match(cut, /cut off: it has no unit: “\+ {2}0\.71”/);
  match(cut, /cut off: it has no sign: “7150, MM”/);
  match(cut, /not what a gauge writes/);
  ok(!cut.includes("R "), cut);
});

Deno.test("task radius warns of inches read as millimetres when a target is known", async () => {
  const { out } = await radius(
    "0.0281",
    ...RING,
    "--diameter",
    "210",
    "--target",
    "2520",
  );
  // As inches 0.0281 is 0.71374 mm: R 2525.284.
  match(
    out,
    /warning: the reading looks like inches .*R 64060 mm\).*R 2525\.3 mm/,
  );
});

Deno.test("task radius says in plain words what a call lacks, and never shows a stack", async () => {
  const calls = [
    [["0.715"], 2, /Say where the ring is: --folder DIR, or --ring/],
    [["0.715", "--ring", "60"], 2, /Say the size of the balls in one way/],
    [["0.715", "--ring", "60", "--ball", "3"], 2, /--form is missing/],
    [["0.715", ...RING, "--ball-diameter", "6"], 2, /in one way/],
    [["0.715", ...RING, "--target", "2520"], 2, /--target needs --diameter/],
    [["0.715", ...RING, "--unit", "cm"], 2, /--unit is mm or in/],
    [["0.715", ...RING, "--step", "1,234"], 2, /--step “1,234” cannot be used/],
    [["0.715", ...RING, "--index", "0.9"], 2, /--index is a number above 1/],
    [["0.715", "--rings", "60"], 2, /There is no flag --rings/],
    [["0.715", "--folder", "/nowhere/at/all"], 1, /there is no such folder/],
    [
      ["0.715", "--folder", "data/metric-250", "--ring", "Q"],
      2,
      /There is no ring “Q” on this bench; it has “ring 100”/,
    ],
    [["--table", "0.715", ...RING], 2, /--table needs two sags/],
    [["abc", ...RING], 1, /this is not a reading: “abc”/],
    [["1,234", ...RING], 1, /can be read two ways: 1\.234 mm or 1234 mm/],
    [["61", ...RING], 1, /no sphere under this ring has such a sag/],
  ] as const;
  for (const [args, code, words] of calls) {
    const run = await radius(...args);
    const said = run.out + run.err;
    equal(run.code, code, `${args.join(" ")}: ${said}`);
    match(said, words);
    ok(!/\n\s+at |undefined|NaN/.test(said), said);
  }
});

Deno.test("task radius says of a negative reading what may be wrong, with a dash of any kind", async () => {
  const convex = ["--ring", "10", "--ball", "2.5", "--form", "convex"];
  for (const typed of ["-0.3124 mm", "\u22120.3124 mm", "\u20130.3124"]) {
    const { code, out } = await radius(typed, ...convex);
    equal(code, 1);
    // (100 + 0.3124²)/0.6248 − 2.5 = 157.71
    match(out, /the reading is negative, .* R 157\.71 mm \(as concave 162\.71/);
    match(out, /^no answer: a negative sag has no radius as convex\.$/m);
  }
});

Deno.test("task radius says in which unit it took numbers that have none", async () => {
  const taken = /^Numbers without a unit were taken as mm; --unit in/m;
  const ring = ["--ring", "10 mm", "--ball", "2.5 mm", "--form", "convex"];
  match((await radius("0.0123", ...ring)).out, taken);
  match((await radius("0.0123 in", ...ring.with(1, "10"))).out, taken);
  match((await radius("--radius", "160", ...ring)).out, taken);
  for (
    const args of [
      ["0.0123 in", ...ring],
      ["0.0123", ...ring, "--unit", "in"],
      ["--radius", "160 mm", ...ring],
    ]
  ) equal(taken.test((await radius(...args)).out), false, args.join(" "));
});
