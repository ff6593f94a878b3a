/** Remembers when each file that cells import was last changed. */
export class ImportedFiles {
  #folder: string;
  #times = new Map<string, number>();

  /** @param folder URL of the notebook's folder. */
  constructor(folder: string) {
    this.#folder = folder;
  }

  /**
   * Takes the modules that a cell imports.
   *
   * @returns URLs of those files that have changed since they were taken last.
   */
  async changed(modules: readonly string[]): Promise<string[]> {
    const found: string[] = [];
    for (const name of modules) {
      if (!/^(\.{0,2}\/|file:)/.test(name)) continue;
      const { href } = new URL(name, this.#folder);
      const time = await lastChange(href);
      if (time === undefined) continue;
      const before = this.#times.get(href);
      if (before !== undefined && before !== time) found.push(href);
      this.#times.set(href, time);
    }
    return found;
  }

  /** Forgets all, after the modules themselves were lost. */
  reset(): void {
    this.#times.clear();
  }
}

async function lastChange(url: string): Promise<number | undefined> {
  try {
    return (await Deno.stat(new URL(url))).mtime?.getTime();
  } catch {
    return undefined; // the import itself will say what is wrong
  }
}
