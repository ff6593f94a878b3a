import { deepEqual, equal, match, notEqual, ok } from "node:assert/strict";
import { join } from "node:path";
import { inFolder } from "../files/_in_folder.ts";
import { runTask } from "./_run_task.ts";

/** Every file below a folder by its path, as bytes in hex of their hash. */
async function filesBelow(folder: string): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  const walk = async (path: string): Promise<void> => {
    for await (const entry of Deno.readDir(join(folder, path))) {
      const inside = path === "" ? entry.name : `${path}/${entry.name}`;
      if (entry.isDirectory) await walk(inside);
      else found[inside] = await Deno.readTextFile(join(folder, inside));
    }
  };
  await walk("");
  return Object.fromEntries(
    Object.entries(found).sort(([a], [b]) => a < b ? -1 : 1),
  );
}

Deno.test("task exercise makes folders that check and report take, the key apart, the same bytes for a seed", async () => {
  await inFolder(async (folder) => {
    const [a, b, c] = ["a", "b", "c"].map((name) => join(folder, name));
    const made = await runTask("exercise", [
      "--seed",
      "3",
      "--students",
      "5",
      "--out",
      a,
    ]);
    equal(made.code, 0, made.err);
    match(made.out, /5 exercises, student-01 to student-05/);
    match(made.out, /keep that folder, hand out the others/);
    const files = await filesBelow(a);
    deepEqual(Object.keys(files).filter((name) => /^[^s]/.test(name)), [
      "key-for-the-teacher/key.html",
      "key-for-the-teacher/key.json",
    ]);
    deepEqual(
      Object.keys(files).filter((name) => name.startsWith("student-02")),
      ["bench.json", "piece.json", "question.md", "readings.csv"]
        .map((name) => `student-02/${name}`),
    );
    const students = [1, 2, 3, 4, 5].map((k) => join(a, `student-0${k}`));
    const checked = await runTask("check", ["--json", ...students]);
    equal(checked.code, 0, checked.out);
    for (const { problems } of JSON.parse(checked.out)) deepEqual(problems, []);

    const again = ["--seed=3", "--students=5", `--out=${b}`];
    equal((await runTask("exercise", again)).code, 0);
    deepEqual(await filesBelow(b), files);
    const other = ["--seed=4", "--students=5", `--out=${c}`];
    equal((await runTask("exercise", other)).code, 0);
    const others = await filesBelow(c);
    for (const name of Object.keys(files)) {
      if (name.endsWith("readings.csv")) notEqual(others[name], files[name]);
    }

    const key = JSON.parse(files["key-for-the-teacher/key.json"]);
    equal(key.students.length, 5);
    for (const one of key.students) {
      const { within, outside, undecided } = one.chances;
      ok(Math.abs(within + outside + undecided - 1) < 1e-9);
    }
    match(files["key-for-the-teacher/key.html"], /For the teacher alone/);
    match(
      files["key-for-the-teacher/key.html"],
      /The first set by hand, .*: centre .* R\s=\s/,
    );

    const report = await runTask("report", [students[0]]);
    equal(report.code, 0, report.err);
  });
});

Deno.test("task exercise writes over nothing and leaves nothing half made", async () => {
  await inFolder(async (folder) => {
    const out = join(folder, "class");
    await Deno.mkdir(out);
    await Deno.writeTextFile(join(out, "mine.txt"), "kept");
    const args = ["--seed", "1", "--students", "1", "--out", out];
    const refused = await runTask("exercise", args);
    equal(refused.code, 1);
    match(
      refused.err,
      /there must be nothing of that name: there is something\. Nothing was written over; name another folder/,
    );
    deepEqual(await filesBelow(folder), { "class/mine.txt": "kept" });
    const file = join(out, "mine.txt", "deeper");
    const below = await runTask("exercise", [...args.slice(0, 5), file]);
    equal(below.code, 1);
    match(below.err, /a part of its path is a file/);
    deepEqual(await filesBelow(folder), { "class/mine.txt": "kept" });
  });
});

Deno.test("task exercise explains itself and names a wrong call", async () => {
  const help = await runTask("exercise", ["--help"]);
  equal(help.code, 0);
  match(help.out, /--seed N[\s\S]*--students M[\s\S]*Exit codes/);
  const wrong = [
    [[], /--seed needs a whole number from 0: current value is none/],
    [["--seed=1"], /--students needs a whole number from 1 to 200/],
    [["--seed=-1", "--students=2"], /--seed needs a whole number from 0/],
    [["--seed=1.5", "--students=2"], /current value is 1\.5/],
    [["--seed=1", "--students=201"], /current value is 201/],
    [["--seed=1", "--students=2", "here"], /the folder is named by --out/],
    [["--pupils=2"], /There is no flag --pupils/],
  ] as const;
  for (const [args, words] of wrong) {
    const run = await runTask("exercise", args);
    equal(run.code, 2, args.join(" "));
    match(run.err, words);
    ok(!run.err.includes("    at "), "no stack is shown");
  }
});
