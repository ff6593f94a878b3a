import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { newFolder } from "../../lib/tasks/new.ts";
import { inFolder } from "../files/_in_folder.ts";
import { overhear, runTask } from "./_run_task.ts";

/** What the task says, run in this process. */
const said = (
  args: readonly string[],
  ask?: (question: string) => string | null,
) => overhear(() => newFolder(args, ask));

Deno.test("newFolder() makes from flags what the check passes", async () => {
  await inFolder(async (path) => {
    const made = await runTask("new", [
      `${path}/blank`,
      ...["--name", "blank 9", "--diameter", "300", "--form", "concave"],
      ...["--glass", "borosilicate", "--focal-ratio", "5", "--unit", "mm"],
      ...["--tolerance", "0.05"],
    ]);
    equal(made.code, 0, made.err);
    const checked = await runTask("check", [`${path}/blank`]);
    equal(checked.code, 0, checked.out);
    const { piece, bench, lines, problems } = await readPieceFolder(
      `${path}/blank`,
    );
    deepEqual(
      [piece.name, piece.diameter, piece.target?.radius, piece.glass],
      ["blank 9", 300, 3000, "borosilicate"],
    );
    equal(piece.target?.tolerance, 30); // 0.05 × 2 × 300 mm of R
    deepEqual(
      [bench.rings.length, lines.read],
      [1, 0],
    );
    // A ring that nobody measured says so for as long as it stands.
    deepEqual(
      problems.filter((one) => one.severity === "warning")
        .map((one) => one.code),
      ["ring-not-measured"],
    );
  });
});

Deno.test("newFolder() takes a measured ring, inches and a shared bench", async () => {
  await inFolder(async (path) => {
    const one = await said([
      `${path}/one`,
      ...["--diameter=11 13/16 in", "--form=convex", "--unit=in"],
      ...["--radius=120", "--ring-radius=2.362", "--ball-diameter=1/4 in"],
      ...["--display-step=0.00005", "--bevel=0.05", "--counts-up-on=convex"],
    ]);
    equal(one.code, 0, one.err);
    const { piece, bench, problems } = await readPieceFolder(`${path}/one`);
    deepEqual([piece.unit, piece.target?.radius], ["in", 3048]);
    equal(piece.name, "one");
    equal(bench.gauge.countsUpOn, "convex");
    deepEqual(problems.filter((p) => p.severity === "warning"), []);
    const two = await said([
      `${path}/two`,
      ...["--diameter=200", "--form=concave", "--bench=../one/bench.json"],
    ]);
    equal(two.code, 0, two.err);
    ok(
      ![...Deno.readDirSync(`${path}/two`)].some((entry) =>
        entry.name === "bench.json"
      ),
    );
    equal((await readPieceFolder(`${path}/two`)).bench.rings[0].id, "A");
  });
});

Deno.test("newFolder() asks at the terminal, and again when an answer cannot be used", async () => {
  await inFolder(async (path) => {
    const answers: Record<string, string[]> = {
      "Unit": ["mm"],
      "A bench file": [""],
      "Name": ["blank 4"],
      "Does the surface": ["hollow", "concave"],
      "Diameter of": ["6"],
      "Diameter": ["wide", "1,430", "250"],
      "Width": ["1.5"],
      "Edge": [""],
      "Glass": [""],
      "Is the target": ["focal-ratio"],
      "Focal ratio": ["f/6"],
      "Radius of the circle": ["50"],
      "Step": ["0.001"],
      "On which": ["concave"],
    };
    const asked: string[] = [];
    const { code, out } = await said([`${path}/four`], (question) => {
      asked.push(question);
      const key = Object.keys(answers).find((one) => question.startsWith(one));
      return answers[key ?? ""]?.shift() ?? null;
    });
    equal(code, 0);
    match(out, /answer concave or convex/);
    match(out, /it can be read as 1\.43 or 1430 mm/);
    ok(asked.length >= 14);
    const { piece, bench } = await readPieceFolder(`${path}/four`);
    deepEqual([piece.name, piece.target?.radius, piece.bevel], [
      "blank 4",
      3000,
      1.5,
    ]);
    equal(
      bench.rings[0].shape.kind === "balls" && bench.rings[0].shape.ballRadius,
      3,
    );
  });
});

Deno.test("newFolder() overwrites nothing", async () => {
  await inFolder(async (path) => {
    await Deno.writeTextFile(`${path}/piece.json`, "mine");
    const { code, err } = await said([path, "--diameter=3", "--form=concave"]);
    equal(code, 1);
    match(err, /holds piece\.json already; nothing was overwritten/);
    equal(await Deno.readTextFile(`${path}/piece.json`), "mine");
    deepEqual([...Deno.readDirSync(path)].length, 1);
  });
});

