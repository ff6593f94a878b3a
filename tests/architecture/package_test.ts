import { deepEqual, equal } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { VERSION } from "sagbook";

const ROOT = new URL("../../", import.meta.url);
const config = JSON.parse(Deno.readTextFileSync(new URL("deno.json", ROOT)));

function isThere(path: string): boolean {
  try {
    return Deno.statSync(new URL(path, ROOT)).isFile;
  } catch {
    return false;
  }
}

Deno.test("the package exports every layer under its folder's name, and the import map names the same files", () => {
  const layers = [...Deno.readDirSync(new URL("lib/", ROOT))]
    .filter(({ isDirectory, name }) =>
      isDirectory && isThere(`lib/${name}/mod.ts`)
    )
    .map(({ name }) => name).sort();
  const wanted = Object.fromEntries([
    [".", "./lib/mod.ts"],
    ...layers.map((name) => [`./${name}`, `./lib/${name}/mod.ts`]),
  ]);
  deepEqual(config.exports, wanted);
  for (const name of layers) {
    equal(config.imports[`sagbook/${name}`], `./lib/${name}/mod.ts`);
  }
  equal(config.version, VERSION);
});

Deno.test("every notebook's first cell says what it answers and what it needs", () => {
  const folder = new URL("notebooks/", ROOT);
  const without: string[] = [];
  for (const { name } of Deno.readDirSync(folder)) {
    if (!name.endsWith(".ipynb")) continue;
    const { cells } = JSON.parse(Deno.readTextFileSync(new URL(name, folder)));
    const text = [cells[0].source].flat().join("");
    const says = cells[0].cell_type === "markdown" && /^# /.test(text) &&
      /^What (this|it) answers: /m.test(text) &&
      /^What (this|it) needs: /m.test(text);
    if (!says) without.push(name);
  }
  deepEqual(without, []);
});

Deno.test("the package holds the library and its licences, and no task, which needs the whole project", async () => {
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["publish", "--dry-run", "--allow-dirty", "--no-check"],
    cwd: fileURLToPath(ROOT),
    env: { NO_COLOR: "1" },
    stdout: "piped",
    stderr: "piped",
  }).output();
  const said = new TextDecoder().decode(stdout) +
    new TextDecoder().decode(stderr);
  equal(success, true, said);
  const files = [...said.matchAll(/^ +(file:\S+) \(/gm)]
    .map(([, url]) => url.slice(ROOT.href.length));
  equal(new Set(files.map((path) => path.split("/")[0])).size, 4);
  for (const path of Object.values<string>(config.exports)) {
    equal(files.includes(path.slice(2)), true, path);
  }
  for (const name of ["LICENSE", "NOTICE"]) {
    equal(files.includes(`lib/statistics/_stdlib/${name}`), true, name);
  }
  deepEqual(files.filter((path) => path.startsWith("lib/tasks/")), []);
});
