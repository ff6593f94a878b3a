import { deepEqual, equal, match } from "node:assert/strict";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { VERSION } from "sagbook";
import { textOf } from "../documentation/_documents.ts";
import { blocksOf } from "../documentation/_markdown.ts";
import { sources } from "./_layers.ts";

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

/** What a command of the runtime said, colours off; it must end well. */
async function run(args: readonly string[], cwd: string): Promise<string> {
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd,
    env: { NO_COLOR: "1" },
    stdout: "piped",
    stderr: "piped",
  }).output();
  const said = new TextDecoder().decode(stdout) +
    new TextDecoder().decode(stderr);
  equal(success, true, said);
  return said;
}

/** The files that would be published, from the project's root. */
const published = run(
  ["publish", "--dry-run", "--allow-dirty", "--no-check"],
  fileURLToPath(ROOT),
).then((said) =>
  [...said.matchAll(/^ +(file:\S+) \(/gm)]
    .map(([, url]) => url.slice(ROOT.href.length))
);

Deno.test("the package holds the library and its licences, and no task, which needs the whole project", async () => {
  const files = await published;
  equal(new Set(files.map((path) => path.split("/")[0])).size, 4);
  for (const path of Object.values<string>(config.exports)) {
    equal(files.includes(path.slice(2)), true, path);
  }
  for (const name of ["LICENSE", "NOTICE"]) {
    equal(files.includes(`lib/statistics/_stdlib/${name}`), true, name);
  }
  deepEqual(files.filter((path) => path.startsWith("lib/tasks/")), []);
});

/** A program that uses every export, and mixes up units once. */
const PROGRAM = `
${
  Object.keys(config.exports).map((name, k) =>
    `import * as layer${k} from "sagbook${name.slice(1)}";`
  ).join("\n")
}
import { inches, millimetres as mm, openPiece, radiusFromSag } from "sagbook";
import { Kernel } from "sagbook/kernel";
import { createConnection, KernelClient } from "sagbook/protocol";

const ring = { circleRadius: mm(60), ballRadius: mm(3) };
console.log(radiusFromSag(mm(0.715), ring, "concave").toFixed(2));
// @ts-expect-error inches are not millimetres
radiusFromSag(inches(0.715), ring, "concave");
console.log((await openPiece(Deno.args[0])).answer[0]);
const connection = createConnection();
const kernel = new Kernel({ connection, folder: Deno.cwd(), check: false });
const client = await KernelClient.connect(connection);
const code = "if (6 * 7 !== 42) throw 0";
const done = await client.request("shell", "execute_request", { code });
console.log(done.content.status);
await kernel.shutdown();
client.close();
console.log([${
  Object.keys(config.exports).map((_, k) => `layer${k}`).join(", ")
}].every((layer) => Object.keys(layer).length > 0));
`;

Deno.test("the package serves a program in a folder of its own, by the settings that DEVELOPERS.md gives, without the rest of the project", async () => {
  const folder = await Deno.makeTempDir({ prefix: "package-" });
  try {
    for (const path of await published) {
      const to = join(folder, "sagbook", path);
      await Deno.mkdir(dirname(to), { recursive: true });
      await Deno.copyFile(new URL(path, ROOT), to);
    }
    const own = join(folder, "my-program");
    await Deno.mkdir(own);
    const settings = blocksOf(textOf("DEVELOPERS.md"))
      .find(({ file }) => file === "my-program/deno.json");
    await Deno.writeTextFile(join(own, "deno.json"), settings!.text);
    await Deno.writeTextFile(join(own, "main.ts"), PROGRAM);
    // The versions that are fetched already.
    await Deno.copyFile(new URL("deno.lock", ROOT), join(own, "deno.lock"));
    await run(["check", "main.ts"], own);
    const piece = fileURLToPath(new URL("data/metric-250", ROOT));
    const said = await run(["run", "-A", "main.ts", piece], own);
    match(
      said,
      /^2520\.84\nThe radius of curvature is 3003\.6\s±.*\nok\ntrue\n$/,
    );
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("lib/ names the types of Papa Parse, which a user's settings do not", () => {
  const papa = sources(new URL("lib/", ROOT))
    .filter(({ text }) => text.includes('"papaparse"'));
  deepEqual(papa.map(({ file }) => file), ["records/_rows_of_text.ts"]);
  equal(
    papa[0].text.split('"papaparse"').length,
    papa[0].text.split('// @ts-types="@types/papaparse"\n').length,
  );
});
