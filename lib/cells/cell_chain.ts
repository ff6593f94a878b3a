/**
 * Cells as modules that import from each other.
 *
 * @module
 */
import type { CellName, ParsedCell } from "./parse_cell.ts";

/** A cell as a module that only the checker sees. */
export interface ChainedCell {
  /** Its URI, never used before. */
  readonly uri: string;
  /** One generated line, the cell's text untouched, a line of exports. */
  readonly text: string;
  /** The cell it stands for. */
  readonly cell: ParsedCell;
  /** URIs of the modules it imports from. */
  readonly uses: readonly string[];
}

interface Visible {
  readonly uri: string;
  readonly name: CellName;
}

/**
 * Gives each cell the names of the cells run before it, as imports.
 *
 * One module per cell, and not one module for all, lets a later cell declare a
 * name anew without being told that it exists, and gives the new type from
 * there on. The generated first line stands before the cell's own text, so the
 * compiler's line number is the cell's, counted from 1.
 *
 * @example A name declared twice has its second type
 * ```ts
 * import { CellChain } from "sagbook/cells/cell_chain.ts";
 * import { parseCell } from "sagbook/cells/parse_cell.ts";
 * import { equal } from "node:assert/strict";
 *
 * const chain = new CellChain("file:///notebook/");
 * const first = chain.compose(parseCell("const R = 2520;"));
 * chain.commit(first);
 * const second = chain.compose(parseCell("R.toFixed(1)"));
 * equal(second.text.split("\n")[0], `import { R } from "${first.uri}";`);
 * ```
 */
export class CellChain {
  #folder: string;
  #visible = new Map<string, Visible>();
  #modules = new Map<string, ChainedCell>();
  #count = 0;

  /**
   * Begins with no names.
   *
   * @param folder URL of the notebook's folder, ending in a slash; the cells'
   * own relative imports start there.
   */
  constructor(folder: string) {
    this.#folder = folder;
  }

  /**
   * Makes the module of a cell.
   *
   * @param cell The cell.
   * @param all Imports every visible name, for completion; else only those
   * that the text mentions.
   * @returns The module, not yet part of the chain.
   */
  compose(cell: ParsedCell, all = false): ChainedCell {
    const own = new Set(cell.names.map(({ name }) => name));
    const header: string[] = [];
    const uses = new Set<string>();
    for (const [name, { uri, name: declared }] of this.#visible) {
      if (own.has(name) || !(all || cell.mentioned.has(name))) continue;
      uses.add(uri);
      header.push(
        declared.typeOnly
          ? `import type { ${name} } from ${JSON.stringify(uri)};`
          : declared.kind === "let" || declared.kind === "var"
          ? `declare let ${name}: typeof import(${
            JSON.stringify(uri)
          }).${name};`
          : `import { ${name} } from ${JSON.stringify(uri)};`,
      );
    }
    const exports = cell.names
      .filter(({ name }) => !cell.exported.has(name))
      .map(({ name, typeOnly }) => typeOnly ? `type ${name}` : name);
    return {
      uri: `${this.#folder}__cell_${++this.#count}.ts`,
      text: `${header.join(" ")}\n${cell.source}\nexport { ${
        exports.join(", ")
      } };`,
      cell,
      uses: [...uses],
    };
  }

  /**
   * Makes a cell's names visible to those after it.
   *
   * @param module The module of a cell that has run.
   * @param assigned Names that have a value; all unless given. Types are
   * visible in any case.
   * @returns URIs of modules that nothing needs any longer.
   */
  commit(module: ChainedCell, assigned?: ReadonlySet<string>): string[] {
    this.#modules.set(module.uri, module);
    for (const name of module.cell.names) {
      if (!name.typeOnly && assigned && !assigned.has(name.name)) continue;
      this.#visible.delete(name.name);
      this.#visible.set(name.name, { uri: module.uri, name });
    }
    const needed = new Set<string>();
    const need = (uri: string) => {
      if (needed.has(uri)) return;
      needed.add(uri);
      this.#modules.get(uri)?.uses.forEach(need);
    };
    for (const { uri } of this.#visible.values()) need(uri);
    const superfluous = [...this.#modules.keys()].filter((u) => !needed.has(u));
    for (const uri of superfluous) this.#modules.delete(uri);
    return superfluous;
  }

  /** The modules that later cells may need, oldest first. */
  get modules(): ChainedCell[] {
    return [...this.#modules.values()];
  }

  /** Names visible to the next cell. */
  get names(): string[] {
    return [...this.#visible.keys()];
  }

  /**
   * Forgets every name, after the variables themselves were lost.
   *
   * @returns URIs of all modules.
   */
  reset(): string[] {
    const uris = [...this.#modules.keys()];
    this.#modules.clear();
    this.#visible.clear();
    return uris;
  }
}
