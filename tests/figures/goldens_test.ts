import { equal, ok } from "node:assert/strict";
import { goldenFile, normalised } from "./_goldens.ts";
import { samples } from "./_samples.ts";

for (const { name, draw } of samples) {
  Deno.test(`figures: ${name} is drawn as in the kept picture`, async () => {
    const drawn = normalised((await draw()).svg);
    const kept = await Deno.readTextFile(goldenFile(name)).catch(() => "");
    if (drawn !== kept) await Deno.writeTextFile(goldenFile(name, true), drawn);
    ok(
      drawn === kept,
      `the picture changed: look at tests/goldens/figures/${name}.new.svg beside ${name}.svg`,
    );
  });
}

Deno.test("figures: every kept picture belongs to a sample", async () => {
  const names = [];
  for await (
    const entry of Deno.readDir(
      goldenFile("x").href.replace(/x\.svg$/, "").replace("file://", ""),
    )
  ) {
    if (!entry.name.endsWith(".new.svg")) names.push(entry.name);
  }
  equal(
    names.sort().join("\n"),
    samples.map(({ name }) => `${name}.svg`).sort().join("\n"),
  );
});
