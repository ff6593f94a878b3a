import { deepEqual, equal, match, ok } from "node:assert/strict";
import { join } from "node:path";
import { inFolder } from "../files/_in_folder.ts";
import { copyPiece, ROOT, runTask } from "./_run_task.ts";

const namesIn = (folder: string): string[] =>
  [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

Deno.test("task handout writes a sheet and a card for each ring, and touches nothing else", async () => {
  const folder = await copyPiece("gauge-study");
  try {
    const before = namesIn(folder);
    const { code, out, err } = await runTask("handout", [folder]);
    equal(code, 0, err);
    deepEqual(namesIn(folder), [...before, "report"].sort());
    const report = join(folder, "report");
    deepEqual(namesIn(report), ["bench-cards.html", "handout.html"]);
    equal(out.match(/^Page: /gm)?.length, 2);
    match(out, /handout\.html is one sheet; bench-cards\.html is 3 sheets/);
    const [cards, sheet] = namesIn(report).map((name) =>
      Deno.readTextFileSync(join(report, name))
    );
    const { rings } = JSON.parse(
      Deno.readTextFileSync(join(folder, "bench.json")),
    ) as { rings: { id: string }[] };
    equal(rings.length, 3);
    for (const { id } of rings) {
      for (const page of [cards, sheet]) ok(page.includes(id), id);
    }
    for (const page of [cards, sheet]) {
      match(page, /default-src 'none'/);
      ok(!/<script|https?:/.test(page));
      match(page, /Made by sagbook \d/);
    }
    // A second run writes over its own pages, for another radius.
    const again = await runTask("handout", [folder, "--radius", "94.5 in"]);
    equal(again.code, 0, again.err);
    const later = Deno.readTextFileSync(join(report, "handout.html"));
    match(later, /R 2400\u00a0mm/);
    deepEqual(namesIn(report), ["bench-cards.html", "handout.html"]);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("task handout writes over no file that it did not make, and says so", async () => {
  await inFolder(async (out) => {
    await Deno.writeTextFile(join(out, "handout.html"), "my own notes");
    const args = [join(ROOT, "data", "metric-250"), "--out", out];
    const { code, err } = await runTask("handout", args);
    equal(code, 1);
    match(
      err,
      /handout\.html was not made by this task and is left as it is: nothing was written\. Rename it, or name another folder with --out\./,
    );
    deepEqual(namesIn(out), ["handout.html"]);
    equal(Deno.readTextFileSync(join(out, "handout.html")), "my own notes");
    await Deno.remove(join(out, "handout.html"));
    await Deno.mkdir(join(out, "bench-cards.html"));
    equal((await runTask("handout", args)).code, 1);
    deepEqual(namesIn(out), ["bench-cards.html"]);
    const file = join(out, "file");
    await Deno.writeTextFile(file, "mine");
    const onto = await runTask("handout", [args[0], "--out", file]);
    equal(onto.code, 1);
    match(onto.err, /^Cannot write the handout as .*file must be a folder/);
    equal(Deno.readTextFileSync(file), "mine");
  });
});

Deno.test("task handout makes cards for both surfaces of a lens and warns of a ring that nobody measured", async () => {
  await inFolder(async (folder) => {
    await Deno.writeTextFile(
      join(folder, "piece.json"),
      JSON.stringify({
        name: "invented lens",
        invented: true,
        form: "convex",
        diameter: "150 mm",
        target: { radius: "400 mm" },
        lens: {
          index: 1.52,
          thickness: "12 mm",
          second_surface: {
            form: "concave",
            radius: "900 mm",
            radius_uncertainty: "1 mm",
          },
        },
      }),
    );
    const rings = Array.from({ length: 20 }, (_, k) => ({
      id: `ring ${k + 1}`,
      radius: `${20 + 2.5 * k} mm`,
      ball_radius: "3 mm",
      ...(k === 0 ? { measured: false } : {}),
    }));
    await Deno.writeTextFile(
      join(folder, "bench.json"),
      JSON.stringify({
        gauge: { unit: "in", display_step: "0.00005 in" },
        rings: [...rings, { ...rings[1], id: "wide", radius: "90 mm" }],
      }),
    );
    const { code, out, err } = await runTask("handout", [folder]);
    equal(code, 0, err);
    match(err, /^warning: the size of ring 1 is a stand-in/m);
    match(out, /bench-cards\.html is 40 sheets, one for each ring and surface/);
    match(out, /No card for wide: too large for invented lens\./);
    const page = (name: string): string =>
      Deno.readTextFileSync(join(folder, "report", name));
    equal(page("bench-cards.html").match(/<article/g)?.length, 40);
    match(page("bench-cards.html"), /invented lens, second surface, concave/);
    match(page("bench-cards.html"), /sag in<\/th><th scope="col">sag mm/);
    match(page("handout.html"), /15 more are on the bench cards/);
  });
});

Deno.test("task handout says in plain words what is missing", async () => {
  const folder = await copyPiece("metric-250");
  try {
    const without = await runTask("handout", [join(folder, "nowhere")]);
    equal(without.code, 1);
    match(without.err, /nowhere: there is no such folder/);
    const path = join(folder, "piece.json");
    const { target: _none, ...piece } = JSON.parse(
      await Deno.readTextFile(path),
    );
    await Deno.writeTextFile(path, JSON.stringify(piece));
    const aimless = await runTask("handout", [folder]);
    equal(aimless.code, 1);
    match(aimless.err, /no target in piece\.json and no --radius/);
    equal((await runTask("handout", [folder, "--radius=2 m"])).code, 0);
    const short = await runTask("handout", [folder, "--radius=20 mm"]);
    equal(short.code, 1);
    match(short.err, /a ring must stand on a disc of 250 mm/);
    for (const { err } of [without, aimless, short]) {
      ok(!err.includes("    at "), "no stack is shown");
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("task handout explains itself and names a wrong call", async () => {
  const help = await runTask("handout", ["--help"]);
  equal(help.code, 0);
  match(help.out, /^deno task handout \[FOLDER\][\s\S]*Exit codes: /);
  const wrong = [
    [["a", "b"], /^One folder at a time: current value is a, b\./],
    [["--radius", "2400"], /^--radius needs a length above 0 with its unit/],
    [["--radius", "-1 mm"], /current value is -1 mm/],
    [["--radius"], /--radius needs a value/],
    [["--out="], /A folder's name is empty/],
    [["--pages=2"], /There is no flag --pages/],
  ] as const;
  for (const [args, words] of wrong) {
    const run = await runTask("handout", args);
    equal(run.code, 2, args.join(" "));
    match(run.err, words);
  }
});
