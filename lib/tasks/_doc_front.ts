/**
 * The first page of the library's documentation.
 *
 * @module
 */

/** A layer of the library as its first page shows it. */
export interface DocLayer {
  /** The name it is imported by, without the package's. */
  readonly name: string;
  /** The text of its `mod.ts`. */
  readonly source: string;
}

/**
 * The first sentence of a module's docstring, on one line.
 *
 * @param source The module's text.
 * @returns The sentence; empty without a docstring.
 */
export function firstSentence(source: string): string {
  const [, text] = /^\/\*\*([\s\S]*?)\*\//.exec(source.trimStart()) ?? [];
  if (text === undefined) return "";
  const [first] = text.split("\n").map((line) => line.replace(/^ *\*? ?/, ""))
    .join("\n").trim().split(/\n\s*\n|\n@/);
  return first.replace(/\s+/g, " ").trim();
}

/**
 * Makes the module that stands for the whole package: its own docstring, then
 * a table of the layers with links, since each symbol is shown with its layer.
 *
 * @param main The text of the package's `mod.ts`.
 * @param layers The layers, in the order to be shown.
 * @returns TypeScript that exports what is in no layer.
 */
export function frontModule(
  main: string,
  layers: readonly DocLayer[],
): string {
  const [, text = ""] = /^\/\*\*([\s\S]*?)\*\//.exec(main.trimStart()) ?? [];
  const [words, ...tags] = text.split(/^ \* (?=@)/m);
  const own = main.split("\n").filter((line) => /^export \{/.test(line));
  const apart = layers.map(({ name }) => name)
    .filter((name) => !main.includes(`export * from "./${name}/mod.ts"`));
  const rows = layers.map(({ name, source }) => {
    const link = `[sagbook/${name}](./sagbook/${name}/index.html)`;
    return ` * | ${link} | ${firstSentence(source).replaceAll("|", "\\|")} |`;
  });
  return [
    "/**" + words.trimEnd().replace(/\n \*$/, ""),
    " *",
    " * `sagbook` itself exports all that these layers hold, except what is only",
    ` * imported by its layer's own name: ${apart.join(", ")}.`,
    " *",
    " * | import | holds |",
    " * | --- | --- |",
    ...rows,
    " *",
    tags.map((tag) => ` * ${tag}`).join("").trimEnd(),
    " */",
    ...own.map((line) => line.replace('"./', '"./sagbook/')),
    "",
  ].join("\n");
}
