/** The layer table of the library, as data. */

/** What each folder of `lib/` may import besides itself. */
const FOUNDATION = ["units", "numerics", "display"];
const THEORY = ["geometry", "statistics"];
const ANALYSIS = ["zones", "repeatability", "uncertainty", "fabrication"];

/** Folder to the folders it may import. */
export const LAYERS: Readonly<Record<string, readonly string[]>> = {
  units: ["numerics"],
  numerics: [],
  display: [],
  files: [],
  geometry: [...FOUNDATION],
  statistics: [...FOUNDATION],
  records: [...FOUNDATION, "files", ...THEORY],
  zones: [...FOUNDATION, ...THEORY, "records"],
  repeatability: [...FOUNDATION, ...THEORY, "records"],
  uncertainty: [...FOUNDATION, ...THEORY, "records"],
  fabrication: [...FOUNDATION, ...THEORY, "records"],
  exercises: [...FOUNDATION, ...THEORY, "records", ...ANALYSIS],
  live: [...FOUNDATION, "geometry"],
  figures: [...FOUNDATION, ...THEORY, "records", ...ANALYSIS],
  narrative: [
    ...FOUNDATION,
    ...THEORY,
    "records",
    ...ANALYSIS,
    "exercises",
    "figures",
  ],
  protocol: ["display", "files"],
  cells: ["display"],
  notebook: ["display", "files", "protocol", "cells"],
  kernel: ["display", "files", "protocol", "cells"],
};

/** npm package (by the start of its name) to the only folders that import it. */
export const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  "simple-statistics": ["statistics"],
  papaparse: ["records"],
  zod: ["records", "notebook", "protocol", "kernel"],
  "@observablehq/plot": ["figures"],
  linkedom: ["figures"],
  "markdown-it": ["notebook"],
  katex: ["notebook"],
  "highlight.js": ["notebook"],
  typescript: ["cells", "notebook", "kernel"],
  "ts-blank-space": ["cells"],
};

/** One import of a file of the library. */
export interface Import {
  /** The file, from `lib/`. */
  readonly file: string;
  /** What it names. */
  readonly specifier: string;
}

/** Every TypeScript file below a folder, with its text. */
export function sources(root: URL): { file: string; text: string }[] {
  const found: { file: string; text: string }[] = [];
  const walk = (folder: URL, prefix: string): void => {
    for (const entry of Deno.readDirSync(folder)) {
      const url = new URL(entry.name + (entry.isDirectory ? "/" : ""), folder);
      if (entry.isDirectory) walk(url, `${prefix}${entry.name}/`);
      else if (entry.name.endsWith(".ts") && !entry.name.endsWith(".d.ts")) {
        const text = Deno.readTextFileSync(url);
        found.push({ file: prefix + entry.name, text });
      }
    }
  };
  walk(root, "");
  return found.sort((a, b) => a.file < b.file ? -1 : 1);
}

/** The imports and re-exports of a file's text, comments left out. */
export function importsOf(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, "").replace(
    /^\s*\/\/.*$/gm,
    "",
  );
  const names = /(?:\bfrom\s+|\bimport\s+|\bimport\(\s*)["']([\w@./:-]+)["']/g;
  return [...code.matchAll(names)].map((match) => match[1]);
}
