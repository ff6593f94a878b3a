import { deepEqual, equal, match, ok } from "node:assert/strict";
import { DRESS, DRESS_FILE, dressPage } from "sagbook/tasks/_doc_dress.ts";
import { firstSentence, frontModule } from "sagbook/tasks/_doc_front.ts";
import { ROOT, runTask } from "./_run_task.ts";

const config = JSON.parse(Deno.readTextFileSync(`${ROOT}deno.json`));
const layers = Object.keys(config.exports).filter((name) => name !== ".")
  .map((name) => name.slice(2));

interface Symbols {
  readonly symbols: readonly {
    readonly name: string;
    readonly declarations: readonly {
      /** A `reference` is documented where it is declared. */
      readonly kind: string;
      readonly jsDoc?: { readonly doc?: string };
    }[];
  }[];
}

/** What each layer exports, by the runtime's own account. */
async function exported(): Promise<Map<string, Symbols["symbols"]>> {
  const { success, stdout } = await new Deno.Command(Deno.execPath(), {
    args: ["doc", "--json", ...layers.map((name) => `lib/${name}/mod.ts`)],
    cwd: ROOT,
    stdout: "piped",
    stderr: "null",
  }).output();
  ok(success);
  const { nodes }: { nodes: Record<string, Symbols> } = JSON.parse(
    new TextDecoder().decode(stdout),
  );
  return new Map(
    Object.entries(nodes).map(([url, { symbols }]) =>
      [/lib\/(\w+)\/mod\.ts$/.exec(url)?.[1] ?? url, symbols] as const
    ),
  );
}

Deno.test("task doc makes a page of every layer and every symbol, with examples and no need of a network", async () => {
  const folder = await Deno.makeTempDir({ prefix: "doc-" });
  const out = `${folder}/pages`;
  try {
    const { code, out: said, err } = await runTask("doc", ["--out", out]);
    equal(`${code} ${err}`, "0 ");
    match(said, /^Documentation: .*index\.html\n$/);
    const found = await exported();
    deepEqual([...found.keys()].sort(), layers);
    const without: string[] = [];
    const silent: string[] = [];
    const index = await Deno.readTextFile(`${out}/index.html`);
    const deep = await Deno.readTextFile(
      `${out}/sagbook/geometry/~/radiusFromSag.html`,
    );
    for (const [page, up] of [[index, ""], [deep, "../../../"]]) {
      match(page, /<html lang="en">/);
      ok(page.includes(`href="${up}${DRESS_FILE}"`), up);
      equal(/<button class="copyButton"/.test(page), false);
      match(page, /<code tabindex="0"/);
    }
    equal(await Deno.readTextFile(`${out}/${DRESS_FILE}`), DRESS);
    equal(dressPage("<p>no page</p>"), "<p>no page</p>");
    for (const [layer, symbols] of found) {
      ok(index.includes(`href="./sagbook/${layer}/index.html"`), layer);
      ok(Deno.statSync(`${out}/sagbook/${layer}/index.html`).isFile);
      ok(symbols.length > 0, layer);
      const pages = new Set(
        [...Deno.readDirSync(`${out}/sagbook/${layer}/~`)].map(({ name }) =>
          name
        ),
      );
      for (const { name, declarations } of symbols) {
        if (!pages.has(`${name}.html`)) without.push(`${layer}: ${name}`);
        const says = declarations.some(({ kind, jsDoc }) =>
          kind === "reference" || (jsDoc?.doc ?? "") !== ""
        );
        if (!says) {
          silent.push(`${layer}: ${name}`);
        }
      }
    }
    deepEqual(without, []);
    deepEqual(silent, []);
    const page = await Deno.readTextFile(
      `${out}/sagbook/geometry/~/radiusFromSag.html`,
    );
    ok(page.includes("A shallow dish under a foot circle of 50 mm radius"));
    ok(page.includes("2502.75"));
    // Only links to follow lead elsewhere; nothing is loaded from there.
    for (const text of [index, page]) {
      equal(
        /<(script|link|img)[^>]*(src|href)="(https?:)?\/\//.exec(text),
        null,
      );
    }
    const left = [...Deno.readDirSync(folder)].map(({ name }) => name);
    deepEqual(left, ["pages"]);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("task doc leaves a folder alone that holds something else", async () => {
  const folder = await Deno.makeTempDir({ prefix: "doc-" });
  try {
    await Deno.writeTextFile(`${folder}/readings.csv`, "mine");
    const { code, err } = await runTask("doc", ["--out", folder]);
    equal(code, 1);
    match(err, /holds readings\.csv, which is no documentation: name another/);
    equal(await Deno.readTextFile(`${folder}/readings.csv`), "mine");
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("firstSentence() is the first paragraph of a docstring, on one line", () => {
  equal(
    firstSentence("/**\n * One thing\n * and another.\n *\n * More.\n */"),
    "One thing and another.",
  );
  equal(firstSentence("/** Short. */\nexport {};"), "Short.");
  equal(firstSentence("/**\n * Whole.\n * @module\n */"), "Whole.");
  equal(firstSentence("export {};"), "");
});

Deno.test("frontModule() lists the layers after the package's own words, before its example", () => {
  const main =
    '/**\n * Words.\n *\n * @example One\n * ```ts\n * x;\n * ```\n *\n * @module\n */\nexport * from "./units/mod.ts";\nexport { VERSION } from "./version.ts";\n';
  const text = frontModule(main, [
    { name: "units", source: "/** Lengths | units. */" },
    { name: "kernel", source: "" },
  ]);
  equal(
    text,
    `/**
 * Words.
 *
 * \`sagbook\` itself exports all that these layers hold, except what is only
 * imported by its layer's own name: kernel.
 *
 * | import | holds |
 * | --- | --- |
 * | [sagbook/units](./sagbook/units/index.html) | Lengths \\| units. |
 * | [sagbook/kernel](./sagbook/kernel/index.html) |  |
 *
 * @example One
 * \`\`\`ts
 * x;
 * \`\`\`
 *
 * @module
 */
export { VERSION } from "./sagbook/version.ts";
`,
  );
});
