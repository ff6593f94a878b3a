import { deepEqual, equal, match, ok } from "node:assert/strict";
import { liveScript } from "sagbook/live/live_script.ts";
import { runTask } from "./_run_task.ts";

Deno.test("task teach writes the class as one page with live figures, and its notebook", async () => {
  const folder = await Deno.makeTempDir({ prefix: "class-" });
  try {
    const { code, out, err } = await runTask("teach", [
      "--out",
      `${folder}/class`,
      "--no-check",
    ]);
    equal(code, 0, err);
    match(out, /^Page: .*teaching-the-geometry\.html$/m);
    const names = [...Deno.readDirSync(`${folder}/class`)].map(({ name }) =>
      name
    );
    deepEqual(names.sort(), [
      "teaching-the-geometry.html",
      "teaching-the-geometry.ipynb",
    ]);
    const page = await Deno.readTextFile(
      `${folder}/class/teaching-the-geometry.html`,
    );
    ok(page.length < 1_500_000, `${page.length} characters`);
    ok(page.includes(await liveScript()));
    equal(page.match(/ data-live="/g)?.length, 13);
    ok(!page.includes("This page is incomplete"));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("task teach explains itself and refuses what it does not know", async () => {
  const help = await runTask("teach", ["--help"]);
  equal(help.code, 0);
  match(help.out, /deno task teach \[--out FOLDER\]/);
  const wrong = await runTask("teach", ["a-folder"]);
  equal(wrong.code, 2);
  match(
    wrong.err,
    /^The class reads no folder; --out says where to write it: current value is a-folder\./,
  );
  equal((await runTask("teach", ["--fast"])).code, 2);
});
