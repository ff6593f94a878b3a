import { deepEqual } from "node:assert/strict";
import { sources } from "./_layers.ts";

const ROOT = new URL("../../", import.meta.url);

Deno.test("every function and class that lib/ exports is exercised by name in tests or examples", () => {
  const lib = sources(new URL("lib/", ROOT));
  const tests = sources(new URL("tests/", ROOT)).map(({ text }) => text).join(
    "\n",
  );
  const notebooks = [...Deno.readDirSync(new URL("notebooks/", ROOT))]
    .filter(({ name }) => name.endsWith(".ipynb"))
    .map(({ name }) =>
      Deno.readTextFileSync(new URL(`notebooks/${name}`, ROOT))
    )
    .join("\n");
  const missing: string[] = [];
  for (const { file, text } of lib) {
    const name = file.split("/").at(-1)!;
    if (
      name.startsWith("_") || name === "mod.ts" || file.startsWith("tasks/")
    ) {
      continue;
    }
    const examples = [...text.matchAll(/```ts\n([\s\S]*?)```/g)].map((match) =>
      match[1]
    ).join("\n");
    const used = tests + notebooks + examples;
    const exported = text.matchAll(
      /^export (?:async )?(?:function\*?|class) (\w+)/gm,
    );
    for (const [, symbol] of exported) {
      if (!new RegExp(`\\b${symbol}\\b`).test(used)) {
        missing.push(`${file}: ${symbol}`);
      }
    }
  }
  deepEqual(missing, []);
});