Deno.test("newFolder() takes back what it made when it cannot make all", async () => {
  await inFolder(async (path) => {
    // The last files cannot be made where a file stands for their folder.
    await Deno.writeTextFile(`${path}/schemas`, "mine");
    const { code, err } = await said([
      path,
      "--diameter=300",
      "--form=concave",
    ]);
    equal(code, 1);
    match(
      err,
      /Cannot make \S+\/schemas as there is something of that name already .*Nothing was made\. Rename it/,
    );
    deepEqual([...Deno.readDirSync(path)].map((one) => one.name), ["schemas"]);
  });
});

Deno.test("newFolder() ends with 2 where flags are wrong, missing or two", async () => {
  await inFolder(async (path) => {
    const wrong: [string[], RegExp][] = [
      [[], /Name one folder/],
      [[`${path}/x`], /--form is missing/],
      [[`${path}/x`, "--form=concave"], /--diameter is missing/],
      [[`${path}/x`, "--form=flat", "--diameter=3"], /--form “flat”/],
      [
        [`${path}/x`, "--form=concave", "--diameter=wide"],
        /--diameter “wide” cannot be used/,
      ],
      [
        [
          `${path}/x`,
          "--form=concave",
          "--diameter=300",
          "--radius=3000",
          "--focal-ratio=5",
        ],
        /Give one of --radius and --focal-ratio/,
      ],
      ...([
        [["--focal-ratio=5", "--tolerance=10 mm"], /“10 mm” .* such as 0\.05/],
        [["--tolerance=10 mm"], /no target is given: add --radius/],
        [
          ["--bench=../bench.json", "--ring-radius=50"],
          /--ring-radius has no place beside --bench/,
        ],
      ] as [string[], RegExp][]).map(([args, words]): [string[], RegExp] => [
        [`${path}/x`, "--form=concave", "--diameter=300", ...args],
        words,
      ]),
    ];
    for (const [args, words] of wrong) {
      const { code, err } = await said(args);
      equal(code, 2);
      match(err, words);
    }
    deepEqual([...Deno.readDirSync(path)], []);
  });
});

