/**
 * `deno task goldens`: runs the notebooks and keeps their outputs, and draws
 * the figures the tests compare with.
 *
 * @module
 */
import { join } from "node:path";
import { readNotebook } from "../notebook/read_notebook.ts";
import { writeNotebook } from "../notebook/write_notebook.ts";
import { runChecked } from "./_own_kernel.ts";
import { ROOT } from "./_root.ts";
import { EXIT, plainWords } from "./_task_words.ts";

/** Names of the notebooks, sorted. */
async function notebookNames(): Promise<string[]> {
  const names: string[] = [];
  for await (const { name } of Deno.readDir(join(ROOT, "notebooks"))) {
    if (name.endsWith(".ipynb")) names.push(name);
  }
  return names.sort();
}

async function main(only: readonly string[]): Promise<number> {
  const folder = join(ROOT, "notebooks");
  for (const name of await notebookNames()) {
    if (only.length > 0 && !only.some((part) => name.includes(part))) continue;
    const path = join(folder, name);
    const { notebook } = await readNotebook(path);
    const run = await runChecked(notebook, {
      cwd: folder,
      onUnchecked: (why) => console.error(why),
    });
    if (run.exitCode !== 0) {
      for (const { message } of run.problems) {
        console.error(`${name}: ${message}`);
      }
      return EXIT.failed;
    }
    await writeNotebook(path, run.notebook);
    console.log(`${name}: run and kept`);
  }
  return EXIT.ok;
}

if (import.meta.main) {
  try {
    Deno.exit(await main(Deno.args));
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
