import { deepEqual, ok } from "node:assert/strict";
import { importsOf, LAYERS, PACKAGES, sources } from "./_layers.ts";

const LIB = new URL("../../lib/", import.meta.url);
const files = sources(LIB);

/** The folder of `lib/` a relative specifier leads to, and the file in it. */
function target(file: string, specifier: string): string {
  return new URL(specifier, new URL(file, "file:///lib/")).pathname
    .replace("/lib/", "");
}

Deno.test("lib/ folders import only lower layers, types included", () => {
  const wrong: string[] = [];
  for (const { file, text } of files) {
    const folder = file.split("/")[0];
    if (!(folder in LAYERS)) continue;
    for (const specifier of importsOf(text)) {
      if (!specifier.startsWith(".")) continue;
      const [to] = target(file, specifier).split("/");
      if (to === "version.ts") continue;
      if (to !== folder && !LAYERS[folder].includes(to)) {
        wrong.push(`${file} imports ${specifier}`);
      }
    }
  }
  deepEqual(wrong, []);
});

Deno.test("lib/ has no folder outside the layer table", () => {
  const folders = [
    ...new Set(
      files.filter(({ file }) => file.includes("/")).map(({ file }) =>
        file.split("/")[0]
      ),
    ),
  ];
  deepEqual(
    folders.filter((name) => !(name in LAYERS) && name !== "tasks"),
    [],
  );
});

Deno.test("lib/ imports across folders name the file, never mod.ts, and nothing imports tasks/", () => {
  const wrong: string[] = [];
  for (const { file, text } of files) {
    const folder = file.split("/")[0];
    if (file === "mod.ts") continue;
    for (const specifier of importsOf(text)) {
      if (!specifier.startsWith(".")) continue;
      const to = target(file, specifier);
      const other = to.split("/")[0] !== folder;
      if (other && to.endsWith("/mod.ts")) wrong.push(`${file} → ${to}`);
      if (other && to.startsWith("tasks/")) wrong.push(`${file} → ${to}`);
      const private_ = to.split("/").at(-1)!.startsWith("_");
      if (other && private_) wrong.push(`${file} → ${to}`);
    }
  }
  deepEqual(wrong, []);
});

Deno.test("lib/ imports each npm package only where the table allows", () => {
  const wrong: string[] = [];
  for (const { file, text } of files) {
    const folder = file.split("/")[0];
    if (folder === "tasks") continue;
    for (const specifier of importsOf(text)) {
      if (specifier.startsWith(".") || specifier.startsWith("node:")) continue;
      const known = Object.entries(PACKAGES).find(([name]) =>
        specifier === name ||
        specifier.startsWith(`${name.replace(/\/$/, "")}/`) ||
        (name.endsWith("/") && specifier.startsWith(name))
      );
      if (!known?.[1].includes(folder)) wrong.push(`${file} → ${specifier}`);
    }
  }
  deepEqual(wrong, []);
});

Deno.test("lib/ keeps files short and names plain", () => {
  const banned = /(^|[/_])(utils?|helpers?|common|misc)(\.ts|\/|_)/;
  for (const { file, text } of files) {
    ok(!banned.test(file), `${file} has a banned name`);
    const code = text.replace(/\/\*[\s\S]*?\*\//g, "").split("\n")
      .filter((line) => line.trim() !== "" && !/^\s*\/\//.test(line));
    ok(code.length <= 250, `${file} has ${code.length} lines of code`);
    ok(/^[a-z0-9_/.]+$/.test(file), `${file} is not in snake_case`);
  }
});

Deno.test("lib/ takes no randomness but from its arguments", () => {
  const random = ["Math", "random"].join(".");
  const wrong = files.filter(({ text }) => text.includes(`${random}(`));
  deepEqual(wrong.map(({ file }) => file), []);
});