Deno.test("task new takes tolerances, the ring's uncertainty and the feet's direction from flags", async () => {
  const above = await Deno.makeTempDir({ prefix: "new-" });
  const folder = `${above}/piece`;
  const { code, out } = await new Deno.Command(Deno.execPath(), {
    // deno-fmt-ignore
    args: ["run", "-A", new URL("../../lib/tasks/new.ts", import.meta.url).pathname, folder,
      "--form", "concave", "--diameter", "200 mm", "--radius", "2000 mm",
      "--tolerance", "10 mm", "--sphericity", "2 µm", "--ring-radius", "50 mm",
      "--ring-uncertainty", "0.01 mm", "--ball-diameter", "6 mm",
      "--display-step", "0.001 mm", "--foot", "foot out"],
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output().then(({ code, stdout }) => ({
    code,
    out: new TextDecoder().decode(stdout),
  }));
  equal(code, 0, out);
  const read = (name: string) =>
    JSON.parse(Deno.readTextFileSync(`${folder}/${name}`));
  deepEqual(read("piece.json").sphericity_tolerance, { sag: "2 µm" });
  deepEqual(read("piece.json").target, {
    radius: "2000 mm",
    tolerance: "10 mm",
  });
  const [ring] = read("bench.json").rings;
  deepEqual([ring.radius_uncertainty, ring.foot], ["0.01 mm", "foot out"]);
  await Deno.remove(above, { recursive: true });
});

Deno.test("newFolder() makes nothing of answers that do not go together, and ends with 2", async () => {
  const folder = `${await Deno.makeTempDir()}/new`;
  const run = await runTask("new", [
    folder,
    ...["--name", "x", "--form", "concave", "--diameter", "300 mm"],
    ...["--radius", "100 mm", "--ring-radius", "60 mm"],
    ...["--ball-diameter", "6 mm", "--display-step", "0.001 mm"],
    ...["--thickness", "30 mm", "--glass", "borosilicate"],
  ]);
  equal(run.code, 2);
  match(run.err, /^Nothing was made/);
  match(
    run.err,
    /radius of curvature of 100 mm is less than half the diameter/,
  );
  await rejects(Deno.stat(folder), Deno.errors.NotFound);
  await Deno.remove(folder.slice(0, -4), { recursive: true });
});

Deno.test("newFolder() reads what a lens drawing says, and gives the gauge the unit of its display", async () => {
  await inFolder(async (path) => {
    const flags = [
      ...["--form", "convex", "--diameter", "50 mm", "--ring-radius", "10 mm"],
      ...["--ball-diameter", "5 mm", "--display-step", "0.0001 in"],
    ];
    const signed = await said([`${path}/a`, ...flags, "--radius=-160 mm"]);
    equal(signed.code, 2);
    match(signed.err, /must be above 0; write it without its sign \(the form/);
    for (const [name, plus] of [["b", "±"], ["c", "+-"], ["d", "+/- "]]) {
      const made = await said([
        ...[`${path}/${name}`, ...flags, "--radius", "160"],
        ...["--tolerance", `${plus}0.5 mm`, "--sphericity", `${plus}2 µm`],
      ]);
      equal(made.code, 0, made.err);
      const { piece, bench } = await readPieceFolder(`${path}/${name}`);
      equal(piece.target?.tolerance, 0.5);
      equal(piece.sphericity?.amount, 0.002);
      // A bare reading is what the display shows, whatever answers are in.
      deepEqual([piece.unit, bench.gauge.unit], ["mm", "in"]);
    }
  });
});

Deno.test("newFolder() takes decimal commas wherever a number is asked for, and tells the bench", async () => {
  await inFolder(async (path) => {
    const { code } = await said([
      ...[`${path}/five`, "--diameter=280", "--form=concave", "--bevel=1,5 mm"],
      ...["--focal-ratio=f/5,6", "--tolerance=0,05", "--ring-radius=45 mm"],
      ...["--ball-diameter=8 mm", "--display-step=1 µm"],
    ]);
    equal(code, 0);
    await Deno.writeTextFile(
      `${path}/five/sheets/a.csv`,
      "zeroing;centre\n1;1,004\n2;1,005\n",
    );
    const { piece, readings } = await readPieceFolder(`${path}/five`);
    equal(piece.bevel, 1.5);
    equal(piece.target?.radius.toFixed(3), "3136.000");
    equal(piece.target?.tolerance?.toFixed(3), "28.000");
    deepEqual(readings.map(({ sag }) => sag), [1.004, 1.005]);
    await said([`${path}/six`, "--diameter=280", "--form=concave"]);
    equal(
      (await Deno.readTextFile(`${path}/six/bench.json`)).includes("decimal"),
      false,
    );
  });
});

Deno.test("newFolder() takes no ring wider than the work, and says where a ring's diameter goes", async () => {
  await inFolder(async (path) => {
    const call = [`${path}/x`, "--diameter=280", "--form=concave"];
    const wide = await said([...call, "--ring-radius=150"]);
    equal(wide.code, 2);
    match(
      wide.err,
      /--ring-radius “150” cannot be used: a circle of that radius is wider than the work \(280 mm\); half its diameter is asked for\./,
    );
    const across = await said([...call, "--ring-diameter", "90 mm"]);
    equal(across.code, 2);
    match(
      across.err,
      /^There is no flag --ring-diameter: --ring-radius takes half/,
    );
    deepEqual([...Deno.readDirSync(path)], []);
  });
});

Deno.test("newFolder() makes nothing for a bench file that is not there, and asks for it again", async () => {
  await inFolder(async (path) => {
    const flag = await said([
      `${path}/x`,
      "--diameter=280",
      "--form=concave",
      "--bench=../none.json",
    ]);
    equal(flag.code, 2);
    match(flag.err, /--bench “\.\.\/none\.json” cannot be used: no such file/);
    deepEqual([...Deno.readDirSync(path)], []);
    const answers: Record<string, string[]> = {
      "A bench file": ["Jo 280", ""],
      "Does the surface": ["concave"],
      "Diameter:": ["280"],
      "Is the target": ["focal-length"],
      "Focal length": ["1400"],
      "How far": ["10"],
    };
    const asked: string[] = [];
    const { code, out } = await said([`${path}/x`], (question) => {
      asked.push(question);
      const key = Object.keys(answers).find((one) => question.startsWith(one));
      return answers[key ?? ""]?.shift() ?? null;
    });
    equal(code, 0);
    match(out, /no such file is seen from the new folder/);
    // What is wanted comes before how far from it is good.
    const place = (start: string) =>
      asked.findIndex((question) => question.startsWith(start));
    ok(place("Focal length") < place("How far"));
  });
});
