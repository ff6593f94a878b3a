import { deepEqual, equal, ok } from "node:assert/strict";
import { dirname, join } from "node:path";
import { Random } from "sagbook/numerics/random.ts";
import { studentInterval } from "sagbook/statistics/student_interval.ts";
import { importsOf, LAYERS, sources } from "../architecture/_layers.ts";
import { ROOT } from "../tasks/_run_task.ts";
import { run } from "./_commands.ts";
import { textOf } from "./_documents.ts";
import { blocksOf } from "./_markdown.ts";

const page = textOf("DEVELOPERS.md");
const config = JSON.parse(textOf("deno.json"));

/** A folder that looks like the project, to which files can be added. */
async function workingCopy(own: readonly string[]): Promise<string> {
  const folder = await Deno.makeTempDir({ prefix: "first-change-" });
  await Deno.copyFile(`${ROOT}deno.json`, join(folder, "deno.json"));
  await Deno.copyFile(`${ROOT}deno.lock`, join(folder, "deno.lock"));
  await Deno.mkdir(join(folder, "lib"));
  for (const { name } of Deno.readDirSync(`${ROOT}lib`)) {
    const into = join(folder, "lib", name);
    if (!own.includes(name)) await Deno.symlink(`${ROOT}lib/${name}`, into);
    else {
      await Deno.mkdir(into);
      for (const file of Deno.readDirSync(`${ROOT}lib/${name}`)) {
        await Deno.symlink(
          `${ROOT}lib/${name}/${file.name}`,
          join(into, file.name),
        );
      }
    }
  }
  return folder;
}

Deno.test("DEVELOPERS.md: the first change passes format, lint, types, documentation, examples and tests", async () => {
  const files = blocksOf(page)
    .filter(({ file, language }) => file !== undefined && language === "ts");
  equal(files.length, 2);
  const folder = await workingCopy(["geometry"]);
  for (const { file, text } of files) {
    await Deno.mkdir(dirname(join(folder, file!)), { recursive: true });
    await Deno.writeTextFile(join(folder, file!), `${text}\n`);
  }
  const [source, test] = files.map(({ file }) => file!);
  for (
    const args of [
      ["fmt", "--check", source, test],
      ["lint", source, test],
      ["doc", "--lint", "lib/units/length.ts", source],
      ["test", "-A", "--doc", source, test],
    ]
  ) {
    const { code, text } = await run(args, folder);
    equal(code, 0, `deno ${args.join(" ")}: ${text}`);
    if (args[0] === "test") ok(/ok \| 3 passed/.test(text), text);
  }
  await Deno.remove(folder, { recursive: true });
});

/** The folders in the rows of the layer table, in order. */
const rows = [...page.matchAll(/^\|[^|]*\| `(\w+)\/` +\|/gm)]
  .map(([, folder]) => folder);

Deno.test("DEVELOPERS.md: the layer table holds every folder, each below all that it imports", () => {
  deepEqual([...rows].sort(), [...Object.keys(LAYERS), "tasks"].sort());
  const wrong = sources(new URL(`file://${ROOT}lib/`)).flatMap(
    ({ file, text }) => {
      const [folder] = file.split("/");
      if (!rows.includes(folder)) return [];
      return importsOf(text).flatMap((specifier) => {
        const to = /^\.\.\/(\w+)\//.exec(specifier)?.[1];
        return to === undefined || rows.indexOf(to) < rows.indexOf(folder)
          ? []
          : [`${file} imports ${specifier}`];
      });
    },
  );
  deepEqual(wrong, []);
});

Deno.test("DEVELOPERS.md: the table of dependencies names every package, and none that is gone", () => {
  const [table] = page.split("## Dependencies")[1].split("\n\nnpm's");
  const packages = Object.keys(config.imports).filter((name) =>
    !/^sagbook/.test(name) && !/^@types\//.test(name) && !name.endsWith("/")
  );
  const listed = [...table.matchAll(/^\| ([^|]+?) +\|/gm)].slice(2)
    .flatMap(([, cell]) => cell.split(/, | with /));
  const fits = (listedName: string, name: string) =>
    listedName.endsWith("*")
      ? name.startsWith(listedName.slice(0, -1))
      : name === listedName;
  deepEqual(
    packages.filter((name) => !listed.some((one) => fits(one, name))),
    [],
  );
  // Some packages of the tests alone are named where they are used.
  const used = sources(new URL(`file://${ROOT}tests/`))
    .map(({ text }) => text).join("\n");
  deepEqual(
    listed.filter((one) =>
      !packages.some((name) => fits(one, name)) && !used.includes(`npm:${one}@`)
    ),
    [],
  );
});

Deno.test("DEVELOPERS.md: plain t covers 54 % with three sets and a scatter of 0.2 steps", () => {
  ok(page.includes("Plain t covers 54 %"));
  const random = new Random(54);
  let covered = 0;
  for (let k = 0; k < 40_000; k++) {
    const [a, b] = [random.uniform(), random.uniform()];
    const shown = (sag: number) => Math.round(sag + 0.2 * random.normal());
    const differences = [0, 1, 2].map(() => shown(a) - shown(b));
    const { interval: { low, high } } = studentInterval(differences);
    if (low - 1e-12 <= a - b && a - b <= high + 1e-12) covered++;
  }
  // Four standard errors of a share of 40,000 are 0.01.
  ok(Math.abs(covered / 40_000 - 0.543) < 0.01, `${covered / 40_000}`);
});

Deno.test("DEVELOPERS.md: of the layers above the workbench, records alone reads a user's files", () => {
  ok(
    page.includes(
      "of the layers above the workbench it alone reads a user's files",
    ),
  );
  const workbench = [
    "files",
    "protocol",
    "cells",
    "notebook",
    "kernel",
    "tasks",
  ];
  const readers = sources(new URL(`file://${ROOT}lib/`))
    .filter(({ text }) =>
      /\bDeno\.(?:read(?:Text)?File|readDir|open)/.test(
        text.replace(/\/\*[\s\S]*?\*\//g, ""),
      )
    )
    // The program that draws pixels reads its own package.
    .filter(({ file }) => file !== "figures/_draw_pixels.ts")
    .map(({ file }) => file.split("/")[0]);
  deepEqual(
    [...new Set(readers)].filter((folder) => !workbench.includes(folder)),
    ["records"],
  );
});

Deno.test("DEVELOPERS.md: a newcomer fetches as many packages as deno.lock holds", () => {
  const { npm } = JSON.parse(textOf("deno.lock"));
  const count = Object.keys(npm).length;
  ok(
    page.replace(/\s+/g, " ").includes(`fetches ${count} packages`),
    `${count}`,
  );
});
